// SPDX-License-Identifier: MIT
#include "tables.hpp"

#include <algorithm>
#include <iterator>
#include <lodebook/notebook/catalogue.hpp>
#include <lodebook/notebook/notebook.hpp>

namespace lodebook::install {

using cli::Command;
using cli::CommandSpec;
using cli::Option;
using cli::OptionSpec;

Values values_of(const OptionSpec& option) {
  Values values;
  values.words.assign(option.choices.begin(), option.choices.end());
  values.is_file = option.value == "FILE";
  // Options without a list of words in the table, but with usual ones.
  if (option.option == Option::declination) values.words = {"model", "as-set"};
  if (option.option == Option::by) {
    values.words = {"unit", "station"};
    values.is_list = true;
  }
  if (option.option == Option::kind) {
    for (const notebook::Kind& kind : notebook::read_log(notebook::Source("", "")).kinds) {
      if (kind.type == notebook::Kind::Type::plane || kind.type == notebook::Kind::Type::line)
        values.words.push_back(kind.name);
    }
    values.is_list = true;
  }
  return values;
}

Words words_of(Command command) {
  if (command == Command::convert) return Words::csv_files;
  const std::string_view words = cli::spec_of(command).words;
  if (words.starts_with("LOG")) return Words::logs;
  if (words == "[CODE]") return Words::codes;
  if (words == "[COMMAND]") return Words::topics;
  return Words::free;
}

std::vector<std::string> commands_with(Words words) {
  std::vector<std::string> names;
  for (const CommandSpec& command : cli::commands()) {
    if (words_of(command.command) == words) names.emplace_back(command.name);
  }
  return names;
}

std::vector<Described> codes() {
  std::vector<Described> all;
  for (const notebook::CodePage& page : notebook::catalogue())
    all.push_back({std::string(page.name), std::string(page.title)});
  return all;
}

std::vector<Described> topics() {
  std::vector<Described> all = {{"log", "The log language on one page."}};
  for (const CommandSpec& command : cli::commands())
    all.push_back({std::string(command.name), std::string(command.summary)});
  return all;
}

std::string brief(const OptionSpec& option) {
  std::string text(option.help.substr(0, option.help.find(';')));
  std::ranges::replace(text, '\n', ' ');
  return text;
}

std::vector<std::string> names_of(const OptionSpec& option) {
  std::vector<std::string> names;
  if (option.short_name != 0) names.push_back({'-', option.short_name});
  names.push_back("--" + std::string(option.long_name));
  return names;
}

std::vector<std::string> names_with_value() {
  std::vector<std::string> names;
  for (const OptionSpec& option : cli::options()) {
    if (option.takes_value()) std::ranges::move(names_of(option), std::back_inserter(names));
  }
  return names;
}

std::vector<Taking> takings_of(const OptionSpec& option) {
  std::vector<Taking> takings;
  for (const CommandSpec& command : cli::commands()) {
    if (!option.belongs_to(command.command)) continue;
    const OptionSpec taken = cli::as_taken_by(command.command, option);
    const auto same = std::ranges::find_if(
        takings, [&](const Taking& taking) { return taking.option.help == taken.help; });
    Taking& taking = same != takings.end() ? *same : takings.emplace_back(Taking{taken, {}});
    taking.commands.emplace_back(command.name);
  }
  return takings;
}

std::vector<std::string_view> split(std::string_view text, std::string_view separator) {
  std::vector<std::string_view> parts;
  for (std::size_t end = 0; end != std::string_view::npos;) {
    end = text.find(separator);
    parts.push_back(text.substr(0, end));
    if (end != std::string_view::npos) text.remove_prefix(end + separator.size());
  }
  return parts;
}

bool is_common(const OptionSpec& option) {
  return std::ranges::all_of(cli::commands(), [&](const CommandSpec& command) {
    return option.belongs_to(command.command);
  });
}

}  // namespace lodebook::install
