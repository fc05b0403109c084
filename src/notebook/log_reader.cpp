// SPDX-License-Identifier: MIT
#include "log_reader.hpp"

#include <algorithm>
#include <cstring>
#include <lodebook/notebook/longest_line.hpp>

namespace lodebook::notebook {

namespace {

bool is_utf_16(std::string_view text) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return true;
  if (text.size() < 4) return false;
  return (text[0] == 0) != (text[1] == 0) && (text[2] == 0) != (text[3] == 0);
}

bool is_plain(char c) {
  return (c >= ' ' && c < 0x7F) || c == '\t';
}

/// The first white space, `;` or end of text.
std::size_t word_end(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && text[at] != ';' && space_length(text.substr(at)) == 0)
    ++at;
  return at;
}

/// A `#` starts a comment at the start of the line, or behind white space with white space or the
/// line's end behind it.
bool starts_comment(std::string_view text, std::size_t at) {
  if (at == 0) return true;
  if (at + 1 < text.size() && space_length(text.substr(at + 1)) == 0) return false;
  for (std::size_t length = 1; length <= 3 && length <= at; ++length) {
    if (space_length(text.substr(at - length, length)) == length) return true;
  }
  return false;
}

Span sub(Span whole, std::size_t offset, std::size_t length) {
  return {whole.offset + static_cast<std::uint32_t>(offset), static_cast<std::uint32_t>(length)};
}

}  // namespace

LogReader::LogReader(Notebook& notebook, const ReadOptions& options)
    : notebook_(notebook),
      vocabulary_(notebook.kinds),
      faults_(notebook.source, notebook.diagnostics) {
  rules_.rule = options.rule;
}

void LogReader::read() {
  const std::string_view whole = notebook_.source.text();
  if (is_utf_16(whole)) {
    faults_.start(1);
    faults_.add({notebook_.source.line(1).offset, 0}, wording::encoding_utf_16());
    return;
  }
  const std::uint32_t lines = notebook_.source.line_count();
  for (std::uint32_t line = 1; line <= lines; ++line)
    read_line(line);
  settle_zones();
  std::stable_sort(notebook_.diagnostics.begin(), notebook_.diagnostics.end(),
                   [](const Diagnostic& a, const Diagnostic& b) {
                     return a.place.line != b.place.line ? a.place.line < b.place.line
                                                         : a.place.column < b.place.column;
                   });
}

Span LogReader::trim(Span span) const {
  const std::string_view whole = text(span);
  const std::string_view inner = trimmed(whole);
  if (inner.empty()) return {span.end(), 0};
  return sub(span, static_cast<std::size_t>(inner.data() - whole.data()), inner.size());
}

void LogReader::read_line(std::uint32_t line) {
  const Span whole = notebook_.source.line(line);
  const Span inner = trim(whole);
  if (inner.empty()) return;
  faults_.start(line);

  Statement statement;
  statement.line = line;
  statement.entry.line = line;
  statement.entry.column = 1 + count_columns(text({whole.offset, inner.offset - whole.offset}));
  statement.word = sub(inner, 0, word_end(text(inner)));
  statement.entry.statement = inner;
  if (!has_sound_bytes(whole)) return read_unsound(statement);

  const auto meaning = vocabulary_.find(text(statement.word));
  if (meaning) {
    switch (meaning->keyword) {
      case Keyword::area:
      case Keyword::observer:
      case Keyword::instrument:
      case Keyword::unit:
      case Keyword::sample:
      case Keyword::photo:
      case Keyword::note:
        statement.body =
            trim(sub(inner, statement.word.length, inner.length - statement.word.length));
        return dispatch(statement, *meaning);
      default:
        break;
    }
  }
  split_beside(statement, inner);
  if (statement.entry.statement.empty()) return push(statement, Bare{});
  if (!meaning) return read_unknown(statement);
  dispatch(statement, *meaning);
}

bool LogReader::has_sound_bytes(Span whole) {
  if (whole.length > longest_line) {
    faults_.add(sub(whole, 0, 1), wording::line_length(whole.length, longest_line));
    return false;
  }
  const std::string_view bytes = text(whole);
  if (std::all_of(bytes.begin(), bytes.end(), is_plain)) return true;
  for (std::size_t at = 0; at < bytes.size();) {
    const auto byte = static_cast<unsigned char>(bytes[at]);
    const std::size_t length = utf8_length(bytes.substr(at));
    if (length == 0) {
      faults_.add(sub(whole, at, 1), wording::encoding_byte(byte));
      return false;
    }
    // C0 and DEL, and C1, which is U+0080 to U+009F.
    const bool c1 = byte == 0xC2 && static_cast<unsigned char>(bytes[at + 1]) < 0xA0;
    if (c1 || (byte < 0x80 && !is_plain(bytes[at]))) {
      const unsigned code = c1 ? static_cast<unsigned char>(bytes[at + 1]) : byte;
      faults_.add(sub(whole, at, length), wording::control_character(code));
      return false;
    }
    at += length;
  }
  return true;
}

/// A line that cannot be read still counts as a reading where its first word is a kind.
void LogReader::read_unsound(Statement& statement) {
  const auto meaning = vocabulary_.find(text(statement.word));
  if (!meaning) return push_unread(statement);
  statement.body =
      trim({statement.word.end(), statement.entry.statement.end() - statement.word.end()});
  if (meaning->keyword == Keyword::reading) {
    const std::size_t fault = notebook_.diagnostics.size() - 1;
    Reading reading = new_reading(statement, meaning->kind);
    reading.written = statement.body;
    reading.rejected = true;
    notebook_.diagnostics[fault].reading = reading.number;
    push(statement, std::move(reading));
  } else if (meaning->keyword == Keyword::station) {
    // What follows does not belong to the station above.
    in_station_ = true;
    push(statement, StationHeading{});
  } else {
    push_unread(statement);
  }
}

void LogReader::split_beside(Statement& statement, Span whole) const {
  const std::string_view line = text(whole);
  std::size_t end = 0;
  while (end < line.size() && !(line[end] == '#' && starts_comment(line, end)))
    ++end;
  if (end < line.size()) statement.entry.comment = sub(whole, end, line.size() - end);
  if (const std::size_t semicolon = line.find(';'); semicolon < end) {
    statement.entry.remark = trim(sub(whole, semicolon + 1, end - semicolon - 1));
    end = semicolon;
  }
  statement.entry.statement = trim(sub(whole, 0, end));
  const std::uint32_t word = std::min(statement.word.length, statement.entry.statement.length);
  statement.word = {statement.entry.statement.offset, word};
  statement.body =
      trim(sub(statement.entry.statement, word, statement.entry.statement.length - word));
}

void LogReader::read_unknown(Statement& statement) {
  const Span whole = statement.entry.statement;
  const Tokens tokens(notebook_.source.text(), whole);
  const Cursor cursor(notebook_.source.text(), tokens, faults_);
  if (looks_like_attitude(cursor)) {
    const std::string_view kind =
        last_kind_ == no_kind ? std::string_view() : notebook_.kinds[last_kind_].name;
    faults_.add(statement.word, wording::attitude_without_kind(text(whole), kind));
  } else {
    const std::string_view word = text(statement.word);
    faults_.add(statement.word, wording::unknown_start(word, vocabulary_.nearest_to(word)));
  }
  push_unread(statement);
}

void LogReader::dispatch(Statement& statement, Meaning meaning) {
  switch (meaning.keyword) {
    case Keyword::reading:
      return read_reading(statement, meaning.kind);
    case Keyword::station:
      return read_station(statement);
    case Keyword::at:
      return read_at(statement);
    case Keyword::landmark:
      return read_landmark(statement);
    case Keyword::elevation:
      return read_elevation(statement);
    case Keyword::time:
      return read_time(statement);
    case Keyword::sample:
      return read_sample(statement);
    case Keyword::unit:
      return push(statement, Unit{statement.body});
    case Keyword::photo:
      return push(statement, Photo{statement.body});
    case Keyword::note:
      return push(statement, Note{statement.body});
    case Keyword::tally:
      return read_tally(statement);
    case Keyword::kind:
      return read_kind(statement);
    case Keyword::short_word:
      return read_short(statement);
    case Keyword::area:
    case Keyword::observer:
    case Keyword::instrument:
    case Keyword::date:
    case Keyword::dial:
    case Keyword::set:
    case Keyword::declination:
    case Keyword::rule:
    case Keyword::order:
    case Keyword::pace:
    case Keyword::datum:
    case Keyword::accuracy:
    case Keyword::attraction:
      return read_setting(statement, meaning.keyword);
  }
}

bool LogReader::finish(Cursor& cursor, std::string_view help) {
  if (cursor.at_end()) return true;
  cursor.report(cursor.rest(), wording::trailing_text(cursor.text(cursor.rest()), help));
  return false;
}

Notebook read_log(Source source, const ReadOptions& options) {
  Notebook notebook{std::move(source), {}, {}, {}, {}, 0};
  LogReader(notebook, options).read();
  return notebook;
}

}  // namespace lodebook::notebook
