// SPDX-License-Identifier: MIT
// Which arguments are options, which are values of options, and which are words.
#include <lodebook/cli/arrange.hpp>

#include <lodebook/cli/file.hpp>
#include <string_view>

namespace lodebook::cli {
namespace {

constexpr std::string_view end_of_options = "--";

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// `-35` and `- 35 > N50W` are readings where readings are expected, as `-44.65` is a latitude.
bool is_option(std::string_view argument, const CommandSpec* command) {
  if (argument.size() < 2 || argument[0] != '-') return false;
  const bool expects_figures = command == nullptr || command->command == Command::convert ||
                               command->command == Command::declination;
  return is_letter(argument[1]) || argument[1] == '-' || !expects_figures;
}

/// What an option on the command line says about the value it has or needs.
struct Token {
  const OptionSpec* spec = nullptr;  ///< the one that takes a value, or has one it does not take
  bool wants_next = false;
  bool value_empty = false;
  bool value_unwanted = false;
};

Token token_of(std::string_view argument) {
  if (argument.starts_with("--")) {
    const std::size_t equals = argument.find('=');
    const OptionSpec* const spec = option_named(argument.substr(2, equals - 2));
    if (spec == nullptr) return {};
    if (equals == std::string_view::npos) return {spec, spec->takes_value(), false, false};
    return {spec, false, equals + 1 == argument.size(), !spec->takes_value()};
  }
  for (std::size_t i = 1; i < argument.size(); ++i) {
    const OptionSpec* const spec = option_lettered(argument[i]);
    if (spec == nullptr) break;
    if (spec->takes_value()) return {spec, i + 1 == argument.size(), false, false};
  }
  return {};
}

/// A value that looks like one of our own options is rather a value forgotten.
bool is_our_option(std::string_view argument) {
  if (argument.size() < 2 || argument[0] != '-') return false;
  if (argument == end_of_options) return true;
  if (argument.starts_with("--"))
    return option_named(argument.substr(2, argument.find('=') - 2)) != nullptr;
  return argument.size() == 2 && option_lettered(argument[1]) != nullptr;
}

/// Where the command stands, or the number of arguments.
std::size_t place_of_command(std::span<const std::string> arguments) {
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    if (arguments[i] == end_of_options) return i + 1;
    if (!is_option(arguments[i], nullptr)) return i;
    if (token_of(arguments[i]).wants_next) ++i;
  }
  return arguments.size();
}

}  // namespace

std::variant<Arranged, UsageError> arrange(std::span<const std::string> arguments) {
  Arranged arranged;
  const std::size_t place = place_of_command(arguments);
  if (place < arguments.size()) {
    arranged.command = command_named(arguments[place]);
    if (arranged.command == nullptr) {
      const auto file = identity_of(arguments[place]);
      return command_unknown(arguments[place], file && file->name.empty());
    }
  }
  const auto missing = [&](const OptionSpec& option) {
    return value_missing(as_taken_by(
        arranged.command ? std::optional(arranged.command->command) : std::nullopt, option));
  };
  bool only_words = false;
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    const std::string& argument = arguments[i];
    if (i == place) continue;
    if (only_words || (argument != end_of_options && !is_option(argument, arranged.command))) {
      arranged.words.push_back(argument);
      continue;
    }
    if (argument == end_of_options) {
      only_words = true;
      continue;
    }
    const Token token = token_of(argument);
    if (token.value_unwanted) return value_unwanted(*token.spec);
    if (token.value_empty) return missing(*token.spec);
    arranged.options.push_back(argument);
    if (!token.wants_next) continue;
    ++i;
    if (i >= arguments.size() || arguments[i].empty() || is_our_option(arguments[i]))
      return missing(*token.spec);
    arranged.options.push_back(arguments[i]);
  }
  return arranged;
}

}  // namespace lodebook::cli
