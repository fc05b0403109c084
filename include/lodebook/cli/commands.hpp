// SPDX-License-Identifier: MIT
// The commands, one source file each.
#pragma once

#include <lodebook/cli/command_line.hpp>
#include <lodebook/cli/document.hpp>

namespace lodebook::cli {

/// The table of whole logs, and their report.
Outcome reduce(const CommandLine& line);
/// The report of whole logs alone.
Outcome check(const CommandLine& line);
/// Readings in another notation: arguments, lines of standard input, or columns of a CSV file.
Outcome convert(const CommandLine& line);
/// `convert --column`: one CSV file with some of its columns converted.
Outcome convert_columns(const CommandLine& line);
/// The declination of a place and time, by the built-in models.
Outcome declination(const CommandLine& line);
/// Positions from the sights and legs of whole logs.
Outcome fix(const CommandLine& line);
/// A page as typed, as a log.
Outcome fair_copy(const CommandLine& line);
/// What the planes and lines of whole logs add up to.
Outcome summary(const CommandLine& line);
/// Pictures of them: on a net, as roses, on a map.
Outcome net(const CommandLine& line);
Outcome rose(const CommandLine& line);
Outcome map(const CommandLine& line);
/// One log as a page to print.
Outcome sheet(const CommandLine& line);
/// Samples, photos and notes of whole logs.
Outcome register_items(const CommandLine& line);
/// The page of a diagnostic, or the list of all.
Outcome explain(const CommandLine& line);
/// Help on a command, on the program or on the log language.
Outcome help(const CommandLine& line);

/// The log language on one page.
std::string_view log_card();
/// A heading to start a log from.
std::string_view blank_log();

/// Says why the command line cannot be followed.
Outcome refused(const UsageError& error);
/// Writes a text to standard output.
Outcome print(std::string_view text);

}  // namespace lodebook::cli
