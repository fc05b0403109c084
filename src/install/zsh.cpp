// SPDX-License-Identifier: MIT
// The completion for zsh, by its function _arguments.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <iterator>
#include <lodebook/output/text.hpp>

#include "completions.hpp"
#include "tables.hpp"

namespace lodebook::install {
namespace {

using cli::Command;
using cli::CommandSpec;
using cli::OptionSpec;

constexpr std::string_view head = R"(#compdef lodebook
# SPDX-License-Identifier: MIT
# Completion of lodebook for zsh, made from the program's own table of options.

)";

constexpr std::string_view begin = R"(
_lodebook() {
  local command word
  local -i i at=0

  # Options stand before or after the command, so that it is looked for and taken out.
  for ((i = 2; i < CURRENT; i++)); do
    word=$words[i]
    case $word in
      (--) break ;;
)";

constexpr std::string_view middle = R"(      (-*) ;;
      (*)
        command=$word
        at=i
        break
        ;;
    esac
  done
  if ((at)); then
    words[at]=()
    ((CURRENT--))
  fi

  case $command in
)";

constexpr std::string_view tail = R"(  esac
}

_lodebook "$@"
)";

/// Text within a specification of _arguments or _describe, where a colon would end it.
std::string safe(std::string_view text, std::string_view special) {
  std::string out;
  for (const char c : text) {
    if (special.find(c) != std::string_view::npos) out += '\\';
    out += c;
  }
  return out;
}

/// How the value of an option is completed, `:FORMAT:(csv json)`; empty for a flag.
std::string action_of(const OptionSpec& option) {
  if (!option.takes_value()) return {};
  const Values values = values_of(option);
  std::string action = " ";  // said, but nothing offered
  if (values.is_file) {
    action = "_files";
  } else if (values.is_list) {
    action = fmt::format("_values -s , {} {}", option.value, fmt::join(values.words, " "));
  } else if (!values.words.empty()) {
    action = fmt::format("({})", fmt::join(values.words, " "));
  }
  return fmt::format(":{}:{}", option.value, action);
}

/// `hidden` is known, and its value completed, but not offered itself.
void append_option(std::string& out, const OptionSpec& option, bool hidden = false) {
  const std::vector<std::string> names = names_of(option);
  const std::string rest = fmt::format("[{}]{}", safe(brief(option), "[]:\\"), action_of(option));
  for (const std::string& name : names) {
    std::string spec = hidden ? "!" : "";
    if (option.repeatable) {
      spec += "*";
    } else if (names.size() > 1) {
      spec += fmt::format("({})", fmt::join(names, " "));
    }
    const bool is_long = name.starts_with("--");
    spec += name + (option.takes_value() ? is_long ? "=" : "+" : "") + rest;
    fmt::format_to(std::back_inserter(out), " \\\n        {}", output::shell_quoted(spec));
  }
}

std::string_view words_spec(Command command) {
  switch (words_of(command)) {
    case Words::logs:
      return "*:log:_files";
    case Words::csv_files:
      return "*:reading:_lodebook_readings";
    case Words::codes:
      return "1:code:_lodebook_codes";
    case Words::topics:
      return "1:topic:_lodebook_topics";
    case Words::free:
      break;
  }
  return "*: : ";
}

void append_list(std::string& out, std::string_view name, std::string_view what,
                 const std::vector<Described>& all) {
  fmt::format_to(std::back_inserter(out), "_lodebook_{}() {{\n  local -a all=(\n", name);
  for (const auto& [word, meaning] : all) {
    fmt::format_to(std::back_inserter(out), "    {}\n",
                   output::shell_quoted(fmt::format("{}:{}", word, safe(meaning, ":\\"))));
  }
  fmt::format_to(std::back_inserter(out), "  )\n  _describe {} all\n}}\n", what);
}

}  // namespace

std::string zsh_completion() {
  std::string out(head);
  std::vector<Described> commands;
  for (const CommandSpec& command : cli::commands())
    commands.push_back({std::string(command.name), std::string(command.summary)});
  append_list(out, "commands", "command", commands);
  append_list(out, "codes", "code", codes());
  append_list(out, "topics", "topic", topics());
  out += "_lodebook_readings() {\n  ((${words[(I)--column*]})) && _files\n}\n";
  out += begin;
  fmt::format_to(std::back_inserter(out), "      ({}) ((i++)) ;;\n",
                 fmt::join(names_with_value(), "|"));
  out += middle;
  for (const CommandSpec& command : cli::commands()) {
    fmt::format_to(std::back_inserter(out), "    ({})\n      _arguments -s -S", command.name);
    for (const OptionSpec& option : cli::options()) {
      if (option.belongs_to(command.command))
        append_option(out, cli::as_taken_by(command.command, option));
    }
    fmt::format_to(std::back_inserter(out), " \\\n        {}\n      ;;\n",
                   output::shell_quoted(words_spec(command.command)));
  }
  out += "    ('')\n      _arguments -s -S";
  for (const OptionSpec& option : cli::options())
    append_option(out, option, !is_common(option));
  out += " \\\n        '1:command:_lodebook_commands'\n      ;;\n";
  return out += tail;
}

}  // namespace lodebook::install
