// SPDX-License-Identifier: MIT
// Reads plain figures from tokens, and reports what is wrong with them.
#pragma once

#include "cursor.hpp"

namespace lodebook::notebook {

/// The next token, if it is a faultless figure; it is not skipped. Otherwise null, and one fault
/// (number).
const Token* figure_at(Cursor& cursor);

/// The error typed with the figure from token `first` to `last`. Empty, and one fault (number), if
/// it is not above 0 or not in the unit of the figure.
std::optional<OwnError> own_error(Cursor& cursor, const Token& first, const Token& last);

/// Reads a figure as a slope: degrees with an optional sign, or percent.
std::optional<Slope> read_slope(Cursor& cursor);

/// Reports a length without its unit (distance-unit), and offers the units.
void report_unit(Cursor& cursor, const Token& figure);

/// Whether `word` means "not a number" or infinity (nan, inf).
bool is_no_number(std::string_view word);

/// Whether a word is one that programs print in place of a number (nan, inf); reports it (number).
bool has_no_number(Cursor cursor);

/// Whether a token is a comma between digits; reports it (decimal-comma).
bool has_decimal_comma(Cursor cursor);

}  // namespace lodebook::notebook
