// SPDX-License-Identifier: MIT
// Kamb's density.
#include <lodebook/orientation/density.hpp>

#include <cmath>
#include <lodebook/orientation/net.hpp>
#include <numbers>
#include <vector>

#include "samples.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("the cap and sigma follow from the number of axes alone") {
  Seeded random(240);
  for (const int count : {1, 9, 50, 1000}) {
    CAPTURE(count);
    const KambDensity density(any_directions(random, count));
    const double share = density.fraction();
    CHECK(std::abs(share - 9.0 / (count + 9)) < 1e-15);
    CHECK(std::abs(density.sigma() - std::sqrt(count * share * (1 - share))) < 1e-12);
    // What chance alone puts into the cap is three sigma.
    CHECK(std::abs(count * share - 3 * density.sigma()) < 1e-12);
  }
}

TEST_CASE("an axis counts in a cap of its share of the hemisphere, and not outside") {
  // Nine axes: half a hemisphere, whose half-angle is 60 degrees.
  const Vector axis = pole_of(33, 70);
  const KambDensity density(std::vector<Vector>(9, axis));
  CHECK(density.fraction() == 0.5);
  for (const double along : {0.0, 100.0, 200.0, 300.0}) {
    const Vector about = turned(beside(axis), axis, along);
    CHECK(density.count(turned(axis, about, 59.9)) == 9);
    CHECK(density.count(turned(axis, about, 60.1)) == 0);
    CHECK(density.count(turned(axis, about, 120.1)) == 9);  // by its other end
  }
  CHECK(std::abs(density.at(axis) - 9 / 1.5) < 1e-12);
}

TEST_CASE("axes that coincide stand N over sigma high, and nowhere else") {
  for (const std::size_t count : {std::size_t{1}, std::size_t{30}, std::size_t{5000}}) {
    const KambDensity density(std::vector<Vector>(count, Vector{0, 0, 1}));
    CHECK(density.count({0, 0, 1}) == count);
    CHECK(density.count({0, 0, -1}) == count);
    CHECK(std::abs(density.at({0, 0, 1}) - (static_cast<double>(count) + 9) / 3) < 1e-9);
    CHECK(density.count({1, 0, 0}) == 0);
  }
}

TEST_CASE("the density turns with its axes, whichever end they have or are sought by") {
  Seeded random(241);
  for (int i = 0; i < 50; ++i) {
    const std::vector<Vector> axes = any_directions(random, 40);
    const Vector about = any_direction(random);
    const double by = random.between(0, 360);
    const KambDensity density(axes);
    const KambDensity moved(with_ends_turned(random, all_turned(axes, about, by)));
    for (int k = 0; k < 20; ++k) {
      const Vector direction = any_direction(random);
      CHECK(moved.count(turned(direction, about, by)) == density.count(direction));
      CHECK(density.count(-direction) == density.count(direction));
    }
  }
}

TEST_CASE("axes all over the sphere stand at three sigma on average") {
  Seeded random(242);
  for (const int count : {10, 50, 300}) {
    CAPTURE(count);
    const KambDensity density(any_directions(random, count));
    double sum = 0;
    constexpr int places = 10000;
    for (int i = 0; i < places; ++i)
      sum += density.at(any_direction(random));
    CHECK(std::abs(sum / places - 3) < 0.1);
  }
}

TEST_CASE("the density over the whole hemisphere is the number of axes") {
  // count / (2 pi A) axes a unit of area, over a net of equal cells.
  Seeded random(243);
  for (const int count : {10, 50, 300}) {
    CAPTURE(count);
    const KambDensity density(any_directions(random, count));
    constexpr int side = 160;
    double counted = 0;
    int cells = 0;
    for (int row = 0; row < side; ++row) {
      for (int column = 0; column < side; ++column) {
        const NetPoint centre = {(2 * column + 1.0) / side - 1, (2 * row + 1.0) / side - 1};
        if (std::hypot(centre.east, centre.north) > 1) continue;
        counted += static_cast<double>(density.count(direction_at(centre)));
        ++cells;
      }
    }
    const double cell = 2 * std::numbers::pi / cells;
    const double integral = counted * cell / (2 * std::numbers::pi * density.fraction());
    CHECK(std::abs(integral / count - 1) < 0.01);
  }
}
