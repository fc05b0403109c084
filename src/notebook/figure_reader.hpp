// SPDX-License-Identifier: MIT
// Plain figures out of tokens, and what is wrong with them.
#pragma once

#include "cursor.hpp"

namespace lodebook::notebook {

/// The next token as a sound figure, still to be skipped; else one fault (number) and nothing.
const Token* figure_at(Cursor& cursor);

/// The error typed with the figure that `first` begins and `last` ends; nothing, and one fault
/// (number), for one that is not above 0 or in another unit than the figure.
std::optional<OwnError> own_error(Cursor& cursor, const Token& first, const Token& last);

/// Reads a figure as a slope: degrees with an optional sign, or percent.
std::optional<Slope> read_slope(Cursor& cursor);

/// Reports a length without its unit (distance-unit), with all that it may be.
void report_unit(Cursor& cursor, const Token& figure);

/// A word that stands for no number (nan, inf).
bool is_no_number(std::string_view word);

/// Whether some word is one that other programs print for what is no number (nan, inf); reports it
/// (number).
bool has_no_number(Cursor cursor);

/// Whether some token is a comma between digits; reports it (decimal-comma).
bool has_decimal_comma(Cursor cursor);

}  // namespace lodebook::notebook
