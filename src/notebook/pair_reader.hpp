// SPDX-License-Identifier: MIT
// Two figures, or a figure and a bearing: which is the bearing? For planes and lines alike.
#pragma once

#include "bearing_reader.hpp"

namespace lodebook::notebook {

/// `>` or `to`.
bool is_towards(const Cursor& cursor, std::size_t ahead = 0);

/// Whether a figure has three digits before the decimal point, as a bearing has. A dip or plunge
/// has one or two (common practice, no source).
bool three_digits(const Token& token);

/// `242 grid 37`: what has a north is the bearing, whatever its digits.
bool is_pair_with_north(const Cursor& cursor);

/// `20W`: a quadrant bearing without its first letter.
bool lacks_first_letter(const Cursor& cursor);

/// Whether a figure touches the bearing before it (`N62E37`); reports it if so. `start` is the
/// first token of the bearing.
bool touches(Cursor& cursor, std::size_t start);

/// What a point of the rose behind two figures says about them.
enum class Side : std::uint8_t {
  none,           ///< no point may stand there
  of_strike_dip,  ///< strike, dip and side, whatever their order otherwise
  of_either,      ///< strike and dip in either order, if their digits show which is which
};

/// How pairs of a plane or a line may be written.
struct PairWords {
  std::string_view stated;  ///< the order in force; empty if none
  /// The statements of an order that may explain a pair.
  std::span<const std::string_view> orders;
  bool slope_is_first = false;  ///< in the order in force
  Side side = Side::none;
};

/// Which of two figures is the bearing. The first is at the cursor, the second `behind` tokens
/// further on. If that is unclear, reports pair-order or number.
enum class First : std::uint8_t { bearing, slope };
std::optional<First> pair_roles(Cursor& cursor, std::size_t behind, const PairWords& words);

/// `037 > 332`: a figure with three digits is no dip or plunge; reports it if so.
bool has_bearing_before_towards(Cursor& cursor);

/// Reports `37 N62E` where no order puts the slope first. `order` is a statement that would.
std::nullopt_t fail_slope_first(Cursor& cursor, std::size_t behind, std::string_view order);

/// The offer of `figure` without its sign.
Offer without_sign(const Cursor& cursor, Span figure);

}  // namespace lodebook::notebook
