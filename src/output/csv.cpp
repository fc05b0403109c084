// SPDX-License-Identifier: MIT
// RFC 4180 cells, and a guard against cells that a spreadsheet would run.
#include <lodebook/notebook/plain.hpp>
#include <lodebook/output/csv.hpp>
#include <lodebook/output/diagnostic.hpp>

#include "page_rows.hpp"
#include "row_csv.hpp"

namespace lodebook::output {
namespace {

bool is_formula(std::string_view text) {
  if (text.empty()) return false;
  const char c = text.front();
  return c == '=' || c == '+' || c == '-' || c == '@' || c == '\t' || c == '\r';
}

/// RFC 4180 has no place for control characters but a line's end, nor has a terminal.
std::string without_controls(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::string_view character = text.substr(0, notebook::utf8_length(text));
    // Marks that turn the writing direction have three bytes, and are text.
    const bool control = character.size() < 3 && is_hidden(character) &&
                         std::string_view("\t\r\n").find(character) == std::string_view::npos;
    out += control ? "\uFFFD" : character;
    text.remove_prefix(character.size());
  }
  return out;
}

}  // namespace

void make_csv_cell(Pen& out, std::size_t start) {
  const std::string_view raw = out.behind(start);
  // The guarded characters are common inside text, so that only a first one counts.
  if (notebook::is_plain(raw, '"', ',') && !is_formula(raw)) return;
  std::string cell;
  append_csv_cell(cell, raw);
  out.cut(start);
  out += cell;
}

void append_csv_header(std::string& out, Columns columns) {
  append_csv_names(out, columns);
}

void append_csv(std::string& out, Columns columns, const notebook::Source& source,
                const reduction::Page& page) {
  Pen pen(out);
  PageRows rows(columns);
  for (const reduction::Row& row : page.rows) {
    rows.append(pen, {source, page, row}, append_csv_cell_of<Column, RowContext>);
    pen.back() = '\n';
  }
}

void append_csv_cell(std::string& out, std::string_view text) {
  const std::string valid = without_controls(notebook::valid_utf8(text));
  const bool quoted = valid.find_first_of("\",\r\n") != std::string::npos;
  if (quoted) out.push_back('"');
  if (is_formula(valid)) out.push_back('\'');
  for (const char c : valid) {
    if (c == '"') out.push_back('"');
    out.push_back(c);
  }
  if (quoted) out.push_back('"');
}

}  // namespace lodebook::output
