// SPDX-License-Identifier: MIT
// Bearings and plain figures out of tokens.
#pragma once

#include "cursor.hpp"

namespace lodebook::notebook {

/// What may stand behind a bearing: a bare figure (a dip or plunge), or only words and figures with
/// a unit. It decides whether `N 20` lacks its second letter or is the point N and a figure.
enum class Behind : std::uint8_t { figure, words };

/// Reads a bearing in any notation. Faults: quadrant-letters, quadrant-angle, azimuth-range,
/// number, unknown-word.
std::optional<Bearing> read_bearing(Cursor& cursor, Behind behind);

/// Whether a bearing in letters (a point, or the start of a quadrant bearing) stands `ahead`.
bool starts_lettered_bearing(const Cursor& cursor, std::size_t ahead = 0);

/// An azimuth in [0, 1000) as it is typed, with three digits before the point.
std::string azimuth_text(double degrees);
/// `figure` with zeros before it, so that it has three digits before its point.
std::string three_digits_of(std::string_view figure);

/// The words of the bearing at the cursor, as they would be typed for the opposite direction; an
/// empty text where no plain bearing stands there.
Fix opposite_at(const Cursor& cursor);

/// The point of the rose that stands `ahead`, if any.
std::optional<Point> point_at(const Cursor& cursor, std::size_t ahead = 0);

/// The next token as a sound figure, still to be skipped; else one fault (number) and nothing.
const Token* figure_at(Cursor& cursor);

/// Reads a figure as a slope: degrees with an optional sign, or percent.
std::optional<Slope> read_slope(Cursor& cursor);

/// Reports a length without its unit (distance-unit), with all that it may be.
void report_unit(Cursor& cursor, const Token& figure);

/// Whether some word is one that other programs print for what is no number (nan, inf); reports it
/// (number).
bool has_no_number(Cursor cursor);

/// Whether some token is a comma between digits; reports it (decimal-comma).
bool has_decimal_comma(Cursor cursor);

}  // namespace lodebook::notebook
