// SPDX-License-Identifier: MIT
// Lines by trend and plunge, alone and in planes.
#include <lodebook/orientation/line.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

TruePlane plane_of(double strike, double slope) {
  return TruePlane::from_strike(azimuth(strike), dip(slope), HandRule::right);
}

}  // namespace

TEST_CASE("a line points down along its trend, exactly so at quarter turns") {
  const Vector east = TrueLine(azimuth(90), plunge(0)).direction();
  CHECK(east.north == 0);
  CHECK(east.east == 1);
  CHECK(east.down == 0);
  const Vector down = TrueLine(azimuth(37), plunge(90)).direction();
  CHECK(down.north == 0);
  CHECK(down.east == 0);
  CHECK(down.down == 1);
}

TEST_CASE("a line keeps its trend and plunge, and knows that it is vertical") {
  const TrueLine line(azimuth(310), plunge(35));
  CHECK(line.trend().degrees() == 310);
  CHECK(line.plunge().degrees() == 35);
  CHECK_FALSE(line.is_vertical());
  CHECK(TrueLine(azimuth(310), plunge(90)).is_vertical());
  CHECK_FALSE(TrueLine().is_vertical());
}

TEST_CASE("a line comes back from its axis, whichever way that points") {
  Seeded random(31);
  for (int i = 0; i < 1000; ++i) {
    const double trend = random.tenths();
    const double slope = random.between(0.1, 89.9);
    CAPTURE(trend, slope);
    for (const Vector axis : {direction_of(trend, slope), -direction_of(trend, slope)}) {
      const TrendAndPlunge line = line_of_axis(axis);
      CHECK_THAT(line.trend, points_to(trend));
      CHECK_THAT(line.plunge, points_to(slope));
      CHECK(line.trend >= 0);
      CHECK(line.trend < 360);
    }
  }
}

TEST_CASE("a vertical axis has trend 0 and a level one its own end, dust or no dust") {
  for (const double dust : {0.0, 1e-16, -1e-16}) {
    CAPTURE(dust);
    const TrendAndPlunge vertical = line_of_axis({dust, -dust, -1});
    CHECK(vertical.trend == 0);
    CHECK(vertical.plunge == 90);
    const TrendAndPlunge level = line_of_axis(direction_of(200, 0) + Vector{0, 0, dust});
    CHECK_THAT(level.trend, points_to(200));
    CHECK(level.plunge == 0);
  }
}

TEST_CASE("an arrow that rises keeps the end that it points to, with a negative plunge") {
  const TrendAndPlunge down = line_of_arrow(direction_of(200, 30));
  CHECK_THAT(down.trend, points_to(200));
  CHECK_THAT(down.plunge, points_to(30));
  const TrendAndPlunge up = line_of_arrow(-direction_of(200, 30));
  CHECK_THAT(up.trend, points_to(20));
  CHECK(std::abs(up.plunge + 30) < 1e-12);
  CHECK(line_of_arrow(-direction_of(200, 0)).plunge == 0);
}

TEST_CASE("a rake of 0 is the strike and one of 90 the line of dip") {
  CHECK(trend_from_strike(rake(0), dip(32)).degrees() == 0);
  CHECK(plunge_of_rake(rake(0), dip(32)).degrees() == 0);
  CHECK(trend_from_strike(rake(90), dip(32)).degrees() == 90);
  CHECK_THAT(plunge_of_rake(rake(90), dip(32)).degrees(), points_to(32, 1e-12));
  CHECK(plunge_of_rake(rake(90), dip(90)).degrees() == 90);
}

TEST_CASE("in a vertical plane the plunge is the rake and the trend the strike") {
  CHECK(trend_from_strike(rake(40), dip(90)).degrees() == 0);
  CHECK_THAT(plunge_of_rake(rake(40), dip(90)).degrees(), points_to(40, 1e-12));
}

TEST_CASE("a rake is measured from the end of the strike that lies near the bearing given") {
  const TruePlane plane = plane_of(258, 41);  // dips to 348
  const auto from_east = TrueLine::in_plane(plane, rake(40), azimuth(78));
  const auto from_west = TrueLine::in_plane(plane, rake(40), azimuth(258));
  REQUIRE(from_east);
  REQUIRE(from_west);
  const double turn = trend_from_strike(rake(40), dip(41)).degrees();
  CHECK_THAT(from_east->trend().degrees(), points_to(78 - turn));
  CHECK_THAT(from_west->trend().degrees(), points_to(258 + turn));
  CHECK(from_east->plunge() == from_west->plunge());
}

TEST_CASE("a bearing may lie three points from the end of the strike, and no further") {
  const TruePlane plane = plane_of(0, 32);
  CHECK(TrueLine::in_plane(plane, rake(40), azimuth(67.5)));
  CHECK_FALSE(TrueLine::in_plane(plane, rake(40), azimuth(67.6)));
  CHECK_FALSE(TrueLine::in_plane(plane, rake(40), azimuth(90)));
  CHECK_FALSE(TrueLine::in_plane(plane, rake(40), azimuth(112.4)));
  CHECK(TrueLine::in_plane(plane, rake(40), azimuth(112.5)));
  CHECK(TrueLine::in_plane(plane, rake(40), azimuth(292.5)));
}

TEST_CASE("a horizontal plane has no strike to measure a rake from") {
  CHECK_FALSE(TrueLine::in_plane(TruePlane(), rake(40), azimuth(0)));
}

TEST_CASE("a line at a rake lies in the plane, at that angle from the strike") {
  Seeded random(32);
  for (int i = 0; i < 1000; ++i) {
    const TruePlane plane = plane_of(random.tenths(), random.between(0.5, 90));
    const double pitch = random.between(0, 90);
    const True end = i % 2 == 0 ? plane.strike() : plane.strike().opposite();
    CAPTURE(plane.strike().degrees(), plane.dip().degrees(), pitch, end.degrees());
    const auto line = TrueLine::in_plane(plane, rake(pitch), end);
    REQUIRE(line);
    CHECK_THAT(angle_out_of_plane(line->direction(), plane.pole()).degrees(), points_to(0));
    const Vector strike = direction_of(end.degrees(), 0);
    CHECK_THAT(angle_between_axes(line->direction(), strike).degrees(), points_to(pitch));
    CHECK(dot(line->direction(), strike) > -1e-12);
  }
}

TEST_CASE("the apparent dip is the true one across the strike and none along it") {
  CHECK_THAT(apparent_dip(dip(32), angle(90)).degrees(), points_to(32, 1e-12));
  CHECK(apparent_dip(dip(32), angle(0)).degrees() == 0);
  CHECK(apparent_dip(dip(32), angle(180)).degrees() == 0);
  CHECK(apparent_dip(dip(90), angle(0)).degrees() == 0);
  CHECK(apparent_dip(dip(90), angle(1)).degrees() == 90);
  CHECK(apparent_dip(dip(0), angle(40)).degrees() == 0);
}

TEST_CASE("the apparent dip is the same on all four sides of the strike") {
  for (const double section : {-30.0, 150.0, 210.0, -150.0}) {
    CAPTURE(section);
    CHECK_THAT(apparent_dip(dip(40), angle(section)).degrees(),
               points_to(apparent_dip(dip(40), angle(30)).degrees(), 1e-12));
  }
}

TEST_CASE("a line at the apparent dip lies in the plane") {
  Seeded random(33);
  for (int i = 0; i < 500; ++i) {
    const double strike = random.between(0, 360);
    const double slope = random.between(0, 89);
    const double section = random.between(0, 180);
    CAPTURE(strike, slope, section);
    const Dip apparent = apparent_dip(dip(slope), angle(section));
    const Vector seen = direction_of(strike + section, apparent.degrees());
    CHECK_THAT(angle_out_of_plane(seen, pole_of(strike, slope)).degrees(), points_to(0));
  }
}

TEST_CASE("the angle out of a plane is 0 in it, 90 along its pole, and has no sign") {
  const Vector pole = pole_of(258, 41);
  CHECK_THAT(angle_out_of_plane(direction_of(348, 41), pole).degrees(), points_to(0));
  CHECK_THAT(angle_out_of_plane(pole, pole).degrees(), points_to(90));
  CHECK_THAT(angle_out_of_plane(direction_of(348, 49), pole).degrees(), points_to(8));
  CHECK_THAT(angle_out_of_plane(direction_of(348, 33), pole).degrees(), points_to(8));
}

TEST_CASE("a plane and a line turned together about the vertical stay as far apart") {
  Seeded random(34);
  for (int i = 0; i < 1000; ++i) {
    const double strike = random.between(0, 360);
    const double slope = random.between(0, 90);
    const double trend = random.between(0, 360);
    const double down = random.between(0, 90);
    const double by = random.between(0, 360);
    CAPTURE(strike, slope, trend, down, by);
    const double before =
        angle_out_of_plane(direction_of(trend, down), pole_of(strike, slope)).degrees();
    const double after =
        angle_out_of_plane(direction_of(trend + by, down), pole_of(strike + by, slope)).degrees();
    CHECK_THAT(after, points_to(before));
  }
}

TEST_CASE("two planes meet in a line that lies in both and points down") {
  Seeded random(35);
  for (int i = 0; i < 500; ++i) {
    const Vector a = pole_of(random.between(0, 360), random.between(1, 90));
    const Vector b = pole_of(random.between(0, 360), random.between(1, 90));
    const auto line = intersection(a, b);
    REQUIRE(line);
    CHECK(line->down >= 0);
    CHECK_THAT(angle_out_of_plane(*line, a).degrees(), points_to(0));
    CHECK_THAT(angle_out_of_plane(*line, b).degrees(), points_to(0));
    CHECK_THAT(intersection(b, a).value(), lies_along(*line));
  }
}

TEST_CASE("parallel planes do not meet") {
  CHECK_FALSE(intersection(pole_of(85, 32), pole_of(85, 32)));
  CHECK_FALSE(intersection(pole_of(85, 32), -pole_of(85, 32)));
  CHECK_FALSE(intersection(pole_of(20, 90), pole_of(200, 90)));
}
