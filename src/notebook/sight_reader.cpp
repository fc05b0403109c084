// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

constexpr std::array<std::string_view, 3> sight_words = {"south-end", "vertical", "doubtful"};

constexpr std::array<std::string_view, 5> leg_words = {"slope", "back", "south-end", "to",
                                                       "doubtful"};

bool is_length_unit(const Cursor& cursor, std::size_t ahead) {
  return cursor.is_word("m", ahead) || cursor.is_word("ft", ahead) ||
         cursor.is_word("paces", ahead) || cursor.is_word("pace", ahead);
}

bool starts_bearing(const Cursor& cursor) {
  return cursor.is(Type::angle) || starts_lettered_bearing(cursor);
}

}  // namespace

std::optional<Slope> LogReader::read_vertical(Cursor& cursor) {
  const Span span = cursor.here();
  if (cursor.at_end())
    return cursor.fail(span, wording::incomplete("the statement", "angle", "-4, +12 or 15%"));
  const auto slope = read_slope(cursor);
  if (!slope) return std::nullopt;
  if (slope->degrees() < -90 || slope->degrees() > 90)
    return cursor.fail(
        span,
        wording::slope_range(cursor.text(span), cursor.accepted({in_place({span.end(), 0}, "%")})));
  return slope;
}

void LogReader::read_sight(Reading& reading, Span body) {
  reading.what = Sight{};
  Sight& sight = std::get<Sight>(reading.what);
  const auto name = take_name(body, "the sight");
  if (!name) return;
  sight.target = number_of(text(*name));
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  if (cursor.at_end())
    return cursor.report(cursor.here(),
                         wording::incomplete("the sight", "bearing", "sight NAME N66W"));
  if (has_decimal_comma(cursor)) return;
  if (cursor.is(Type::word) && !starts_bearing(cursor) && cursor.peek(1)) {
    Cursor ahead = cursor;
    ahead.skip();
    if (starts_bearing(ahead)) {
      const Span second = cursor.here();
      return report_words({name->offset, second.end() - name->offset}, second);
    }
  }
  const std::size_t start = cursor.position();
  if (cursor.is(Type::word) && !cursor.peek(1) && !starts_bearing(cursor)) {
    const std::string exchanged = fmt::format("{} {}", cursor.text(cursor.here()), text(*name));
    const Offers offers = accepted({in_place(judged_.body, exchanged)});
    if (!offers.empty())
      return cursor.report(cursor.here(), wording::name_behind(text(*name), offers));
  }
  const auto bearing = read_bearing(cursor, Behind::words);
  if (!bearing) return;
  sight.bearing = *bearing;
  const Span bearing_span = cursor.since(start);
  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (!sight.south_end && cursor.is_word("south-end")) {
      sight.south_end = true;
      cursor.skip();
    } else if (!sight.vertical && cursor.is_word("vertical")) {
      cursor.skip();
      sight.vertical = read_vertical(cursor);
      if (!sight.vertical) return;
    } else {
      finish(cursor, cursor.is(Type::angle) && !sight.vertical
                         ? fmt::format("'vertical {}' for a vertical angle", first_word(cursor))
                         : near_word(first_word(cursor), sight_words));
      return;
    }
  }
  reading.rejected = false;
  note_notation(reading, bearing_span);
}

void LogReader::read_leg(Reading& reading, Span body) {
  reading.what = Leg{};
  Leg& leg = std::get<Leg>(reading.what);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  if (cursor.at_end())
    return cursor.report(cursor.here(), wording::incomplete("the leg", "bearing", "leg S38E 120m"));
  if (has_decimal_comma(cursor)) return;
  if (cursor.is(Type::angle) && is_length_unit(cursor, 1))
    return cursor.report(
        cursor.here(),
        wording::incomplete("the leg", "bearing before its distance", "leg S38E 120m"));
  const auto bearing = read_bearing(cursor, Behind::words);
  if (!bearing) return;
  leg.bearing = *bearing;
  const Span bearing_span = cursor.since(0);
  if (!cursor.is(Type::angle))
    return cursor.report(cursor.here(),
                         wording::incomplete("the leg", "distance", "leg S38E 120m"));

  const Token figure = *cursor.peek();
  const bool foot_mark = figure.fault == Token::Fault::only_minutes;
  if (!foot_mark && !figure_at(cursor)) return;
  if (figure.has_sign)
    return cursor.report(figure.span(),
                         wording::number(cursor.text(figure), "a distance has no sign"));
  cursor.skip();
  leg.distance.value = figure.value;
  if (cursor.is_word("m")) {
    leg.distance.unit = LengthUnit::metres;
  } else if (cursor.is_word("ft")) {
    leg.distance.unit = LengthUnit::feet;
  } else if (cursor.is_word("paces") || cursor.is_word("pace")) {
    leg.distance.unit = LengthUnit::paces;
  } else {
    return report_unit(cursor, figure);
  }
  if (foot_mark || figure.percent || figure.marked)
    return cursor.report(figure.span(), wording::number(cursor.text(figure), "such as 120m"));
  if (leg.distance.unit == LengthUnit::paces && !has_pace_) {
    cursor.report(figure.span(), wording::pace_missing());
    return ask_once(reading, Question::pace);
  }
  cursor.skip();

  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (!leg.south_end && cursor.is_word("south-end")) {
      leg.south_end = true;
      cursor.skip();
    } else if (!leg.slope && cursor.is_word("slope")) {
      cursor.skip();
      leg.slope = read_vertical(cursor);
      if (!leg.slope) return;
    } else if (!leg.back && cursor.is_word("back")) {
      cursor.skip();
      if (cursor.at_end())
        return cursor.report(cursor.here(), wording::incomplete("'back'", "bearing", "back N37W"));
      leg.back = read_bearing(cursor, Behind::words);
      if (!leg.back) return;
    } else if (leg.to == no_name && cursor.is_word("to")) {
      cursor.skip();
      const auto name = take_name(cursor, "'to'");
      if (!name) return;
      leg.to = number_of(text(*name));
    } else {
      if (!leg.back && starts_lettered_bearing(cursor)) {
        finish(cursor, fmt::format("'back {}' for the bearing read at the far end",
                                   cursor.text(cursor.rest())));
        return;
      }
      finish(cursor, cursor.is(Type::angle) && !leg.slope
                         ? fmt::format("'slope {}' for a slope", first_word(cursor))
                         : near_word(first_word(cursor), leg_words));
      return;
    }
  }
  reading.rejected = false;
  note_notation(reading, bearing_span);
}

}  // namespace lodebook::notebook
