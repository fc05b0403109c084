// SPDX-License-Identifier: MIT
// Lines, places and encodings of a log's text.
#include <array>
#include <catch.hpp>
#include <lodebook/notebook/source.hpp>

namespace lodebook::notebook {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  const Source source("a", text);
  std::vector<std::string> lines;
  for (std::uint32_t line = 1; line <= source.line_count(); ++line)
    lines.emplace_back(source.text(source.line(line)));
  return lines;
}

TEST_CASE("lines end at LF, CR LF or CR") {
  using Lines = std::vector<std::string>;
  CHECK(lines_of("a\nb\n") == Lines{"a", "b"});
  CHECK(lines_of("a\r\nb\r\n") == Lines{"a", "b"});
  CHECK(lines_of("a\rb\r") == Lines{"a", "b"});
  CHECK(lines_of("a\nb") == Lines{"a", "b"});
  CHECK(lines_of("a\r\n\nb\r\rc") == Lines{"a", "", "b", "", "c"});
  CHECK(lines_of("a\n\rb") == Lines{"a", "", "b"});
  CHECK(lines_of("") == Lines{});
  CHECK(lines_of("\n") == Lines{""});
  CHECK(lines_of("\xEF\xBB\xBF"
                 "a\nb") == Lines{"a", "b"});
  // A mark further on is text.
  CHECK(lines_of("a\n\xEF\xBB\xBF"
                 "b") == Lines{"a",
                               "\xEF\xBB\xBF"
                               "b"});
}

TEST_CASE("a line beyond the last is empty and lies at the end") {
  const Source source("a", "one");
  CHECK(source.line(2).empty());
  CHECK(source.line(2).offset == 3);
}

TEST_CASE("a place counts columns in code points and has at least one") {
  const Source source("a", "x\nN50°30′W y\r\n");
  const auto place = [&](std::uint32_t offset, std::uint32_t length) {
    return source.place(2, {2 + offset, length});
  };
  CHECK(place(0, 3).line == 2);
  CHECK(place(0, 3).column == 1);
  CHECK(place(0, 3).end_column == 4);
  CHECK(place(3, 2).column == 4);  // the degree sign: two bytes, one column
  CHECK(place(3, 2).end_column == 5);
  CHECK(place(5, 2).column == 5);
  CHECK(place(7, 4).end_column == 9);  // the prime: three bytes
  CHECK(place(10, 1).column == 8);
  CHECK(place(0, 0).end_column == 2);
  CHECK(place(13, 0).column == 11);  // behind the last
  CHECK(place(13, 0).end_column == 12);
}

TEST_CASE("an extent may reach over lines") {
  const Source source("a", "N50°W\r\nx y\nz");
  const auto extent = [&](std::uint32_t offset, std::uint32_t length) {
    const Extent found = source.extent({offset, length});
    return std::array{found.line, found.column, found.end_line, found.end_column};
  };
  CHECK(extent(0, 5) == std::array{1U, 1U, 1U, 5U});  // the degree sign is one column
  CHECK(extent(5, 0) == std::array{1U, 5U, 1U, 5U});  // where text is put in
  CHECK(extent(8, 0) == std::array{2U, 1U, 2U, 1U});  // at the head of a line
  CHECK(extent(5, 5) == std::array{1U, 5U, 2U, 3U});
  CHECK(extent(10, 1) == std::array{2U, 3U, 2U, 4U});
  CHECK(extent(13, 0) == std::array{3U, 2U, 3U, 2U});  // behind the last
  CHECK(Source("a", "").extent({0, 0}).line == 1);
}

TEST_CASE("the columns of a first line do not count the byte-order mark") {
  const Source source("a",
                      "\xEF\xBB\xBF"
                      "ab");
  CHECK(source.place(1, {3, 1}).column == 1);
  CHECK(source.text() ==
        "\xEF\xBB\xBF"
        "ab");
}

TEST_CASE("a byte that is not UTF-8 is one column") {
  CHECK(count_columns("") == 0);
  CHECK(count_columns("abc") == 3);
  CHECK(count_columns("°′\U0001F9ED") == 3);
  CHECK(count_columns("\xE9\xE9") == 2);
  CHECK(count_columns("a\xE2\x82") == 3);
  // Letters are also counted eight at once, wherever others stand between them.
  for (std::uint32_t before = 0; before < 20; ++before) {
    for (std::uint32_t behind = 0; behind < 20; ++behind) {
      const std::string letters(before, 'a');
      const std::string others(behind, 'b');
      CHECK(count_columns(letters + others) == before + behind);
      CHECK(count_columns(letters + "°" + others) == before + 1 + behind);
      CHECK(count_columns(letters + "\xE9" + others + "\U0001F9ED") == before + 2 + behind);
    }
  }
}

TEST_CASE("the first columns of a text end where its first letters do") {
  CHECK(columns_length("", 3) == 0);
  CHECK(columns_length("abc", 0) == 0);
  CHECK(columns_length("abc", 9) == 3);
  CHECK(columns_length("°′\U0001F9ED", 2) == 5);
  CHECK(columns_length("\xE9\xE9", 1) == 1);
  // Also where letters are counted many at once, wherever others stand between them.
  for (const std::uint32_t before : {0U, 7U, 8U, 63U, 64U, 65U, 150U}) {
    const std::string text = std::string(before, 'a') + "°\xE9" + std::string(150, 'b');
    CHECK(count_columns(text) == before + 152);
    for (std::uint32_t columns = 0; columns <= before + 152; ++columns) {
      const std::size_t bytes = columns > before ? columns + 1 : columns;
      CHECK(columns_length(text, columns) == bytes);
      CHECK(count_columns(text.substr(0, bytes)) == columns);
    }
  }
}

TEST_CASE("valid UTF-8 is that of RFC 3629") {
  struct Row {
    const char* bytes;
    std::size_t length;
  };
  const Row rows[] = {
      {"a", 1},
      {"\x7F", 1},
      {"\xC2\x80", 2},
      {"\xDF\xBF", 2},
      {"\xE0\xA0\x80", 3},
      {"\xED\x9F\xBF", 3},
      {"\xEE\x80\x80", 3},
      {"\xEF\xBF\xBF", 3},
      {"\xF0\x90\x80\x80", 4},
      {"\xF4\x8F\xBF\xBF", 4},
      {"\x80", 0},              // a trail byte alone
      {"\xC1\xBF", 0},          // overlong
      {"\xE0\x9F\xBF", 0},      // overlong
      {"\xF0\x8F\xBF\xBF", 0},  // overlong
      {"\xED\xA0\x80", 0},      // a surrogate
      {"\xED\xBF\xBF", 0},      // a surrogate
      {"\xF4\x90\x80\x80", 0},  // over U+10FFFF
      {"\xF5\x80\x80\x80", 0},
      {"\xFF", 0},
      {"\xC2", 0},       // cut off
      {"\xE2\x82", 0},   // cut off
      {"\xE2\x82x", 0},  // no trail byte
      {"\xF0\x9F\xA7", 0},
  };
  for (const Row& row : rows) {
    CAPTURE(row.bytes);
    CHECK(utf8_length(row.bytes) == row.length);
  }
  CHECK(utf8_length("") == 0);
}

TEST_CASE("valid_utf8 replaces what is not") {
  CHECK(valid_utf8("caf\xE9!") == "caf\uFFFD!");
  CHECK(valid_utf8("café") == "café");
  CHECK(valid_utf8("\xE2\x82") == "\uFFFD\uFFFD");
  CHECK(valid_utf8("") == "");
}

TEST_CASE("windows-1252 becomes UTF-8") {
  CHECK(utf8_from_windows_1252("N50\xB0W") == "N50°W");
  CHECK(utf8_from_windows_1252("caf\xE9 \xFF") == "café ÿ");
  CHECK(utf8_from_windows_1252("\x80 \x92 \x93\x94 \x96 \x97 \x99") == "€ ’ “” – — ™");
  CHECK(utf8_from_windows_1252("\xB1 \xBA \xA0") == "± º \u00A0");
  CHECK(utf8_from_windows_1252("plain\n") == "plain\n");
  // Five bytes have no meaning there and stay, to be reported.
  CHECK(utf8_from_windows_1252("\x81\x8D\x8F\x90\x9D") == "\x81\x8D\x8F\x90\x9D");
  for (int byte = 0x80; byte <= 0xFF; ++byte) {
    const std::string one(1, static_cast<char>(byte));
    const bool none = byte == 0x81 || byte == 0x8D || byte == 0x8F || byte == 0x90 || byte == 0x9D;
    const std::string out = utf8_from_windows_1252(one);
    CHECK(utf8_length(out) == (none ? 0 : out.size()));
  }
}

}  // namespace
}  // namespace lodebook::notebook
