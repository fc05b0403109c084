// SPDX-License-Identifier: MIT
// The completion for fish.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <iterator>

#include "completions.hpp"
#include "tables.hpp"

namespace lodebook::install {
namespace {

using cli::CommandSpec;
using cli::OptionSpec;

constexpr std::string_view head = R"(# SPDX-License-Identifier: MIT
# Completion of lodebook for fish, made from the program's own table of options.

# The command of the line, if it has one: options stand before or after it. As long as one of them
# waits for its value, any command may follow: `?`.
function __lodebook_command
    set -l takes_value )";

constexpr std::string_view functions = R"(
    set -l is_value
    for word in (commandline -opc)[2..-1]
        if test -n "$is_value"
            set is_value
        else if contains -- $word $takes_value
            set is_value yes
        else if not string match -q -- '-*' $word
            echo $word
            return 0
        end
    end
    test -n "$is_value"
    and echo '?'
end

# Whether it is, or may become, one of these.
function __lodebook_is
    set -l command (__lodebook_command)
    and contains -- $command $argv '?'
end

# Whether nothing stands behind it yet.
function __lodebook_is_bare
    __lodebook_is $argv
    and contains -- (commandline -opc)[-1] $argv
end

complete -c lodebook -f
)";

/// In single quotes, as fish has them.
std::string quoted(std::string_view text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + '\'';
}

void append_option(std::string& out, const std::vector<std::string>& commands,
                   const OptionSpec& option) {
  out += "complete -c lodebook";
  if (!is_common(option))
    fmt::format_to(std::back_inserter(out), " -n '__lodebook_is {}'", fmt::join(commands, " "));
  if (option.short_name != 0) fmt::format_to(std::back_inserter(out), " -s {}", option.short_name);
  fmt::format_to(std::back_inserter(out), " -l {}", option.long_name);
  const Values values = values_of(option);
  if (values.is_file) {
    out += " -r -F";
  } else if (values.is_list) {
    fmt::format_to(std::back_inserter(out),
                   " -x -a '(__fish_complete_list , \"string split , {}\")'",
                   fmt::join(values.words, ","));
  } else if (!values.words.empty()) {
    fmt::format_to(std::back_inserter(out), " -x -a '{}'", fmt::join(values.words, " "));
  } else if (option.takes_value()) {
    out += " -x";
  }
  fmt::format_to(std::back_inserter(out), " -d {}\n", quoted(brief(option)));
}

void append_words(std::string& out, std::string_view condition, const Described& one) {
  fmt::format_to(std::back_inserter(out), "complete -c lodebook -n {} -a {} -d {}\n",
                 quoted(condition), quoted(one.word), quoted(one.meaning));
}

}  // namespace

std::string fish_completion() {
  std::string out(head);
  fmt::format_to(std::back_inserter(out), "{}", fmt::join(names_with_value(), " "));
  out += functions;
  for (const CommandSpec& command : cli::commands())
    append_words(out, "not __lodebook_command >/dev/null",
                 {std::string(command.name), std::string(command.summary)});
  for (const OptionSpec& option : cli::options()) {
    for (const auto& [taken, commands] : takings_of(option))
      append_option(out, commands, taken);
  }
  const auto are = [](Words words) {
    return fmt::format("{}", fmt::join(commands_with(words), " "));
  };
  fmt::format_to(std::back_inserter(out), "complete -c lodebook -n '__lodebook_is {}' -F\n",
                 are(Words::logs));
  fmt::format_to(std::back_inserter(out),
                 "complete -c lodebook -n '__lodebook_is {}; and __fish_contains_opt column' -F\n",
                 are(Words::csv_files));
  for (const Described& code : codes())
    append_words(out, "__lodebook_is_bare " + are(Words::codes), code);
  for (const Described& topic : topics())
    append_words(out, "__lodebook_is_bare " + are(Words::topics), topic);
  return out;
}

}  // namespace lodebook::install
