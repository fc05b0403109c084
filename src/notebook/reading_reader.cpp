// SPDX-License-Identifier: MIT
#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// The notation to compare with the dial; points belong to both dials.
std::optional<Notation> notation_of(const Bearing& bearing) {
  if (bearing.notation == Notation::point) return std::nullopt;
  return bearing.notation;
}

struct NotationOf {
  std::optional<Notation> operator()(const PlaneAttitude& plane) const {
    using enum PlaneAttitude::Form;
    if (plane.form == horizontal || plane.form == dip) return std::nullopt;
    return notation_of(plane.bearing);
  }
  std::optional<Notation> operator()(const LineAttitude& line) const {
    if (line.form == LineAttitude::Form::vertical) return std::nullopt;
    return notation_of(line.bearing);
  }
  std::optional<Notation> operator()(const Sight& sight) const {
    return notation_of(sight.bearing);
  }
  std::optional<Notation> operator()(const Leg& leg) const { return notation_of(leg.bearing); }
};

}  // namespace

std::size_t repeat_end(std::string_view text, std::size_t at) {
  for (at = text.find(',', at); at < text.size(); at = text.find(',', at + 1)) {
    const bool between =
        at > 0 && is_digit(text[at - 1]) && at + 1 < text.size() && is_digit(text[at + 1]);
    if (!between) return at;
  }
  return text.size();
}

Times times_of(std::string_view body) {
  constexpr std::size_t most_digits = 2;
  const auto before = [](std::string_view words) {
    return Times{1, static_cast<std::uint32_t>(words.size())};
  };
  std::size_t digits = 0;
  while (digits < body.size() && is_digit(body[body.size() - 1 - digits]))
    ++digits;
  if (digits == 0 || digits > most_digits || body.size() < digits + 2) return before(body);
  const std::size_t x = body.size() - digits - 1;
  const bool is_mark = (body[x] == 'x' || body[x] == 'X') && space_length(body.substr(x - 1)) == 1;
  unsigned count = 0;
  for (const char digit : body.substr(x + 1))
    count = 10 * count + static_cast<unsigned>(digit - '0');
  if (!is_mark || count < 2) return before(body);
  return {static_cast<std::uint8_t>(count),
          static_cast<std::uint32_t>(trimmed(body.substr(0, x)).size())};
}

Reading LogReader::new_reading(const Statement& statement, KindId kind) {
  Reading reading;
  reading.number = reading_count_++;
  reading.kind = kind;
  faults_.start(statement.line, reading.number);
  if (!in_station_ && !outside_noted_) {
    outside_noted_ = true;
    faults_.add(statement.word, wording::reading_outside_station());
  }
  return reading;
}

bool LogReader::is_attitude(Meaning meaning) const {
  if (meaning.keyword != Keyword::reading) return false;
  const Kind::Type type = kinds_[meaning.kind].type;
  return type == Kind::Type::plane || type == Kind::Type::line;
}

void LogReader::read_reading(Statement& statement, KindId kind) {
  const Kind::Type type = kinds_[kind].type;
  if (is_attitude({Keyword::reading, kind})) {
    last_kind_ = kind;
    return notebook_ || depth_ > 0 ? read_repeats(statement, kind) : count_repeats(statement, kind);
  }
  if (type == Kind::Type::sight) return read_sights(statement, kind);
  Reading reading = new_reading(statement, kind);
  reading.written = statement.body;
  reading.rejected = true;
  const std::size_t faults = block_->diagnostics.size();
  read_leg(reading, statement.body);
  if (reading.rejected) offer_slips(faults);
  push(statement, reading);
}

LogReader::Repeat LogReader::next_repeat(Span body, std::uint32_t at, bool is_plane) {
  const std::string_view bytes = text(body);
  const auto until = [&](std::size_t from) {
    return static_cast<std::uint32_t>(repeat_end(bytes, from));
  };
  Repeat repeat;
  std::uint32_t end = until(at);
  repeat.written = trim({body.offset + at, end - at});
  while (end < body.length) {
    const std::uint32_t next = until(end + 1);
    const Span rest = trim({body.offset + end + 1, next - end - 1});
    if (!goes_on(repeat.written, rest, is_plane)) break;
    if (repeat.rest.empty()) repeat.rest = rest;
    repeat.written.length = rest.end() - repeat.written.offset;
    end = next;
  }
  repeat.end = end;
  return repeat;
}

bool LogReader::goes_on(Span before, Span rest, bool is_plane) {
  // A quick test: most strings behind a comma are longer, or have a bearing of three digits or a
  // `>`.
  constexpr std::uint32_t longest_bearing = 16;
  const std::string_view words = text(rest);
  const std::string_view first = text(before);
  if (words.empty() || first.empty()) return false;
  if (words.front() == '>' || first.back() == '>') return true;
  if (words.find_first_of(">/") != std::string_view::npos) return false;
  Faults dropped(source_);
  const Tokens tokens(source_.text(), rest, Tokens::Marks::own);
  const Cursor cursor(source_.text(), tokens, dropped);
  if (cursor.is(Type::word)) {
    const std::string_view word = text(tokens[0].span());
    if (is_plane_word(word)) return true;
    if (equals_word(word, "to")) return true;
    if (equals_word(word, "dip")) return is_plane && is_strike(before);
    if (is_plane && equals_word(first, "vertical")) return true;
    const bool ends_with_dip = is_digit(first.back()) || first.back() == '%';
    return is_plane && tokens.size() == 1 && point_named(word) && ends_with_dip;
  }
  if (!cursor.is(Type::angle) || tokens[0].digits > 2 || before.length > longest_bearing)
    return false;
  if (cursor.is(Type::angle, 1) || cursor.is(Type::angle, 2)) return false;
  return is_strike(before);
}

bool LogReader::is_strike(Span span) {
  Faults dropped(source_);
  const Tokens tokens(source_.text(), span, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, dropped);
  if (cursor.is_word("strike")) cursor.skip();
  return read_bearing(cursor, Behind::words) && cursor.at_end();
}

void LogReader::read_repeats(Statement& statement, KindId kind) {
  const bool is_plane = kinds_[kind].type == Kind::Type::plane;
  const Times times = times_of(text(statement.body));
  const Span body{statement.body.offset, times.before};
  for (std::uint32_t at = 0; at <= body.length;) {
    const Repeat repeat = next_repeat(body, at, is_plane);
    Reading reading = new_reading(statement, kind);
    reading.first = at == 0;
    reading.rejected = true;
    reading.written = repeat.written;
    judged_.body = repeat.written;
    if (!reading.first) {
      statement.column = source_.place(statement.line, reading.written).column;
    }
    const std::size_t faults = block_->diagnostics.size();
    read_repeat(reading, repeat.rest);
    at = repeat.end + 1;
    if (at > body.length && times.count > 1) {
      push_times(statement, reading, repeat.rest, times.count, faults);
      continue;
    }
    if (!reading.rejected) note_notation(reading, reading.written);
    push(statement, reading);
  }
  if (!statement.remark.empty()) warn_of_remark(statement, kind);
}

void LogReader::push_times(const Statement& statement, Reading reading, Span rest,
                           std::uint8_t count, std::size_t faults) {
  const std::vector<Diagnostic>& said = block_->diagnostics;
  const auto error = std::find_if(
      said.begin() + static_cast<std::ptrdiff_t>(std::min(faults, said.size())), said.end(),
      [](const Diagnostic& one) { return one.severity == Severity::error; });
  auto waits_for = reading.waits_for;
  // One diagnostic stands for all of them.
  if (reading.rejected && !waits_for && error != said.end()) waits_for = error->code;
  if (!reading.rejected) note_notation(reading, reading.written);
  const Span once = reading.written;
  const Span whole{once.offset, statement.body.end() - once.offset};
  reading.times = count;
  for (std::uint8_t i = 0; i < count; ++i) {
    if (i > 0) {
      Reading again = new_reading(statement, reading.kind);
      again.first = false;
      again.times = 0;
      again.rejected = reading.rejected;
      again.what = reading.what;
      again.written = once;
      again.waits_for = waits_for;
      if (!again.rejected) read_repeat(again, rest);
      reading = again;
    }
    reading.written = whole;
    push(statement, reading);
  }
}

void LogReader::report_comma(Reading& reading, Cursor& cursor, Span rest) {
  if (kinds_[reading.kind].type == Kind::Type::line) reading.what = LineAttitude{};
  std::string joined(text(reading.written));
  std::erase(joined, ',');
  const Offers offers = cursor.accepted({in_place(reading.written, std::move(joined))});
  const std::uint32_t comma =
      static_cast<std::uint32_t>(source_.text().find_last_of(',', rest.offset));
  cursor.report({comma, 1}, wording::comma_within(text(rest), offers));
}

void LogReader::count_repeats(const Statement& statement, KindId kind) {
  const bool is_plane = kinds_[kind].type == Kind::Type::plane;
  const Times times = times_of(text(statement.body));
  const Span body{statement.body.offset, times.before};
  for (std::uint32_t at = 0; at <= body.length;) {
    const Repeat repeat = next_repeat(body, at, is_plane);
    Reading reading = new_reading(statement, kind);
    reading.written = repeat.written;
    if (repeat.rest.empty() && may_wait(kind, text(reading.written))) {
      reading.rejected = true;
      read_repeat(reading, repeat.rest);
    }
    at = repeat.end + 1;
  }
  reading_count_ += times.count - 1U;
}

void LogReader::read_repeat(Reading& reading, Span rest) {
  const Tokens tokens(source_.text(), reading.written, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  const Cursor start = cursor;
  const std::size_t faults = block_->diagnostics.size();
  if (rest.empty()) {
    read_attitude(reading, cursor);
  } else {
    report_comma(reading, cursor, rest);
  }
  if (rest.empty() && may_wait(reading.kind, text(reading.written))) {
    doubt_order(reading, start);
    if (reading.rejected)
      ask_once(reading, question_of(reading.kind, block_->diagnostics.back().code, start));
  }
  if (reading.rejected && !reading.waits_for) offer_slips(faults);
}

void LogReader::read_attitude(Reading& reading, Cursor& cursor) {
  const Kind& kind = kinds_[reading.kind];
  const bool is_plane = kind.type == Kind::Type::plane;
  is_about_ = false;
  if (is_plane) {
    reading.what = PlaneAttitude{};
  } else {
    reading.what = LineAttitude{};
  }
  if (cursor.at_end()) {
    cursor.report(
        cursor.here(),
        wording::incomplete(reading.first ? "'" + kind.name + "'" : "a repeat", "attitude",
                            is_plane ? "a plane looks like N62E 37NW, 242/37 NW or 37 > 332"
                                     : "a line looks like N50W 35 or 310/35"));
    return;
  }
  if (has_decimal_comma(cursor) || has_no_number(cursor)) return;
  if (is_plane) {
    const std::size_t start = cursor.position();
    auto plane = read_plane_attitude(cursor, rules_);
    if (!plane) return;
    const Span span = cursor.since(start);
    if (!read_plane_words(reading, *plane, cursor)) return;
    reading.what = *plane;
    if (!settle_marks(reading, cursor)) return;
    if (plane->part() != Part::whole)
      cursor.report(span, wording::partial(plane->part() == Part::azimuth));
  } else {
    const std::size_t start = cursor.position();
    auto line = read_line_attitude(cursor, rules_, kind);
    if (!line) return;
    const Span span = cursor.since(start);
    if (!read_line_words(reading, *line, cursor)) return;
    reading.what = *line;
    if (!settle_marks(reading, cursor)) return;
    if (line->part() != Part::whole && !kind.is_arrow && !kind.two_ended)
      cursor.report(span, wording::plunge_missing(text(span)));
  }
  reading.rejected = false;
}

void LogReader::note_notation(const Reading& reading, Span span) {
  if (notation_noted_ || !dial_ || asking_) return;
  const auto notation = std::visit(NotationOf{}, reading.what);
  if (!notation || *notation == *dial_) return;
  notation_noted_ = true;
  faults_.add(span, wording::notation_mixed(text(span), *dial_));
}

Span find_word(const Source& source, Span reading, std::string_view keyword) {
  const std::string_view words = source.text(reading);
  std::size_t at = 0;
  const auto next_word = [&] {
    while (const std::size_t space = space_length(words.substr(at)))
      at += space;
    const std::size_t begin = at;
    at += quoted_length(words.substr(at));
    while (at < words.size() && space_length(words.substr(at)) == 0)
      ++at;
    return Span{reading.offset + static_cast<std::uint32_t>(begin),
                static_cast<std::uint32_t>(at - begin)};
  };
  if (keyword.empty()) return next_word();
  for (Span word = next_word(); !word.empty(); word = next_word()) {
    if (!equals_word(source.text(word), keyword)) continue;
    const Span behind = next_word();
    return behind.empty() ? reading : behind;
  }
  return reading;
}

}  // namespace lodebook::notebook
