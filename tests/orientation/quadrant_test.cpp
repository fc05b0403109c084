// SPDX-License-Identifier: MIT
// Quadrant bearings and the sixteen points.
#include <lodebook/orientation/quadrant.hpp>

#include <cmath>
#include <string>
#include <string_view>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

using Pole = QuadrantBearing::Pole;
using Side = QuadrantBearing::Side;

double degrees(Pole pole, double angle, Side side) {
  return QuadrantBearing::from(pole, angle, side).value().degrees();
}

}  // namespace

TEST_CASE("the sixteen points go round clockwise by 22.5 degrees") {
  const std::string_view names[] = {"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                    "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};
  double expected = 0;
  for (const std::string_view name : names) {
    CAPTURE(name);
    const auto point = point_named(name);
    REQUIRE(point);
    CHECK(name_of(*point) == name);
    CHECK(degrees_of(*point) == expected);
    expected += 22.5;
  }
  CHECK(expected == 360);
}

TEST_CASE("a point is named in any case, and by no other word") {
  CHECK(point_named("nne") == Point::NNE);
  CHECK(point_named("Sw") == Point::SW);
  for (const char* word : {"", "NN", "NEN", "north", "N ", " N", "NS", "EN", "X", "NNEE"}) {
    CAPTURE(word);
    CHECK_FALSE(point_named(word));
  }
}

TEST_CASE("the nearest main point, ties going to the cardinal") {
  CHECK(nearest_eighth(0) == Point::N);
  CHECK(nearest_eighth(22.5) == Point::N);
  CHECK(nearest_eighth(22.6) == Point::NE);
  CHECK(nearest_eighth(45) == Point::NE);
  CHECK(nearest_eighth(67.4) == Point::NE);
  CHECK(nearest_eighth(67.5) == Point::E);
  CHECK(nearest_eighth(112.5) == Point::E);
  CHECK(nearest_eighth(157.5) == Point::S);
  CHECK(nearest_eighth(202.5) == Point::S);
  CHECK(nearest_eighth(225) == Point::SW);
  CHECK(nearest_eighth(247.5) == Point::W);
  CHECK(nearest_eighth(292.5) == Point::W);
  CHECK(nearest_eighth(300) == Point::NW);
  CHECK(nearest_eighth(337.4) == Point::NW);
  CHECK(nearest_eighth(337.5) == Point::N);
  CHECK(nearest_eighth(355) == Point::N);
  CHECK(nearest_eighth(360) == Point::N);
  CHECK(nearest_eighth(-45) == Point::NW);
}

TEST_CASE("the nearest main point is never further than 22.5 degrees") {
  for (int tenths = 0; tenths < 3600; ++tenths) {
    CAPTURE(tenths);
    CHECK_THAT(degrees_of(nearest_eighth(tenths / 10.0)), points_to(tenths / 10.0, 22.5));
  }
}

TEST_CASE("an angle of 0 to 90 makes a quadrant bearing, nothing else does") {
  CHECK(QuadrantBearing::from(Pole::north, 0, Side::east));
  CHECK(QuadrantBearing::from(Pole::south, 90, Side::west));
  CHECK_FALSE(QuadrantBearing::from(Pole::north, 90.1, Side::east));
  CHECK_FALSE(QuadrantBearing::from(Pole::north, -0.1, Side::east));
  CHECK_FALSE(QuadrantBearing::from(Pole::north, std::nan(""), Side::east));
}

TEST_CASE("each quadrant counts from its own pole to its own side") {
  CHECK(degrees(Pole::north, 50, Side::east) == 50);
  CHECK(degrees(Pole::south, 50, Side::east) == 130);
  CHECK(degrees(Pole::south, 50, Side::west) == 230);
  CHECK(degrees(Pole::north, 50, Side::west) == 310);
}

TEST_CASE("both writings of a cardinal point are that point") {
  CHECK(degrees(Pole::north, 0, Side::east) == 0);
  CHECK(degrees(Pole::north, 0, Side::west) == 0);
  CHECK(degrees(Pole::north, 90, Side::east) == 90);
  CHECK(degrees(Pole::south, 90, Side::east) == 90);
  CHECK(degrees(Pole::south, 0, Side::east) == 180);
  CHECK(degrees(Pole::south, 0, Side::west) == 180);
  CHECK(degrees(Pole::south, 90, Side::west) == 270);
  CHECK(degrees(Pole::north, 90, Side::west) == 270);
}

TEST_CASE("a hair west of north is not 360") {
  CHECK(degrees(Pole::north, 1e-17, Side::west) == 0);
}

TEST_CASE("north and south are written with east, east and west with north") {
  struct Cardinal {
    double degrees;
    Pole pole;
    double angle;
    Side side;
  };
  for (const auto& cardinal :
       {Cardinal{0, Pole::north, 0, Side::east}, Cardinal{90, Pole::north, 90, Side::east},
        Cardinal{180, Pole::south, 0, Side::east}, Cardinal{270, Pole::north, 90, Side::west},
        Cardinal{360, Pole::north, 0, Side::east}, Cardinal{-90, Pole::north, 90, Side::west}}) {
    CAPTURE(cardinal.degrees);
    const QuadrantBearing bearing = QuadrantBearing::of_degrees(cardinal.degrees);
    CHECK(bearing.pole() == cardinal.pole);
    CHECK(bearing.angle() == cardinal.angle);
    CHECK(bearing.side() == cardinal.side);
  }
}

TEST_CASE("an azimuth comes back from its quadrant bearing, exactly") {
  Seeded random(36);
  for (int i = 0; i < 5000; ++i) {
    const double azimuth = i < 3600 ? i / 10.0 : random.between(0, 360);
    CAPTURE(azimuth);
    const QuadrantBearing bearing = QuadrantBearing::of_degrees(azimuth);
    CHECK(bearing.angle() >= 0);
    CHECK(bearing.angle() <= 90);
    CHECK(bearing.degrees() == azimuth);
  }
}

TEST_CASE("a quadrant bearing comes back from its azimuth") {
  Seeded random(37);
  for (const Pole pole : {Pole::north, Pole::south}) {
    for (const Side side : {Side::east, Side::west}) {
      for (int i = 0; i < 500; ++i) {
        const double angle = random.between(0.1, 89.9);
        CAPTURE(pole, angle, side);
        const auto back = QuadrantBearing::of_degrees(degrees(pole, angle, side));
        CHECK(back.pole() == pole);
        CHECK(back.side() == side);
        CHECK_THAT(back.angle(), points_to(angle, 1e-12));
      }
    }
  }
}
