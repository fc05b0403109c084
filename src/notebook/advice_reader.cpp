// SPDX-License-Identifier: MIT
// Advice on lines, and on ends of lines, that cannot be read. It names only what can be read once
// it is typed.
#include <algorithm>
#include <array>
#include <lodebook/notebook/nearest.hpp>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

bool holds_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), is_digit);
}

bool is_facing_word(const Cursor& cursor, std::size_t ahead) {
  constexpr std::array<std::string_view, 4> words = {"overturned", "upright", "facing", "youngs"};
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return cursor.is_word(word, ahead); });
}

/// A figure, a point of the rose, a north or a word about the facing of a plane is part of a
/// reading, never a remark.
bool holds_part_of_reading(const Cursor& cursor) {
  if (holds_digit(cursor.text(cursor.rest()))) return true;
  for (std::size_t ahead = 0; cursor.peek(ahead); ++ahead) {
    if (point_at(cursor, ahead) || is_facing_word(cursor, ahead) ||
        north_at(cursor, ahead) != OwnNorth::none)
      return true;
  }
  return false;
}

/// Whether `word` is a name that the log may declare.
bool is_name(std::string_view word) {
  return !word.empty() && word[0] != '#' && word.find_first_of(",;>") == std::string_view::npos;
}

}  // namespace

std::string near_word(std::string_view typed, std::span<const std::string_view> known) {
  // `vert` for `vertical`, `back-bearing` for `back`.
  constexpr std::size_t shortest = 3;
  for (const std::string_view word : known) {
    const bool cut = typed.size() >= shortest && typed.size() < word.size() &&
                     equals_word(typed, word.substr(0, typed.size()));
    const bool longer = typed.size() > word.size() && typed[word.size()] == '-' &&
                        equals_word(typed.substr(0, word.size()), word);
    if (cut || longer) return std::string(word) + "?";
  }
  const auto word = nearest(typed, known);
  return word && !equals_word(typed, *word) ? std::string(*word) + "?" : std::string();
}

std::nullopt_t fail_word(Cursor& cursor, std::string_view what, std::string_view known) {
  if (cursor.at_end()) return cursor.fail(cursor.here(), wording::incomplete(what, "value", known));
  return cursor.fail(cursor.here(), wording::unknown_word(first_word(cursor), known));
}

std::string_view LogReader::advice_on_tail(const Cursor& cursor) const {
  if (cursor.is_letter_for_zero()) return letter_for_zero;
  if (is_single_) return alone;
  if (cursor.text(cursor.here()) == ",") return "leave the comma out";
  if (cursor.text(cursor.rest()).find('?') != std::string_view::npos)
    return "a reading that is in doubt is marked 'doubtful'";
  if (north_at(cursor) != OwnNorth::none) return "a north stands once, right behind its bearing";
  if (holds_part_of_reading(cursor)) return "leave it out, or type it in a line of its own";
  return {};
}

bool LogReader::reads_as(KindId kind, Span span) {
  Faults faults(source_);
  const Tokens tokens(source_.text(), span, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults);
  if (cursor.at_end()) return false;
  Reading reading;
  reading.kind = kind;
  reading.rejected = true;
  read_attitude(reading, cursor);
  return !reading.rejected && part_of(reading) == Part::whole;
}

std::optional<KindId> LogReader::kind_that_reads(Span span) {
  const std::array<KindId, 3> kinds = {last_kind_, vocabulary_.find("bedding")->kind,
                                       vocabulary_.find("lineation")->kind};
  for (const KindId kind : kinds) {
    if (kind != no_kind && reads_as(kind, span)) return kind;
  }
  return std::nullopt;
}

void LogReader::warn_of_remark(const Statement& statement, KindId kind) {
  const std::string_view remark = text(statement.remark);
  if (!notebook_ || !holds_digit(remark)) return;
  for (std::size_t at = 0; at <= remark.size();) {
    const std::size_t end = repeat_end(remark, at);
    const Span part = trim({statement.remark.offset + static_cast<std::uint32_t>(at),
                            static_cast<std::uint32_t>(end - at)});
    if (!reads_as(kind, part)) return;
    at = end + 1;
  }
  const std::uint32_t end = statement.whole.end();
  faults_.add(statement.remark,
              mended(wording::remark_reading(remark), {end, statement.remark.offset - end}, ", "));
}

std::optional<Span> LogReader::attitude_within(const Statement& statement) {
  const Tokens tokens(source_.text(), statement.whole);
  Cursor cursor(source_.text(), tokens, faults_);
  std::optional<Span> first;
  for (cursor.skip(); !cursor.at_end(); cursor.skip()) {
    if (!looks_like_attitude(cursor) || !cursor.peek()->spaced || !cursor.peek(1)) continue;
    if (!first) first = cursor.rest();
    if (kind_that_reads(cursor.rest())) return cursor.rest();
  }
  return first;
}

std::string LogReader::advice_on_unknown(const Statement& statement) {
  const std::string_view word = text(statement.word);
  const auto attitude = attitude_within(statement);
  if (!attitude)
    return wording::advice_on_words(word, is_name(word) && !vocabulary_.is_taken(word));
  const auto kind = kind_that_reads(*attitude);
  const bool is_behind = attitude->offset == statement.body.offset;
  if (!is_behind || !is_name(word) || vocabulary_.is_taken(word))
    return wording::advice_on_reading(kind ? kinds_[*kind].name : std::string(), text(*attitude));
  std::uint32_t count = 1;
  if (notebook_) {
    const auto counted = notebook_->waiting.words.find(fold_case(word));
    if (counted != notebook_->waiting.words.end()) count = counted->second;
  } else if (waits_.words.size() < most_known_words) {
    ++waits_.words[fold_case(word)];
  }
  const bool is_line = kind && kinds_[*kind].type == Kind::Type::line;
  return wording::advice_on_kind(word, is_line, count);
}

void LogReader::read_unknown(Statement& statement) {
  const std::string_view word = text(statement.word);
  const auto near = vocabulary_.nearest_to(word);
  const Tokens tokens(source_.text(), statement.whole);
  const Cursor cursor(source_.text(), tokens, faults_);
  if (looks_like_attitude(cursor)) {
    const auto kind = kind_that_reads(statement.whole);
    const std::string name = kind ? kinds_[*kind].name : std::string();
    Diagnostic fault = wording::attitude_without_kind(text(statement.whole), name);
    if (kind) fault = mended(std::move(fault), {statement.whole.offset, 0}, name + " ");
    faults_.add(statement.word, std::move(fault));
    return push_unread(statement);
  }
  if (near && vocabulary_.find(*near)->keyword == Keyword::station && !in_heading_) {
    // The readings that follow must not count for the station above.
    begin_station();
    faults_.add(statement.word, mended(wording::misspelt_station(word), statement.word, "station"));
    return push(statement, StationHeading{});
  }
  if (near) {
    faults_.add(statement.word, mended(wording::unknown_start(word, std::string(*near) + "?"),
                                       statement.word, std::string(*near)));
  } else {
    faults_.add(statement.word, wording::unknown_start(word, advice_on_unknown(statement)));
  }
  push_unread(statement);
}

}  // namespace lodebook::notebook
