// SPDX-License-Identifier: MIT
// Escapes of roff: groff_char(7), and mandoc_char(7) which agrees with it.
#include "roff.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <lodebook/notebook/source.hpp>

#include "tables.hpp"

namespace lodebook::install {
namespace {

constexpr std::size_t width = 78;

char32_t code_point(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  char32_t point = character.size() == 1 ? byte(0) : byte(0) & (0x7FU >> character.size());
  for (std::size_t i = 1; i < character.size(); ++i)
    point = (point << 6) | (byte(i) & 0x3FU);
  return point;
}

/// Appends one character so that roff prints it and nothing else.
void append_escaped(std::string& out, std::string_view character, bool is_code) {
  if (character.size() > 1) {
    fmt::format_to(std::back_inserter(out), "\\[u{:04X}]",
                   static_cast<std::uint32_t>(code_point(character)));
    return;
  }
  switch (character[0]) {
    case '\\':
      out += "\\e";
      break;
    case '\'':
      out += "\\(aq";
      break;
    case '"':
      out += "\\(dq";
      break;
    case '`':
      out += "\\(ga";
      break;
    case '^':
      out += "\\(ha";
      break;
    case '~':
      out += "\\(ti";
      break;
    case '-':
      out += is_code ? "\\-" : "-";
      break;
    default:
      out += character;
  }
}

/// The first character of `text`, which is not empty.
std::string_view first_character(std::string_view text) {
  return text.substr(0, std::max<std::size_t>(1, notebook::utf8_length(text)));
}

/// What stands between `open` and `close` at the start of `text`, taken off it; nothing if `text`
/// does not begin so.
std::string_view take_between(std::string_view& text, std::string_view open,
                              std::string_view close) {
  if (!text.starts_with(open)) return {};
  const std::size_t end = text.find(close, open.size());
  if (end == std::string_view::npos) return {};
  const std::string_view inner = text.substr(open.size(), end - open.size());
  text.remove_prefix(end + close.size());
  return inner;
}

std::string escaped(std::string_view text, bool is_code) {
  std::string out;
  for (; !text.empty(); text.remove_prefix(first_character(text).size()))
    append_escaped(out, first_character(text), is_code);
  return out;
}

/// A sentence ends here and another begins, which mdoc wants on a new line.
bool is_between_sentences(std::string_view text) {
  constexpr std::string_view beginnings = "ABCDEFGHIJKLMNOPQRSTUVWXYZ`*[";
  return text.size() > 2 && (text.starts_with(". ") || text.starts_with(".\n")) &&
         beginnings.find(text[2]) != std::string_view::npos;
}

/// One line, but with '\n' between sentences.
std::string inline_text(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    if (const std::string_view code = take_between(text, "`", "`"); !code.empty()) {
      out += "\\fB" + escaped(code, true) + "\\fP";
    } else if (const std::string_view bold = take_between(text, "**", "**"); !bold.empty()) {
      out += "\\fB" + escaped(bold, false) + "\\fP";
    } else if (const std::string_view link = take_between(text, "[", "]("); !link.empty()) {
      out += inline_text(link);
      text.remove_prefix(text.find(')') + 1);
    } else if (is_between_sentences(text)) {
      out += ".\n";
      text.remove_prefix(2);
    } else if (text.front() == '\n') {
      out += ' ';
      text.remove_prefix(1);
    } else {
      append_escaped(out, first_character(text), false);
      text.remove_prefix(first_character(text).size());
    }
  }
  return out;
}

/// A line that begins with a point would be a request.
void append_line(std::string& out, std::string_view line) {
  if (line.starts_with('.')) out += "\\&";
  out += line;
  out += '\n';
}

}  // namespace

std::string prose(std::string_view text) {
  const std::string sentences = inline_text(text);
  std::string out;
  for (std::string_view line : split(sentences, "\n")) {
    while (line.size() > width) {
      std::size_t space = line.rfind(' ', width);
      if (space == std::string_view::npos) space = line.find(' ');
      if (space == std::string_view::npos) break;
      append_line(out, line.substr(0, space));
      line.remove_prefix(space + 1);
    }
    append_line(out, line);
  }
  return out;
}

std::string argument(std::string_view text) {
  std::string line = inline_text(text);
  for (char& c : line) {
    if (c == '\n') c = ' ';
  }
  return "\"\\&" + line + '"';
}

void Blocks::section(std::string_view title) {
  text_ += ".Sh ";
  for (const char c : title)
    text_ += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  text_ += '\n';
  at_start_ = true;
}

void Blocks::paragraph(std::string_view text) {
  if (!at_start_) text_ += ".Pp\n";
  text_ += prose(text);
  at_start_ = false;
}

void Blocks::literal(std::span<const std::string_view> lines) {
  text_ += ".Bd -literal -offset 2n\n";
  for (const std::string_view line : lines)
    append_line(text_, escaped(line, true));
  text_ += ".Ed\n";
  at_start_ = false;
}

void Blocks::begin_list(List list) {
  text_ += list == List::tagged ? ".Bl -tag -width Ds\n" : ".Bl -bullet\n";
}

void Blocks::item(std::string_view head) {
  text_ += ".It";
  if (!head.empty()) text_ += ' ';
  text_ += head;
  text_ += '\n';
  at_start_ = true;
}

void Blocks::next_line(std::string_view text) {
  if (!at_start_) text_ += ".br\n";
  text_ += prose(text);
  at_start_ = false;
}

void Blocks::end_list() {
  text_ += ".El\n";
  at_start_ = false;
}

}  // namespace lodebook::install
