// SPDX-License-Identifier: MIT
// Sights: a bearing to a mark, a bearing from it, or both; and repeats of them.
#include <fmt/format.h>

#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

constexpr std::array<std::string_view, 5> sight_words = {"south-end", "vertical", "back", "from",
                                                         "doubtful"};

bool starts_bearing(const Cursor& cursor) {
  return cursor.is(Type::angle) || starts_lettered_bearing(cursor);
}

/// Whether the cursor is at something that may stand behind the name.
bool starts_sight(const Cursor& cursor) {
  return starts_bearing(cursor) || cursor.is_word("back") || cursor.is_word("from");
}

}  // namespace

std::optional<Slope> LogReader::read_vertical(Cursor& cursor) {
  const Span span = cursor.here();
  if (cursor.at_end())
    return cursor.fail(span, wording::incomplete("the statement", "angle", "-4, +12 or 15%"));
  if (cursor.is_word("level")) {
    cursor.skip();
    return Slope{0, false, 1, 0};
  }
  const auto slope = read_slope(cursor);
  if (!slope) return std::nullopt;
  if (slope->degrees() < -90 || slope->degrees() > 90)
    return cursor.fail(
        span,
        wording::slope_range(cursor.text(span), cursor.accepted({in_place({span.end(), 0}, "%")})));
  return slope;
}

std::optional<Bearing> LogReader::read_back(Cursor& cursor) {
  cursor.skip();
  if (cursor.at_end())
    return cursor.fail(cursor.here(), wording::incomplete("'back'", "bearing", "back N37W"));
  return read_bearing(cursor, Behind::words);
}

bool LogReader::read_from(NameId& from, Cursor& cursor) {
  if (from != no_name || !cursor.is_word("from")) return true;
  cursor.skip();
  const auto name = take_name(cursor, "'from'");
  if (name) from = number_of(text(*name));
  return name.has_value();
}

void LogReader::read_sights(Statement& statement, KindId kind) {
  const std::size_t entries = block_->entries.size();
  const std::size_t faults = block_->diagnostics.size();
  Reading reading = new_reading(statement, kind);
  reading.written = statement.body;
  reading.rejected = true;
  Sight sight;
  Span body = statement.body;
  const auto name = take_target(body);
  if (name) sight.target = number_of(text(*name));
  NameId from = no_name;
  for (std::uint32_t at = 0; at <= body.length;) {
    const std::uint32_t end = name ? sight_end(body, at) : body.length;
    const Span typed = trim({body.offset + at, end - at});
    if (at > 0) {
      reading = new_reading(statement, kind);
      reading.first = false;
      reading.rejected = true;
      statement.column = source_.place(statement.line, typed).column;
    }
    reading.written = typed;
    if (at == 0) {
      reading.written.offset = statement.body.offset;
      reading.written.length = typed.end() - statement.body.offset;
    }
    sight.from = from;
    reading.what = sight;
    if (name) read_sight(reading, typed);
    from = std::get<Sight>(reading.what).from;
    if (reading.rejected && at == 0 && end == body.length) offer_slips(faults);
    push(statement, reading);
    at = end + 1;
  }
  // `from NAME` applies to all repeats, wherever it stands.
  for (std::size_t i = entries; i < block_->entries.size(); ++i)
    std::get<Sight>(std::get<Reading>(block_->entries[i].what).what).from = from;
}

std::optional<Span> LogReader::take_target(Span& body) {
  const auto name = take_name(body, "the sight");
  if (!name) return std::nullopt;
  const Tokens tokens(source_.text(), body, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  if (!cursor.is(Type::word) || starts_sight(cursor)) return name;
  Cursor ahead = cursor;
  ahead.skip();
  const Span second = cursor.here();
  if (starts_sight(ahead)) {
    report_words({name->offset, second.end() - name->offset}, second);
    return std::nullopt;
  }
  if (!ahead.at_end()) return name;
  const std::string exchanged = fmt::format("{} {}", cursor.text(second), text(*name));
  const Offers offers = accepted({in_place(judged_.body, exchanged)});
  if (offers.empty()) return name;
  cursor.report(second, wording::name_behind(text(*name), offers));
  return std::nullopt;
}

std::uint32_t LogReader::sight_end(Span body, std::uint32_t at) {
  const std::string_view bytes = text(body);
  for (std::size_t i = at; i < bytes.size(); ++i) {
    if (const std::size_t name = quoted_length(bytes.substr(i));
        name > 0 && i > 0 && starts_with_space(bytes, i - 1)) {
      i += name - 1;
      continue;
    }
    const bool is_comma = bytes[i] == ',' && repeat_end(bytes, i) == i;
    if (!is_comma) continue;
    const auto end = static_cast<std::uint32_t>(i);
    const Tokens tokens(source_.text(), trim({body.offset + end + 1, body.length - end - 1}),
                        Tokens::Marks::own);
    Cursor rest(source_.text(), tokens, faults_);
    if (starts_bearing(rest) || rest.is_word("back")) return end;
  }
  return body.length;
}

void LogReader::read_sight(Reading& reading, Span typed) {
  Sight& sight = std::get<Sight>(reading.what);
  const Tokens tokens(source_.text(), typed, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  if (cursor.at_end())
    return cursor.report(cursor.here(),
                         wording::incomplete("the sight", "bearing", "sight NAME N66W"));
  is_about_ = false;
  if (has_decimal_comma(cursor) || !read_from(sight.from, cursor)) return;
  const std::size_t start = cursor.position();
  sight.is_back = cursor.is_word("back");
  const auto bearing = sight.is_back ? read_back(cursor) : read_bearing(cursor, Behind::words);
  if (!bearing) return;
  sight.bearing = *bearing;
  Span bearing_span = cursor.since(start);
  if (!read_sight_words(reading, sight, cursor) || !settle_marks(reading, cursor)) return;
  reading.rejected = false;
  if (sight.is_back) {
    const std::string_view words = text(bearing_span);
    bearing_span = trim({bearing_span.offset + 4, static_cast<std::uint32_t>(words.size()) - 4});
  }
  note_notation(reading, bearing_span);
}

bool LogReader::read_sight_words(Reading& reading, Sight& sight, Cursor& cursor) {
  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (!sight.south_end && !sight.is_back && cursor.is_word("south-end")) {
      sight.south_end = true;
      cursor.skip();
    } else if (!sight.vertical && cursor.is_word("vertical")) {
      cursor.skip();
      sight.vertical = read_vertical(cursor);
      if (!sight.vertical) return false;
    } else if (!sight.back && !sight.is_back && cursor.is_word("back")) {
      sight.back = read_back(cursor);
      if (!sight.back) return false;
    } else if (sight.from == no_name && cursor.is_word("from")) {
      if (!read_from(sight.from, cursor)) return false;
    } else {
      return finish(cursor,
                    cursor.is(Type::angle) && !sight.vertical
                        ? fmt::format("'vertical {}' for a vertical angle", first_word(cursor))
                        : near_word(first_word(cursor), sight_words));
    }
  }
  return true;
}

}  // namespace lodebook::notebook
