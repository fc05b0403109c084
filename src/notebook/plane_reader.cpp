// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <lodebook/orientation/decimal.hpp>

#include "attitude_reader.hpp"
#include "dip_reader.hpp"
#include "pair_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

std::string_view name_of(PlaneOrder order) {
  switch (order) {
    case PlaneOrder::direction_dip:
      return "direction/dip";
    case PlaneOrder::dip_direction:
      return "dip/direction";
    case PlaneOrder::dip_strike:
      return "dip/strike";
    case PlaneOrder::strike_dip:
    case PlaneOrder::unstated:
      break;
  }
  return "strike/dip";
}

std::nullopt_t fail_without_dip(Cursor& cursor, Span strike) {
  const std::string_view typed = cursor.text(strike);
  Offers offers;
  if (cursor.is_word("vertical")) {
    const Span both{strike.offset, cursor.here().end() - strike.offset};
    offers = cursor.accepted({in_place(both, fmt::format("vertical {}", typed))});
  } else if ((cursor.is_word("at") || cursor.is_word("dips") || cursor.is_word("dipping")) &&
             cursor.is(Type::angle, 1)) {
    const Span word{strike.end(), cursor.peek(1)->offset - strike.end()};
    offers = cursor.accepted({in_place(word, " ")});
  } else if (point_at(cursor) && cursor.is(Type::angle, 1)) {
    const Span both{strike.offset, cursor.peek(1)->end() - strike.offset};
    offers =
        cursor.accepted({in_place(both, fmt::format("{} {} {}", typed, cursor.text(*cursor.peek(1)),
                                                    cursor.text(cursor.here())))});
  }
  return cursor.fail(
      cursor.here(),
      wording::incomplete(fmt::format("'{}'", typed), "dip",
                          "type the dip behind it, and the side that goes down", offers));
}

/// POINT NUMBER POINT without a dip behind it (`N 38 W`): either a strike without dip, or strike,
/// dip and side.
std::optional<PlaneAttitude> fail_point_number_point(Cursor& cursor) {
  const std::string_view first = cursor.text(*cursor.peek(0));
  const std::string_view figure = cursor.text(*cursor.peek(1));
  const std::string_view last = cursor.text(*cursor.peek(2));
  const bool spaced = cursor.peek(1)->spaced || cursor.peek(2)->spaced;
  const std::size_t start = cursor.position();
  cursor.skip(3);
  const Span span = cursor.since(start);
  if (!spaced) return fail_without_dip(cursor, span);
  const Offers offers =
      cursor.accepted({in_place(span, fmt::format("{}/{} {}", first, figure, last),
                                fmt::format("strike {}, dip {} to {}", first, figure, last))});
  return cursor.fail(
      span, wording::attitude_ambiguous(cursor.text(span),
                                        fmt::format("{}{}{}", first, figure, last), offers));
}

/// `N 38 W` without anything behind it that could be a dip.
bool is_bare_quadrant(const Cursor& cursor) {
  const auto letter = [&cursor](std::size_t ahead, std::string_view one, std::string_view other) {
    return cursor.is_word(one, ahead) || cursor.is_word(other, ahead);
  };
  const std::size_t behind = north_at(cursor, 3) == OwnNorth::none ? 3 : 4;
  return letter(0, "n", "s") && cursor.is(Type::angle, 1) && !cursor.peek(1)->has_sign &&
         letter(2, "e", "w") && !cursor.is_word("dip", behind) && !cursor.is(Type::angle, behind) &&
         !cursor.is(Type::slash, behind) && !cursor.is(Type::other, behind);
}

/// `37/242 NW`: no dip stands at the cursor, but the two figures are correct in the other order;
/// reports it if so.
bool is_swapped(Cursor& cursor, const Bearing& first, Span first_span) {
  const Token* second = cursor.peek();
  if (!second || second->type != Type::angle || second->fault != Token::Fault::none) return false;
  if (!three_digits(*second) || second->value <= 90 || first.digits > 2 || first.angle > 90)
    return false;
  const Span pair{first_span.offset, second->end() - first_span.offset};
  const Offers offers = cursor.accepted(
      {in_place(pair, fmt::format("{}/{}", cursor.text(*second), cursor.text(first_span)))});
  if (offers.empty()) return false;
  cursor.report(pair, wording::pair_order(cursor.text(pair), offers, {}));
  return true;
}

/// `dip 37`: the word before the figure.
bool is_dip_said(const Cursor& cursor, std::size_t ahead = 0) {
  return cursor.is_word("dip", ahead) && cursor.is(Type::angle, ahead + 1);
}

/// Strike, dip and what tells the side; or dip direction and dip, if such an order is in force.
std::optional<PlaneAttitude> read_strike_dip(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  // An order applies to two bare figures only.
  const bool is_bare = cursor.is(Type::angle);
  PlaneAttitude plane;
  const auto bearing = read_bearing(cursor, Behind::figure);
  if (!bearing) return std::nullopt;
  plane.bearing = *bearing;
  const Span strike_span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  cursor.skip_if(Type::slash);
  if (is_dip_said(cursor)) cursor.skip();
  if (cursor.at_end() || cursor.is(Type::word)) return fail_without_dip(cursor, strike_span);
  const Span dip_span = cursor.here();
  if (is_bare && is_swapped(cursor, plane.bearing, strike_span)) return std::nullopt;
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  plane.dip = *dip;
  if (is_bare && rules.planes == PlaneOrder::direction_dip && !point_at(cursor)) {
    plane.form = PlaneAttitude::Form::dip_direction;
    return plane;
  }
  return finish_strike_dip(cursor, plane, rules, strike_span, dip_span);
}

/// Dip, then `>`, a slash or nothing, then the dip direction.
std::optional<PlaneAttitude> read_dip_towards(Cursor& cursor) {
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  if (!cursor.skip_if(Type::slash) && is_towards(cursor)) cursor.skip();
  const auto direction = read_bearing(cursor, Behind::words);
  if (!direction) return std::nullopt;
  PlaneAttitude plane;
  plane.form = PlaneAttitude::Form::dip_direction;
  plane.dip = *dip;
  plane.bearing = *direction;
  return plane;
}

/// Dip, strike and what tells the side, if such an order is in force.
std::optional<PlaneAttitude> read_dip_strike(Cursor& cursor, const PairRules& rules) {
  const Span dip_span = cursor.here();
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  cursor.skip_if(Type::slash);
  const std::size_t start = cursor.position();
  PlaneAttitude plane;
  plane.dip_first = cursor.is(Type::angle);
  const auto strike = read_bearing(cursor, Behind::words);
  if (!strike) return std::nullopt;
  plane.dip = *dip;
  plane.bearing = *strike;
  return finish_strike_dip(cursor, plane, rules, cursor.since(start), dip_span);
}

std::optional<PlaneAttitude> read_lettered_plane(Cursor& cursor, const PairRules& rules) {
  // `N 95 E` has another fault: the angle.
  if (is_bare_quadrant(cursor) && cursor.peek(1)->value <= 90)
    return fail_point_number_point(cursor);
  return read_strike_dip(cursor, rules);
}

std::optional<PlaneAttitude> read_figured_plane(Cursor& cursor, const PairRules& rules) {
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (has_bearing_before_towards(cursor)) return std::nullopt;
    return read_dip_towards(cursor);
  }
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  if (is_dip_said(cursor, behind) || is_pair_with_north(cursor))
    return read_strike_dip(cursor, rules);
  const bool strike_is_last = rules.planes == PlaneOrder::dip_strike;
  const bool dip_is_first = rules.planes == PlaneOrder::dip_direction || strike_is_last;
  const auto read_dip_first = [&] {
    return strike_is_last ? read_dip_strike(cursor, rules) : read_dip_towards(cursor);
  };
  if (cursor.is(Type::angle, behind) || cursor.is(Type::other, behind)) {
    const bool stated = rules.planes != PlaneOrder::unstated;
    constexpr std::array<std::string_view, 3> orders = {"order direction/dip",
                                                        "order dip/direction", "order dip/strike"};
    const auto roles =
        pair_roles(cursor, behind,
                   {stated ? name_of(rules.planes) : std::string_view(), orders, dip_is_first,
                    strike_is_last ? Side::of_either : Side::of_strike_dip});
    if (!roles) return std::nullopt;
    return *roles == First::slope ? read_dip_first() : read_strike_dip(cursor, rules);
  }
  // A lone figure, or a figure and letters.
  if (!figure_at(cursor)) return std::nullopt;
  if (starts_lettered_bearing(cursor, behind)) {
    const bool quadrant = cursor.is(Type::angle, behind + 1);
    if (quadrant && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    // A single point behind a dip is not a strike.
    if (dip_is_first && (quadrant || !strike_is_last)) return read_dip_first();
    if (quadrant) return fail_slope_first(cursor, behind, "order dip/direction");
  }
  cursor.skip();
  if (three_digits(first)) return fail_without_dip(cursor, first.span());
  Offers offers;
  if (cursor.is_word("towards") || cursor.is_word("toward")) {
    offers = cursor.accepted({in_place(cursor.here(), ">")});
  } else if (point_at(cursor)) {
    offers = cursor.accepted({in_place({first.end(), cursor.here().offset - first.end()}, " > ")});
  }
  return cursor.fail(
      first.span(), wording::incomplete(
                        fmt::format("'{}'", cursor.text(first)), "strike or dip direction",
                        "type the strike before it, or > and the dip direction behind it", offers));
}

/// `strike N66W`, and what may stand behind it.
std::optional<PlaneAttitude> read_said_strike(Cursor& cursor, const PairRules& rules) {
  cursor.skip();
  const std::size_t start = cursor.position();
  const auto strike = read_bearing(cursor, Behind::figure);
  if (!strike) return std::nullopt;
  const Span strike_span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  PlaneAttitude plane;
  plane.bearing = *strike;
  const bool goes_on = cursor.skip_if(Type::slash) || cursor.is_word("dip");
  if (cursor.is_word("dip")) cursor.skip();
  if (!cursor.is(Type::angle) && !cursor.is(Type::other)) {
    if (goes_on) return fail_without_dip(cursor, strike_span);
    plane.form = PlaneAttitude::Form::strike;
    return plane;
  }
  const Span dip_span = cursor.here();
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  plane.dip = *dip;
  return finish_strike_dip(cursor, plane, rules, strike_span, dip_span);
}

/// `dip 37NW strike N62E`.
std::optional<PlaneAttitude> read_dip_before_strike(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  const Span dip_span = cursor.here();
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  const auto side = point_at(cursor);
  if (side) cursor.skip();
  cursor.skip();
  const std::size_t behind = cursor.position();
  PlaneAttitude plane;
  const auto strike = read_bearing(cursor, Behind::words);
  if (!strike) return std::nullopt;
  plane.dip = *dip;
  plane.bearing = *strike;
  const Span strike_span = cursor.since(behind);
  if (!side) return finish_strike_dip(cursor, plane, rules, strike_span, dip_span);
  plane.side = side;
  if (plane.plane()) return plane;
  return cursor.fail(cursor.since(start),
                     wording::dip_side_impossible(cursor.text(strike_span), name_of(*side), {}));
}

/// `dip 13`, and what may stand behind it.
std::optional<PlaneAttitude> read_said_dip(Cursor& cursor, const PairRules& rules) {
  cursor.skip();
  if (!figure_at(cursor)) return std::nullopt;
  const bool has_side = point_at(cursor, 1) && cursor.is_word("strike", 2);
  if (has_side || cursor.is_word("strike", 1)) return read_dip_before_strike(cursor, rules);
  const bool is_alone = !cursor.peek(1) || (cursor.is(Type::word, 1) && !is_towards(cursor, 1) &&
                                            !starts_lettered_bearing(cursor, 1));
  if (!is_alone) return read_figured_plane(cursor, rules);
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  PlaneAttitude plane;
  plane.dip = *dip;
  plane.form = dip->degrees() == 0 ? PlaneAttitude::Form::horizontal : PlaneAttitude::Form::dip;
  return plane;
}

}  // namespace

std::optional<PlaneAttitude> read_plane_attitude(Cursor& cursor, const PairRules& rules) {
  PlaneAttitude plane;
  if (cursor.is_word("horizontal")) {
    cursor.skip();
    plane.form = PlaneAttitude::Form::horizontal;
    return plane;
  }
  if (cursor.is_word("vertical")) {
    cursor.skip();
    if (cursor.at_end())
      return cursor.fail(cursor.here(),
                         wording::incomplete("the plane", "strike", "type the strike behind it"));
    const auto strike = read_bearing(cursor, Behind::words);
    if (!strike) return std::nullopt;
    plane.form = PlaneAttitude::Form::vertical;
    plane.bearing = *strike;
    plane.dip.value = 90;
    return plane;
  }
  if (cursor.is_word("strike")) return read_said_strike(cursor, rules);
  if (cursor.is_word("dip")) return read_said_dip(cursor, rules);
  if (cursor.is(Type::angle)) return read_figured_plane(cursor, rules);
  if (cursor.is(Type::word)) return read_lettered_plane(cursor, rules);
  figure_at(cursor);
  return std::nullopt;
}

}  // namespace lodebook::notebook
