// SPDX-License-Identifier: MIT
// The commands and options of the program, each described once.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace lodebook::cli {

enum class Command : std::uint8_t {
  reduce,
  check,
  convert,
  declination,
  fix,
  fair_copy,
  summary,
  net,
  rose,
  map,
  sheet,
  register_items,
  explain,
  help,
};
inline constexpr std::size_t command_count = static_cast<std::size_t>(Command::help) + 1;

/// One command, as help shows it.
struct CommandSpec {
  Command command;
  std::string_view name;
  /// What stands behind it on the command line, such as `LOG...`.
  std::string_view words;
  std::string_view summary;
  /// What its help says below the options.
  std::string_view footer;
  /// The extensions of what it writes to --output, without their points; where it takes --format,
  /// in the order of that option's words.
  std::span<const std::string_view> extensions = {};
  /// How the layer of its GeoJSON is called.
  std::string_view layer = {};
};

/// All commands, in the order of Command.
std::span<const CommandSpec> commands();
inline const CommandSpec& spec_of(Command command) {
  return commands()[static_cast<std::size_t>(command)];
}
/// The command of exactly that name, or nothing.
const CommandSpec* command_named(std::string_view name);

enum class Option : std::uint8_t {
  output,
  format,
  rays,
  sidecar,
  north,
  declination,
  set,
  rule,
  heading,
  grid,
  attributes,
  repeats,
  by,
  kind,
  without_suspect,
  poles,
  circles,
  contours,
  bin,
  notation,
  to,
  order,
  as,
  column,
  elevation,
  report,
  report_format,
  watch,
  jobs,
  strict,
  encoding,
  color,
  quiet,
  blank,
  help,
  version,
};
inline constexpr std::size_t option_count = static_cast<std::size_t>(Option::version) + 1;

/// What one command takes an option for, where that differs from the others.
struct OptionVariant {
  Command command;
  std::span<const std::string_view> choices;
  std::string_view help;
};

/// One option. `long_name` and `short_name` stand without their dashes.
struct OptionSpec {
  Option option;
  std::string_view long_name;
  char short_name;  ///< 0: none
  /// How help names its value; empty for a flag.
  std::string_view value;
  /// The words it takes, in the order of the enumeration they stand for; empty where it is free.
  std::span<const std::string_view> choices;
  /// One bit a command, counted from the lowest in the order of Command.
  std::uint16_t commands;
  /// May stand more than once.
  bool repeatable;
  std::string_view help;
  /// At most one a command.
  std::span<const OptionVariant> variants = {};

  bool takes_value() const { return !value.empty(); }
  bool belongs_to(Command command) const {
    return ((commands >> static_cast<unsigned>(command)) & 1U) != 0;
  }
};

/// All options, in the order of Option, which is that of help.
std::span<const OptionSpec> options();
inline const OptionSpec& spec_of(Option option) {
  return options()[static_cast<std::size_t>(option)];
}
/// The option with the words and help that it has for `command`.
OptionSpec as_taken_by(std::optional<Command> command, const OptionSpec& option);
/// The option of exactly that name, without dashes, or nothing.
const OptionSpec* option_named(std::string_view long_name);
const OptionSpec* option_lettered(char short_name);

}  // namespace lodebook::cli
