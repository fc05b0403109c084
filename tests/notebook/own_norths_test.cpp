// SPDX-License-Identifier: MIT
// The north that a reading names for itself: where the word may stand, and whose it is.
#include "reading_one.hpp"

using namespace lodebook::notebook;
using namespace lodebook::test;

namespace {

constexpr std::string_view right = "rule right";

OwnNorth north_of_line(const std::string& line) {
  CAPTURE(line);
  const auto book = read_line(line, right);
  CHECK(codes(book) == "");
  const auto reading = last<Reading>(book);
  CHECK_FALSE(reading.rejected);
  return north_of(reading);
}

std::string fault_of(const std::string& line) {
  CAPTURE(line);
  const auto book = read_line(line, right);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

}  // namespace

TEST_CASE("a north stands behind its bearing, or behind the figures of a plane or line") {
  for (const char* line : {"bedding N62E 37NW grid",
                           "bedding N62E grid 37NW",
                           "bedding 242/37 NW GRID",
                           "bedding 242 grid 37 NW",
                           "bedding 242 grid / 37 NW",
                           "bedding 062/37 grid",
                           "bedding 62 grid 37",
                           "bedding 37 > 332 grid",
                           "bedding 37 > 332 Grid overturned",
                           "bedding N62E 37NW overturned grid",
                           "bedding vertical N14E grid",
                           "bedding strike N66W grid dip 30 NE",
                           "lineation N50W 35 grid",
                           "lineation N50W grid 35",
                           "lineation 310 grid 35",
                           "lineation 35 > N50W grid on bedding",
                           "current from S60W grid",
                           "current 118 grid",
                           "groove 122/27 grid",
                           "groove 125/305 grid",
                           "groove 125 grid 305",
                           "lineation horizontal N50W grid",
                           "sight Peak N17W grid",
                           "sight Peak back S17E grid",
                           "leg S38E grid 120m",
                           "leg from Q2 S38E grid 120m"})
    CHECK(north_of_line(line) == OwnNorth::grid);
  CHECK(north_of_line("bedding N62E 37NW true") == OwnNorth::geographic);
  CHECK(north_of_line("bedding N62E 37NW magnetic") == OwnNorth::magnetic);
  CHECK(north_of_line("bedding N62E 37NW") == OwnNorth::none);
}

TEST_CASE("a north makes a doubtful pair no clearer") {
  CHECK(fault_of("bedding N 38 W grid") == "attitude-ambiguous");
  CHECK(fault_of("bedding N38W grid") == "incomplete");
}

TEST_CASE("what has a north is the bearing of a pair, however many digits it has") {
  const auto plane = good<PlaneAttitude>(read_line("bedding 62 true 37", right));
  CHECK(plane.bearing.angle == 62);
  CHECK(plane.dip.value == 37);
  const auto line = good<LineAttitude>(read_line("lineation 31 true 35"));
  CHECK(line.bearing.angle == 31);
  CHECK(line.slope.value == 35);
  CHECK(fault_of("lineation 35 true") == "incomplete");
}

TEST_CASE("each bearing of a sight or leg has a north of its own") {
  const auto sight = good<Sight>(read_line("sight Peak 044 true back 224 magnetic"));
  CHECK(sight.bearing.north == OwnNorth::geographic);
  CHECK(sight.back->north == OwnNorth::magnetic);
  const auto leg = good<Leg>(read_line("leg S38E 120m back N37W grid"));
  CHECK(leg.bearing.north == OwnNorth::none);
  CHECK(leg.back->north == OwnNorth::grid);
  const auto repeats = all<Reading>(read_line("sight Peak 044 true, 045, 046 grid"));
  REQUIRE(repeats.size() == 3);
  CHECK(north_of(repeats[0]) == OwnNorth::geographic);
  CHECK(north_of(repeats[1]) == OwnNorth::none);
  CHECK(north_of(repeats[2]) == OwnNorth::grid);
}

TEST_CASE("a north of repeats belongs to its own") {
  const auto readings = all<Reading>(read_line("bedding N62E 37NW grid, N60E 35NW"));
  REQUIRE(readings.size() == 2);
  CHECK(north_of(readings[0]) == OwnNorth::grid);
  CHECK(north_of(readings[1]) == OwnNorth::none);
}

TEST_CASE("a side and a way up are judged in the frame of the strike") {
  const auto plane = good<PlaneAttitude>(read_line("bedding N62E 37NW youngs NW grid"));
  CHECK(plane.bearing.north == OwnNorth::grid);
  CHECK(plane.facing == Facing::upright);
  CHECK(fault_of("bedding N62E 37NE grid") == "dip-side-impossible");
}

TEST_CASE("a north without a bearing, or a second one, is refused") {
  for (const char* line :
       {"bedding dip 30 grid", "bedding horizontal grid", "lineation vertical grid",
        "bedding N62E 37NW grid true", "bedding N62E grid 37NW grid",
        "sight Peak 044 vertical 3 true", "leg S38E 120m true", "groove 125 grid/305 true"})
    CHECK(fault_of(line) != "");
  CHECK(fault_of("bedding N62E 37NW ~grid") == "trailing-text");
  CHECK(fault_of("sight Peak 044true") == "trailing-text");
  const auto book = read_line("leg S38E 120m true");
  CHECK(book.diagnostics.front().help == "a north stands once, right behind its bearing");
}

TEST_CASE("a log's own word of that name is no north") {
  for (const char* own : {"kind grid plane", "short grid bedding"}) {
    CAPTURE(own);
    const std::string head = std::string(own) + "\nrule right";
    for (const char* line : {"joint N62E 37NW grid", "joint 242 grid 37", "sight Peak 044 grid",
                             "leg S38E grid 120m"}) {
      const auto book = read_line(line, head);
      CHECK(last<Reading>(book).rejected);
      CHECK(codes(book) == "trailing-text");
    }
    CHECK_FALSE(last<Reading>(read_line("joint N62E 37NW true", head)).rejected);
  }
  const auto book =
      read("kind grid plane\nstation Q1\ngrid N62E 37NW\nlineation N50W 35 on grid\n");
  CHECK(codes(book) == "");
}
