// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "attitude_reader.hpp"
#include "pair_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

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

std::optional<LineAttitude> read_rake(Cursor& cursor) {
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(cursor.here(),
                       wording::incomplete("the rake", "angle", "rake 40 from N62E"));
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
                                           fmt::format("rake {} from N62E", cursor.text(span))));
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
                                               : fmt::format("{} 35", cursor.text(span))));
  }
  const auto plunge = read_plunge(cursor);
  if (!plunge) return std::nullopt;
  LineAttitude line;
  line.bearing = *trend;
  line.slope = *plunge;
  return line;
}

std::optional<LineAttitude> read_figured_line(Cursor& cursor, const PairRules& rules) {
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (has_bearing_before_towards(cursor, "plunge first, then > and the trend"))
      return std::nullopt;
    return read_plunge_towards(cursor);
  }
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  const bool plunge_is_first = rules.lines == LineOrder::plunge_trend;
  if (cursor.is(Type::angle, behind)) {
    const bool stated = rules.lines != LineOrder::unstated;
    const std::string_view order = plunge_is_first ? "plunge/trend" : "trend/plunge";
    const auto roles = pair_roles(
        cursor, behind,
        {"trend/plunge", "plunge/trend", stated ? order : std::string_view(), plunge_is_first});
    if (!roles) return std::nullopt;
    return *roles == First::slope ? read_plunge_towards(cursor) : read_trend_plunge(cursor);
  }
  if (three_digits(first)) return read_trend_plunge(cursor);
  if (starts_lettered_bearing(cursor, behind)) {
    if (cursor.is(Type::angle, 2) && !cursor.is(Type::word, 3) && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    if (plunge_is_first) return read_plunge_towards(cursor);
    if (!figure_at(cursor)) return std::nullopt;
    return fail_slope_first(cursor, behind, "plunge/trend");
  }
  if (behind == 1 && (cursor.peek(1) == nullptr || cursor.is(Type::word, 1))) {
    if (!figure_at(cursor)) return std::nullopt;
    return cursor.fail(first.span(),
                       wording::incomplete(fmt::format("'{}'", cursor.text(first)), "trend",
                                           fmt::format("{} > N50W", cursor.text(first))));
  }
  return read_trend_plunge(cursor);
}

}  // namespace

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
                         wording::incomplete("the line", "trend", "horizontal N50W"));
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
