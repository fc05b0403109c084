// SPDX-License-Identifier: MIT
// What manual pages and completions take from the program's own tables, beyond what stands there as
// it is.
#pragma once

#include <lodebook/cli/option_table.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace lodebook::install {

/// The words that can be typed as the value of an option.
struct Values {
  std::vector<std::string> words;  ///< all of them, or those that are usual
  bool is_list = false;            ///< several, with commas between them
  bool is_file = false;
};
Values values_of(const cli::OptionSpec& option);

/// The words that can follow a command.
enum class Words {
  free,       ///< readings, a position: nothing to offer
  csv_files,  ///< readings, but files where an option says so
  logs,
  codes,
  topics,
};
Words words_of(cli::Command command);
/// The commands with such words.
std::vector<std::string> commands_with(Words words);

/// All codes with their titles, and all topics of help with what they are on.
struct Described {
  std::string word;
  std::string meaning;
};
std::vector<Described> codes();
std::vector<Described> topics();

/// The first clause of an option's help, on one line.
std::string brief(const cli::OptionSpec& option);

/// `-o` and `--output`, or the latter alone.
std::vector<std::string> names_of(const cli::OptionSpec& option);
/// The names of all options that take a value.
std::vector<std::string> names_with_value();

/// Every command takes it.
bool is_common(const cli::OptionSpec& option);

/// An option as some commands take it, all of them with the same words.
struct Taking {
  cli::OptionSpec option;
  std::vector<std::string> commands;
};
std::vector<Taking> takings_of(const cli::OptionSpec& option);

/// What stands before, between and behind the separators.
std::vector<std::string_view> split(std::string_view text, std::string_view separator);

}  // namespace lodebook::install
