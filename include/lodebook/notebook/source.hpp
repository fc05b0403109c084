// SPDX-License-Identifier: MIT
// The text of one log, as typed, and where things stand in it.
#pragma once

#include <cassert>
#include <cstdint>
#include <string>
#include <string_view>
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
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t end_column = 2;
};

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

  const std::string& name() const { return name_; }
  Encoding encoding() const { return encoding_; }
  std::string_view text() const { return text_; }
  std::string_view text(Span span) const {
    return std::string_view(text_).substr(span.offset, span.length);
  }

  /// Number of lines; a missing last newline makes no difference.
  std::uint32_t line_count() const { return static_cast<std::uint32_t>(starts_.size()); }
  /// The bytes of line `number` (from 1) without its end; none behind the last.
  Span line(std::uint32_t number) const {
    assert(number >= 1);
    const auto size = static_cast<std::uint32_t>(text_.size());
    if (number > line_count()) return {size, 0};
    const std::uint32_t start = starts_[number - 1];
    std::uint32_t end = number < line_count() ? starts_[number] : size;
    if (end > start && text_[end - 1] == '\n') --end;
    if (end > start && text_[end - 1] == '\r') --end;
    return {start, end - start};
  }
  /// The place of `span`, which must lie in line `number`.
  Place place(std::uint32_t number, Span span) const;
  /// Where `span` begins and ends.
  Extent extent(Span span) const;

 private:
  /// Number of the line that holds the byte at `offset`, its line end included.
  std::uint32_t line_at(std::uint32_t offset) const;

  std::string name_;
  std::string text_;
  Encoding encoding_;
  std::vector<std::uint32_t> starts_;
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
