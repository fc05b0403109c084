// SPDX-License-Identifier: MIT
// The cells of a CSV file as byte ranges, so that some can be replaced and all else kept.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace lodebook::cli {

/// One cell: [begin, end) in the text, with its quotes. It starts in line `line` (from 1), whose
/// first byte is `line_begin`; lines end at LF, CR LF or CR, also inside quotes.
struct CsvCell {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::uint32_t line = 1;
  std::size_t line_begin = 0;
  /// It stands in quotes from its first byte to its last (RFC 4180).
  bool quoted = false;
};

/// Splits CSV text (RFC 4180, commas) into rows. A quote that does not begin a cell is an ordinary
/// character; rows may be ragged; a byte-order mark belongs to no cell.
class CsvRows {
 public:
  explicit CsvRows(std::string_view text);

  /// The next row's cells; false at the end of the text. A blank line is a row of one empty cell.
  bool next(std::vector<CsvCell>& cells);

  /// Line of the first cell whose closing quote is missing; 0 while there is none.
  std::uint32_t unclosed_line() const { return unclosed_line_; }

 private:
  void step_over_line_end();
  CsvCell next_cell();

  std::string_view text_;
  std::size_t at_ = 0;
  std::uint32_t line_ = 1;
  std::size_t line_begin_ = 0;
  std::uint32_t unclosed_line_ = 0;
};

/// What a cell says: without its quotes, and with each doubled quote as one.
std::string value_of(std::string_view text, const CsvCell& cell);

/// Appends `value` in the style of the cell it replaces: in quotes if that was, or if it needs
/// them.
void append_cell(std::string& out, std::string_view value, bool quoted);

}  // namespace lodebook::cli
