// SPDX-License-Identifier: MIT
// The table's columns, one by one: the same for CSV, JSON and GeoJSON.
#pragma once

#include <span>
#include <string>
#include <vector>

#include <lodebook/output/pen.hpp>
#include <lodebook/output/text.hpp>
#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

/// How a column is written. A `word` is our own ASCII and never needs quoting or escaping, nor does
/// a `date`, `2026-02-14`, or a `time`, `09:40`; `text` holds the user's bytes; a `number` always
/// has a point, a `count` never.
enum class Type : std::uint8_t { word, text, number, count, date, time };

/// Where a row stands: what its station's columns are taken from.
struct RowContext {
  const notebook::Source& source;
  const reduction::Page& page;
  const reduction::Row& row;
};

/// One column. `append` adds the plain figure or text, or nothing where it is missing.
struct Column {
  std::string_view name;
  Type type;
  /// Without it the text is the value of the remark's attribute of that name.
  void (*append_cell)(Pen& out, const RowContext& context);
  /// Of a row and the one above it on its page: the text is sure to be the same. Nothing for what
  /// is each reading's own.
  bool (*as_above)(const reduction::Row& above, const reduction::Row& row) = nullptr;
  /// Only with the grid.
  bool of_grid = false;

  void append(Pen& out, const RowContext& context) const {
    append_cell ? append_cell(out, context) : append_attribute(out, context);
  }

 private:
  void append_attribute(Pen& out, const RowContext& context) const;
};

/// The columns in their order; easting, northing and zone among them `with_grid` only.
using Columns = std::span<const Column>;
Columns columns(bool with_grid = false);

/// The same, and before `written` a column for each of the attributes `keys`, which it has views
/// of.
std::vector<Column> columns(bool with_grid, std::span<const std::string> keys);

/// The row's place as the column `source` has it: `day3.txt:18:3`.
std::string source_of(const RowContext& at);

/// The log's name as outputs show it: as given, but the base name of an absolute path.
std::string_view shown_name(const notebook::Source& source);
std::string_view shown_name(std::string_view source_name);

/// `day3.txt:18:3`: where a reading stands, as the column `source` has it.
template <class Text>
void append_source(Text& out, std::string_view file, std::uint32_t line, std::uint32_t column) {
  out += file;
  out.push_back(':');
  append_figure(out, line, 0);
  out.push_back(':');
  append_figure(out, column, 0);
}

}  // namespace lodebook::output
