// SPDX-License-Identifier: MIT
#include "attitude_reader.hpp"

#include <fmt/format.h>

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// `>` or `to`.
bool is_towards(const Cursor& cursor, std::size_t ahead = 0) {
  return cursor.is(Type::greater, ahead) || cursor.is_word("to", ahead);
}

bool three_digits(const Token& token) {
  return token.digits >= 3 && !token.percent;
}

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

/// The text from token `first` up to the cursor and the `more` tokens behind it.
Span with_next(const Cursor& cursor, std::size_t first, std::size_t more) {
  Cursor end = cursor;
  end.skip(more);
  return end.since(first);
}

/// `20W`: the end of a quadrant bearing.
bool lacks_first_letter(const Cursor& cursor) {
  return (cursor.is_word("e", 1) || cursor.is_word("w", 1)) && !cursor.peek(1)->spaced;
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

std::optional<Slope> read_plunge(Cursor& cursor) {
  const Span span = cursor.here();
  const auto plunge = read_slope(cursor);
  if (!plunge) return std::nullopt;
  const double degrees = plunge->degrees();
  if (degrees < -90 || degrees > 90)
    return cursor.fail(span, wording::plunge_range(cursor.text(span)));
  if (degrees < 0) cursor.report(span, wording::other_end(cursor.text(span)));
  return plunge;
}

/// A figure behind a bearing must not touch it: `N85E32`.
bool touches(Cursor& cursor, std::size_t start) {
  const Token* token = cursor.peek();
  if (!token || token->type != Type::angle || token->spaced || cursor.position() == start)
    return false;
  Cursor before = cursor;
  const Span whole = with_next(cursor, start, 1);
  const Span bearing = before.since(start);
  const std::string_view text = cursor.text(bearing);
  if (text.empty() || text.back() == '/' || text.back() == '>') return false;
  cursor.report(token->span(),
                wording::number(cursor.text(whole),
                                fmt::format("a space: {} {}", text, cursor.text(*token))));
  return true;
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
                                                     : fmt::format("{} 32 and the side", strike)));
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

/// `N 45 W` and nothing that could be a dip behind it.
bool is_bare_quadrant(const Cursor& cursor) {
  const auto letter = [&cursor](std::size_t ahead, std::string_view one, std::string_view other) {
    return cursor.is_word(one, ahead) || cursor.is_word(other, ahead);
  };
  return letter(0, "n", "s") && cursor.is(Type::angle, 1) && !cursor.peek(1)->has_sign &&
         letter(2, "e", "w") && !cursor.is(Type::angle, 3) && !cursor.is(Type::slash, 3) &&
         !cursor.is(Type::other, 3);
}

std::optional<PlaneAttitude> read_lettered_plane(Cursor& cursor, const PairRules& rules) {
  if (is_bare_quadrant(cursor)) {
    // 95 in `N 95 E` is a fault of its own.
    if (cursor.peek(1)->value <= 90) return fail_point_number_point(cursor);
  }
  const std::size_t start = cursor.position();
  PlaneAttitude plane;
  const auto bearing = read_bearing(cursor, Behind::figure);
  if (!bearing) return std::nullopt;
  plane.bearing = *bearing;
  const Span strike_span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  cursor.skip_if(Type::slash);
  if (cursor.at_end() || cursor.is(Type::word)) {
    return fail_without_dip(cursor, cursor.text(strike_span));
  }
  const Span dip_span = cursor.here();
  const auto dip = read_dip(cursor);
  if (!dip) return std::nullopt;
  plane.dip = *dip;
  if (!point_at(cursor) && rules.planes == PlaneOrder::dip_direction) {
    const Span pair = cursor.since(start);
    return cursor.fail(pair, wording::pair_against_order(cursor.text(pair), name_of(rules.planes)));
  }
  if (!point_at(cursor) && rules.planes == PlaneOrder::direction_dip) {
    plane.form = PlaneAttitude::Form::dip_direction;
    return plane;
  }
  return finish_strike_dip(cursor, plane, rules, strike_span, dip_span);
}

/// The dip direction behind a dip.
std::optional<PlaneAttitude> read_dip_direction(Cursor& cursor, const Slope& dip) {
  const auto direction = read_bearing(cursor, Behind::words);
  if (!direction) return std::nullopt;
  PlaneAttitude plane;
  plane.form = PlaneAttitude::Form::dip_direction;
  plane.dip = dip;
  plane.bearing = *direction;
  return plane;
}

std::string pair_advice(const Token& first, const Token& second, std::string_view a,
                        std::string_view b, std::string_view in_place_of_strike,
                        std::string_view order) {
  if (three_digits(first) && three_digits(second))
    return "one or two digits make a dip or plunge, three a bearing";
  if (three_digits(second) || first.percent)
    return fmt::format("{} > {}, or 'order {}' above", a, b, order);
  return fmt::format("three digits for the bearing: {:0>3}/{}, or a line 'order {}' above", a, b,
                     in_place_of_strike);
}

/// Two bare figures: which is the bearing?
enum class First : std::uint8_t { bearing, slope };
struct PairWords {
  std::string_view bearing_first;
  std::string_view slope_first;
  std::string_view stated;  ///< the order in force; empty if none
  bool slope_is_first = false;
};
std::optional<First> pair_roles(Cursor& cursor, const Token& first, const Token& second, Span span,
                                const PairWords& words) {
  const std::string_view typed = cursor.text(span);
  if (words.stated.empty()) {
    if (three_digits(first) && !three_digits(second)) return First::bearing;
    return cursor.fail(
        span, wording::pair_order(
                  typed, pair_advice(first, second, cursor.text(first), cursor.text(second),
                                     words.bearing_first, words.slope_first)));
  }
  const Token& slope = words.slope_is_first ? first : second;
  const Token& bearing = words.slope_is_first ? second : first;
  if (three_digits(slope) || bearing.percent)
    return cursor.fail(span, wording::pair_against_order(typed, words.stated));
  return words.slope_is_first ? First::slope : First::bearing;
}

std::optional<PlaneAttitude> read_figured_plane(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (three_digits(first)) {
      const Span span = with_next(cursor, start, 3);
      return cursor.fail(
          span, wording::pair_order(cursor.text(span), "dip first, then > and the dip direction"));
    }
    const auto dip = read_dip(cursor);
    if (!dip) return std::nullopt;
    cursor.skip();
    return read_dip_direction(cursor, *dip);
  }
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  if (cursor.is(Type::angle, behind) || cursor.is(Type::other, behind)) {
    Cursor ahead = cursor;
    ahead.skip(behind);
    const Token* second = figure_at(ahead);
    if (!second) return std::nullopt;
    ahead.skip();
    PlaneAttitude plane;
    const bool has_side = point_at(ahead).has_value();
    if (!has_side) {
      const bool stated = rules.planes != PlaneOrder::unstated;
      const auto roles = pair_roles(
          cursor, first, *second, ahead.since(start),
          {"strike/dip", "dip/direction", stated ? name_of(rules.planes) : std::string_view(),
           rules.planes == PlaneOrder::dip_direction});
      if (!roles) return std::nullopt;
      if (*roles == First::slope) {
        const auto dip = read_dip(cursor);
        if (!dip) return std::nullopt;
        cursor.skip_if(Type::slash);
        return read_dip_direction(cursor, *dip);
      }
    }
    const auto bearing = read_bearing(cursor, Behind::figure);
    if (!bearing) return std::nullopt;
    plane.bearing = *bearing;
    const Span strike_span = cursor.since(start);
    cursor.skip_if(Type::slash);
    const Span dip_span = cursor.here();
    const auto dip = read_dip(cursor);
    if (!dip) return std::nullopt;
    plane.dip = *dip;
    if (!has_side && rules.planes == PlaneOrder::direction_dip) {
      plane.form = PlaneAttitude::Form::dip_direction;
      return plane;
    }
    return finish_strike_dip(cursor, plane, rules, strike_span, dip_span);
  }
  // A lone figure, or a figure and letters.
  if (!figure_at(cursor)) return std::nullopt;
  const bool quadrant = cursor.is(Type::angle, behind + 1);
  if (starts_lettered_bearing(cursor, behind)) {
    if (quadrant && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    if (rules.planes == PlaneOrder::dip_direction) {
      const auto dip = read_dip(cursor);
      if (!dip) return std::nullopt;
      cursor.skip_if(Type::slash);
      return read_dip_direction(cursor, *dip);
    }
    if (quadrant) {
      const std::string_view a = cursor.text(first);
      cursor.skip(behind);
      const Span direction = cursor.rest();
      return cursor.fail(
          {first.offset, direction.end() - first.offset},
          wording::pair_order(
              cursor.text({first.offset, direction.end() - first.offset}),
              fmt::format("{} > {}, or 'order dip/direction' above", a, cursor.text(direction))));
    }
  }
  const bool strike = three_digits(first);
  const std::string_view typed = cursor.text(first);
  cursor.skip();
  return cursor.fail(
      strike ? cursor.here() : first.span(),
      wording::incomplete(fmt::format("'{}'", typed), strike ? "dip" : "strike",
                          strike ? fmt::format("{}/32 and the side", typed)
                                 : fmt::format("{} > 355, or N85E {} N", typed, typed)));
}

std::optional<LineAttitude> read_rake(Cursor& cursor) {
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(cursor.here(),
                       wording::incomplete("the rake", "angle", "rake 40 from N85E"));
  const Span span = cursor.here();
  LineAttitude line;
  line.form = LineAttitude::Form::rake;
  const auto rake = read_slope(cursor);
  if (!rake) return std::nullopt;
  if (rake->percent)
    return cursor.fail(span, wording::number(cursor.text(span), "a rake has no %"));
  if (rake->value < 0 || rake->value > 90)
    return cursor.fail(span, wording::rake_range(cursor.text(span)));
  line.slope = *rake;
  if (!cursor.is_word("from")) {
    return cursor.fail(cursor.here(),
                       wording::incomplete("the rake", "end of the strike",
                                           fmt::format("rake {} from N85E", cursor.text(span))));
  }
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(cursor.here(), wording::incomplete("the rake", "end of the strike", ""));
  const auto bearing = read_bearing(cursor, Behind::words);
  if (!bearing) return std::nullopt;
  line.bearing = *bearing;
  return line;
}

std::optional<LineAttitude> finish_trend(Cursor& cursor, const Slope& plunge,
                                         LineAttitude::Form form) {
  const auto trend = read_bearing(cursor, Behind::words);
  if (!trend) return std::nullopt;
  LineAttitude line;
  line.form = form;
  line.slope = plunge;
  line.bearing = *trend;
  return line;
}

/// `order plunge/trend` in force, or `>`: plunge, then trend.
std::optional<LineAttitude> read_plunge_towards(Cursor& cursor) {
  const auto plunge = read_plunge(cursor);
  if (!plunge) return std::nullopt;
  if (!cursor.skip_if(Type::slash) && is_towards(cursor)) cursor.skip();
  return finish_trend(cursor, *plunge, LineAttitude::Form::plunge_towards);
}

std::optional<LineAttitude> read_trend_plunge(Cursor& cursor) {
  const std::size_t start = cursor.position();
  const auto trend = read_bearing(cursor, Behind::figure);
  if (!trend) return std::nullopt;
  const Span span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  cursor.skip_if(Type::slash);
  if (cursor.at_end() || cursor.is(Type::word)) {
    return cursor.fail(cursor.here(),
                       wording::incomplete(fmt::format("'{}'", cursor.text(span)), "plunge",
                                           cursor.is_word("horizontal")
                                               ? fmt::format("horizontal {}", cursor.text(span))
                                               : fmt::format("{} 15", cursor.text(span))));
  }
  const auto plunge = read_plunge(cursor);
  if (!plunge) return std::nullopt;
  LineAttitude line;
  line.bearing = *trend;
  line.slope = *plunge;
  return line;
}

std::optional<LineAttitude> read_figured_line(Cursor& cursor, const PairRules& rules) {
  const std::size_t start = cursor.position();
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (three_digits(first)) {
      const Span span = with_next(cursor, start, 3);
      return cursor.fail(
          span, wording::pair_order(cursor.text(span), "plunge first, then > and the trend"));
    }
    return read_plunge_towards(cursor);
  }
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  if (cursor.is(Type::angle, behind)) {
    Cursor ahead = cursor;
    ahead.skip(behind);
    const Token* second = figure_at(ahead);
    if (!second) return std::nullopt;
    ahead.skip();
    const bool stated = rules.lines != LineOrder::unstated;
    const bool plunge_first = rules.lines == LineOrder::plunge_trend;
    const auto roles = pair_roles(cursor, first, *second, ahead.since(start),
                                  {"trend/plunge", "plunge/trend",
                                   !stated        ? std::string_view()
                                   : plunge_first ? "plunge/trend"
                                                  : "trend/plunge",
                                   plunge_first});
    if (!roles) return std::nullopt;
    return *roles == First::slope ? read_plunge_towards(cursor) : read_trend_plunge(cursor);
  }
  if (starts_lettered_bearing(cursor, behind) && !three_digits(first)) {
    if (cursor.is(Type::angle, 2) && !cursor.is(Type::word, 3) && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    if (rules.lines == LineOrder::plunge_trend) return read_plunge_towards(cursor);
    if (!figure_at(cursor)) return std::nullopt;
    cursor.skip(behind);
    const Span whole{first.offset, cursor.rest().end() - first.offset};
    return cursor.fail(
        whole, wording::pair_order(cursor.text(whole),
                                   fmt::format("{} > {}, or 'order plunge/trend' above",
                                               cursor.text(first), cursor.text(cursor.rest()))));
  }
  if (!three_digits(first) && behind == 1 &&
      (cursor.peek(1) == nullptr || cursor.is(Type::word, 1))) {
    if (!figure_at(cursor)) return std::nullopt;
    return cursor.fail(first.span(),
                       wording::incomplete(fmt::format("'{}'", cursor.text(first)), "trend",
                                           fmt::format("{} > N20W", cursor.text(first))));
  }
  return read_trend_plunge(cursor);
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
                         wording::incomplete("the plane", "strike", "vertical N20E"));
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

std::optional<LineAttitude> read_line_attitude(Cursor& cursor, const PairRules& rules) {
  LineAttitude line;
  if (cursor.is_word("vertical")) {
    cursor.skip();
    line.form = LineAttitude::Form::vertical;
    line.slope.value = 90;
    return line;
  }
  if (cursor.is_word("horizontal")) {
    cursor.skip();
    if (cursor.at_end())
      return cursor.fail(cursor.here(),
                         wording::incomplete("the line", "trend", "horizontal N20W"));
    return finish_trend(cursor, Slope{}, LineAttitude::Form::horizontal);
  }
  if (cursor.is_word("rake")) return read_rake(cursor);
  if (cursor.is(Type::angle)) return read_figured_line(cursor, rules);
  if (cursor.is(Type::word)) {
    const std::size_t start = cursor.position();
    auto read = read_trend_plunge(cursor);
    if (read && rules.lines == LineOrder::plunge_trend) {
      const Span span = cursor.since(start);
      return cursor.fail(span, wording::pair_against_order(cursor.text(span), "plunge/trend"));
    }
    return read;
  }
  figure_at(cursor);
  return std::nullopt;
}

bool looks_like_attitude(const Cursor& cursor) {
  if (cursor.is(Type::angle) || cursor.is_word("horizontal") || cursor.is_word("rake")) return true;
  return starts_lettered_bearing(cursor) &&
         (cursor.is(Type::angle, 1) || cursor.is(Type::slash, 1));
}

}  // namespace lodebook::notebook
