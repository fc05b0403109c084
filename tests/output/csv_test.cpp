// SPDX-License-Identifier: MIT
#include <array>
#include <catch.hpp>

#include "one_row.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

std::string cell(std::string_view text) {
  std::string out;
  output::append_csv_cell(out, text);
  return out;
}

/// The whole line of a row, as the table has it.
std::string line_of(const test::OneRow& one) {
  std::string out;
  output::append_csv(out, output::columns(), one.source, one.page);
  return out;
}

TEST_CASE("a cell is quoted where RFC 4180 asks for it") {
  CHECK(cell("banded schist") == "banded schist");
  CHECK(cell("float, below") == "\"float, below\"");
  CHECK(cell("the \"red\" bed") == "\"the \"\"red\"\" bed\"");
  CHECK(cell("one\ntwo") == "\"one\ntwo\"");
  CHECK(cell("one\rtwo") == "\"one\rtwo\"");
  CHECK(cell("").empty());
}

TEST_CASE("text that a spreadsheet would run as a formula gets an apostrophe") {
  CHECK(cell("=1+1") == "'=1+1");
  CHECK(cell("+12") == "'+12");
  CHECK(cell("-35 > N50W") == "'-35 > N50W");
  CHECK(cell("@here") == "'@here");
  CHECK(cell("\tx") == "'\tx");
  CHECK(cell("\rx") == "\"'\rx\"");
  CHECK(cell("=A1,B1") == "\"'=A1,B1\"");
  CHECK(cell("a=b") == "a=b");
}

TEST_CASE("bytes that are not UTF-8 become replacement characters") {
  CHECK(cell("gr\xFC"
             "n") == "gr\uFFFDn");
  CHECK(cell("grün") == "grün");
}

TEST_CASE("control characters become replacement characters") {
  CHECK(cell("a\x1b[31mb") == "a\uFFFD[31mb");
  CHECK(cell("a\u009B\u0080\x7F") == "a\uFFFD\uFFFD\uFFFD");
  CHECK(cell("a\tb\u00A0\u202E") == "a\tb\u00A0\u202E");
}

TEST_CASE("the row itself guards and quotes its text, and never its numbers") {
  test::OneRow one;
  one.page.station = "=cmd()";
  one.row().unit = "schist, banded";
  one.row().remark = "30\xB0";
  one.row().written = "N78E 41N";
  one.row().correction = -24.6;
  one.row().strike = 258;
  one.row().dip = 41;
  CHECK(line_of(one) ==
        "'=cmd(),bedding,plane,258.0,41.0,348.0,,,,,,N78.0E,,,-24.60,magnetic,,,,,,,ok,,,,,,,258.0,"
        ",,,\"schist, banded\",N78E 41N,30\uFFFD,day3.txt:18:3\n");
}

TEST_CASE("a row like the one above is written as if it stood alone") {
  static notebook::Kind joint;
  joint.name = "joint";
  using Row = reduction::Row;
  constexpr auto changes = std::to_array<void (*)(Row&)>({
      [](Row&) {},
      [](Row& row) { row.kind = &joint; },
      [](Row& row) { row.strike = 12; },
      [](Row& row) { row.trend = 12; },
      [](Row& row) { row.plunge = 12; },
      [](Row& row) { row.rake = 12; },
      [](Row& row) { row.bearing = 12; },
      [](Row& row) { row.back_bearing = 12; },
      [](Row& row) { row.correction = 12; },
      [](Row& row) { row.north = reduction::North::grid; },
      [](Row& row) { row.target = "Saddle"; },
      [](Row& row) { row.distance_m = 12; },
      [](Row& row) { row.vertical_angle = 12; },
      [](Row& row) { row.facing = notebook::Facing::overturned; },
      [](Row& row) { row.sense = notebook::Sense::dextral; },
      [](Row& row) { row.surface = 12; },
      [](Row& row) { row.status = reduction::Status::suspect; },
      [](Row& row) { row.codes = {notebook::Code::doubtful}; },
      [](Row& row) { row.date.reset(); },
      [](Row& row) { row.observer = "RT"; },
      [](Row& row) { row.unit = "schist"; },
      [](Row& row) { row.remark = "fresh"; },
  });
  test::OneRow one;
  one.page.position = notebook::GivenPosition{{-44.6891, 169.0144}, 8.0};
  one.row().date = notebook::Date{2026, 2, 14};
  one.row().observer = "MK";
  const Row row = one.row();
  const std::string alone = line_of(one);
  for (const auto& change : changes) {
    Row changed = row;
    change(changed);
    one.page.rows = {changed};
    const std::string changed_alone = line_of(one);
    CHECK((&change == changes.data() || changed_alone != alone));
    one.page.rows = {row, changed, row, row};
    CHECK(line_of(one) == alone + changed_alone + alone + alone);
  }
}

TEST_CASE("a page without rows adds no line") {
  test::OneRow one;
  one.page.rows.clear();
  CHECK(line_of(one).empty());
}

TEST_CASE("rows out are readings in, also rejected ones, with their numbers empty") {
  const std::string table = test::csv(
      "declination 24.6E\nset 0\nstation Q1\n  bedding N78E 41N, N98E 41N, 081/42 N\n"
      "  sight Nowhere N50W\n  bedding\n");
  const auto lines = test::lines_of(table);
  REQUIRE(lines.size() == 6);
  const auto good = test::cells_of(lines[1]);
  CHECK(good[3] == "282.6");
  CHECK(good[5] == "12.6");
  CHECK(good[11] == "N77.4W");
  CHECK(good[13] == "258.0");
  CHECK(good[14] == "24.60");
  CHECK(good[15] == "true");
  CHECK(good[22] == "ok");
  CHECK(good[34] == "N78E 41N");
  CHECK(good[36] == "day.txt:4:3");
  const auto bad = test::cells_of(lines[2]);
  REQUIRE(bad.size() == 37);
  CHECK(bad[22] == "rejected");
  CHECK(bad[23] == "quadrant-angle");
  CHECK(bad[34] == "N98E 41N");
  for (const std::size_t number : {3U, 4U, 5U, 6U, 7U, 8U, 9U, 10U, 12U, 13U, 14U}) {
    CHECK(bad[number].empty());
  }
  CHECK(test::cells_of(lines[4])[22] == "suspect");
  CHECK(test::cells_of(lines[5])[22] == "rejected");
}

}  // namespace
}  // namespace lodebook
