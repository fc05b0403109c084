// SPDX-License-Identifier: MIT
#include "dip_reader.hpp"

#include <fmt/format.h>

#include <lodebook/orientation/decimal.hpp>

#include "pair_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// Offers for a dip over 90 or under 0. The cursor is behind it.
Offers dip_offers(const Cursor& cursor, Span span, double degrees) {
  if (degrees < 0) return cursor.accepted({without_sign(cursor, span)});
  if (degrees > 180) return {};
  // A bed that is turned past the vertical dips to the other side.
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

/// One of the two dip directions of a strike, as the nearest of the eight main points.
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

/// Offers for a strike and a side that do not fit.
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

/// Offers if something other than a side follows strike and dip but may mean one: a point behind a
/// mark or word (`37 / NW`, `37 to NW`), or the dip direction (`242/37/332`). `pair` ends before
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

/// The span of strike and dip, in either order.
Span pair_of(Span strike, Span dip) {
  const std::uint32_t begin = std::min(strike.offset, dip.offset);
  return {begin, std::max(strike.end(), dip.end()) - begin};
}

/// Reports strike and dip without anything that says to which side the plane dips.
std::nullopt_t fail_without_side(Cursor& cursor, const Bearing& strike, const PairRules& rules,
                                 Span strike_span, Span dip_span) {
  const Span pair = pair_of(strike_span, dip_span);
  // Letters of points that are no point (`NN`) are a mistyped side.
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
  // Two bare figures may also be dip direction and dip.
  const bool bare = strike.notation == Notation::azimuth && rules.planes == PlaneOrder::unstated;
  if (bare) settings.insert(settings.begin(), "order direction/dip");
  return cursor.fail(
      pair, wording::dip_side_missing(cursor.text(pair), cursor.accepted(std::move(offers)),
                                      cursor.accepted_above(std::move(settings))));
}

}  // namespace

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

}  // namespace lodebook::notebook
