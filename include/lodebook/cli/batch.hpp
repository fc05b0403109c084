// SPDX-License-Identifier: MIT
// Logs one after the other: read, reduced, and passed on page by page.
#pragma once

#include <functional>
#include <span>

#include <lodebook/cli/document.hpp>

namespace lodebook::cli {

/// Refuses a run before it writes anything: standard input twice, an output that is also an input,
/// or two outputs in one file. `beside` are the outputs that no option names.
std::optional<UsageError> refuse(const CommandLine& line, std::span<const std::string> inputs,
                                 bool writes_to_standard_output,
                                 std::span<const std::string> beside = {});

/// The command line's part in a reduction.
reduction::Options options_of(const CommandLine& line);

/// Reads every log of `line` and hands it to `take`, until that returns false; only one log is held
/// at a time. A log that cannot be read is reported and the others go on.
void read_logs(const CommandLine& line, Outcome& outcome,
               const std::function<bool(const notebook::Notebook&)>& take);

/// Whether a log ends the run with status 1: for its errors, and under --strict its warnings.
void judge(const CommandLine& line, const reduction::Counts& counts, Outcome& outcome);

/// What is done with logs as they are reduced, page by page.
struct LogVisitor {
  std::function<void(const reduction::Reduction&)> begin_log;
  /// False ends the run.
  std::function<bool(const notebook::Source&, const reduction::Page&)> page;
  std::function<void(const reduction::Reduction&)> end_log;
};
/// Reduces every log of `line`.
void reduce_logs(const CommandLine& line, const reduction::Options& options,
                 const LogVisitor& visitor, Outcome& outcome);

/// Reduces every log of `line` into `documents`. Stops where the first document's reader has gone.
void reduce_logs(const CommandLine& line, std::span<Document> documents, Outcome& outcome);

/// Whether what goes to `file` is coloured.
bool is_colored(const CommandLine& line, const OutputFile& file);

}  // namespace lodebook::cli
