// SPDX-License-Identifier: MIT
// Vectors to north, east and down.
#include <lodebook/orientation/vector.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

constexpr Vector north_vector = {1, 0, 0};
constexpr Vector east_vector = {0, 1, 0};
constexpr Vector down_vector = {0, 0, 1};

}  // namespace

TEST_CASE("north, east and down are a right-handed frame") {
  CHECK(dot(cross(north_vector, east_vector), down_vector) == 1);
  CHECK(dot(cross(east_vector, down_vector), north_vector) == 1);
  CHECK(dot(north_vector, east_vector) == 0);
}

TEST_CASE("a vector has a length, and a unit vector along it") {
  CHECK(norm({2, 3, 6}) == 7);
  CHECK_THAT(unit({0, 3, 4}).value(), lies_along({0, 0.6, 0.8}));
  CHECK(norm(unit({1e-9, 0, 0}).value()) == 1);
}

TEST_CASE("a vector that is too short or no number has no direction") {
  CHECK_FALSE(unit({}));
  CHECK_FALSE(unit({1e-13, 0, -1e-13}));
  CHECK_FALSE(unit({std::nan(""), 0, 1}));
  CHECK_FALSE(unit({HUGE_VAL, 0, 1}));
}

TEST_CASE("axes have no arrow: the angle between them is at most 90") {
  CHECK(angle_between_axes(north_vector, east_vector).degrees() == 90);
  CHECK(angle_between_axes(north_vector, north_vector).degrees() == 0);
  CHECK(angle_between_axes(north_vector, -north_vector).degrees() == 0);
  CHECK_THAT(angle_between_axes(north_vector, direction_of(120, 0)).degrees(), points_to(60));
}

TEST_CASE("the angle between nearly parallel axes keeps its digits") {
  const double tiny = 1e-7;
  const double measured = angle_between_axes(direction_of(0, 0), direction_of(tiny, 0)).degrees();
  CHECK(std::abs(measured / tiny - 1) < 1e-9);
}

TEST_CASE("the angle between axes does not depend on the frame") {
  Seeded random(27);
  for (int i = 0; i < 500; ++i) {
    const Vector a = direction_of(random.between(0, 360), random.between(0, 90));
    const Vector b = direction_of(random.between(0, 360), random.between(0, 90));
    const Vector about = direction_of(random.between(0, 360), random.between(-90, 90));
    const double by = random.between(0, 360);
    CAPTURE(by);
    CHECK_THAT(angle_between_axes(turned(a, about, by), turned(b, about, by)).degrees(),
               points_to(angle_between_axes(a, b).degrees()));
  }
}
