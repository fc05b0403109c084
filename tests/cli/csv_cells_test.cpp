// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/cli/csv_cells.hpp>
#include <random>

using namespace lodebook::cli;
using Rows = std::vector<std::vector<std::string>>;

namespace {

Rows values(const std::string& text) {
  CsvRows rows(text);
  std::vector<CsvCell> cells;
  Rows all;
  while (rows.next(cells)) {
    all.emplace_back();
    for (const CsvCell& cell : cells)
      all.back().push_back(value_of(text, cell));
  }
  return all;
}

}  // namespace

TEST_CASE("cells and rows end where RFC 4180 says") {
  CHECK(values("") == Rows{});
  CHECK(values("a") == Rows{{"a"}});
  CHECK(values("a,b\n") == Rows{{"a", "b"}});
  CHECK(values("a,\n,b") == Rows{{"a", ""}, {"", "b"}});
  CHECK(values("a\r\nb\rc\nd") == Rows{{"a"}, {"b"}, {"c"}, {"d"}});
  CHECK(values("a\n\nb\n") == Rows{{"a"}, {""}, {"b"}});
  CHECK(values("\xEF\xBB\xBF"
               "a,b") == Rows{{"a", "b"}});
}

TEST_CASE("quoted cells hold commas, quotes and line ends") {
  CHECK(values("\"a,b\",\"c\"\"d\",\"e\nf\"\n") == Rows{{"a,b", "c\"d", "e\nf"}});
  CHECK(values("\"\"") == Rows{{""}});
  CHECK(values("\"\"\"\"") == Rows{{"\""}});
}

TEST_CASE("a quote that does not begin a cell is an ordinary character") {
  CHECK(values("5\" pipe,b\n") == Rows{{"5\" pipe", "b"}});
  CHECK(values("\"a\"b,c\n") == Rows{{"\"a\"b", "c"}});
}

TEST_CASE("a quote that is never closed is noticed") {
  const std::string text = "a,b\nc,\"d\ne,f\n";
  CsvRows rows(text);
  std::vector<CsvCell> cells;
  while (rows.next(cells)) {
  }
  CHECK(rows.unclosed_line() == 2);
}

TEST_CASE("cells know their line, also behind line ends in quotes") {
  const std::string text = "a\r\n\"x\ry\",b\nc";
  CsvRows rows(text);
  std::vector<CsvCell> cells;
  REQUIRE(rows.next(cells));
  CHECK(cells[0].line == 1);
  REQUIRE(rows.next(cells));
  CHECK(cells[0].line == 2);
  CHECK(cells[1].line == 3);
  CHECK(text.substr(cells[1].line_begin, 2) == "y\"");
  REQUIRE(rows.next(cells));
  CHECK(cells[0].line == 4);
  CHECK_FALSE(rows.next(cells));
}

TEST_CASE("a replaced cell keeps its quotes and gets them where it needs them") {
  std::string out;
  append_cell(out, "340", false);
  CHECK(out == "340");
  append_cell(out, "340", true);
  CHECK(out == "340\"340\"");
  out.clear();
  append_cell(out, "a,b", false);
  append_cell(out, "c\"d", false);
  CHECK(out == "\"a,b\"\"c\"\"d\"");
}

TEST_CASE("the cells and what stands between them are the whole text") {
  constexpr unsigned seed = 20260214;
  std::mt19937 random(seed);
  INFO("seed " << seed);
  const std::string alphabet = "ab,,\"\"\r\n\n ";
  for (int round = 0; round < 20'000; ++round) {
    std::string text;
    for (auto length = random() % 24; length > 0; --length)
      text += alphabet[random() % alphabet.size()];
    CsvRows rows(text);
    std::vector<CsvCell> cells;
    std::size_t at = 0;
    while (rows.next(cells)) {
      REQUIRE_FALSE(cells.empty());
      for (const CsvCell& cell : cells) {
        REQUIRE(cell.begin >= at);
        REQUIRE(text.substr(at, cell.begin - at).find_first_not_of(",\r\n") == std::string::npos);
        REQUIRE(cell.begin - at <= 2);
        REQUIRE(cell.end >= cell.begin);
        at = cell.end;
        if (cell.quoted) {
          std::string again;
          append_cell(again, value_of(text, cell), true);
          REQUIRE(again == text.substr(cell.begin, cell.end - cell.begin));
        }
      }
    }
    REQUIRE(text.size() - at <= 2);
    REQUIRE(text.substr(at).find_first_not_of("\r\n") == std::string::npos);
  }
}
