// SPDX-License-Identifier: MIT
// What is typed with a reading's figures: that they are rough, their own error, how often they were
// had.
#include "reading_one.hpp"

using namespace lodebook::notebook;
using namespace lodebook::test;

namespace {

PlaneAttitude plane_of(const std::string& typed) {
  CAPTURE(typed);
  const auto book = read_line("bedding " + typed);
  CHECK(codes(book) == "");
  return good<PlaneAttitude>(book);
}

std::string fault(const std::string& line) {
  CAPTURE(line);
  const auto book = read_line(line);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

}  // namespace

TEST_CASE("a mark before a figure or bearing says that it is rough") {
  const auto strike = plane_of("~N62E 37NW");
  CHECK(strike.bearing.own.rough);
  CHECK_FALSE(strike.dip.own.rough);
  const auto dip = plane_of("N62E/~37 NW");
  CHECK_FALSE(dip.bearing.own.rough);
  CHECK(dip.dip.own.rough);
  CHECK(plane_of("37 > ~NW").bearing.own.rough);
  CHECK(plane_of("37 > ~332").bearing.own.rough);
  const auto line = good<LineAttitude>(read_line("lineation N50W ~-5"));
  CHECK(line.slope.own.rough);
  CHECK(line.slope.degrees() == -5);
  const auto leg = good<Leg>(read_line("leg ~S38E ~120m slope ~5"));
  CHECK(leg.bearing.own.rough);
  CHECK(leg.distance.own.rough);
  CHECK(leg.slope->own.rough);
}

TEST_CASE("about is said of all figures of its reading") {
  const auto book = read_line("bedding N62E 37NW about, N60E 35NW");
  CHECK(codes(book) == "");
  const auto first = std::get<PlaneAttitude>(all<Reading>(book)[0].what);
  CHECK(first.bearing.own.rough);
  CHECK(first.dip.own.rough);
  CHECK_FALSE(good<PlaneAttitude>(book).bearing.own.rough);
}

TEST_CASE("a figure may have its own error directly behind it") {
  const auto plane = plane_of("N62E±5 37±3 NW");
  CHECK(plane.bearing.own.sigma == 5);
  CHECK(plane.dip.own.sigma == 3);
  CHECK(plane.side == lodebook::Point::NW);
  CHECK(plane_of("37+-2 > 332±4.5").bearing.own.sigma == 4.5);
  CHECK(good<Leg>(read_line("leg S38E 120m±10")).distance.own.sigma == 10);
  CHECK(good<Leg>(read_line("leg S38E 120±10m")).distance.own.sigma == 10);
  const auto height = last<Elevation>(read_line("elevation 790m ±10")).height;
  CHECK(height.own.sigma == 10);
  CHECK(last<Elevation>(read_line("elevation ~790")).height.own.rough);
}

TEST_CASE("marks that belong to no figure are refused") {
  for (const char* typed : {"N62E 37NW±3", "N62E 37 ~NW", "N62±5E 37NW", "N 62 ~E 37NW",
                            "N62E±0 37NW", "N62E 37±-3 NW", "37 > 332 youngs ~NW"})
    CHECK(fault(std::string("bedding ") + typed) != "");
  CHECK(fault("bedding N62E 37NW ~doubtful") == "trailing-text");
  CHECK(fault("bedding N62E 37%±3° NW") != "");
  CHECK(fault("lineation ~ N50W 35") == "number");
}

TEST_CASE("a reading had several times is as many readings") {
  const auto book = read("station Q1\njoint N37W 85SW x3\njoint N37W 85SW, N38W 84SW X2\n");
  CHECK(codes(book) == "");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 6);
  CHECK(book.reading_count == 6);
  const int times[] = {3, 0, 0, 1, 2, 0};
  for (std::size_t i = 0; i < readings.size(); ++i) {
    CHECK(readings[i].times == times[i]);
    CHECK(readings[i].number == i);
    CHECK(readings[i].first == (i == 0 || i == 3));
  }
  CHECK(written(book, readings[2]) == "N37W 85SW x3");
  CHECK(written(book, readings[3]) == "N37W 85SW");
}

TEST_CASE("a fault of one had several times is said once") {
  const auto book = read_line("joint N37W 95SW x3");
  CHECK(codes(book) == "dip-range");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  for (const Reading& reading : readings)
    CHECK(reading.rejected);
}

TEST_CASE("a reading may name its observer") {
  for (const char* line : {"bedding N62E 37NW by JT doubtful", "lineation N50W 35 by JT",
                           "leg S38E 120m by JT", "sight Peak N17W by JT x"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    if (std::string_view(line).ends_with(" x")) {
      CHECK(last<Reading>(book).rejected);
    } else {
      CHECK(text(book, last<Reading>(book).by) == "JT");
    }
  }
  const auto each = read_line("bedding N62E 37NW by JT, N60E 35NW");
  CHECK(last<Reading>(each).by.empty());
  CHECK(fault("bedding N62E 37NW by") == "trailing-text");
  CHECK(fault("bedding N62E 37NW by JT by AM") == "trailing-text");
}

TEST_CASE("only 2 to 99 times, and behind all else") {
  for (const char* typed : {"x1", "x0", "x100", "x", "x3 doubtful", "x 3", "x3 x2"})
    CHECK(fault(std::string("joint N37W 85SW ") + typed) != "");
  CHECK(all<Reading>(read_line("joint N37W 85SW x99")).size() == 99);
}
