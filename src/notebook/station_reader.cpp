// SPDX-License-Identifier: MIT
#include <algorithm>
#include <lodebook/earth/geodesic.hpp>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// How near two positions of one log are expected to be, metres.
constexpr double log_extent_m = 500'000;

std::size_t name_end(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && text[at] != ',' && text[at] != ';' && text[at] != '>' &&
         space_length(text.substr(at)) == 0) {
    ++at;
  }
  return at;
}

/// Where the word `lower` starts in `text`, behind white space; npos if it does not.
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

std::size_t find_plus_minus(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (plus_minus_length(text.substr(at)) > 0) return at;
  }
  return std::string_view::npos;
}

/// Cuts `whole` at `at` (npos: at its end) into what stands before and from there on.
std::pair<Span, Span> cut(Span whole, std::size_t at) {
  const std::uint32_t before =
      at == std::string_view::npos ? whole.length : static_cast<std::uint32_t>(at);
  return {{whole.offset, before}, {whole.offset + before, whole.length - before}};
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

std::optional<GivenPosition>* given_position_of(Entry& entry) {
  if (auto* heading = std::get_if<StationHeading>(&entry.what)) return &heading->position;
  if (auto* landmark = std::get_if<Landmark>(&entry.what)) return &landmark->position;
  return nullptr;
}

std::optional<earth::Position> position_of(Entry& entry) {
  if (const auto* at = std::get_if<At>(&entry.what)) return at->position.position;
  const auto* given = given_position_of(entry);
  if (!given || !*given) return std::nullopt;
  return (*given)->position;
}

/// Puts the settled meaning of a position whose zone letter is an S into its entry.
void set_position(Entry& entry, const earth::WrittenPosition& written, ZoneS zone) {
  const auto& settled = zone == ZoneS::south ? written.if_south : written.position;
  if (auto* at = std::get_if<At>(&entry.what)) {
    if (zone == ZoneS::unclear) {
      entry.what = Unread{};
    } else {
      at->position.position = *settled;
    }
  } else if (auto* given = given_position_of(entry)) {
    if (zone == ZoneS::unclear) {
      given->reset();
    } else {
      (*given)->position = *settled;
    }
  }
}

}  // namespace

const Names& LogReader::names() const {
  return notebook_ ? notebook_->names : names_;
}

NameId LogReader::number_of(std::string_view name) {
  if (!notebook_) return names_.intern(name);
  const Names& all = notebook_->names;
  // Most are met in the order in which the first pass met them.
  const bool is_next = next_name_ < all.size() && all.shown(next_name_) == name;
  const NameId number = is_next ? next_name_ : all.find(name);
  if (number == next_name_) ++next_name_;
  return number;
}

std::optional<Place> LogReader::declared_before(Declared& declared, NameId name, Place place) {
  if (name >= declared.size()) declared.resize(name + 1);
  std::optional<Place> first = declared[name];
  if (!first) declared[name] = place;
  return first;
}

std::optional<Span> LogReader::take_name(Span& body, std::string_view what) {
  const std::string_view rest = text(body);
  const std::size_t end = name_end(rest);
  const Span name{body.offset, static_cast<std::uint32_t>(end)};
  if (rest.empty()) {
    faults_.add(body, wording::name_missing(what));
    return std::nullopt;
  }
  const bool forbidden = end < rest.size() && space_length(rest.substr(end)) == 0;
  if (end == 0 || forbidden || rest[0] == '#') {
    const Span bad{body.offset, static_cast<std::uint32_t>(std::max<std::size_t>(end, 1))};
    faults_.add(bad, wording::name_character(text(bad)));
    return std::nullopt;
  }
  body = trim({name.end(), body.length - name.length});
  return name;
}

Span LogReader::take_word(Cursor& cursor) const {
  const Span rest = cursor.rest();
  const std::string_view whole = text(rest);
  std::uint32_t length = 0;
  while (length < rest.length && space_length(whole.substr(length)) == 0)
    ++length;
  cursor.skip_to(rest.offset + length);
  return {rest.offset, length};
}

bool LogReader::has_second_word(Span name, Span body,
                                std::initializer_list<std::string_view> keywords) {
  const std::string_view rest = text(body);
  std::size_t letters = 0;
  while (letters < rest.size() && (is_letter(rest[letters]) || rest[letters] == '-' ||
                                   static_cast<unsigned char>(rest[letters]) >= 0x80)) {
    ++letters;
  }
  const std::string_view word = rest.substr(0, letters);
  // One letter may be a hemisphere; two with digits behind, a grid square.
  const bool is_word = letters > 1 && is_letter(rest[0]) &&
                       (letters == rest.size() || space_length(rest.substr(letters)) > 0);
  const bool is_keyword =
      std::any_of(keywords.begin(), keywords.end(),
                  [word](std::string_view keyword) { return equals_word(word, keyword); });
  if (!is_word || is_keyword) return false;
  faults_.add({body.offset, static_cast<std::uint32_t>(letters)},
              wording::name_of_two_words(word, std::string(text(name)) + "-" + std::string(word)));
  return true;
}

std::optional<GivenPosition> LogReader::read_position(
    Span span, std::optional<earth::WrittenPosition>& zone_s) {
  const auto [position_span, accuracy_span] = cut(span, find_plus_minus(text(span)));
  const Span where = trim(position_span);
  GivenPosition given;
  if (!accuracy_span.empty()) {
    const Tokens tokens(source_.text(), accuracy_span);
    Cursor cursor(source_.text(), tokens, faults_);
    cursor.skip();
    if (cursor.at_end()) return cursor.fail(accuracy_span, wording::accuracy_missing());
    if (has_decimal_comma(cursor)) return std::nullopt;
    const auto accuracy = read_height(cursor);
    if (!accuracy) return std::nullopt;
    if (accuracy->value < 0) return cursor.fail(accuracy_span, wording::accuracy_missing());
    given.accuracy_m = accuracy->metres(1);
  }
  if (where.empty()) {
    faults_.add(where,
                wording::incomplete("the statement", "position", "such as 44.6891S 169.0144E ±8"));
    return std::nullopt;
  }
  const auto written = read_coordinates(where);
  if (!written) return std::nullopt;
  if (written->if_south) {
    zone_s = written;
  } else {
    given.position = *written->position;
  }
  return given;
}

std::optional<earth::WrittenPosition> LogReader::read_coordinates(Span where) {
  const auto read = earth::read_position(text(where));
  if (const auto* written = std::get_if<earth::WrittenPosition>(&read)) return *written;
  const auto& error = std::get<earth::PositionError>(read);
  const Span fault{where.offset + static_cast<std::uint32_t>(error.offset),
                   static_cast<std::uint32_t>(error.length)};
  faults_.add(fault, wording::position(text(fault), error));
  return std::nullopt;
}

std::optional<Length> LogReader::read_height(Cursor& cursor, std::string_view help) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  if (token->percent || token->marked)
    return cursor.fail(token->span(), wording::number(cursor.text(*token), "metres, or ft"));
  cursor.skip();
  Length length{token->signed_value(), LengthUnit::metres};
  if (cursor.is_word("ft")) length.unit = LengthUnit::feet;
  if (cursor.is_word("m") || cursor.is_word("ft")) cursor.skip();
  if (cursor.is(Token::Type::angle)) help = "a figure without a space in it";
  if (!finish(cursor, help)) return std::nullopt;
  return length;
}

bool LogReader::state_once(std::optional<Place>& first, std::string_view what, Span span) {
  if (first) {
    faults_.add(span, wording::already_stated(what, *first));
    return false;
  }
  return true;
}

void LogReader::read_station(Statement& statement) {
  in_station_ = true;
  notation_noted_ = false;
  at_ = elevation_ = time_ = std::nullopt;

  Span body = statement.body;
  const std::size_t at_word = find_word(text(body), "at");
  StationHeading heading;
  const auto name = take_name(body, "the station");
  if (!name) return push(statement, heading);
  const Place place = source_.place(statement.line, *name);

  if (has_second_word(*name, body, {"at", "elevation"})) {
    // Known by all the words that were typed, so that its rows can be found.
    const auto [words, rest] = cut(statement.body, at_word);
    heading.name = number_of(text(trim(words)));
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
  if (zone_s) take_zone_s(statement.line, where, *zone_s);
}

void LogReader::read_at(Statement& statement) {
  if (!state_once(at_, "the station's position", statement.whole)) return push_unread(statement);
  std::optional<earth::WrittenPosition> zone_s;
  const auto position = read_position(statement.body, zone_s);
  if (!position) return push_unread(statement);
  at_ = source_.place(statement.line, statement.whole);
  push(statement, At{*position});
  if (zone_s) take_zone_s(statement.line, statement.body, *zone_s);
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
  // `at`, as behind a station.
  if (find_word(text(position), "at") == 0)
    position = trim({position.offset + 2, position.length - 2});
  if (has_position) landmark.position = read_position(position, zone_s);
  // A landmark whose figures cannot be read still is one: sights on it are not at fault.
  if (!height.empty()) landmark.elevation = read_landmark_height(height);
  push(statement, landmark);
  if (zone_s) take_zone_s(statement.line, position, *zone_s);
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
  const Tokens tokens(source_.text(), statement.body);
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
  push(statement, Elevation{*height});
}

void LogReader::read_time(Statement& statement) {
  if (!state_once(time_, "the station's time", statement.whole)) return push_unread(statement);
  const std::string_view typed = text(statement.body);
  const std::size_t colon = std::min(typed.find(':'), typed.size());
  const auto hour = two_digits(typed.substr(0, colon), 24);
  const auto minute =
      colon + 3 == typed.size() ? two_digits(typed.substr(colon + 1), 60) : std::nullopt;
  if (!hour || !minute) {
    faults_.add(statement.body, typed.empty() ? wording::incomplete("'time'", "value", "time 09:40")
                                              : wording::time(typed));
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
      cursor.report(cursor.here(), wording::number(cursor.text(cursor.here()), example));
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

void LogReader::take_zone_s(std::uint32_t line, Span span, const earth::WrittenPosition& written) {
  Entry& entry = block_->entries.back();
  if (!notebook_) {
    waiting_.push_back({block_->entries.size() - 1, line, written});
    return;
  }
  const ZoneS zone = notebook_->zones.at(line);
  if (zone == ZoneS::south) faults_.add(span, wording::zone_south(written.zone));
  if (zone == ZoneS::unclear) faults_.add(span, wording::position_zone_unclear(written.zone));
  set_position(entry, written, zone);
}

void LogReader::settle_zones(Notebook& notebook) {
  std::vector<earth::Position> known;
  auto waiting = waiting_.begin();
  for (std::size_t i = 0; !waiting_.empty() && i < own_block_.entries.size(); ++i) {
    if (waiting != waiting_.end() && waiting->entry == i) {
      ++waiting;
    } else if (const auto position = position_of(own_block_.entries[i])) {
      known.push_back(*position);
    }
  }
  const auto fits = [&known](const std::optional<earth::Position>& candidate) {
    return candidate && std::any_of(known.begin(), known.end(), [&](const earth::Position& other) {
             return earth::distance_m(*candidate, other) <= log_extent_m;
           });
  };
  for (const WaitingPosition& one : waiting_) {
    const bool north = fits(one.written.position);
    const bool south = fits(one.written.if_south);
    const bool plainly_north = one.written.position && (north || (!south && known.empty()));
    const ZoneS zone = plainly_north ? ZoneS::band : south ? ZoneS::south : ZoneS::unclear;
    notebook.zones.emplace(one.line, zone);
    set_position(own_block_.entries[one.entry], one.written, zone);
  }
}

}  // namespace lodebook::notebook
