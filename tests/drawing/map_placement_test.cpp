// SPDX-License-Identifier: MIT
// Room on paper: what is placed keeps clear of all that is taken, near to where it is wanted.
#include "../../src/drawing/map/placement.hpp"

#include <catch.hpp>

#include <cmath>
#include <vector>

using namespace lodebook::drawing;

namespace {

constexpr Box frame = {{10, 20}, {110, 90}};

double apart(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

}  // namespace

TEST_CASE("what is free is neither taken nor over the frame's edge") {
  Placement placement(frame);
  CHECK(placement.is_free(Circle{{50, 50}, 4}));
  CHECK_FALSE(placement.is_free(Circle{{13, 50}, 4}));
  CHECK_FALSE(placement.is_free(box_around({50, 88}, 6, 6)));
  placement.take(Circle{{50, 50}, 4});
  CHECK_FALSE(placement.is_free(Circle{{57.9, 50}, 4}));
  CHECK(placement.is_free(Circle{{58.1, 50}, 4}));
  // The box's corner stands free of the disc although its sides do not.
  CHECK(placement.is_free(box_around({56, 56}, 6, 6)));
  CHECK_FALSE(placement.is_free(box_around({56, 50}, 6, 6)));
  placement.take(box_around({80, 50}, 10, 4));
  CHECK_FALSE(placement.is_free(Circle{{80, 55.9}, 4}));
  CHECK(placement.is_free(Circle{{80, 56.1}, 4}));
  CHECK_FALSE(placement.is_free(box_around({89, 50}, 10, 4)));
}

TEST_CASE("the nearest place is found, and a full frame says so") {
  Placement placement(frame);
  placement.take(Circle{{60, 55}, 4});
  std::vector<Point> placed;
  double last = 0;
  while (const auto at = placement.place_disc({60, 55}, 4)) {
    for (const Point& other : placed)
      CHECK(apart(*at, other) >= 8);
    CHECK(apart(*at, {60, 55}) >= 8);
    // From near to far: what comes later never had a nearer place.
    CHECK(apart(*at, {60, 55}) >= last);
    last = apart(*at, {60, 55});
    placed.push_back(*at);
  }
  CHECK(apart(placed.front(), {60, 55}) < 10);
  // Discs of 8 mm on 100 by 70 mm: 0.79 of the paper if side by side.
  CHECK(placed.size() > 60);
  CHECK_FALSE(placement.place_box({60, 55}, 8, 8));
}
