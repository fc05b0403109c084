// SPDX-License-Identifier: MIT
// The planes and lines of a batch of logs together, for the commands that show them so.
#pragma once

#include <lodebook/cli/batch.hpp>
#include <lodebook/output/summary.hpp>

namespace lodebook::cli {

/// Runs `command`: reduces every log of `line` into groups, makes a text of their summaries by
/// `show`, and writes it to --output or the screen, all of it or nothing. On the error stream it
/// says how many faults a log has.
Outcome show_groups(Command command, const CommandLine& line,
                    const std::function<std::string(const output::SummaryDocument&)>& show);

/// Refuses a selection of kinds that is not among those that the logs have.
std::optional<UsageError> refuse_kinds(const CommandLine& line,
                                       const std::vector<std::string>& kinds);

/// Writes `text` to --output, or to the screen, all of it or nothing.
void deliver(const CommandLine& line, std::string_view text, Outcome& outcome);

}  // namespace lodebook::cli
