// SPDX-License-Identifier: MIT
// Lines of equal value: closed rings with all that is high inside.
#include <lodebook/drawing/contours.hpp>

#include <functional>

#include "drawn.hpp"
#include "random_axes.hpp"

using namespace lodebook::drawing;
using namespace lodebook::test;

namespace {

using Rings = std::vector<std::vector<Point>>;

std::vector<double> sampled(std::size_t side, const std::function<double(double, double)>& at) {
  std::vector<double> values;
  for (std::size_t row = 0; row < side; ++row) {
    for (std::size_t column = 0; column < side; ++column)
      values.push_back(at(static_cast<double>(column), static_cast<double>(row)));
  }
  return values;
}

double total_area(const Rings& rings) {
  double sum = 0;
  for (const auto& ring : rings)
    sum += area_of(ring);
  return std::abs(sum);
}

}  // namespace

TEST_CASE("a level that nothing reaches has no ring") {
  CHECK(rings_around(std::vector<double>{1, 1, 1, 1}, 2, 1.5).empty());
  CHECK(rings_around({}, 0, 1).empty());
}

TEST_CASE("a value that equals the level is inside") {
  const Rings rings = rings_around(std::vector<double>{0, 0, 0, 0, 2, 0, 0, 0, 0}, 3, 2);
  REQUIRE(rings.size() == 1);
  for (const Point& point : rings[0])
    CHECK(distance(point, {1, 1}) < 1e-12);
}

TEST_CASE("a single high point has a diamond half-way to its neighbours") {
  const Rings rings = rings_around(std::vector<double>{0, 0, 0, 0, 2, 0, 0, 0, 0}, 3, 1);
  REQUIRE(rings.size() == 1);
  REQUIRE(rings[0].size() == 4);
  for (const Point& point : rings[0])
    CHECK(std::abs(distance(point, {1, 1}) - 0.5) < 1e-12);
  CHECK(std::abs(total_area(rings) - 0.5) < 1e-12);
}

TEST_CASE("a cone's line is a circle") {
  const auto values =
      sampled(61, [](double x, double y) { return 30 - std::hypot(x - 30, y - 30); });
  const Rings rings = rings_around(values, 61, 10);
  REQUIRE(rings.size() == 1);
  CHECK(rings[0].size() > 100);
  for (const Point& point : rings[0])
    CHECK(std::abs(distance(point, {30, 30}) - 20) < 0.02);
  CHECK(std::abs(total_area(rings) / (std::numbers::pi * 400) - 1) < 0.002);
}

TEST_CASE("a hole has a ring of its own, turned the other way") {
  const auto values =
      sampled(61, [](double x, double y) { return 5 - std::abs(std::hypot(x - 30, y - 30) - 15); });
  const Rings rings = rings_around(values, 61, 0);
  REQUIRE(rings.size() == 2);
  CHECK(area_of(rings[0]) * area_of(rings[1]) < 0);
  CHECK(std::abs(total_area(rings) / (std::numbers::pi * (400 - 100)) - 1) < 0.005);
  CHECK_FALSE(is_inside(rings, {30, 30}));
  CHECK(is_inside(rings, {45, 30.5}));
}

TEST_CASE("what is high at the grid's edge is closed beyond it") {
  const Rings rings = rings_around(std::vector<double>(9, 5.0), 3, 1);
  REQUIRE(rings.size() == 1);
  for (const Point& point : {Point{0, 0.5}, Point{2, 1.5}, Point{1, 0}, Point{1, 2}})
    CHECK(is_inside(rings, {point.x * 0.99 + 0.01, point.y * 0.99 + 0.01}));
}

TEST_CASE("a saddle is joined where its middle is high, and parted where it is low") {
  CHECK(rings_around(std::vector<double>{3, 0, 0, 3}, 2, 1).size() == 1);
  CHECK(rings_around(std::vector<double>{1.5, 0, 0, 1.5}, 2, 1).size() == 2);
  CHECK(rings_around(std::vector<double>{0, 3, 3, 0}, 2, 1).size() == 1);
  CHECK(rings_around(std::vector<double>{0, 1.5, 1.5, 0}, 2, 1).size() == 2);
}

TEST_CASE("whatever the values, the high points are inside and the low ones are not") {
  RandomAxes random(4);
  constexpr std::size_t side = 12;
  for (int trial = 0; trial < 50; ++trial) {
    std::vector<double> values;
    for (std::size_t i = 0; i < side * side; ++i)
      values.push_back(std::floor(4 * random.share()));  // counts, with equal neighbours
    const Rings rings = rings_around(values, side, 1.5);
    for (std::size_t i = 0; i < values.size(); ++i) {
      const Point at = {static_cast<double>(i % side), static_cast<double>(i / side)};
      CHECK(is_inside(rings, at) == (values[i] >= 1.5));
    }
  }
}

TEST_CASE("lines of higher levels lie within those of lower ones") {
  const auto values = sampled(31, [](double x, double y) {
    return 10 * std::exp(-(std::pow(x - 12, 2) + std::pow(y - 17, 2)) / 60);
  });
  const Rings low = rings_around(values, 31, 2);
  const Rings high = rings_around(values, 31, 6);
  REQUIRE_FALSE(high.empty());
  for (const auto& ring : high) {
    for (const Point& point : ring)
      CHECK(is_inside(low, point));
  }
}
