// SPDX-License-Identifier: MIT
// One set is not called two, and two that are clear are found.
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/sets.hpp>

#include <algorithm>
#include <catch.hpp>
#include <cmath>

#include "random_axes.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

/// A direction at an angle from another, to a random side.
Vector aside(RandomAxes& random, Vector from, double degrees) {
  const Vector across = *unit(cross(from, random.anywhere()));
  const double radians = degrees * std::numbers::pi / 180;
  return std::cos(radians) * from + std::sin(radians) * across;
}

/// Two sets of axes, either end of each at random, in random order.
std::vector<Vector> two(RandomAxes& random, std::size_t first, std::size_t second, double apart,
                        double precision) {
  const Vector one = random.anywhere();
  std::vector<Vector> axes = random.cluster(first, one, precision);
  const std::vector<Vector> others = random.cluster(second, aside(random, one, apart), precision);
  axes.insert(axes.end(), others.begin(), others.end());
  for (std::size_t i = axes.size(); i > 1; --i)
    std::swap(axes[i - 1], axes[random.below(i)]);
  for (Vector& axis : axes)
    axis = random.share() < 0.5 ? -axis : axis;
  return axes;
}

/// In how many of so many trials two sets are found.
template <class Make>
int found(int trials, Make make) {
  int count = 0;
  for (int i = 0; i < trials; ++i)
    count += two_sets(make(), Ends::both) ? 1 : 0;
  return count;
}

}  // namespace

TEST_CASE("one set is not called two, however wide, beyond one in a hundred") {
  RandomAxes random(71);
  constexpr int trials = 200;
  for (const std::size_t count : {6U, 10U, 40U}) {
    for (const double precision : {2.0, 10.0, 100.0}) {
      const int wrong =
          found(trials, [&] { return random.cluster(count, random.anywhere(), precision); });
      INFO(count << " axes of precision " << precision << ": " << wrong);
      CHECK(wrong <= 6);  // 1 % and three deviations of 1.4
    }
  }
}

TEST_CASE("what is spread evenly along a great circle is not two sets") {
  RandomAxes random(72);
  constexpr int trials = 200;
  for (const std::size_t count : {6U, 10U, 40U}) {
    for (const double span : {60.0, 120.0, 180.0}) {
      const int wrong =
          found(trials, [&] { return random.girdle(count, random.anywhere(), span, 3); });
      INFO(count << " axes over " << span << " degrees: " << wrong);
      CHECK(wrong <= 10);  // 2.1 % and three deviations of 2
    }
  }
}

TEST_CASE("two joint sets at a high angle are two, also of unequal size") {
  RandomAxes random(73);
  constexpr int trials = 60;
  struct Sizes {
    std::size_t first;
    std::size_t second;
  };
  for (const Sizes sizes : {Sizes{10, 10}, {15, 15}, {24, 6}}) {
    for (const double apart : {70.0, 90.0}) {
      const int right =
          found(trials, [&] { return two(random, sizes.first, sizes.second, apart, 60); });
      INFO(sizes.first << " and " << sizes.second << ", " << apart << " degrees apart: " << right);
      CHECK(right >= 0.95 * trials);
    }
  }
}

TEST_CASE("the sets are those that the axes were drawn from, the larger first") {
  RandomAxes random(74);
  const Vector east = direction_of(90, 5);
  const Vector north = direction_of(0, 10);
  std::vector<Vector> axes = random.cluster(8, east, 200);
  const std::vector<Vector> others = random.cluster(12, north, 200);
  axes.insert(axes.end(), others.begin(), others.end());
  const auto sets = two_sets(axes, Ends::both);
  REQUIRE(sets);
  CHECK((*sets)[0].places.size() == 12);
  CHECK((*sets)[0].places.front() == 8);
  CHECK((*sets)[1].places == std::vector<std::size_t>{0, 1, 2, 3, 4, 5, 6, 7});
  CHECK(angle_between_axes((*sets)[0].mean.axis, north).degrees() < 4);
  CHECK(angle_between_axes((*sets)[1].mean.axis, east).degrees() < 4);
  CHECK((*sets)[1].mean.count == 8);
}

TEST_CASE("turned together, or written by their other ends, they are the same sets") {
  RandomAxes random(75);
  for (int i = 0; i < 50; ++i) {
    std::vector<Vector> axes = two(random, 9, 7, 80, 100);
    const auto before = two_sets(axes, Ends::both);
    REQUIRE(before);
    for (Vector& axis : axes)
      axis = {-axis.east, axis.north, axis.down};  // a quarter turn
    axes[3] = -axes[3];
    const auto after = two_sets(axes, Ends::both);
    REQUIRE(after);
    CHECK((*after)[0].places == (*before)[0].places);
    CHECK((*after)[1].places == (*before)[1].places);
  }
}

TEST_CASE("arrows that oppose each other are two sets, of axes one") {
  RandomAxes random(76);
  std::vector<Vector> arrows = random.cluster(10, direction_of(60, 5), 100);
  for (std::size_t i = 0; i < 4; ++i)
    arrows[i] = -arrows[i];
  CHECK_FALSE(two_sets(arrows, Ends::both));
  const auto sets = two_sets(arrows, Ends::one);
  REQUIRE(sets);
  CHECK((*sets)[0].places.size() == 6);
  CHECK((*sets)[1].places == std::vector<std::size_t>{0, 1, 2, 3});
}

TEST_CASE("a set needs three, and 15 % of all; none, one and all alike are no two") {
  RandomAxes random(77);
  const Vector one = direction_of(10, 10);
  const Vector other = direction_of(100, 10);
  const auto joined = [&](std::size_t first, std::size_t second) {
    std::vector<Vector> axes = random.cluster(first, one, 1000);
    const std::vector<Vector> rest = random.cluster(second, other, 1000);
    axes.insert(axes.end(), rest.begin(), rest.end());
    return axes;
  };
  CHECK_FALSE(two_sets(joined(4, 2), Ends::both));
  CHECK(two_sets(joined(4, 3), Ends::both));
  CHECK_FALSE(two_sets(joined(20, 3), Ends::both));
  CHECK(two_sets(joined(17, 3), Ends::both));
  CHECK_FALSE(two_sets(joined(0, 0), Ends::both));
  CHECK_FALSE(two_sets(joined(1, 0), Ends::both));
  CHECK_FALSE(two_sets(std::vector<Vector>(9, one), Ends::both));
  // All of a set may coincide.
  std::vector<Vector> exact(5, one);
  exact.insert(exact.end(), 4, other);
  CHECK(two_sets(exact, Ends::both));
}

TEST_CASE("sets under 30 degrees apart have a mean in common") {
  RandomAxes random(78);
  CHECK(found(20, [&] { return two(random, 20, 20, 26, 3000); }) == 0);
  CHECK(found(20, [&] { return two(random, 20, 20, 34, 3000); }) == 20);
}
