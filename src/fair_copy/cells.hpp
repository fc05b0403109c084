// SPDX-License-Identifier: MIT
// The cells of a line of a table, by the mark that parts them.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "words.hpp"

namespace lodebook::fair_copy {

/// What stands between the columns of a line.
enum class Separator : std::uint8_t {
  tab,
  semicolon,
  bar,
  comma,
  stroke,  ///< in headings only
  blanks,  ///< two or more, or a tab
  blank,   ///< one or more
};

/// Bytes of a line.
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
};

struct Cell {
  std::string text;  ///< without white space at its ends, and without quotes
  Span span;
};

/// The cells of `line`. Strokes or bars at both ends of a line stand round its cells.
std::vector<Cell> cells_in(std::string_view line, Separator separator);

/// Bytes as letters, so that columns stand below each other.
Span in_letters(std::string_view line, const Span& span);

bool has_digit(std::string_view text);
/// Repeats what stands above: `"`, `do.`, `id.`
bool is_ditto(std::string_view cell, const Words& words);
/// Says that nothing was read: `-`, `none`, or is empty.
bool is_unread(std::string_view cell);

/// A comma between the digits of a cell that is one figure, as a point.
std::string with_point(std::string_view cell);

/// The two parts of a cell that holds a pair: `38/N052`, `032-24`, `N62E 37 NW`; the second is
/// empty where there is one part only.
struct Halves {
  std::string first;
  std::string second;
};
Halves halves_of(std::string_view cell);
/// Of a cell with both ends of a leg: `A-B`, `P7-1 to P7-2`.
Halves ends_of(std::string_view cell);

}  // namespace lodebook::fair_copy
