// SPDX-License-Identifier: MIT
// Planes by strike and dip, and their poles.
#include <lodebook/orientation/plane.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("the hand rule says to which side of the strike a plane dips") {
  const TruePlane right = TruePlane::from_strike(azimuth(78), dip(41), HandRule::right);
  CHECK(right.strike().degrees() == 78);
  CHECK(right.dip_direction().degrees() == 168);
  const TruePlane left = TruePlane::from_strike(azimuth(78), dip(41), HandRule::left);
  CHECK(left.strike().degrees() == 258);
  CHECK(left.dip_direction().degrees() == 348);
  CHECK(left.dip() == dip(41));
}

TEST_CASE("a plane is made from where it dips") {
  const TruePlane plane = TruePlane::from_dip_direction(azimuth(10), dip(41));
  CHECK(plane.strike().degrees() == 280);
  CHECK(plane.dip_direction().degrees() == 10);
}

TEST_CASE("either end of the strike and a side on the low side make the same plane") {
  for (const double end : {78.0, 258.0}) {
    for (const double side : {0.0, 337.5, 315.0, 22.5, 45.0, 348.0}) {
      CAPTURE(end, side);
      const auto plane = TruePlane::from_strike_and_side(azimuth(end), dip(41), azimuth(side));
      REQUIRE(plane);
      CHECK(plane->strike().degrees() == 258);
      CHECK(plane->dip_direction().degrees() == 348);
    }
  }
}

TEST_CASE("a side further than three points from the dip direction is impossible") {
  CHECK_FALSE(TruePlane::from_strike_and_side(azimuth(78), dip(41), azimuth(90)));
  CHECK_FALSE(TruePlane::from_strike_and_side(azimuth(78), dip(41), azimuth(78)));
  CHECK_FALSE(TruePlane::from_strike_and_side(azimuth(0), dip(41), azimuth(0)));
  CHECK(TruePlane::from_strike_and_side(azimuth(0), dip(41), azimuth(22.5)));
  CHECK_FALSE(TruePlane::from_strike_and_side(azimuth(0), dip(41), azimuth(22.4)));
  CHECK(TruePlane::from_strike_and_side(azimuth(0), dip(32), azimuth(337.5))->strike() ==
        azimuth(180));
  CHECK_FALSE(TruePlane::from_strike_and_side(azimuth(0), dip(32), azimuth(337.6)));
}

TEST_CASE("horizontal and vertical planes know that they are") {
  CHECK(TruePlane().is_horizontal());
  CHECK_FALSE(TruePlane().is_vertical());
  const TruePlane wall = TruePlane::from_strike(azimuth(20), dip(90), HandRule::right);
  CHECK(wall.is_vertical());
  CHECK_FALSE(wall.is_horizontal());
}

TEST_CASE("the pole points down, away from the dip, and is exact at quarter turns") {
  const Vector level = TruePlane().pole();
  CHECK(level.north == 0);
  CHECK(level.east == 0);
  CHECK(level.down == 1);
  const Vector wall = pole_of(0, 90);  // dips to the east
  CHECK(wall.north == 0);
  CHECK(wall.east == -1);
  CHECK(wall.down == 0);
}

TEST_CASE("the pole is at right angles to the strike and to the line of dip") {
  Seeded random(28);
  for (int i = 0; i < 500; ++i) {
    const double strike = random.between(0, 360);
    const double slope = random.between(0, 90);
    CAPTURE(strike, slope);
    const Vector pole = pole_of(strike, slope);
    CHECK(std::abs(norm(pole) - 1) < 1e-15);
    CHECK(pole.down >= 0);
    CHECK(std::abs(dot(pole, direction_of(strike, 0))) < 1e-15);
    CHECK(std::abs(dot(pole, direction_of(strike + 90, slope))) < 1e-15);
  }
}

TEST_CASE("a plane comes back from its pole, whichever way that points") {
  Seeded random(29);
  for (int i = 0; i < 1000; ++i) {
    const double strike = random.tenths();
    const double slope = random.between(0.1, 89.9);
    CAPTURE(strike, slope);
    for (const Vector pole : {pole_of(strike, slope), -pole_of(strike, slope)}) {
      const StrikeAndDip plane = plane_of_pole(pole);
      CHECK_THAT(plane.strike, points_to(strike));
      CHECK_THAT(plane.dip, points_to(slope));
      CHECK(plane.strike >= 0);
      CHECK(plane.strike < 360);
    }
  }
}

TEST_CASE("a level plane comes back with strike 0, dust or no dust") {
  for (const Vector pole :
       {Vector{0, 0, 1}, Vector{0, 0, -1}, Vector{-0.0, -0.0, 1}, Vector{1e-16, -1e-16, 1}}) {
    const StrikeAndDip plane = plane_of_pole(pole);
    CHECK(plane.strike == 0);
    CHECK(plane.dip == 0);
  }
}

TEST_CASE("a vertical plane keeps its strike and its dip of exactly 90, dust or no dust") {
  for (const double strike : {0.0, 90.0, 200.0, 333.3}) {
    for (const double dust : {0.0, -0.0, 1e-16, -1e-16}) {
      CAPTURE(strike, dust);
      const StrikeAndDip plane = plane_of_pole(pole_of(strike, 90) + Vector{0, 0, dust});
      CHECK_THAT(plane.strike, points_to(strike));
      CHECK(plane.dip == 90);
    }
  }
}

TEST_CASE("a plane turned about the vertical only changes its strike") {
  Seeded random(30);
  for (int i = 0; i < 500; ++i) {
    const double strike = random.between(0, 360);
    const double slope = random.between(0.1, 89.9);
    const double by = random.between(-360, 360);
    CAPTURE(strike, slope, by);
    const StrikeAndDip plane = plane_of_pole(turned(pole_of(strike, slope), {0, 0, 1}, by));
    CHECK_THAT(plane.strike, points_to(strike + by));
    CHECK_THAT(plane.dip, points_to(slope));
  }
}
