// SPDX-License-Identifier: MIT
#include <lodebook/notebook/source.hpp>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstring>

namespace lodebook::notebook {

namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";

/// Whether all bytes of these words are ASCII.
template <std::size_t Words>
bool are_ascii(const char* bytes) {
  std::array<std::uint64_t, Words> words;
  std::memcpy(words.data(), bytes, sizeof words);
  std::uint64_t all = 0;
  for (const std::uint64_t word : words)
    all |= word;
  return (all & 0x8080808080808080U) == 0;
}

/// Bytes of ASCII at the start of `text`, counted eight or more at a time, so that up to seven may
/// be left. It must be fast: a line with many faults is counted again for each of them.
std::size_t ascii_length(std::string_view text) {
  std::size_t at = 0;
  while (at + 64 <= text.size() && are_ascii<8>(text.data() + at))
    at += 64;
  while (at + 8 <= text.size() && are_ascii<1>(text.data() + at))
    at += 8;
  return at;
}

unsigned byte(char c) {
  return static_cast<unsigned char>(c);
}

void append_utf8(std::string& out, unsigned code) {
  if (code < 0x800) {
    out += static_cast<char>(0xC0 | (code >> 6));
  } else {
    out += static_cast<char>(0xE0 | (code >> 12));
    out += static_cast<char>(0x80 | ((code >> 6) & 0x3F));
  }
  out += static_cast<char>(0x80 | (code & 0x3F));
}

/// The starts of the lines of `text` from `begin` on, behind a byte-order mark there.
std::vector<std::uint32_t> line_starts(const std::string& text, std::size_t begin) {
  std::vector<std::uint32_t> starts;
  const std::size_t size = text.size();
  starts.reserve(static_cast<std::size_t>(std::count(
                     text.begin() + static_cast<std::ptrdiff_t>(begin), text.end(), '\n')) +
                 1);
  // A search for one byte is much faster than for two, and few logs have both.
  const bool returns = text.find('\r', begin) != std::string::npos;
  if (text.compare(begin, byte_order_mark.size(), byte_order_mark) == 0)
    begin += byte_order_mark.size();
  for (std::size_t start = begin; start < size;) {
    starts.push_back(static_cast<std::uint32_t>(start));
    const std::size_t end = returns ? text.find_first_of("\r\n", start) : text.find('\n', start);
    if (end == std::string::npos) break;
    start = end + (text.compare(end, 2, "\r\n") == 0 ? 2 : 1);
  }
  return starts;
}

}  // namespace

Source::Source(std::string name, std::string text, Encoding encoding)
    : name_(std::move(name)),
      text_(std::move(text)),
      encoding_(encoding),
      own_size_(static_cast<std::uint32_t>(text_.size())),
      starts_(line_starts(text_, 0)) {
  assert(text_.size() <= max_size);
}

void Source::add_heading(std::string name, std::string_view text, bool is_named) {
  text_ += '\n';
  const std::size_t begin = text_.size();
  text_ += text;
  assert(text_.size() <= max_size);
  headings_.push_back({std::move(name),
                       line_starts(text_, begin),
                       static_cast<std::uint32_t>(begin),
                       static_cast<std::uint32_t>(text_.size()),
                       is_named,
                       {}});
}

void Source::add_missing_heading(std::string why) {
  const auto end = static_cast<std::uint32_t>(text_.size());
  headings_.push_back({{}, {}, end, end, true, std::move(why)});
}

void Source::take_headings(const Source& other) {
  for (const Heading& heading : other.headings_) {
    if (heading.fault.empty()) {
      add_heading(heading.name, other.text().substr(heading.begin, heading.end - heading.begin),
                  heading.is_named);
    } else {
      add_missing_heading(heading.fault);
    }
  }
}

Place Source::place(std::uint32_t number, Span span) const {
  Place place;
  Span whole;
  if (number == 0) {
    place.heading = heading_at(span.offset);
    place.heading_line = line_at(headings_[place.heading - 1].starts, span.offset);
    whole = heading_line(place.heading, place.heading_line);
  } else {
    whole = line(number);
  }
  assert(span.offset >= whole.offset && span.end() <= whole.end());
  place.line = number;
  place.column = 1 + count_columns(text({whole.offset, span.offset - whole.offset}));
  place.end_column = place.column + std::max<std::uint32_t>(1, count_columns(text(span)));
  return place;
}

std::uint32_t Source::heading_at(std::uint32_t offset) const {
  const auto* const found = std::find_if(
      headings_.data(), headings_.data() + headings_.size(), [offset](const Heading& heading) {
        return !heading.starts.empty() && offset >= heading.starts.front() && offset <= heading.end;
      });
  return found == headings_.data() + headings_.size()
             ? 0
             : static_cast<std::uint32_t>(found - headings_.data()) + 1;
}

std::uint32_t Source::line_at(const std::vector<std::uint32_t>& starts, std::uint32_t offset) {
  const auto behind = std::ranges::upper_bound(starts, offset);
  return std::max(1U, static_cast<std::uint32_t>(behind - starts.begin()));
}

Extent Source::extent(Span span) const {
  const std::uint32_t heading = heading_at(span.offset);
  const auto& starts = heading == 0 ? starts_ : headings_[heading - 1].starts;
  const auto column = [&](std::uint32_t number, std::uint32_t offset) {
    const Span whole = heading == 0 ? line(number) : heading_line(heading, number);
    const std::uint32_t begin = std::min(whole.offset, offset);
    return 1 + count_columns(text({begin, offset - begin}));
  };
  Extent extent;
  extent.line = line_at(starts, span.offset);
  extent.column = column(extent.line, span.offset);
  extent.end_line = line_at(starts, span.end());
  extent.end_column = column(extent.end_line, span.end());
  return extent;
}

std::uint32_t count_columns(std::string_view text) {
  std::uint32_t columns = 0;
  for (; !text.empty(); ++columns) {
    const std::size_t letters = ascii_length(text);
    columns += static_cast<std::uint32_t>(letters);
    text.remove_prefix(letters);
    if (text.empty()) break;
    text.remove_prefix(column_length(text));
  }
  return columns;
}

std::size_t columns_length(std::string_view text, std::uint32_t columns) {
  std::size_t at = 0;
  while (columns > 0 && at < text.size()) {
    const std::size_t letters = ascii_length(text.substr(at, columns));
    columns -= static_cast<std::uint32_t>(letters);
    at += letters;
    if (columns == 0 || at == text.size()) break;
    at += column_length(text.substr(at));
    --columns;
  }
  return at;
}

std::size_t column_length(std::string_view text) {
  return std::max<std::size_t>(1, utf8_length(text));
}

std::size_t utf8_length(std::string_view text) {
  if (text.empty()) return 0;
  const unsigned lead = byte(text[0]);
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(text[i]) & 0xC0) != 0x80) return 0;
  }
  const unsigned second = byte(text[1]);
  const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
  const bool surrogate = lead == 0xED && second > 0x9F;
  const bool too_large = lead == 0xF4 && second > 0x8F;
  return overlong || surrogate || too_large ? 0 : length;
}

std::string valid_utf8(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = utf8_length(text.substr(at));
    out += length == 0 ? replacement : text.substr(at, length);
    at += std::max<std::size_t>(1, length);
  }
  return out;
}

std::string utf8_from_windows_1252(std::string_view text) {
  // The bytes 0x80 to 0x9F of code page 1252 (Unicode, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT);
  // 0 where it has no character. All others are those of ISO 8859-1.
  constexpr std::array<unsigned, 32> high = {
      0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
      0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
      0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};
  std::string out;
  out.reserve(text.size() + text.size() / 8);
  for (const char c : text) {
    const unsigned code = byte(c) >= 0x80 && byte(c) < 0xA0 ? high[byte(c) - 0x80] : byte(c);
    if (byte(c) < 0x80 || code == 0) {
      out += c;
    } else {
      append_utf8(out, code);
    }
  }
  return out;
}

}  // namespace lodebook::notebook
