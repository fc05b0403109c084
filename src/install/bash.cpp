// SPDX-License-Identifier: MIT
// The completion for bash. It needs nothing but bash.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>
#include <lodebook/output/text.hpp>

#include "completions.hpp"
#include "tables.hpp"

namespace lodebook::install {
namespace {

using cli::CommandSpec;
using cli::OptionSpec;

constexpr std::string_view head = R"(# SPDX-License-Identifier: MIT
# Completion of lodebook for bash, made from the program's own table of options.

_lodebook() {
  local current=${COMP_WORDS[COMP_CWORD]} command= option= ended= column=
  local words= list= files= word
  local -i count=0 i
  COMPREPLY=()

  # What stands before: the command, an option that waits for its value, words behind the command.
  for ((i = 1; i < COMP_CWORD; i++)); do
    word=${COMP_WORDS[i]}
    if [[ $option ]]; then
      [[ $word == = ]] || option=
      continue
    fi
    if [[ ! $ended ]]; then
      case $word in
        --)
          ended=yes
          continue
          ;;
)";

constexpr std::string_view middle = R"(        -*) continue ;;
      esac
    fi
    if [[ $command ]]; then count+=1; else command=$word; fi
  done

  if [[ $option ]]; then
    [[ $current == = ]] && current=
    case $command:$option in
)";

constexpr std::string_view options_begin = R"(    esac
  elif [[ $current == -* && ! $ended ]]; then
    case $command in
)";

constexpr std::string_view words_begin = R"(    esac
  else
    case $command in
)";

constexpr std::string_view tail = R"(    esac
  fi

  if [[ $files ]]; then
    compopt -o filenames 2>/dev/null
    mapfile -t COMPREPLY < <(compgen -f -- "$current")
  elif [[ $list ]]; then
    compopt -o nospace 2>/dev/null
    local before=
    [[ $current == *,* ]] && before=${current%,*},
    mapfile -t COMPREPLY < <(compgen -P "$before" -W "$words" -- "${current##*,}")
  else
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$current")
  fi
}

complete -F _lodebook lodebook
)";

/// A branch that sets what can be typed.
void append_branch(std::string& out, std::string_view pattern, std::string_view statement) {
  fmt::format_to(std::back_inserter(out), "      {}) {} ;;\n", pattern, statement);
}

std::string words_statement(const std::vector<std::string>& words) {
  return "words=" + output::shell_quoted(fmt::format("{}", fmt::join(words, " ")));
}

void append_values(std::string& out, std::string_view command, const OptionSpec& option) {
  const Values values = values_of(option);
  if (!values.is_file && values.words.empty()) return;
  std::vector<std::string> patterns;
  for (const std::string& name : names_of(option))
    patterns.push_back(fmt::format("{}:{}", command, name));
  const std::string statement =
      values.is_file ? "files=yes"
                     : words_statement(values.words) + (values.is_list ? " list=yes" : "");
  append_branch(out, fmt::format("{}", fmt::join(patterns, " | ")), statement);
}

std::vector<std::string> words_of_all(const std::vector<Described>& all) {
  std::vector<std::string> words;
  words.reserve(all.size());
  for (const Described& one : all)
    words.push_back(one.word);
  return words;
}

}  // namespace

std::string bash_completion() {
  std::string out(head);
  fmt::format_to(std::back_inserter(out), "        {})\n", fmt::join(names_with_value(), " | "));
  out +=
      "          option=$word\n"
      "          [[ $word == --column ]] && column=yes\n"
      "          continue\n"
      "          ;;\n"
      "        --column=*) column=yes ;;&\n";
  out += middle;
  for (const OptionSpec& option : cli::options()) {
    for (const cli::OptionVariant& variant : option.variants)
      append_values(out, cli::spec_of(variant.command).name,
                    cli::as_taken_by(variant.command, option));
    append_values(out, "*", option);
  }
  out += options_begin;
  std::vector<std::string> common;
  for (const CommandSpec& command : cli::commands()) {
    std::vector<std::string> names;
    for (const OptionSpec& option : cli::options()) {
      if (!option.belongs_to(command.command)) continue;
      std::ranges::copy(names_of(option), std::back_inserter(names));
      if (is_common(option) && &command == &cli::commands().front())
        std::ranges::copy(names_of(option), std::back_inserter(common));
    }
    append_branch(out, command.name, words_statement(names));
  }
  append_branch(out, "''", words_statement(common));
  out += words_begin;
  std::vector<std::string> commands;
  for (const CommandSpec& command : cli::commands())
    commands.emplace_back(command.name);
  append_branch(out, "''", words_statement(commands));
  append_branch(out, fmt::format("{}", fmt::join(commands_with(Words::logs), " | ")), "files=yes");
  append_branch(out, fmt::format("{}", fmt::join(commands_with(Words::csv_files), " | ")),
                "files=$column");
  append_branch(out, fmt::format("{}", fmt::join(commands_with(Words::codes), " | ")),
                "((count)) || " + words_statement(words_of_all(codes())));
  append_branch(out, fmt::format("{}", fmt::join(commands_with(Words::topics), " | ")),
                "((count)) || " + words_statement(words_of_all(topics())));
  return out += tail;
}

}  // namespace lodebook::install
