// SPDX-License-Identifier: MIT
// The arguments sorted into command, options and words, before the option parser sees them.
#pragma once

#include <span>
#include <string>
#include <variant>
#include <vector>

#include <lodebook/cli/message.hpp>
#include <lodebook/cli/option_table.hpp>

namespace lodebook::cli {

/// Arguments in an unambiguous order: options may have stood before or after the command, and `-15`
/// after `convert` is a reading, `-44.65` after `declination` a latitude.
struct Arranged {
  /// Nothing where no command stands.
  const CommandSpec* command = nullptr;
  /// Options with their values behind them, also unknown ones.
  std::vector<std::string> options;
  /// All else behind the command: logs, readings, a position, a code, a topic. What follows `--` is
  /// always one.
  std::vector<std::string> words;
};

/// Fails for an unknown command, for an option without its value and for a flag with one.
std::variant<Arranged, UsageError> arrange(std::span<const std::string> arguments);

}  // namespace lodebook::cli
