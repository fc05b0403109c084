// SPDX-License-Identifier: MIT
// Legs: a bearing and a distance, from this station or to it.
#include <fmt/format.h>

#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

constexpr std::array<std::string_view, 6> leg_words = {"slope", "back", "south-end",
                                                       "to",    "from", "doubtful"};

bool is_length_unit(const Cursor& cursor, std::size_t ahead) {
  return cursor.is_word("m", ahead) || cursor.is_word("ft", ahead) ||
         cursor.is_word("paces", ahead) || cursor.is_word("pace", ahead);
}

/// Help for words that are left over.
std::string advice_on_leg(const Leg& leg, const Cursor& cursor) {
  if (leg.from != no_name && cursor.is_word("to"))
    return "leave it out: with 'from' the leg leads to the station above";
  if (leg.to != no_name && cursor.is_word("from"))
    return "leave it out, with its name: 'to' leads from the station above";
  if (!leg.back && starts_lettered_bearing(cursor))
    return fmt::format("'back {}' for the bearing read at the far end", cursor.text(cursor.rest()));
  return cursor.is(Type::angle) && !leg.slope
             ? fmt::format("'slope {}' for a slope", first_word(cursor))
             : near_word(first_word(cursor), leg_words);
}

}  // namespace

void LogReader::read_leg(Reading& reading, Span body) {
  reading.what = Leg{};
  is_about_ = false;
  Leg& leg = std::get<Leg>(reading.what);
  const Tokens tokens(source_.text(), body, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  if (cursor.at_end())
    return cursor.report(cursor.here(), wording::incomplete("the leg", "bearing", "leg S38E 120m"));
  if (has_decimal_comma(cursor)) return;
  if (cursor.is(Type::angle) && is_length_unit(cursor, 1))
    return cursor.report(
        cursor.here(),
        wording::incomplete("the leg", "bearing before its distance", "leg S38E 120m"));
  if (!read_from(leg.from, cursor)) return;
  const std::size_t start = cursor.position();
  const auto bearing = read_bearing(cursor, Behind::words);
  if (!bearing) return;
  leg.bearing = *bearing;
  const Span bearing_span = cursor.since(start);
  if (!read_from(leg.from, cursor)) return;
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
  const bool is_behind_unit = cursor.peek() && cursor.peek()->has_sigma;
  const auto own = own_error(cursor, figure, is_behind_unit ? *cursor.peek() : figure);
  if (!own) return;
  leg.distance.own = *own;
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

  if (!read_leg_words(reading, leg, cursor) || !settle_marks(reading, cursor)) return;
  reading.rejected = false;
  note_notation(reading, bearing_span);
}

bool LogReader::read_leg_words(Reading& reading, Leg& leg, Cursor& cursor) {
  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (!leg.south_end && cursor.is_word("south-end")) {
      leg.south_end = true;
      cursor.skip();
    } else if (!leg.slope && cursor.is_word("slope")) {
      cursor.skip();
      leg.slope = read_vertical(cursor);
      if (!leg.slope) return false;
    } else if (!leg.back && cursor.is_word("back")) {
      leg.back = read_back(cursor);
      if (!leg.back) return false;
    } else if (leg.from == no_name && leg.to == no_name && cursor.is_word("from")) {
      if (!read_from(leg.from, cursor)) return false;
    } else if (leg.to == no_name && leg.from == no_name && cursor.is_word("to")) {
      cursor.skip();
      const auto name = take_name(cursor, "'to'");
      if (!name) return false;
      leg.to = number_of(text(*name));
    } else {
      return finish(cursor, advice_on_leg(leg, cursor));
    }
  }
  return true;
}

}  // namespace lodebook::notebook
