// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <lodebook/orientation/decimal.hpp>

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
    case PlaneOrder::dip_strike:
      return "dip/strike";
    case PlaneOrder::strike_dip:
    case PlaneOrder::unstated:
      break;
  }
  return "strike/dip";
}

/// What a dip over 90 or under 0 may have been meant as; the cursor stands behind it.
Offers dip_offers(const Cursor& cursor, Span span, double degrees) {
  if (degrees < 0) return cursor.accepted({without_sign(cursor, span)});
  if (degrees > 180) return {};
  // A bed turned past the vertical dips to the other side.
  Cursor ahead = cursor;
  if (is_towards(ahead)) ahead.skip();
  const bool towards = ahead.position() > cursor.position();
  if (!towards && !point_at(ahead)) return {};
  const Fix side = opposite_at(ahead);
  if (side.text.empty()) return {};
  ahead.skip_to(side.span.end());
  const Span both{span.offset, side.span.end() - span.offset};
  return cursor.accepted(
      {in_place(both, fmt::format("{}{}{}{}", trimmed_text(180 - degrees, angle_decimals),
                                  towards ? " > " : "", side.text,
                                  ahead.is_word("overturned") ? "" : " overturned"))});
}

/// A dip: a figure of 0 to 90 degrees, or percent.
std::optional<Slope> read_dip(Cursor& cursor) {
  const Span span = cursor.here();
  const auto dip = read_slope(cursor);
  if (!dip) return std::nullopt;
  const double degrees = dip->degrees();
  if (degrees < 0 || degrees > 90) {
    return cursor.fail(
        span, wording::dip_range(cursor.text(span), degrees, dip_offers(cursor, span, degrees)));
  }
  return dip;
}

/// The two dip directions of a strike, as the nearest eighth points.
Point dip_point(const Bearing& strike, double turn) {
  return nearest_eighth(wrap_degrees(strike.azimuth().degrees() + turn));
}

bool side_possible(const Bearing& strike, Point side) {
  const auto direction = *Azimuth<north::dial>::from_degrees(degrees_of(side));
  return Plane<north::dial>::from_strike_and_side(strike.azimuth(), *Dip::from_degrees(45),
                                                  direction)
      .has_value();
}

bool is_of_letters(std::string_view word, std::string_view letters) {
  return word.find_first_not_of(letters) == std::string_view::npos;
}

/// What a strike and a side that do not fit may have been meant as.
Offers side_offers(const Cursor& cursor, const Bearing& strike, Span strike_span, Span side_span) {
  Offers offers;
  for (const double turn : {90.0, -90.0})
    offers.push_back(in_place(side_span, std::string(name_of(dip_point(strike, turn)))));
  Bearing mirrored = strike;
  mirrored.side = strike.side == QuadrantBearing::Side::east ? QuadrantBearing::Side::west
                                                             : QuadrantBearing::Side::east;
  const auto side = point_named(cursor.text(side_span));
  if (strike.notation == Notation::quadrant && side && side_possible(mirrored, *side)) {
    const char pole = strike.pole == QuadrantBearing::Pole::north ? 'N' : 'S';
    const char other = mirrored.side == QuadrantBearing::Side::east ? 'E' : 'W';
    offers.push_back(
        in_place(strike_span,
                 fmt::format("{}{}{}", pole, trimmed_text(strike.angle, angle_decimals), other)));
  }
  return cursor.accepted(std::move(offers));
}

/// What stands behind strike and dip in place of a side may say it all the same: behind a mark or a
/// word (`37 / NW`, `37 to NW`), or as the dip direction itself (`242/37/332`). `pair` ends before
/// it.
Offers tail_offers(const Cursor& cursor, Span pair, Span dip) {
  const bool is_mark = cursor.is(Type::slash) || is_towards(cursor);
  Cursor ahead = cursor;
  if (is_mark) ahead.skip();
  if (ahead.at_end()) return {};
  const std::uint32_t begin = ahead.here().offset;
  Offers offers;
  if (is_mark && point_at(ahead)) offers.push_back(in_place({pair.end(), begin - pair.end()}, " "));
  if (ahead.is(Type::angle)) {
    const Span figure = ahead.here();
    if (three_digits(*ahead.peek())) {
      offers.push_back(in_place({pair.offset, figure.end() - pair.offset},
                                fmt::format("{} > {}", cursor.text(dip), cursor.text(figure))));
    } else if (!is_mark) {
      offers.push_back(in_place({pair.end(), begin - pair.end()}, ""));
    }
  }
  return cursor.accepted(std::move(offers));
}

/// Strike and dip, whichever stands first.
Span pair_of(Span strike, Span dip) {
  const std::uint32_t begin = std::min(strike.offset, dip.offset);
  return {begin, std::max(strike.end(), dip.end()) - begin};
}

/// Strike and dip, and nothing that says which side goes down.
std::nullopt_t fail_without_side(Cursor& cursor, const Bearing& strike, const PairRules& rules,
                                 Span strike_span, Span dip_span) {
  const Span pair = pair_of(strike_span, dip_span);
  // Letters that name no point (`NN`) are a side mistyped.
  const bool is_side = cursor.is(Type::word) && is_of_letters(cursor.text(cursor.here()), "NESW");
  const std::uint32_t end = is_side ? cursor.here().end() : pair.end();
  const Span replaced{pair.offset, end - pair.offset};
  Offers offers;
  for (const double turn : {90.0, -90.0}) {
    offers.push_back(in_place(
        replaced, fmt::format("{} {}", cursor.text(pair), name_of(dip_point(strike, turn)))));
  }
  if (Offers tail = tail_offers(cursor, pair, dip_span); !tail.empty())
    return cursor.fail(pair, wording::dip_side_missing(cursor.text(pair), tail, {}));
  std::vector<std::string> settings = {"rule right", "rule left"};
  // Two bare figures may be a dip direction and a dip just as well.
  const bool bare = strike.notation == Notation::azimuth && rules.planes == PlaneOrder::unstated;
  if (bare) settings.insert(settings.begin(), "order direction/dip");
  return cursor.fail(
      pair, wording::dip_side_missing(cursor.text(pair), cursor.accepted(std::move(offers)),
                                      cursor.accepted_above(std::move(settings))));
}

/// Behind strike and dip: the side, or else the rule. `strike_text` is for advice.
std::optional<PlaneAttitude> finish_strike_dip(Cursor& cursor, PlaneAttitude plane,
                                               const PairRules& rules, Span strike_span,
                                               Span dip_span) {
  const double dip = plane.dip.degrees();
  const std::string_view strike_text = cursor.text(strike_span);
  const bool is_bearing = cursor.is(Type::angle, 1) && !cursor.peek(1)->spaced;
  if (const auto side = point_at(cursor); side && is_bearing) {
    const Fix direction = opposite_at(cursor);
    const Span whole = pair_of(pair_of(strike_span, dip_span), direction.span);
    const Offers offers = cursor.accepted({in_place(
        whole, fmt::format("{} > {}", cursor.text(dip_span), cursor.text(direction.span)))});
    return cursor.fail(direction.span,
                       wording::side_is_bearing(cursor.text(direction.span), offers));
  }
  if (const auto side = point_at(cursor)) {
    const Span span = cursor.here();
    cursor.skip();
    plane.form = PlaneAttitude::Form::strike_and_side;
    plane.side = side;
    if (dip > 0 && !side_possible(plane.bearing, *side)) {
      return cursor.fail(span, wording::dip_side_impossible(
                                   strike_text, cursor.text(span),
                                   side_offers(cursor, plane.bearing, strike_span, span)));
    }
    return plane;
  }
  if (dip == 0 || dip == 90) {
    plane.form = PlaneAttitude::Form::strike_and_side;
    return plane;
  }
  if (!rules.rule) return fail_without_side(cursor, plane.bearing, rules, strike_span, dip_span);
  plane.form = PlaneAttitude::Form::strike_by_rule;
  plane.rule = *rules.rule;
  return plane;
}

std::nullopt_t fail_without_dip(Cursor& cursor, Span strike) {
  const std::string_view typed = cursor.text(strike);
  Offers offers;
  if (cursor.is_word("vertical")) {
    const Span both{strike.offset, cursor.here().end() - strike.offset};
    offers = cursor.accepted({in_place(both, fmt::format("vertical {}", typed))});
  } else if ((cursor.is_word("at") || cursor.is_word("dip") || cursor.is_word("dips") ||
              cursor.is_word("dipping")) &&
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
  if (!spaced) return fail_without_dip(cursor, span);
  const Offers offers =
      cursor.accepted({in_place(span, fmt::format("{}/{} {}", first, figure, last),
                                fmt::format("strike {}, dip {} to {}", first, figure, last))});
  return cursor.fail(
      span, wording::attitude_ambiguous(cursor.text(span),
                                        fmt::format("{}{}{}", first, figure, last), offers));
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

/// `37/242 NW`: no dip stands at the cursor, but the two are right the other way round; reports it.
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

/// Strike, dip and what tells the side; or, with such an order in force, dip direction and dip.
std::optional<PlaneAttitude> read_strike_dip(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  // An order is for two bare figures.
  const bool is_bare = cursor.is(Type::angle);
  PlaneAttitude plane;
  const auto bearing = read_bearing(cursor, Behind::figure);
  if (!bearing) return std::nullopt;
  plane.bearing = *bearing;
  const Span strike_span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  cursor.skip_if(Type::slash);
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

/// With such an order in force: dip, strike and what tells the side.
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
  // 95 in `N 95 E` is a fault of its own.
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
    // A lone point behind a dip is no strike.
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
  if (cursor.is(Type::angle)) return read_figured_plane(cursor, rules);
  if (cursor.is(Type::word)) return read_lettered_plane(cursor, rules);
  figure_at(cursor);
  return std::nullopt;
}

}  // namespace lodebook::notebook
