// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// The offset of the word `lower` in `text`, at its start or behind white space; npos if it is not
/// there.
std::size_t find_word(std::string_view text, std::string_view lower) {
  for (std::size_t at = 0; at + lower.size() <= text.size(); ++at) {
    if (!equals_word(text.substr(at, 1), lower.substr(0, 1))) continue;
    const bool starts = at == 0 || space_length(text.substr(at - 1, 1)) == 1 ||
                        (at >= 2 && space_length(text.substr(at - 2, 2)) == 2);
    const std::size_t end = at + lower.size();
    const bool ends = end == text.size() || space_length(text.substr(end)) > 0;
    if (starts && ends && equals_word(text.substr(at, lower.size()), lower)) return at;
  }
  return std::string_view::npos;
}

std::optional<std::uint32_t> read_count(const Token& token) {
  const bool whole = token.type == Type::angle && token.fault == Token::Fault::none &&
                     token.decimals == 0 && !token.marked && !token.percent && !token.has_sign;
  if (!whole || token.value > 1e9) return std::nullopt;
  return static_cast<std::uint32_t>(token.value);
}

std::optional<std::uint8_t> two_digits(std::string_view text, unsigned limit) {
  if (text.empty() || text.size() > 2 || !std::all_of(text.begin(), text.end(), is_digit))
    return std::nullopt;
  unsigned value = 0;
  for (const char c : text)
    value = value * 10 + static_cast<unsigned>(c - '0');
  if (value >= limit) return std::nullopt;
  return static_cast<std::uint8_t>(value);
}

/// `9.40`, `0940`, `9h40`, `9:40 pm` as `09:40`, `21:40`; empty for anything else.
std::string meant_time(std::string_view typed) {
  const std::size_t begin = std::min(typed.find_first_not_of("0123456789"), typed.size());
  std::string_view hours = typed.substr(0, begin);
  std::string_view rest = typed.substr(begin);
  std::string_view minutes;
  if (hours.size() >= 3 && hours.size() <= 4) {
    minutes = hours.substr(hours.size() - 2);
    hours.remove_suffix(2);
  } else if (!rest.empty() && std::string_view(".:hH-").find(rest[0]) != std::string_view::npos) {
    rest.remove_prefix(1);
    minutes = rest.substr(0, std::min(rest.find_first_not_of("0123456789"), rest.size()));
    rest.remove_prefix(minutes.size());
  }
  rest = trimmed(rest);
  const bool pm = equals_word(rest, "pm");
  const bool half = pm || equals_word(rest, "am");
  if ((!rest.empty() && !half && !equals_word(rest, "h")) || minutes.size() != 2) return {};
  auto hour = two_digits(hours, half ? 13 : 24);
  const auto minute = two_digits(minutes, 60);
  if (!hour || !minute) return {};
  if (half) hour = static_cast<std::uint8_t>(*hour % 12 + (pm ? 12 : 0));
  return fmt::format("{:02}:{:02}", *hour, *minute);
}

}  // namespace

bool LogReader::state_once(std::optional<Place>& first, std::string_view what, Span span) {
  if (first) {
    faults_.add(span, wording::already_stated(what, *first));
    return false;
  }
  return true;
}

void LogReader::begin_station() {
  in_station_ = true;
  notation_noted_ = false;
  at_ = elevation_ = time_ = std::nullopt;
}

void LogReader::read_station(Statement& statement) {
  begin_station();
  Span body = statement.body;
  StationHeading heading;
  const auto name = take_name(body, "the station");
  if (!name) return push(statement, heading);
  const Place place = source_.place(statement.line, *name);

  if (has_second_word(*name, body, {"at", "elevation"})) {
    // The name is all the words that were typed, so that its rows can be found.
    const auto rest = cut(body, find_word(text(body), "at")).second;
    heading.name = number_of(text(trim({name->offset, rest.offset - name->offset})));
    return push(statement, heading);
  }
  heading.name = number_of(text(*name));
  if (const auto first = declared_before(stations_, heading.name, place))
    faults_.add(*name, wording::station_repeated(names().shown(heading.name), *first));
  if (body.empty()) return push(statement, heading);
  if (const std::size_t height = find_word(text(body), "elevation"); height < body.length) {
    const Span extra = cut(body, height).second;
    faults_.add(extra,
                wording::trailing_text(text(extra), "'elevation' stands on a line of its own"));
    return push(statement, heading);
  }
  if (!equals_word(text(body).substr(0, 2), "at") ||
      (body.length > 2 && space_length(text(body).substr(2)) == 0)) {
    faults_.add(body, wording::trailing_text(text(body), "'at' before a position"));
    return push(statement, heading);
  }
  std::optional<earth::WrittenPosition> zone_s;
  const Span where = trim({body.offset + 2, body.length - 2});
  heading.position = read_position(where, zone_s);
  if (heading.position) at_ = source_.place(statement.line, where);
  push(statement, heading);
  if (zone_s) take_zone_s(where, *zone_s);
}

void LogReader::read_at(Statement& statement) {
  if (!state_once(at_, "the station's position", statement.whole)) return push_unread(statement);
  std::optional<earth::WrittenPosition> zone_s;
  const auto position = read_position(statement.body, zone_s);
  if (!position) return push_unread(statement);
  at_ = source_.place(statement.line, statement.whole);
  push(statement, At{*position});
  if (zone_s) take_zone_s(statement.body, *zone_s);
}

void LogReader::read_landmark(Statement& statement) {
  Span body = statement.body;
  const auto name = take_name(body, "the landmark");
  if (!name || has_second_word(*name, body, {"at", "elevation"})) return push_unread(statement);
  Landmark landmark;
  landmark.name = number_of(text(*name));
  const Place place = source_.place(statement.line, *name);
  if (const auto first = declared_before(landmarks_, landmark.name, place)) {
    faults_.add(*name, wording::already_stated("a landmark of that name", *first));
    return push_unread(statement);
  }
  const auto [where, height] = cut(body, find_word(text(body), "elevation"));
  std::optional<earth::WrittenPosition> zone_s;
  Span position = trim(where);
  const bool has_position = !position.empty();
  // `at`, as it stands behind a station.
  if (find_word(text(position), "at") == 0)
    position = trim({position.offset + 2, position.length - 2});
  if (has_position) landmark.position = read_position(position, zone_s);
  // A landmark counts even if its figures cannot be read, so that sights to it are not at fault.
  Span elevation = trim(height);
  landmark.elevation_origin = take_origin(elevation);
  if (!height.empty()) landmark.elevation = read_landmark_height(elevation);
  push(statement, landmark);
  if (zone_s) take_zone_s(position, *zone_s);
}

std::optional<Length> LogReader::read_landmark_height(Span span) {
  const Tokens tokens(source_.text(), span);
  Cursor cursor(source_.text(), tokens, faults_);
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(span, wording::incomplete("'elevation'", "figure", "elevation 1412"));
  if (has_decimal_comma(cursor)) return std::nullopt;
  return read_height(cursor);
}

void LogReader::read_elevation(Statement& statement) {
  Span body = statement.body;
  const Span origin = take_origin(body);
  const Tokens tokens(source_.text(), body, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  if (!state_once(elevation_, "the station's elevation", statement.whole))
    return push_unread(statement);
  if (cursor.at_end()) {
    cursor.report(cursor.here(), wording::incomplete("'elevation'", "figure", "elevation 812"));
    return push_unread(statement);
  }
  if (has_decimal_comma(cursor)) return push_unread(statement);
  const auto height = read_height(cursor);
  if (!height) return push_unread(statement);
  elevation_ = source_.place(statement.line, statement.whole);
  push(statement, Elevation{*height, origin});
}

void LogReader::read_time(Statement& statement) {
  if (!state_once(time_, "the station's time", statement.whole)) return push_unread(statement);
  const std::string_view typed = text(statement.body);
  const std::size_t colon = std::min(typed.find(':'), typed.size());
  const auto hour = two_digits(typed.substr(0, colon), 24);
  const auto minute =
      colon + 3 == typed.size() ? two_digits(typed.substr(colon + 1), 60) : std::nullopt;
  if (!hour || !minute) {
    const std::string meant = meant_time(typed);
    Diagnostic fault = typed.empty() ? wording::incomplete("'time'", "value", "time 09:40")
                                     : wording::time(typed, meant);
    if (!meant.empty()) fault = mended(std::move(fault), statement.body, meant);
    faults_.add(statement.body, std::move(fault));
    return push_unread(statement);
  }
  time_ = source_.place(statement.line, statement.whole);
  push(statement, Clock{{*hour, *minute}});
}

void LogReader::read_sample(Statement& statement) {
  Span body = statement.body;
  const auto name = take_name(body, "the sample");
  if (!name) return push_unread(statement);
  push(statement, Sample{*name, body});
}

void LogReader::read_tally(Statement& statement) {
  const Tokens tokens(source_.text(), statement.body);
  Cursor cursor(source_.text(), tokens, faults_);
  constexpr std::string_view example = "tally 14 stations 63 readings";
  if (has_decimal_comma(cursor)) return push_unread(statement);
  Tally tally;
  do {
    if (cursor.at_end()) {
      cursor.report(cursor.here(), wording::incomplete("the tally", "count", example));
      return push_unread(statement);
    }
    const auto count = read_count(*cursor.peek());
    if (!count) {
      cursor.report(
          cursor.here(),
          wording::number(cursor.text(cursor.here()),
                          cursor.text(cursor.here()) == "," ? "leave the comma out" : example));
      return push_unread(statement);
    }
    cursor.skip();
    const bool stations = cursor.is_word("stations") || cursor.is_word("station");
    const bool readings = cursor.is_word("readings") || cursor.is_word("reading");
    if (stations && !tally.stations) {
      tally.stations = count;
    } else if (readings && !tally.readings) {
      tally.readings = count;
    } else if (cursor.at_end()) {
      cursor.report(cursor.here(), wording::incomplete("the count", "word", example));
      return push_unread(statement);
    } else {
      cursor.report(cursor.here(), wording::unknown_word(cursor.text(cursor.here()), example));
      return push_unread(statement);
    }
    cursor.skip();
  } while (!cursor.at_end());
  push(statement, tally);
}

}  // namespace lodebook::notebook
