// SPDX-License-Identifier: MIT
// Reads bearings from tokens.
#pragma once

#include "figure_reader.hpp"

namespace lodebook::notebook {

/// What may stand behind a bearing: a bare figure (a dip or plunge), or only words and figures with
/// a unit. This decides whether `N 20` lacks its second letter or is the point N before a figure.
enum class Behind : std::uint8_t { figure, words };

/// Reads a bearing in any notation, and its own north if one is named behind it. Faults:
/// quadrant-letters, quadrant-angle, azimuth-range, number, unknown-word.
std::optional<Bearing> read_bearing(Cursor& cursor, Behind behind);
/// The same without a north: what names one stays.
std::optional<Bearing> read_bearing_alone(Cursor& cursor, Behind behind);

/// Whether a bearing in letters stands `ahead`: a point, or the start of a quadrant bearing.
bool starts_lettered_bearing(const Cursor& cursor, std::size_t ahead = 0);

/// An azimuth in [0, 1000) degrees as it is typed, with three digits before the decimal point.
std::string azimuth_text(double degrees);
/// `figure` with zeros in front, so that it has three digits before its decimal point.
std::string three_digits_of(std::string_view figure);

/// The bearing at the cursor, and the text for the opposite direction. The text is empty if no
/// plain bearing stands there.
Fix opposite_at(const Cursor& cursor);

/// The north that stands `ahead` as a word of its own; none if none does.
OwnNorth north_at(const Cursor& cursor, std::size_t ahead = 0);

/// The point of the rose that stands `ahead`, if any.
std::optional<Point> point_at(const Cursor& cursor, std::size_t ahead = 0);

}  // namespace lodebook::notebook
