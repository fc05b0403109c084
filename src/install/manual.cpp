// SPDX-License-Identifier: MIT
#include "manual.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <lodebook/cli/option_table.hpp>
#include <stdexcept>
#include <vector>

#include "roff.hpp"
#include "tables.hpp"

namespace lodebook::install {
namespace {

using cli::CommandSpec;
using cli::OptionSpec;

/// The words after a command, such as `LOG...` or `[DATE]`, as macros.
std::string word_as_macros(std::string_view word) {
  const bool is_optional = word.starts_with('[');
  if (is_optional) word = word.substr(1, word.size() - 2);
  const bool is_many = word.ends_with("...");
  if (is_many) word.remove_suffix(3);
  return fmt::format("{}Ar {}{}", is_optional ? "Op " : "", word, is_many ? " ..." : "");
}

/// The help of a command in blocks; the exit statuses, which all share, stand in a section.
void append_footer(Blocks& blocks, std::string_view footer) {
  constexpr std::string_view indent = "  ";
  for (const std::string_view block : split(footer, "\n\n")) {
    if (block.starts_with("Exit status:")) continue;
    if (!block.starts_with(indent)) {
      blocks.paragraph(block);
      continue;
    }
    std::vector<std::string_view> lines = split(block, "\n");
    for (std::string_view& line : lines)
      line.remove_prefix(indent.size());
    blocks.literal(lines);
  }
}

std::string names_as_macros(const OptionSpec& option) {
  std::string macros;
  if (option.short_name != 0) macros = fmt::format("Fl {} , ", option.short_name);
  macros += fmt::format("Fl -{}", option.long_name);
  if (!option.choices.empty())
    return fmt::format("{} Cm {}", macros, fmt::join(option.choices, " | "));
  return option.takes_value() ? fmt::format("{} Ar {}", macros, option.value) : macros;
}

/// The help of an option as a sentence, unless it begins with a word that is typed.
std::string sentence(const OptionSpec& option) {
  std::string text(option.help);
  const std::string first = text.substr(0, text.find_first_of(" ,:\n"));
  const bool is_typed = std::ranges::find(option.choices, first) != option.choices.end();
  if (!is_typed && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text + '.';
}

/// `Of reduce, check and fix.`
std::string owners(const std::vector<std::string>& commands) {
  std::string text = "Of ";
  for (std::size_t i = 0; i < commands.size(); ++i) {
    if (i > 0) text += i + 1 == commands.size() ? " and " : ", ";
    text += '`' + commands[i] + '`';
  }
  return text + '.';
}

}  // namespace

std::string synopsis() {
  std::string text;
  for (const CommandSpec& command : cli::commands()) {
    text += fmt::format(".Nm\n.Cm {}\n.Op Ar OPTION ...\n", command.name);
    for (const std::string_view word : split(command.words, " "))
      text += '.' + word_as_macros(word) + '\n';
  }
  return text;
}

std::string commands_described() {
  Blocks blocks;
  for (const CommandSpec& command : cli::commands()) {
    std::string head = fmt::format("Cm {}", command.name);
    for (const std::string_view word : split(command.words, " "))
      head += ' ' + word_as_macros(word);
    blocks.item(head);
    blocks.paragraph(command.summary);
    append_footer(blocks, command.footer);
  }
  return blocks.text();
}

std::string options_described() {
  Blocks blocks;
  for (const OptionSpec& option : cli::options()) {
    for (const auto& [taken, commands] : takings_of(option)) {
      blocks.item(names_as_macros(taken));
      blocks.next_line(sentence(taken));
      if (!is_common(option)) blocks.next_line(owners(commands));
    }
  }
  return blocks.text();
}

std::string filled(std::string_view page, const std::map<std::string, std::string>& parts) {
  std::string out;
  while (!page.empty()) {
    const std::size_t begin = std::min(page.find('@'), page.size());
    out += page.substr(0, begin);
    page.remove_prefix(begin);
    if (page.empty()) break;
    const std::size_t end = page.find('@', 1);
    if (end == std::string_view::npos) throw std::runtime_error("a single @ in a template");
    const auto part = parts.find(std::string(page.substr(1, end - 1)));
    if (part == parts.end())
      throw std::runtime_error("no part is called " + std::string(page.substr(0, end + 1)));
    page.remove_prefix(end + 1);
    std::string_view text = part->second;
    if (page.starts_with('\n') && text.ends_with('\n')) text.remove_suffix(1);
    out += text;
  }
  return out;
}

}  // namespace lodebook::install
