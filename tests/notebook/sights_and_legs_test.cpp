// SPDX-License-Identifier: MIT
// Sights and legs: names first, the words behind in any order, lengths and angles.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Leg;
using notebook::LengthUnit;
using notebook::Reading;
using notebook::Sight;

std::string fault(std::string_view line, std::string_view heading = "") {
  const auto book = read_line(line, heading);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

TEST_CASE("a sight is a name and a bearing") {
  const auto book = read_line("sight Trig-Dome N66W");
  CHECK(codes(book) == "");
  const auto sight = good<Sight>(book);
  CHECK(book.names.shown(sight.target) == "Trig-Dome");
  CHECK(sight.azimuth().degrees() == 294);
  CHECK_FALSE(sight.vertical);
  CHECK_FALSE(sight.south_end);
  CHECK(written(book, last<Reading>(book)) == "Trig-Dome N66W");
}

TEST_CASE("the first word after sight is always the name") {
  for (const std::string name : {"N2", "12", "310", "N50W", "vertical", "doubtful", "bedding", "N",
                                 "E", "at", "Käppeli", "Q1-a", "5%", "°", "a#b", "//"}) {
    CAPTURE(name);
    const auto book = read_line("sight " + name + " N66W");
    CHECK(codes(book) == "");
    CHECK(book.names.shown(good<Sight>(book).target) == name);
    CHECK(good<Sight>(book).azimuth().degrees() == 294);
  }
}

TEST_CASE("names are compared ignoring case and shown as first written") {
  const auto book = read_line("sight käppeli N66W\nsight KÄPPELI N67W", "landmark Käppeli");
  CHECK(codes(book) == "");
  const auto sights = all<Reading>(book);
  REQUIRE(sights.size() == 2);
  CHECK(std::get<Sight>(sights[0].what).target == std::get<Sight>(sights[1].what).target);
  CHECK(book.names.shown(std::get<Sight>(sights[1].what).target) == "Käppeli");
}

TEST_CASE("a sight of the south-seeking end is turned round") {
  for (const std::string typed : {"sight A S66E south-end", "sight A 114 SOUTH-END"}) {
    CAPTURE(typed);
    const auto book = read_line(typed);
    CHECK(codes(book) == "");
    CHECK(good<Sight>(book).south_end);
    CHECK(good<Sight>(book).azimuth().degrees() == 294);
    CHECK(good<Sight>(book).bearing.azimuth().degrees() == 114);
  }
}

TEST_CASE("words behind a sight stand in any order") {
  for (const std::string typed :
       {"south-end vertical +12 doubtful", "vertical 12 doubtful south-end",
        "doubtful south-end vertical 12°"}) {
    CAPTURE(typed);
    const auto book = read_line("sight A S66E " + typed);
    CHECK(codes(book) == "doubtful");
    const auto sight = good<Sight>(book);
    CHECK(sight.south_end);
    REQUIRE(sight.vertical);
    CHECK(sight.vertical->degrees() == 12);
    CHECK(last<Reading>(book).doubtful);
  }
}

TEST_CASE("a sight may have the bearing from the mark, alone or beside the other") {
  const auto both = good<Sight>(read_line("sight Mast 100 back 280 vertical 4"));
  CHECK(both.azimuth().degrees() == 100);
  REQUIRE(both.back);
  CHECK(both.back->azimuth().degrees() == 280);
  CHECK_FALSE(both.is_back);
  CHECK(both.vertical);
  const auto alone = good<Sight>(read_line("sight Mast back N80W doubtful"));
  CHECK(alone.is_back);
  CHECK_FALSE(alone.back);
  CHECK(alone.bearing.azimuth().degrees() == 280);
  CHECK(alone.azimuth().degrees() == 100);
  CHECK(codes(read_line("sight Mast back")) == "incomplete");
  CHECK(codes(read_line("sight Mast 100 back")) == "incomplete");
  CHECK(codes(read_line("sight Mast back 280 south-end")) == "trailing-text");
  CHECK(codes(read_line("sight Mast back 280 back 100")) == "trailing-text");
  CHECK(codes(read_line("sight Mast 100 back 380")) == "azimuth-range");
  CHECK(places(read_line("sight Mast back N80W", "dial azimuth")) == "3:17-21 notation-mixed");
}

TEST_CASE("repeats of a sight stand behind commas") {
  const auto book = read_line("sight Mast 111, 112 doubtful, back 291 vertical -3, N69E");
  CHECK(codes(book) == "doubtful");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 4);
  for (const Reading& reading : readings) {
    CHECK_FALSE(reading.rejected);
    CHECK(book.names.shown(std::get<Sight>(reading.what).target) == "Mast");
    CHECK(reading.first == (reading.number == 0));
  }
  CHECK(written(book, readings[0]) == "Mast 111");
  CHECK(written(book, readings[1]) == "112 doubtful");
  CHECK(written(book, readings[2]) == "back 291 vertical -3");
  CHECK(std::get<Sight>(readings[2].what).is_back);
  CHECK_FALSE(std::get<Sight>(readings[3].what).vertical);
  CHECK(places(read_line("sight Mast 111, 412, 111")) == "2:17-20 azimuth-range");
  CHECK(read_line("sight Mast 111, 412, 111").reading_count == 3);
  CHECK(codes(read_line("sight Mast 111,112")) == "decimal-comma");
  CHECK(codes(read_line("sight Mast 111, south-end")) == "trailing-text");
  CHECK(codes(read_line("sight Mast 111,")) == "trailing-text");
  CHECK(read_line("sight \"Mast, upper\" 111, 112 from \"Camp, 2\", 110").reading_count == 3);
}

TEST_CASE("a sight or leg may have been read at another station") {
  for (const char* line :
       {"sight Mast from 14 N20E", "sight Mast N20E from 14", "sight Mast N20E, N21E from 14",
        "sight Mast from 14 N20E vertical level, N21E", "sight Mast back S20W from 14"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    CHECK(codes(book) == "");
    for (const Reading& reading : all<Reading>(book))
      CHECK(book.names.shown(std::get<Sight>(reading.what).from) == "14");
  }
  for (const char* line : {"leg from 14 N40E 120ft back S41W", "leg N40E from 14 120ft back S41W",
                           "leg N40E 120ft back S41W from 14"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    CHECK(codes(book) == "");
    const auto leg = good<Leg>(book);
    CHECK(book.names.shown(leg.from) == "14");
    CHECK(leg.to == notebook::no_name);
    CHECK(leg.bearing.azimuth().degrees() == 40);
    CHECK(leg.back);
  }
  CHECK(codes(read_line("leg from 14 N40E 120ft to Q2")) == "trailing-text");
  CHECK(codes(read_line("leg N40E 120ft to Q2 from 14")) == "trailing-text");
  CHECK(codes(read_line("leg from 14 from 15 N40E 120ft")) == "unknown-word");
  CHECK(codes(read_line("sight Mast from")) == "name");
  CHECK(codes(read_line("sight Mast N20E from 14 from 15")) == "trailing-text");
  // The first word is always the name.
  CHECK(good<Sight>(read_line("sight from N20E")).from == notebook::no_name);
}

TEST_CASE("level is an angle of 0") {
  CHECK(good<Sight>(read_line("sight Mast N20E vertical level")).vertical->degrees() == 0);
  CHECK(good<Leg>(read_line("leg N20E 30m slope LEVEL back S20W")).slope->degrees() == 0);
}

TEST_CASE("an angle has an optional sign, and is degrees or percent") {
  struct Row {
    const char* typed;
    double degrees;
  };
  const Row rows[] = {{"4", 4},
                      {"+4", 4},
                      {"-4", -4},
                      {"−4", -4},
                      {"–4.5", -4.5},
                      {"100%", 45},
                      {"-100%", -45},
                      {"4°", 4},
                      {"90", 90},
                      {"-90", -90},
                      {"12°30'", 12.5},
                      {"15%", degrees_from_percent(15)},
                      {"-15 %", degrees_from_percent(-15)}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto sight = good<Sight>(read_line(std::string("sight A N66W vertical ") + row.typed));
    REQUIRE(sight.vertical);
    CHECK(std::abs(sight.vertical->degrees() - row.degrees) < 1e-9);
    const auto leg = good<Leg>(read_line(std::string("leg N66W 10m slope ") + row.typed));
    REQUIRE(leg.slope);
    CHECK(std::abs(leg.slope->degrees() - row.degrees) < 1e-9);
  }
  CHECK(fault("sight A N66W vertical - 4") == "number");
  CHECK(fault("sight A N66W vertical 91") == "slope-range");
  CHECK(fault("sight A N66W vertical -91") == "slope-range");
  CHECK(fault("leg N66W 10m slope 91") == "slope-range");
  CHECK(fault("sight A N66W vertical") == "incomplete");
  CHECK(fault("leg N66W 10m slope") == "incomplete");
}

TEST_CASE("what a sight needs") {
  CHECK(fault("sight") == "name");
  CHECK(fault("sight Cairn") == "incomplete");
  CHECK(fault("sight Trig Dome N66W") == "name");
  CHECK(fault("sight Cairn N66W 12") == "trailing-text");
  CHECK(fault("sight Cairn, N66W") == "name");
  CHECK(fault("sight >a N66W") == "name");
  CHECK(fault("sight #a N66W") == "name");
  CHECK(fault("sight Cairn N66W southend") == "trailing-text");
}

TEST_CASE("a sight that cannot be read is a reading all the same") {
  const auto book = read_line("sight Cairn N95W\nsight\nleg\nleg N98E 12m");
  CHECK(book.reading_count == 4);
  for (const Reading& reading : all<Reading>(book))
    CHECK(reading.rejected);
}

TEST_CASE("a leg is a bearing and a distance") {
  struct Row {
    const char* typed;
    double value;
    LengthUnit unit;
    double metres;
  };
  const Row rows[] = {
      {"120m", 120, LengthUnit::metres, 120},       {"120 m", 120, LengthUnit::metres, 120},
      {"120.5M", 120.5, LengthUnit::metres, 120.5}, {"100ft", 100, LengthUnit::feet, 30.48},
      {"100 FT", 100, LengthUnit::feet, 30.48},     {"50 paces", 50, LengthUnit::paces, 38},
      {"50paces", 50, LengthUnit::paces, 38},       {"7m", 7, LengthUnit::metres, 7},
      {"0.5m", 0.5, LengthUnit::metres, 0.5},
  };
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("leg S38E ") + row.typed, "pace 0.76m");
    CHECK(codes(book) == "");
    const auto leg = good<Leg>(book);
    CHECK(leg.azimuth().degrees() == 142);
    CHECK(leg.distance.value == row.value);
    CHECK(leg.distance.unit == row.unit);
    CHECK(std::abs(leg.distance.metres(0.76) - row.metres) < 1e-9);
  }
}

TEST_CASE("a leg may go towards a point of the rose") {
  struct Row {
    const char* typed;
    double azimuth;
  };
  const Row rows[] = {{"N 20m", 0},     {"N 20 m", 0},       {"S 120 ft", 180},
                      {"E 20m", 90},    {"W 20 paces", 270}, {"N 1 pace", 0},
                      {"due N 20m", 0}, {"NNW 20m", 337.5},  {"N 20 E 20m", 20}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("leg ") + row.typed, "pace 0.76m");
    CHECK(codes(book) == "");
    CHECK(good<Leg>(book).azimuth().degrees() == row.azimuth);
  }
  CHECK(fault("leg N 20'") == "distance-unit");
  CHECK(fault("leg N 120") == "distance-unit");
}

TEST_CASE("a distance needs its unit") {
  CHECK(fault("leg S38E 120") == "distance-unit");
  CHECK(fault("leg S38E 120'") == "distance-unit");
  CHECK(fault("leg S38E 120′") == "distance-unit");
  CHECK(fault("leg S38E 120 to Q2") == "distance-unit");
  CHECK(fault("leg S38E 120 km") == "distance-unit");
  CHECK(fault("leg S38E") == "incomplete");
  CHECK(fault("leg S38E to Q2") == "incomplete");
  CHECK(fault("leg S38E -120m") == "number");
  CHECK(fault("leg S38E 14% m") == "number");
  CHECK(fault("leg S38E 12° m") == "number");
}

TEST_CASE("paces need the length of a pace above them") {
  CHECK(fault("leg S38E 50 paces") == "pace-missing");
  CHECK(codes(read_line("leg S38E 50 paces\npace 0.76m\nleg S38E 50 paces")) == "pace-missing");
  CHECK(codes(read_line("leg S38E 50 paces", "pace 2.5ft")) == "");
}

TEST_CASE("words behind a leg stand in any order") {
  for (const std::string typed : {"slope -14% back N37W to Q3 doubtful south-end",
                                  "to Q3 slope -14% back N37W south-end doubtful",
                                  "back N37W to Q3 doubtful south-end slope -14%",
                                  "doubtful south-end to Q3 back 323 slope -14 %"}) {
    CAPTURE(typed);
    const auto book = read_line("leg S38E 120m " + typed);
    CHECK(codes(book) == "doubtful");
    const auto leg = good<Leg>(book);
    REQUIRE(leg.slope);
    CHECK(leg.slope->percent);
    CHECK(leg.slope->value == -14);
    REQUIRE(leg.back);
    CHECK(leg.back->azimuth().degrees() == 323);
    CHECK(book.names.shown(leg.to) == "Q3");
    CHECK(leg.south_end);
    CHECK(leg.azimuth().degrees() == 322);
  }
}

TEST_CASE("a leg may end at a station of any name") {
  for (const std::string name : {"12", "N2", "Q3", "back", "Quern-3", "3/4", "Übergang", "x.y"}) {
    CAPTURE(name);
    const auto book = read_line("leg S38E 120m to " + name + " back N37W");
    CHECK(codes(book) == "");
    CHECK(book.names.shown(good<Leg>(book).to) == name);
    CHECK(good<Leg>(book).back);
  }
  CHECK(good<Leg>(read_line("leg S38E 120m")).to == notebook::no_name);
  CHECK(fault("leg S38E 120m to") == "name");
  CHECK(fault("leg S38E 120m to Q,3") == "name");
  CHECK(fault("leg S38E 120m to Q 3") == "trailing-text");
}

TEST_CASE("what a leg needs") {
  CHECK(fault("leg") == "incomplete");
  CHECK(fault("leg 120m") == "incomplete");
  CHECK(fault("leg N98E 120m") == "quadrant-angle");
  CHECK(fault("leg S38E 120m back") == "incomplete");
  CHECK(fault("leg S38E 120m back N98E") == "quadrant-angle");
  CHECK(fault("leg S38E 120m paced") == "trailing-text");
}

}  // namespace
}  // namespace lodebook::test
