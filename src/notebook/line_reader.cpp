// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <lodebook/orientation/decimal.hpp>

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

constexpr std::string_view name_the_end = "name the end of the strike from which it was read";

/// Offers for a rake over 90 or under 0. The cursor is behind it.
Offers rake_offers(const Cursor& cursor, Span span, const Slope& rake) {
  if (rake.value < 0) return cursor.accepted({without_sign(cursor, span)});
  if (rake.value > 180 || !cursor.is_word("from")) return {};
  // From the other end of the strike the rake is 180 minus the figure.
  Cursor ahead = cursor;
  ahead.skip();
  const Fix end = opposite_at(ahead);
  if (end.text.empty()) return {};
  return cursor.accepted({in_place(
      {span.offset, end.span.end() - span.offset},
      fmt::format("{} from {}", trimmed_text(180 - rake.value, angle_decimals), end.text))});
}

std::optional<LineAttitude> read_rake(Cursor& cursor) {
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(cursor.here(), wording::incomplete("the rake", "angle",
                                                          "type its angle, and from which end"));
  const Span span = cursor.here();
  LineAttitude line;
  line.form = LineAttitude::Form::rake;
  const auto rake = read_slope(cursor);
  if (!rake) return std::nullopt;
  const std::string_view typed = cursor.text(span);
  if (rake->percent) {
    std::string plain(typed);
    plain.erase(plain.find('%'));
    const Offers offers = cursor.accepted({in_place(span, std::move(plain))});
    return cursor.fail(span, wording::number(typed, "a rake has no %", offers));
  }
  if (rake->value < 0 || rake->value > 90)
    return cursor.fail(span, wording::rake_range(typed, rake_offers(cursor, span, *rake)));
  line.slope = *rake;
  if (!cursor.is_word("from")) {
    const Offers offers = cursor.accepted({in_place({cursor.here().offset, 0}, "from ")});
    return cursor.fail(cursor.here(),
                       wording::incomplete("the rake", "'from'", name_the_end, offers));
  }
  cursor.skip();
  if (cursor.at_end()) {
    return cursor.fail(cursor.here(),
                       wording::incomplete("the rake", "end of the strike", name_the_end, {}));
  }
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

/// Plunge, then trend: with `>`, or with `order plunge/trend` in force.
std::optional<LineAttitude> read_plunge_towards(Cursor& cursor) {
  const auto plunge = read_plunge(cursor);
  if (!plunge) return std::nullopt;
  if (!cursor.skip_if(Type::slash) && is_towards(cursor)) cursor.skip();
  return finish_trend(cursor, *plunge, LineAttitude::Form::plunge_towards);
}

std::nullopt_t fail_without_plunge(Cursor& cursor, Span trend) {
  Offers offers;
  if (cursor.is_word("horizontal")) {
    offers = cursor.accepted({in_place({trend.offset, cursor.here().end() - trend.offset},
                                       fmt::format("horizontal {}", cursor.text(trend)))});
  }
  return cursor.fail(cursor.here(),
                     wording::incomplete(fmt::format("'{}'", cursor.text(trend)), "plunge",
                                         "type the plunge behind it", offers));
}

/// Trend and plunge, or the trend alone.
std::optional<LineAttitude> read_trend_plunge(Cursor& cursor) {
  const std::size_t start = cursor.position();
  const auto trend = read_bearing(cursor, Behind::figure);
  if (!trend) return std::nullopt;
  const Span span = cursor.since(start);
  if (touches(cursor, start)) return std::nullopt;
  const bool is_pair = cursor.skip_if(Type::slash);
  LineAttitude line;
  line.bearing = *trend;
  if (cursor.at_end() || cursor.is(Type::word)) {
    if (is_pair || cursor.is_word("horizontal")) return fail_without_plunge(cursor, span);
    line.form = LineAttitude::Form::trend;
    return line;
  }
  const auto plunge = read_plunge(cursor);
  if (!plunge) return std::nullopt;
  line.slope = *plunge;
  return line;
}

/// A bearing in letters or with three digits, which cannot be a plunge.
std::optional<Bearing> plain_bearing(Cursor& quiet) {
  if (quiet.is(Type::angle) && !three_digits(*quiet.peek())) return std::nullopt;
  return read_bearing(quiet, Behind::words);
}

/// `125/305`, `N55W S55E`: both ends of a two-ended line, which must be exactly opposite.
std::optional<LineAttitude> read_both_ends(Cursor& cursor) {
  Cursor quiet = cursor.quiet();
  const auto one = plain_bearing(quiet);
  quiet.skip_if(Type::slash);
  if (!one || quiet.at_end()) return std::nullopt;
  const auto other = plain_bearing(quiet);
  if (!other || other->azimuth() != one->azimuth().opposite()) return std::nullopt;
  // Behind one of them a north is that of the line; two must be the same.
  const bool are_named = one->north != OwnNorth::none && other->north != OwnNorth::none;
  if (are_named && one->north != other->north) return std::nullopt;
  LineAttitude line;
  line.form = LineAttitude::Form::trend;
  line.bearing = *read_bearing(cursor, Behind::words);
  line.bearing.north = std::max(one->north, other->north);
  cursor.skip(quiet.position() - cursor.position());
  return line;
}

/// `from S60W`: where a current comes from.
std::optional<LineAttitude> read_source(Cursor& cursor) {
  cursor.skip();
  LineAttitude line;
  line.form = LineAttitude::Form::trend;
  line.from = true;
  const auto source = read_bearing(cursor, Behind::words);
  if (!source) return std::nullopt;
  line.bearing = *source;
  return line;
}

std::optional<LineAttitude> read_figured_line(Cursor& cursor, const PairRules& rules,
                                              const Kind& kind) {
  const Token first = *cursor.peek();
  if (is_towards(cursor, 1)) {
    if (has_bearing_before_towards(cursor)) return std::nullopt;
    return read_plunge_towards(cursor);
  }
  if (is_pair_with_north(cursor)) return read_trend_plunge(cursor);
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  const bool plunge_is_first = rules.lines == LineOrder::plunge_trend;
  if (cursor.is(Type::angle, behind)) {
    const bool stated = rules.lines != LineOrder::unstated;
    const std::string_view order = plunge_is_first ? "plunge/trend" : "trend/plunge";
    constexpr std::array<std::string_view, 2> orders = {"order trend/plunge", "order plunge/trend"};
    const auto roles =
        pair_roles(cursor, behind, {stated ? order : std::string_view(), orders, plunge_is_first});
    if (!roles) return std::nullopt;
    return *roles == First::slope ? read_plunge_towards(cursor) : read_trend_plunge(cursor);
  }
  if (cursor.is_word("from", 1)) {
    const Offers offers = cursor.accepted({in_place({first.offset, 0}, "rake ")});
    return cursor.fail(first.span(),
                       wording::incomplete(fmt::format("'{}'", cursor.text(first)), "trend",
                                           "a rake begins with the word rake", offers));
  }
  if (three_digits(first)) return read_trend_plunge(cursor);
  if (starts_lettered_bearing(cursor, behind)) {
    if (cursor.is(Type::angle, 2) && !cursor.is(Type::word, 3) && lacks_first_letter(cursor)) {
      read_bearing(cursor, Behind::figure);
      return std::nullopt;
    }
    if (plunge_is_first) return read_plunge_towards(cursor);
    if (!figure_at(cursor)) return std::nullopt;
    return fail_slope_first(cursor, behind, "order plunge/trend");
  }
  const bool is_alone = behind == 1 && (cursor.peek(1) == nullptr || cursor.is(Type::word, 1));
  // A lone figure is the plunge, except for a current or a two-ended line, which may have a bearing
  // alone.
  if (is_alone && !kind.is_arrow && !kind.two_ended) {
    if (!figure_at(cursor)) return std::nullopt;
    return cursor.fail(
        first.span(),
        wording::incomplete(fmt::format("'{}'", cursor.text(first)), "trend",
                            "type the trend before it, or > and the trend behind it", {}));
  }
  return read_trend_plunge(cursor);
}

}  // namespace

std::optional<LineAttitude> read_line_attitude(Cursor& cursor, const PairRules& rules,
                                               const Kind& kind) {
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
                         wording::incomplete("the line", "trend", "type the trend behind it", {}));
    return finish_trend(cursor, Slope{}, LineAttitude::Form::horizontal);
  }
  if (cursor.is_word("rake")) return read_rake(cursor);
  if (cursor.is_word("from") && kind.is_arrow) return read_source(cursor);
  if (kind.two_ended) {
    if (const auto both = read_both_ends(cursor)) return both;
  }
  if (cursor.is_word("pitch")) {
    const Offers offers = cursor.accepted({in_place(cursor.here(), "rake")});
    return cursor.fail(cursor.here(), wording::no_bearing(cursor.text(cursor.here()), offers));
  }
  if (cursor.is(Type::angle)) return read_figured_line(cursor, rules, kind);
  if (cursor.is(Type::word)) return read_trend_plunge(cursor);
  figure_at(cursor);
  return std::nullopt;
}

bool looks_like_attitude(const Cursor& cursor) {
  if (cursor.is(Type::angle) || cursor.is_word("horizontal") || cursor.is_word("rake")) return true;
  return starts_lettered_bearing(cursor) &&
         (cursor.is(Type::angle, 1) || cursor.is(Type::slash, 1));
}

}  // namespace lodebook::notebook
