// SPDX-License-Identifier: MIT
// A diagnostic with the line it points to, safe to show on a terminal.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/table.hpp>

namespace lodebook::output {
namespace {

using notebook::column_length;
using notebook::Diagnostic;
using notebook::Place;
using notebook::Severity;
using notebook::Source;

/// A longer line is cut to so many columns, this many of them before the fault.
constexpr std::uint32_t window = 96;
constexpr std::uint32_t lead = 40;
constexpr std::string_view cut = "...";

/// Styles of the terminal (ECMA-48, SGR); all empty without colour.
struct Style {
  std::string_view bold, severity, caret, help, off;
};

Style style_of(Severity severity, bool color) {
  if (!color) return {};
  constexpr std::array<std::string_view, 3> severities = {"\x1b[1;31m", "\x1b[1;35m", "\x1b[1;36m"};
  return {"\x1b[1m", severities[static_cast<std::size_t>(severity)], "\x1b[1;32m", "\x1b[1;36m",
          "\x1b[0m"};
}

void append_column(std::string& out, std::string_view character) {
  if (is_hidden(character)) {
    out += "\uFFFD";
  } else {
    out += character;
  }
}

/// Text of a line, whose tabs stay.
void append_typed(std::string& out, std::string_view text) {
  while (!text.empty()) {
    const std::string_view character = text.substr(0, column_length(text));
    if (character == "\t") {
      out.push_back('\t');
    } else {
      append_column(out, character);
    }
    text.remove_prefix(character.size());
  }
}

/// The line as typed and the caret under it, each cut to the window around the fault.
void append_line(std::string& out, std::string_view line, const Place& place, const Style& style) {
  const Excerpt shown = excerpt(line, place);
  out += fmt::format("{:5} | {}", place.shown_line(), shown.is_cut_before ? cut : "");
  for (const std::string_view part : {shown.before, shown.fault, shown.after})
    append_typed(out, part);
  if (shown.is_cut_after) out += cut;
  std::string carets(shown.is_cut_before ? cut.size() : 0, ' ');
  for (std::string_view rest = shown.before; !rest.empty(); rest.remove_prefix(column_length(rest)))
    carets.push_back(rest.front() == '\t' ? '\t' : ' ');
  // A fault at the end of the line, where something is missing.
  const std::uint32_t end = notebook::count_columns(line) + 1;
  if (place.column > end) carets.append(place.column - end, ' ');
  const std::uint32_t width = std::max(notebook::count_columns(shown.fault), 1U);
  out += fmt::format("\n      | {}{}^{:~>{}}{}\n", carets, style.caret, "", width - 1, style.off);
}

void append_place(std::string& out, std::string_view file, const Place& place) {
  append_printable(out, file);
  fmt::format_to(std::back_inserter(out), ":{}:{}: ", place.shown_line(), place.column);
}

/// Ends the line of a message.
void append_code(std::string& out, const Diagnostic& diagnostic) {
  fmt::format_to(std::back_inserter(out), " [{}]\n", notebook::name_of(diagnostic.code));
}

}  // namespace

bool is_hidden(std::string_view character) {
  const auto first = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return first < 0x20 || first >= 0x7F;
  if (first == 0xC2) return static_cast<unsigned char>(character[1]) < 0xA0;
  // Zero-width space, marks of the writing direction, word joiner and the like, byte order mark.
  return character == "\u061C" || character == "\u200B" || character == "\u200E" ||
         character == "\u200F" || (character >= "\u202A" && character <= "\u202E") ||
         (character >= "\u2060" && character <= "\u2064") ||
         (character >= "\u2066" && character <= "\u2069") || character == notebook::byte_order_mark;
}

void append_printable(std::string& out, std::string_view text) {
  while (!text.empty()) {
    // Most text is plain ASCII, all of it.
    const auto plain = std::ranges::find_if(text, [](char c) { return c < ' ' || c > '~'; });
    out.append(text.begin(), plain);
    text.remove_prefix(static_cast<std::size_t>(plain - text.begin()));
    if (text.empty()) return;
    const std::string_view character = text.substr(0, column_length(text));
    append_column(out, character);
    text.remove_prefix(character.size());
  }
}

Excerpt excerpt(std::string_view line, const Place& place) {
  const std::uint32_t columns = notebook::count_columns(line);
  std::uint32_t first = 1;
  std::uint32_t last = columns;
  if (columns > window + 2 * cut.size()) {
    if (place.column > lead) first = std::min(place.column - lead, columns - window + 1);
    last = std::min(columns, first + window - 1);
  }
  std::uint32_t column = 1;
  const auto take = [&](std::uint32_t until) {
    const std::uint32_t wanted = until > column ? until - column : 0;
    const std::string_view taken = line.substr(0, notebook::columns_length(line, wanted));
    line.remove_prefix(taken.size());
    column += wanted;
    return taken;
  };
  take(first);
  Excerpt shown;
  shown.before = take(std::min(place.column, last + 1));
  shown.fault = take(std::min(std::max(place.end_column, place.column + 1), last + 1));
  shown.after = take(last + 1);
  shown.is_cut_before = first > 1;
  shown.is_cut_after = last < columns;
  return shown;
}

bool has_line(const Source& source, const Place& place) {
  return place.heading != 0 || (place.line >= 1 && place.line <= source.line_count());
}

std::string words_of_line(const Source& source, const Place& place) {
  std::string words = fmt::format("line {}", place.shown_line());
  if (place.heading == 0) return words;
  words += " of ";
  append_printable(words, shown_name(source.name_of(place)));
  return words;
}

void append_diagnostic(std::string& out, const Source& source, const Diagnostic& diagnostic,
                       bool color) {
  const Style style = style_of(diagnostic.severity, color);
  const Place& place = diagnostic.place;
  out += style.bold;
  append_place(out, shown_name(source.name_of(place)), place);
  out += style.severity;
  out += notebook::name_of(diagnostic.severity);
  out += ':';
  out += style.off;
  out += ' ';
  out += style.bold;
  append_printable(out, diagnostic.message);
  out += style.off;
  append_code(out, diagnostic);
  if (has_line(source, place)) append_line(out, source.text(source.line_of(place)), place, style);
  for (const notebook::Related& related : diagnostic.related) {
    out += style.help;
    out += "note:";
    out += style.off;
    out += ' ';
    append_place(out, shown_name(source.name_of(related.place)), related.place);
    append_printable(out, related.message);
    out.push_back('\n');
  }
  if (!diagnostic.help.empty()) {
    out += style.help;
    out += "help:";
    out += style.off;
    out += ' ';
    append_printable(out, diagnostic.help);
    out.push_back('\n');
  }
}

void append_diagnostic_line(std::string& out, const Source& source, const Diagnostic& diagnostic) {
  append_place(out, source.name_of(diagnostic.place), diagnostic.place);
  out += notebook::name_of(diagnostic.severity);
  out += ": ";
  append_printable(out, diagnostic.message);
  append_code(out, diagnostic);
}

}  // namespace lodebook::output
