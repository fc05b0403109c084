// SPDX-License-Identifier: MIT
// Bearings as they are typed, read through `sight`, which takes nothing else.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Bearing;
using notebook::Notation;
using notebook::Sight;

struct Row {
  const char* typed;
  double azimuth;
  Notation notation;
  int digits = 0;
  int decimals = 0;
};

void check(const Row& row) {
  CAPTURE(row.typed);
  const auto book = read_line(std::string("sight Cairn ") + row.typed);
  REQUIRE(codes(book) == "");
  const Bearing bearing = good<Sight>(book).bearing;
  CHECK(same_direction(bearing.azimuth().degrees(), row.azimuth));
  CHECK(bearing.azimuth().degrees() < 360);
  CHECK(bearing.notation == row.notation);
  if (row.notation == Notation::azimuth) CHECK(int{bearing.digits} == row.digits);
  if (row.notation != Notation::point) CHECK(int{bearing.decimals} == row.decimals);
}

TEST_CASE("quadrant bearings count from north or south towards east or west") {
  constexpr Notation quadrant = Notation::quadrant;
  const Row rows[] = {
      {"N50W", 310, quadrant},
      {"N 50 W", 310, quadrant},
      {"n50°w", 310, quadrant},
      {"N50.5W", 309.5, quadrant, 0, 1},
      {"N50°30'W", 309.5, quadrant, 0, 2},
      {"N50°W", 310, quadrant},
      {"N50ºW", 310, quadrant},
      {"N50˚W", 310, quadrant},
      {"N50degW", 310, quadrant},
      {"N 50 deg W", 310, quadrant},
      {"N50 DEG W", 310, quadrant},
      {"N50°30′W", 309.5, quadrant, 0, 2},
      {"N50°30’W", 309.5, quadrant, 0, 2},
      {"N50 ° 30 ' W", 309.5, quadrant, 0, 2},
      {"N50deg30'W", 309.5, quadrant, 0, 2},
      {"N50°30'36\"W", 309.49, quadrant, 0, 4},
      {"N50°30′36″W", 309.49, quadrant, 0, 4},
      {"N50°30’36”W", 309.49, quadrant, 0, 4},
      {"N\t50\tW", 310, quadrant},
      {"N\u00A050\u00A0W", 310, quadrant},
      {"N50 W", 310, quadrant},
      {"N 50W", 310, quadrant},
      {"S43E", 137, quadrant},
      {"S43W", 223, quadrant},
      {"s43w", 223, quadrant},
      {"N05E", 5, quadrant},
      {"N0E", 0, quadrant},
      {"N0W", 0, quadrant},
      {"S0E", 180, quadrant},
      {"S0W", 180, quadrant},
      {"N90E", 90, quadrant},
      {"N90W", 270, quadrant},
      {"S90E", 90, quadrant},
      {"S90W", 270, quadrant},
      {"N0°30'W", 359.5, quadrant, 0, 2},
      {"S89.9W", 269.9, quadrant, 0, 1},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("the sixteen points are bearings, with or without due") {
  const char* const points[] = {"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};
  double azimuth = 0;
  for (const std::string point : points) {
    std::string lower = point;
    for (char& c : lower)
      c = static_cast<char>(c + ('a' - 'A'));
    for (const std::string& typed : {point, lower, "due " + point, "DUE " + lower})
      check({typed.c_str(), azimuth, Notation::point});
    azimuth += 22.5;
  }
  CHECK(azimuth == 360);
}

TEST_CASE("azimuths run clockwise from north, and 360 is stored as 0") {
  constexpr Notation azimuth = Notation::azimuth;
  const Row rows[] = {
      {"310", 310, azimuth, 3},
      {"007", 7, azimuth, 3},
      {"7.5", 7.5, azimuth, 1, 1},
      {"310°30'", 310.5, azimuth, 3, 2},
      {"310°30'36\"", 310.51, azimuth, 3, 4},
      {"310 ° 30 '", 310.5, azimuth, 3, 2},
      {"360", 0, azimuth, 3},
      {"360.0", 0, azimuth, 3, 1},
      {"0", 0, azimuth, 1},
      {"000", 0, azimuth, 3},
      {"90", 90, azimuth, 2},
      {"088°", 88, azimuth, 3},
      {"88deg", 88, azimuth, 2},
      {"359.99", 359.99, azimuth, 3, 2},
      {".5", 0.5, azimuth, 0, 1},
  };
  for (const Row& row : rows)
    check(row);
  CHECK(good<Sight>(read_line("sight Cairn 360")).bearing.azimuth().degrees() == 0);
}

TEST_CASE("every whole quadrant bearing points where its azimuth does") {
  for (int angle = 0; angle <= 90; ++angle) {
    const std::string figure = std::to_string(angle);
    check({("N" + figure + "E").c_str(), angle * 1.0, Notation::quadrant});
    check({("S" + figure + "E").c_str(), 180.0 - angle, Notation::quadrant});
    check({("S" + figure + "W").c_str(), 180.0 + angle, Notation::quadrant});
    check({("N" + figure + "W").c_str(), 360.0 - angle, Notation::quadrant});
  }
}

TEST_CASE("every whole azimuth reads back") {
  for (int azimuth = 0; azimuth <= 360; ++azimuth) {
    const std::string typed = std::to_string(azimuth);
    check({typed.c_str(), azimuth * 1.0, Notation::azimuth, static_cast<int>(typed.size())});
  }
}

TEST_CASE("a reading in the notation that the dial does not have is noted once a station") {
  const char* const text =
      "dial quadrant\n"
      "station Q1\n"
      "sight A N50W\n"
      "sight B 310\n"
      "bedding 078/41 N, 088/41 N\n"
      "station Q2\n"
      "sight A 341\n"
      "dial azimuth\n"
      "station Q3\n"
      "lineation 310/35\n"
      "lineation N50W 35\n"
      "leg S20E 100m\n";
  CHECK(places(read(text)) ==
        "4:9-12 notation-mixed, 7:9-12 notation-mixed, 11:11-18 notation-mixed");
  CHECK(read(text).diagnostics.front().severity == notebook::Severity::note);
  CHECK(last<notebook::Reading>(read(text)).rejected == false);
}

TEST_CASE("points of the rose belong to both notations") {
  for (const std::string dial : {"dial quadrant", "dial azimuth"}) {
    CAPTURE(dial);
    CHECK(codes(read_line("sight A NNW\nbedding E 41 N\nlineation due N 15", dial)) == "");
  }
}

TEST_CASE("without a dial both notations are as good") {
  CHECK(codes(read_line("sight A N50W\nsight B 310")) == "");
}

}  // namespace
}  // namespace lodebook::test
