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

/// Some bytes of a log.
struct Span {
  std::uint32_t offset = 0;
  std::uint32_t length = 0;

  bool empty() const { return length == 0; }
  std::uint32_t end() const { return offset + length; }
};

/// Where a reader looks: line and columns from 1, columns in code points, `end_column` one past the
/// last. A place always has at least one column.
struct Place {
  /// 0 in a heading file, whose lines stand before the log's first.
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
/// For the order of the text.
inline std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, std::uint32_t> in_order(
    const Place& place) {
  return {place.line, place.heading, place.heading_line, place.column};
}
inline bool on_one_line(const Place& a, const Place& b) {
  return a.line == b.line && a.heading == b.heading && a.heading_line == b.heading_line;
}

/// Where bytes that may reach over lines begin and end: lines and columns from 1, columns in code
/// points, `end_column` one past the last. An empty span ends where it begins.
struct Extent {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t end_line = 1;
  std::uint32_t end_column = 1;
};

/// U+FEFF in UTF-8, which some editors put at the head of a file.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// What the bytes of a file stand for.
enum class Encoding : std::uint8_t { utf_8, windows_1252 };

/// A log's bytes and its lines. Lines end at LF, CR LF or CR; a byte-order mark is skipped. Bytes
/// that are not UTF-8 are kept; each counts as one column.
class Source {
 public:
  /// `name` is how the log is shown; `text` is at most 4 GiB - 1 bytes (`max_size`), UTF-8 by now,
  /// whatever its `encoding` was.
  Source(std::string name, std::string text, Encoding encoding = Encoding::utf_8);

  static constexpr std::size_t max_size = 0xFFFF'FFFE;

  /// Adds a heading file, whose lines stand before the log's own, as line 0. Its text lies behind
  /// the log's, where spans reach it. `is_named`: by a statement of the log.
  void add_heading(std::string name, std::string_view text, bool is_named);
  /// One that a statement names in vain.
  void add_missing_heading(std::string why);
  /// The headings of another source, for a text that came of it.
  void take_headings(const Source& other);
  std::uint32_t heading_count() const { return static_cast<std::uint32_t>(headings_.size()); }
  /// Of a heading, from 1.
  std::uint32_t heading_line_count(std::uint32_t heading) const {
    return static_cast<std::uint32_t>(headings_[heading - 1].starts.size());
  }
  bool is_heading_named(std::uint32_t heading) const { return headings_[heading - 1].is_named; }
  /// Why it is missing; empty where it is not.
  const std::string& heading_fault(std::uint32_t heading) const {
    return headings_[heading - 1].fault;
  }
  Span heading_line(std::uint32_t heading, std::uint32_t number) const {
    const Heading& file = headings_[heading - 1];
    return cut_line(file.starts, number, file.end);
  }

  const std::string& name() const { return name_; }
  /// Of the file that holds a place.
  const std::string& name_of(const Place& place) const {
    return place.heading == 0 ? name_ : headings_[place.heading - 1].name;
  }
  Encoding encoding() const { return encoding_; }
  /// The log's, and behind it that of its headings.
  std::string_view text() const { return text_; }
  std::string_view own_text() const { return std::string_view(text_).substr(0, own_size_); }
  std::string_view text(Span span) const {
    return std::string_view(text_).substr(span.offset, span.length);
  }

  /// Number of lines; a missing last newline makes no difference.
  std::uint32_t line_count() const { return static_cast<std::uint32_t>(starts_.size()); }
  /// The bytes of line `number` (from 1) without its end; none behind the last.
  Span line(std::uint32_t number) const {
    assert(number >= 1);
    if (number > line_count()) return {own_size_, 0};
    return cut_line(starts_, number, own_size_);
  }
  /// The line of a place, without its end.
  Span line_of(const Place& place) const {
    return place.heading == 0 ? line(place.line) : heading_line(place.heading, place.heading_line);
  }
  /// The place of `span`, which must lie in line `number`, or for 0 in a heading.
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
  /// A line without its end, of a file whose text ends at `size`.
  Span cut_line(const std::vector<std::uint32_t>& starts, std::uint32_t number,
                std::uint32_t size) const {
    const std::uint32_t start = starts[number - 1];
    std::uint32_t end = number < starts.size() ? starts[number] : size;
    if (end > start && text_[end - 1] == '\n') --end;
    if (end > start && text_[end - 1] == '\r') --end;
    return {start, end - start};
  }
  /// The heading that holds `offset`, from 1; 0 for the log.
  std::uint32_t heading_at(std::uint32_t offset) const;
  /// Number of the line that holds the byte at `offset`, its line end included.
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

/// Bytes of the first so many columns of `text`, or of all of it where it has fewer.
std::size_t columns_length(std::string_view text, std::uint32_t columns);

/// Bytes of the first column of `text`, which is not empty.
std::size_t column_length(std::string_view text);

/// Length in bytes of the valid UTF-8 sequence at the start of `text`; 0 if it is not valid UTF-8.
/// Overlong forms, surrogates and values over U+10FFFF are not valid (RFC 3629).
std::size_t utf8_length(std::string_view text);

/// `text` with every byte that is not UTF-8 replaced by U+FFFD, for outputs that must be UTF-8.
std::string valid_utf8(std::string_view text);

/// Windows-1252 as UTF-8. The five bytes without a meaning there are left as they are, so that the
/// reader reports them.
std::string utf8_from_windows_1252(std::string_view text);

}  // namespace lodebook::notebook
