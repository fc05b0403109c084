// SPDX-License-Identifier: MIT
// Two figures, or a figure and a bearing: which is the bearing? The same for planes and lines.
#pragma once

#include "bearing_reader.hpp"

namespace lodebook::notebook {

/// `>` or `to`.
bool is_towards(const Cursor& cursor, std::size_t ahead = 0);

/// Three digits before the point make a bearing, one or two a dip or plunge (common practice).
bool three_digits(const Token& token);

/// `20W`: the end of a quadrant bearing.
bool lacks_first_letter(const Cursor& cursor);

/// A figure after a bearing must not touch it (`N62E37`); reports it if it does. `start` is the
/// bearing's first token.
bool touches(Cursor& cursor, std::size_t start);

/// What a point of the rose behind two figures makes of them.
enum class Side : std::uint8_t {
  none,           ///< it does not belong there
  of_strike_dip,  ///< strike, dip and side, whatever their order otherwise
  of_either,      ///< dip and strike in either order, if their digits tell
};

/// How pairs of a plane or a line may be written.
struct PairWords {
  std::string_view stated;  ///< the order in force; empty if none
  /// The orders that may explain a pair, as statements.
  std::span<const std::string_view> orders;
  bool slope_is_first = false;  ///< in the order in force
  Side side = Side::none;
};

/// Which of the two figures at the cursor, the second `behind` tokens on, is the bearing;
/// pair-order or number where that cannot be told.
enum class First : std::uint8_t { bearing, slope };
std::optional<First> pair_roles(Cursor& cursor, std::size_t behind, const PairWords& words);

/// `037 > 332`: what has three digits is no dip or plunge; reports it if so.
bool has_bearing_before_towards(Cursor& cursor);

/// `37 N62E` with no order that says so; `order` is one that would.
std::nullopt_t fail_slope_first(Cursor& cursor, std::size_t behind, std::string_view order);

/// A figure without its sign.
Offer without_sign(const Cursor& cursor, Span figure);

}  // namespace lodebook::notebook
