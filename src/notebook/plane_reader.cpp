// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "attitude_reader.hpp"
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
    case PlaneOrder::strike_dip:
    case PlaneOrder::unstated:
      break;
  }
  return "strike/dip";
}

/// A dip: a figure of 0 to 90 degrees, or percent.
std::optional<Slope> read_dip(Cursor& cursor) {
  const Span span = cursor.here();
  const auto dip = read_slope(cursor);
  if (!dip) return std::nullopt;
  if (dip->degrees() < 0 || dip->degrees() > 90)
    return cursor.fail(span, wording::dip_range(cursor.text(span), dip->degrees()));
  return dip;
}

/// The two dip directions of a strike, as the nearest eighth points.
Point dip_point(const Bearing& strike, double turn) {
  return nearest_eighth(wrap_degrees(strike.azimuth().degrees() + turn));
}

/// The same bearing with east for west, for advice; empty where the notation has none.
std::string mirrored(const Bearing& bearing) {
  if (bearing.notation != Notation::quadrant) return {};
  return fmt::format("{}{:g}{}", bearing.pole == QuadrantBearing::Pole::north ? 'N' : 'S',
                     bearing.angle, bearing.side == QuadrantBearing::Side::east ? 'W' : 'E');
}

bool side_possible(const Bearing& strike, Point side) {
  const auto direction = *Azimuth<north::dial>::from_degrees(degrees_of(side));
  return Plane<north::dial>::from_strike_and_side(strike.azimuth(), *Dip::from_degrees(45),
                                                  direction)
      .has_value();
}

/// Behind strike and dip: the side, or else the rule. `strike_text` is for advice.
std::optional<PlaneAttitude> finish_strike_dip(Cursor& cursor, PlaneAttitude plane,
                                               const PairRules& rules, Span strike_span,
                                               Span dip_span) {
  const double dip = plane.dip.degrees();
  const std::string_view strike_text = cursor.text(strike_span);
  if (const auto side = point_at(cursor)) {
    const Span span = cursor.here();
    cursor.skip();
    plane.form = PlaneAttitude::Form::strike_and_side;
    plane.side = side;
    if (dip > 0 && !side_possible(plane.bearing, *side)) {
      Bearing other = plane.bearing;
      other.side = other.side == QuadrantBearing::Side::east ? QuadrantBearing::Side::west
                                                             : QuadrantBearing::Side::east;
      const bool explains = other.notation == Notation::quadrant && side_possible(other, *side);
      return cursor.fail(span, wording::dip_side_impossible(
                                   strike_text, cursor.text(span), dip_point(plane.bearing, 90),
                                   dip_point(plane.bearing, -90),
                                   explains ? mirrored(plane.bearing) : std::string()));
    }
    return plane;
  }
  if (dip == 0 || dip == 90) {
    plane.form = PlaneAttitude::Form::strike_and_side;
    return plane;
  }
  if (!rules.rule) {
    return cursor.fail(
        {strike_span.offset, dip_span.end() - strike_span.offset},
        wording::dip_side_missing(strike_text, cursor.text(dip_span), dip_point(plane.bearing, 90),
                                  dip_point(plane.bearing, -90)));
  }
  plane.form = PlaneAttitude::Form::strike_by_rule;
  plane.rule = *rules.rule;
  return plane;
}

std::nullopt_t fail_without_dip(Cursor& cursor, std::string_view strike) {
  return cursor.fail(
      cursor.here(),
      wording::incomplete(fmt::format("'{}'", strike), "dip",
                          cursor.is_word("vertical") ? fmt::format("vertical {}", strike)
                                                     : fmt::format("{} 37 and the side", strike)));
}

/// POINT NUMBER POINT with nothing behind that could be the dip: a strike and its dip are missing,
/// or a strike, a dip and a side.
std::optional<PlaneAttitude> fail_point_number_point(Cursor& cursor) {
  const std::string_view first = cursor.text(*cursor.peek(0));
  const std::string_view figure = cursor.text(*cursor.peek(1));
  const std::string_view last = cursor.text(*cursor.peek(2));
  const bool spaced = cursor.peek(1)->spaced || cursor.peek(2)->spaced;
  const std::size_t start = cursor.position();
  cursor.skip(3);
  const Span span = cursor.since(start);
  if (spaced)
    return cursor.fail(span, wording::attitude_ambiguous(cursor.text(span), first, figure, last));
  return fail_without_dip(cursor, cursor.text(span));
}

/// `N 38 W` and nothing that could be a dip behind it.
bool is_bare_quadrant(const Cursor& cursor) {
  const auto letter = [&cursor](std::size_t ahead, std::string_view one, std::string_view other) {
    return cursor.is_word(one, ahead) || cursor.is_word(other, ahead);
  };
  return letter(0, "n", "s") && cursor.is(Type::angle, 1) && !cursor.peek(1)->has_sign &&
         letter(2, "e", "w") && !cursor.is(Type::angle, 3) && !cursor.is(Type::slash, 3) &&
         !cursor.is(Type::other, 3);
}

/// Strike, dip and what tells the side; or, with such an order in force, dip direction and dip.
std::optional<PlaneAttitude> read_strike_dip(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  PlaneAttitude plane;
  const auto bearing = read_bearing(cursor, Behind::figure);
  if (!bearing) return std::nullopt;
  plane.bearing = *bearing;
  const Span strike_span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  cursor.skip_if(Type::slash);
  if (cursor.at_end() || cursor.is(Type::word))
    return fail_without_dip(cursor, cursor.text(strike_span));
  const Span dip_span = cursor.here();
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  plane.dip = *dip;
  const bool has_side = point_at(cursor).has_value();
  if (!has_side && rules.planes == PlaneOrder::dip_direction) {
    const Span pair = cursor.since(start);
    return cursor.fail(pair, wording::pair_against_order(cursor.text(pair), name_of(rules.planes)));
  }
  if (!has_side && rules.planes == PlaneOrder::direction_dip) {
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

std::optional<PlaneAttitude> read_lettered_plane(Cursor& cursor, const PairRules& rules) {
  // 95 in `N 95 E` is a fault of its own.
  if (is_bare_quadrant(cursor) && cursor.peek(1)->value <= 90)
    return fail_point_number_point(cursor);
  return read_strike_dip(cursor, rules);
}

std::optional<PlaneAttitude> read_figured_plane(Cursor& cursor, const PairRules& rules) {
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (has_bearing_before_towards(cursor, "dip first, then > and the dip direction"))
      return std::nullopt;
    return read_dip_towards(cursor);
  }
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  const bool dip_is_first = rules.planes == PlaneOrder::dip_direction;
  if (cursor.is(Type::angle, behind) || cursor.is(Type::other, behind)) {
    const bool stated = rules.planes != PlaneOrder::unstated;
    const auto roles =
        pair_roles(cursor, behind,
                   {"strike/dip", "dip/direction",
                    stated ? name_of(rules.planes) : std::string_view(), dip_is_first, true});
    if (!roles) return std::nullopt;
    return *roles == First::slope ? read_dip_towards(cursor) : read_strike_dip(cursor, rules);
  }
  // A lone figure, or a figure and letters.
  if (!figure_at(cursor)) return std::nullopt;
  if (starts_lettered_bearing(cursor, behind)) {
    const bool quadrant = cursor.is(Type::angle, behind + 1);
    if (quadrant && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    if (dip_is_first) return read_dip_towards(cursor);
    if (quadrant) return fail_slope_first(cursor, behind, "dip/direction");
  }
  const std::string_view typed = cursor.text(first);
  cursor.skip();
  if (three_digits(first)) {
    return cursor.fail(cursor.here(),
                       wording::incomplete(fmt::format("'{}'", typed), "dip",
                                           fmt::format("{}/37 and the side", typed)));
  }
  return cursor.fail(first.span(),
                     wording::incomplete(fmt::format("'{}'", typed), "strike",
                                         fmt::format("{} > 332, or N62E {} NW", typed, typed)));
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
                         wording::incomplete("the plane", "strike", "vertical N14E"));
    const auto strike = read_bearing(cursor, Behind::words);
    if (!strike) return std::nullopt;
    plane.form = PlaneAttitude::Form::vertical;
    plane.bearing = *strike;
    plane.dip.value = 90;
    return plane;
  }
  if (cursor.is(Type::angle)) return read_figured_plane(cursor, rules);
  if (cursor.is(Type::word)) return read_lettered_plane(cursor, rules);
  figure_at(cursor);
  return std::nullopt;
}

}  // namespace lodebook::notebook
