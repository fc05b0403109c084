// SPDX-License-Identifier: MIT
#include "log_reader.hpp"

#include <algorithm>
#include <array>
#include <lodebook/notebook/longest_line.hpp>
#include <lodebook/notebook/plain.hpp>
#include <utility>

namespace lodebook::notebook {

namespace {

/// A guess, to reserve memory: about ten lines per station.
constexpr std::size_t lines_a_name = 8;

// Which bytes of a line are special.
constexpr std::uint8_t is_strange =
    1;  ///< a control character, or part of a character beyond ASCII
constexpr std::uint8_t is_semicolon = 2;
constexpr std::uint8_t is_hash = 4;
constexpr std::uint8_t is_blank = 8;
constexpr std::array<std::uint8_t, 256> meanings_of_bytes() {
  std::array<std::uint8_t, 256> meanings{};
  for (std::size_t byte = 0; byte < meanings.size(); ++byte) {
    if ((byte < ' ' && byte != '\t') || byte >= 0x7F) meanings[byte] = is_strange;
  }
  meanings[';'] = is_semicolon;
  meanings['#'] = is_hash;
  meanings[' '] = is_blank;
  meanings['\t'] = is_blank;
  return meanings;
}
constexpr std::array<std::uint8_t, 256> meaning_of_byte = meanings_of_bytes();

bool is_sound(char c) {
  return (meaning_of_byte[static_cast<unsigned char>(c)] & is_strange) == 0;
}

/// Whether the `#` at `at` starts a comment: at the start of the line, or between white space and
/// white space or the end of the line.
bool starts_comment(std::string_view text, std::size_t at) {
  if (at == 0) return true;
  if (at + 1 < text.size() && space_length(text.substr(at + 1)) == 0) return false;
  return ends_with_space(text.substr(0, at));
}

Span sub(Span whole, std::size_t offset, std::size_t length) {
  return {whole.offset + static_cast<std::uint32_t>(offset), static_cast<std::uint32_t>(length)};
}

}  // namespace

std::size_t word_length(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && text[at] != ';' && !starts_with_space(text, at))
    ++at;
  return at;
}

LogReader::LogReader(const Source& source, const ReadOptions& options)
    : source_(source),
      options_(options),
      vocabulary_(kinds_),
      faults_(source, own_block_.diagnostics),
      rules_{options.rule, options.order.planes, options.order.lines} {
  faults_.ask(*this);
}

LogReader::LogReader(const Notebook& notebook) : LogReader(notebook.source, notebook.options) {
  notebook_ = &notebook;
}

bool LogReader::is_utf_16() const {
  const std::string_view whole = source_.text();
  if (whole.starts_with("\xFF\xFE") || whole.starts_with("\xFE\xFF")) return true;
  if (whole.size() < 4) return false;
  return (whole[0] == 0) != (whole[1] == 0) && (whole[2] == 0) != (whole[3] == 0);
}

void LogReader::look_through(Notebook& notebook) {
  const std::uint32_t lines = is_utf_16() ? 0 : source_.line_count();
  notebook.first_reading_line = lines + 1;
  names_.expect(lines / lines_a_name);
  read_headings();
  for (std::uint32_t line = 1; line <= lines; ++line) {
    if (is_lone_attitude(line)) {
      ++reading_count_;
    } else {
      read_line(line);
      // The second pass finds the faults again.
      own_block_.diagnostics.clear();
    }
    if (reading_count_ > 0)
      notebook.first_reading_line = std::min(notebook.first_reading_line, line);
  }
  end_void(VoidSetting::set);
  end_void(VoidSetting::declination);
  settle_zones(notebook);
  notebook.waiting = std::move(waits_);
  notebook.entries = std::move(own_block_.entries);
  notebook.names = std::move(names_);
  notebook.kinds = std::move(kinds_);
  notebook.reading_count = reading_count_;
}

bool LogReader::is_lone_attitude(std::uint32_t line) {
  const Span whole = source_.line(line);
  const std::string_view bytes = text(whole);
  if (bytes.size() > longest_line || !is_plain(bytes, ',')) return false;
  const std::size_t begin = std::min(bytes.find_first_not_of(' '), bytes.size());
  const std::size_t end = std::min(bytes.find(' ', begin), bytes.size());
  const auto meaning = meaning_of(sub(whole, begin, end - begin));
  if (!meaning || !is_attitude(*meaning) || meaning->asked_at != 0) return false;
  const std::string_view body = trimmed(bytes.substr(end));
  // `x3` makes several readings of one, also before a remark.
  if (body.find_first_of("xX") != std::string_view::npos) return false;
  return !may_wait(meaning->kind, body);
}

bool LogReader::read_block(Block& block) {
  const std::uint32_t lines = source_.line_count();
  if (started_ && ahead_.entries.empty()) return false;
  block.is_station = std::exchange(started_, true);
  block.first_line = block.is_station ? ahead_.entries.front().line : 1;
  block.last_line = std::max(1u, lines);
  block.entries.clear();
  block.diagnostics.clear();
  std::swap(block.entries, ahead_.entries);
  std::swap(block.diagnostics, ahead_.diagnostics);
  block_ = &block;
  faults_.collect_in(block.diagnostics);
  if (next_line_ == 1 && is_utf_16()) {
    faults_.start(1);
    faults_.add({source_.line(1).offset, 0}, wording::encoding_utf_16());
    next_line_ = lines + 1;
  }
  if (!block.is_station) read_headings();
  while (next_line_ <= lines) {
    const std::size_t entries = block.entries.size();
    const std::size_t faults = block.diagnostics.size();
    read_line(next_line_++);
    if (block.entries.size() == entries ||
        !std::holds_alternative<StationHeading>(block.entries.back().what))
      continue;
    // The heading of the next station ends this block. It is always one entry.
    block.last_line = next_line_ - 2;
    ahead_.entries.push_back(block.entries.back());
    block.entries.pop_back();
    const auto first = block.diagnostics.begin() + static_cast<std::ptrdiff_t>(faults);
    ahead_.diagnostics.assign(std::make_move_iterator(first),
                              std::make_move_iterator(block.diagnostics.end()));
    block.diagnostics.erase(first, block.diagnostics.end());
    break;
  }
  std::stable_sort(block.diagnostics.begin(), block.diagnostics.end(),
                   [](const Diagnostic& a, const Diagnostic& b) {
                     return in_order(a.place) < in_order(b.place);
                   });
  return true;
}

Span LogReader::trim(Span span) const {
  const std::string_view whole = text(span);
  const std::string_view inner = trimmed(whole);
  if (inner.empty()) return {span.end(), 0};
  return sub(span, static_cast<std::size_t>(inner.data() - whole.data()), inner.size());
}

LogReader::Statement LogReader::outline(std::uint32_t line, Span whole) const {
  const std::string_view bytes = text(whole);
  Statement statement;
  statement.line = line;
  const auto meaning_at = [&](std::size_t at) -> unsigned {
    return meaning_of_byte[static_cast<unsigned char>(bytes[at])];
  };
  std::size_t begin = 0;
  while (begin < bytes.size() && meaning_at(begin) == is_blank)
    ++begin;
  std::size_t word_end = begin;
  while (word_end < bytes.size() && (meaning_at(word_end) & (is_blank | is_semicolon)) == 0)
    ++word_end;
  statement.bytes = is_plain(bytes, ';', '#') ? 0 : meanings_in(whole);
  std::size_t end = bytes.size();
  while (end > begin && meaning_at(end - 1) == is_blank)
    --end;
  statement.whole = sub(whole, begin, end - begin);
  statement.word = sub(whole, begin, word_end - begin);
  statement.column = 1 + static_cast<std::uint32_t>(begin);
  if ((statement.bytes & is_strange) == 0) return statement;
  // There may be no-break spaces.
  statement.whole = trim(whole);
  statement.word = sub(statement.whole, 0, word_length(text(statement.whole)));
  statement.column = 1 + count_columns(text({whole.offset, statement.whole.offset - whole.offset}));
  return statement;
}

void LogReader::read_line(std::uint32_t line, Span whole) {
  Statement statement = outline(line, whole);
  if (statement.whole.empty()) return;
  faults_.start(line);
  judged_ = {};
  const bool may_be_unsound = (statement.bytes & is_strange) != 0 || whole.length > longest_line;
  if (may_be_unsound && !has_sound_bytes(whole)) return read_unsound(statement);

  const auto meaning = meaning_of(statement.word);
  const bool is_asked = meaning && meaning->asked_at != 0;
  if (meaning && !is_asked) {
    switch (meaning->keyword) {
      case Keyword::area:
      case Keyword::observer:
      case Keyword::instrument:
      case Keyword::unit:
      case Keyword::sample:
      case Keyword::photo:
      case Keyword::note:
        statement.body = body_of(statement);
        at_head_ = at_head_ && in_heading_;
        return dispatch(statement, *meaning);
      default:
        break;
    }
  }
  split_beside(statement);
  if (statement.whole.empty()) return push(statement, Bare{});
  const bool is_heading = meaning && meaning->keyword == Keyword::heading;
  at_head_ = at_head_ && (in_heading_ || is_heading);
  if (!meaning) return read_unknown(statement);
  if (is_asked) return read_waiting(statement, *meaning);
  dispatch(statement, *meaning);
}

std::optional<Meaning> LogReader::meaning_of(Span word) {
  if (!last_word_.empty() && text(word) == text(last_word_)) return last_meaning_;
  const auto meaning = vocabulary_.find(text(word));
  if (meaning) {
    last_word_ = word;
    last_meaning_ = *meaning;
  }
  return meaning;
}

std::uint8_t LogReader::meanings_in(Span line) const {
  unsigned found = 0;
  for (const char c : text(line))
    found |= meaning_of_byte[static_cast<unsigned char>(c)];
  return static_cast<std::uint8_t>(found);
}

bool LogReader::has_sound_bytes(Span whole) {
  if (whole.length > longest_line) {
    faults_.add(sub(whole, 0, 1), wording::line_length(whole.length, longest_line));
    return false;
  }
  const std::string_view bytes = text(whole);
  if (std::all_of(bytes.begin(), bytes.end(), is_sound)) return true;
  for (std::size_t at = 0; at < bytes.size();) {
    const auto byte = static_cast<unsigned char>(bytes[at]);
    const std::size_t length = utf8_length(bytes.substr(at));
    if (length == 0) {
      faults_.add(sub(whole, at, 1), wording::encoding_byte(byte, source_.encoding()));
      return false;
    }
    // The control characters: C0, DEL, and C1, which is U+0080 to U+009F.
    const bool c1 = byte == 0xC2 && static_cast<unsigned char>(bytes[at + 1]) < 0xA0;
    if (c1 || (byte < 0x80 && !is_sound(bytes[at]))) {
      const unsigned code = c1 ? static_cast<unsigned char>(bytes[at + 1]) : byte;
      faults_.add(sub(whole, at, length),
                  mended(wording::control_character(code), sub(whole, at, length), {}));
      return false;
    }
    at += length;
  }
  return true;
}

/// A line that cannot be read still counts as a reading if its first word is a kind, because every
/// reading typed gets a row.
void LogReader::read_unsound(Statement& statement) {
  statement.body = body_of(statement);
  auto meaning = vocabulary_.find(text(statement.word));
  if (meaning && meaning->keyword == Keyword::ask) {
    statement = asked(statement);
    meaning = vocabulary_.find(text(statement.word));
  }
  if (!meaning || in_heading_) return push_unread(statement);
  if (meaning->keyword == Keyword::reading) {
    const std::size_t fault = block_->diagnostics.size() - 1;
    Reading reading = new_reading(statement, meaning->kind);
    reading.written = statement.body;
    reading.rejected = true;
    block_->diagnostics[fault].reading = reading.number;
    push(statement, reading);
  } else if (meaning->keyword == Keyword::station) {
    begin_station();
    push(statement, StationHeading{});
  } else {
    push_unread(statement);
  }
}

bool LogReader::opens_name(std::string_view line, std::size_t at) const {
  const std::string_view before = trimmed(line.substr(0, at));
  if (before.size() == at || before.empty()) return false;
  std::size_t begin = before.size();
  while (begin > 0 && space_length(before.substr(begin - 1)) == 0)
    --begin;
  const std::string_view word = before.substr(begin);
  if (equals_word(word, "to") || equals_word(word, "from")) return true;
  const auto meaning = vocabulary_.find(word);
  if (!meaning) return false;
  const bool is_sight =
      meaning->keyword == Keyword::reading && kinds_[meaning->kind].type == Kind::Type::sight;
  if (!is_sight && meaning->keyword != Keyword::station && meaning->keyword != Keyword::landmark &&
      meaning->keyword != Keyword::heading)
    return false;
  // The word before the quote is the first of the statement.
  if (begin == 0) return true;
  const auto first = vocabulary_.find(before.substr(0, word_length(before)));
  return first && first->keyword == Keyword::ask;
}

/// `line` with its quoted names blanked out, so that no `;` or `#` in them begins a remark or
/// comment.
std::string LogReader::without_names(std::string_view line) const {
  std::string plain(line);
  for (std::size_t at = 0; at < line.size(); ++at) {
    const std::size_t length = opens_name(line, at) ? quoted_length(line.substr(at)) : 0;
    std::fill_n(plain.begin() + static_cast<std::ptrdiff_t>(at), length, '"');
    at += length > 0 ? length - 1 : 0;
    if (line[at] == ';') break;
  }
  return plain;
}

void LogReader::split_beside(Statement& statement) const {
  const Span whole = statement.whole;
  if ((statement.bytes & (is_hash | is_semicolon)) != 0) {
    std::string_view line = text(whole);
    std::string plain;
    if (line.find('"') != std::string_view::npos) line = plain = without_names(line);
    std::size_t end = line.find('#');
    while (end < line.size() && !starts_comment(line, end))
      end = line.find('#', end + 1);
    end = std::min(end, line.size());
    if (end < line.size()) statement.comment = sub(whole, end, line.size() - end);
    if (const std::size_t semicolon = line.find(';'); semicolon < end) {
      statement.remark = trim(sub(whole, semicolon + 1, end - semicolon - 1));
      end = semicolon;
    }
    statement.whole = trim(sub(whole, 0, end));
  }
  const std::uint32_t word = std::min(statement.word.length, statement.whole.length);
  statement.word = {statement.whole.offset, word};
  statement.body = body_of(statement);
}

Span LogReader::body_of(const Statement& statement) const {
  const std::uint32_t word = statement.word.length;
  return trim(sub(statement.whole, word, statement.whole.length - word));
}

void LogReader::dispatch(Statement& statement, Meaning meaning) {
  judged_ = {statement.word, statement.body, is_attitude(meaning), statement.body.end()};
  if (in_heading_ && is_barred(meaning)) {
    faults_.add(statement.word, wording::not_in_heading(text(statement.word)));
    return push_unread(statement);
  }
  switch (meaning.keyword) {
    case Keyword::ask:
      return read_ask(statement);
    case Keyword::heading:
      return read_heading(statement);
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

bool LogReader::finish(Cursor& cursor, std::string_view help) const {
  if (cursor.at_end()) return true;
  if (help.empty() || cursor.is_letter_for_zero()) help = advice_on_tail(cursor);
  const Span tail = cursor.rest();
  Diagnostic fault = wording::trailing_text(cursor.text(tail), help);
  if (help.empty()) fault = mended(std::move(fault), {tail.offset, 0}, std::string(remark_mark));
  cursor.report(tail, std::move(fault));
  return false;
}

BlockReader::BlockReader(const Notebook& notebook)
    : reader_(std::make_unique<LogReader>(notebook)) {}
BlockReader::~BlockReader() = default;

bool BlockReader::next(Block& block) {
  return reader_->read_block(block);
}

}  // namespace lodebook::notebook
