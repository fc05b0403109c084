// SPDX-License-Identifier: MIT
// The text of one log, as typed, and where things stand in it.
#pragma once

#include <cassert>
#include <cstdint>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace lodebook::notebook {

/// A range of bytes in the text of a log.
struct Span {
  std::uint32_t offset = 0;
  std::uint32_t length = 0;

  bool empty() const { return length == 0; }
  std::uint32_t end() const { return offset + length; }
};

/// A place as people count it: line and columns from 1, columns in code points, `end_column` one
/// past the last. A place always has at least one column.
struct Place {
  /// 0 in a heading file, because its lines come before the first of the log.
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t end_column = 2;
  /// Which heading file, from 1, and the line there; 0 in the log itself.
  std::uint32_t heading = 0;
  std::uint32_t heading_line = 0;

  /// The line in its own file.
  std::uint32_t shown_line() const { return heading == 0 ? line : heading_line; }
  friend bool operator==(const Place&, const Place&) = default;
};
/// A key for sorting places in the order of the text.
inline std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, std::uint32_t> in_order(
    const Place& place) {
  return {place.line, place.heading, place.heading_line, place.column};
}
inline bool on_one_line(const Place& a, const Place& b) {
  return a.line == b.line && a.heading == b.heading && a.heading_line == b.heading_line;
}

/// Where a range of bytes, which may cover several lines, begins and ends: lines and columns from
/// 1, columns in code points, `end_column` one past the last. An empty span ends where it begins.
struct Extent {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t end_line = 1;
  std::uint32_t end_column = 1;
};

/// U+FEFF in UTF-8, which some editors write at the start of a file.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// How the bytes of a file encode its text.
enum class Encoding : std::uint8_t { utf_8, windows_1252 };

/// A log's bytes and its lines. Lines end at LF, CR LF or CR; a byte-order mark is skipped. Bytes
/// that are not UTF-8 are kept; each counts as one column.
class Source {
 public:
  /// `name` is shown in messages. `text` has at most `max_size` bytes and is UTF-8 already;
  /// `encoding` is that of its file.
  Source(std::string name, std::string text, Encoding encoding = Encoding::utf_8);

  static constexpr std::size_t max_size = 0xFFFF'FFFE;

  /// Adds a heading file. Its lines count as line 0, before those of the log. Its text is stored
  /// behind that of the log, so that spans can point to it; all texts together have at most
  /// `max_size` bytes. `is_named`: a statement of the log names it.
  void add_heading(std::string name, std::string_view text, bool is_named);
  /// Adds a heading file that a statement names but that cannot be read. `why` is the reason.
  void add_missing_heading(std::string why);
  /// Adds the headings of `other`, from which this text was made.
  void take_headings(const Source& other);
  std::uint32_t heading_count() const { return static_cast<std::uint32_t>(headings_.size()); }
  /// Number of lines of a heading file. `heading` counts from 1, here and below.
  std::uint32_t heading_line_count(std::uint32_t heading) const {
    return static_cast<std::uint32_t>(headings_[heading - 1].starts.size());
  }
  bool is_heading_named(std::uint32_t heading) const { return headings_[heading - 1].is_named; }
  /// Why the file cannot be read; empty if it can.
  const std::string& heading_fault(std::uint32_t heading) const {
    return headings_[heading - 1].fault;
  }
  /// Line `number` of a heading file, from 1, without its end. The line must exist.
  Span heading_line(std::uint32_t heading, std::uint32_t number) const {
    const Heading& file = headings_[heading - 1];
    return cut_line(file.starts, number, file.end);
  }

  const std::string& name() const { return name_; }
  /// The name of the file that has `place`.
  const std::string& name_of(const Place& place) const {
    return place.heading == 0 ? name_ : headings_[place.heading - 1].name;
  }
  Encoding encoding() const { return encoding_; }
  /// The text of the log, and behind it the texts of its headings.
  std::string_view text() const { return text_; }
  /// The text of the log alone.
  std::string_view own_text() const { return std::string_view(text_).substr(0, own_size_); }
  std::string_view text(Span span) const {
    return std::string_view(text_).substr(span.offset, span.length);
  }

  /// Number of lines; a missing last newline makes no difference.
  std::uint32_t line_count() const { return static_cast<std::uint32_t>(starts_.size()); }
  /// The bytes of line `number` (from 1) without its end; empty behind the last line.
  Span line(std::uint32_t number) const {
    assert(number >= 1);
    if (number > line_count()) return {own_size_, 0};
    return cut_line(starts_, number, own_size_);
  }
  /// The line of a place, without its end.
  Span line_of(const Place& place) const {
    return place.heading == 0 ? line(place.line) : heading_line(place.heading, place.heading_line);
  }
  /// The place of `span`, which must be in line `number` of the log, or in a heading file if
  /// `number` is 0.
  Place place(std::uint32_t number, Span span) const;
  /// Where `span` begins and ends.
  Extent extent(Span span) const;

 private:
  /// A heading: where its lines start in the text, and where it ends.
  struct Heading {
    std::string name;
    std::vector<std::uint32_t> starts;
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    bool is_named = false;
    std::string fault;
  };
  /// Line `number` without its end. `starts` are the starts of all lines; the text of the file ends
  /// at `size`.
  Span cut_line(const std::vector<std::uint32_t>& starts, std::uint32_t number,
                std::uint32_t size) const {
    const std::uint32_t start = starts[number - 1];
    std::uint32_t end = number < starts.size() ? starts[number] : size;
    if (end > start && text_[end - 1] == '\n') --end;
    if (end > start && text_[end - 1] == '\r') --end;
    return {start, end - start};
  }
  /// The heading file that has `offset`, from 1; 0 for the log.
  std::uint32_t heading_at(std::uint32_t offset) const;
  /// Number of the line that has the byte at `offset`. A line end belongs to its line.
  static std::uint32_t line_at(const std::vector<std::uint32_t>& starts, std::uint32_t offset);

  std::string name_;
  std::string text_;
  Encoding encoding_;
  std::uint32_t own_size_ = 0;
  std::vector<std::uint32_t> starts_;
  std::vector<Heading> headings_;
};

/// Code points in `text`; a byte that is not UTF-8 counts as one.
std::uint32_t count_columns(std::string_view text);

/// Bytes of the first `columns` columns of `text`, or of all of it if it has fewer.
std::size_t columns_length(std::string_view text, std::uint32_t columns);

/// Bytes of the first column of `text`, which is not empty.
std::size_t column_length(std::string_view text);

/// Length in bytes of the valid UTF-8 sequence at the start of `text`; 0 if it is not valid UTF-8.
/// Overlong forms, surrogates and values over U+10FFFF are not valid (RFC 3629).
std::size_t utf8_length(std::string_view text);

/// `text` with every byte that is not UTF-8 replaced by U+FFFD, for outputs that must be UTF-8.
std::string valid_utf8(std::string_view text);

/// Converts Windows-1252 to UTF-8. The five bytes without a meaning there stay as they are, so that
/// the reader reports them.
std::string utf8_from_windows_1252(std::string_view text);

}  // namespace lodebook::notebook
