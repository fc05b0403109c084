// SPDX-License-Identifier: MIT
// The mean of axes and its statistics.
#include <lodebook/orientation/mean.hpp>

#include <cmath>
#include <vector>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

void check_no_nan(const DirectionMean& mean) {
  CHECK(std::abs(norm(mean.axis) - 1) < 1e-12);
  CHECK(mean.resultant >= 0);
  CHECK(mean.resultant <= static_cast<double>(mean.count));
  if (mean.precision) CHECK(std::isfinite(*mean.precision));
  if (mean.cone95) CHECK((*mean.cone95 >= 0 && *mean.cone95 <= 180));
}

// N unit vectors evenly round a small circle of `radius` degrees about straight down.
std::vector<Vector> ring(int count, double radius) {
  std::vector<Vector> axes;
  for (int i = 0; i < count; ++i)
    axes.push_back(direction_of(360.0 * i / count, 90 - radius));
  return axes;
}

}  // namespace

TEST_CASE("nothing has no mean") {
  CHECK_FALSE(mean_of_axes({}));
}

TEST_CASE("the mean of one axis is that axis, and says nothing of its precision") {
  const std::vector<Vector> one = {pole_of(265, 32)};
  const auto mean = mean_of_axes(one);
  REQUIRE(mean);
  CHECK_THAT(mean->axis, lies_along(one[0]));
  CHECK(mean->count == 1);
  CHECK(std::abs(mean->resultant - 1) < 1e-12);
  CHECK_FALSE(mean->precision);
  CHECK_FALSE(mean->cone95);
}

TEST_CASE("the mean of two axes lies half-way, without a precision") {
  const std::vector<Vector> two = {direction_of(10, 0), direction_of(30, 0)};
  const auto mean = mean_of_axes(two);
  REQUIRE(mean);
  CHECK_THAT(mean->axis, lies_along(direction_of(20, 0)));
  CHECK_FALSE(mean->precision);
  CHECK_FALSE(mean->cone95);
}

TEST_CASE("arrows do not matter: nearly vertical planes on both sides average to a vertical one") {
  const std::vector<Vector> poles = {pole_of(20, 88), pole_of(200, 88)};
  const auto mean = mean_of_axes(poles);
  REQUIRE(mean);
  const StrikeAndDip plane = plane_of_pole(mean->axis);
  CHECK(plane.dip == 90);
  CHECK_THAT(2 * plane.strike, points_to(2 * 20.0));
}

TEST_CASE("turning any axis end for end changes nothing") {
  Seeded random(38);
  std::vector<Vector> axes;
  for (int i = 0; i < 9; ++i)
    axes.push_back(direction_of(random.between(80, 120), random.between(5, 40)));
  const auto mean = mean_of_axes(axes);
  REQUIRE(mean);
  for (std::size_t i = 0; i < axes.size(); i += 2)
    axes[i] = -axes[i];
  const auto turned_mean = mean_of_axes(axes);
  REQUIRE(turned_mean);
  CHECK_THAT(turned_mean->axis, lies_along(mean->axis));
  CHECK(std::abs(turned_mean->resultant - mean->resultant) < 1e-12);
  CHECK(turned_mean->axis.down > 0);
}

TEST_CASE("a level mean points to the end that the first axis is nearer to") {
  const std::vector<Vector> lines = {direction_of(200, 0), direction_of(202, 0),
                                     direction_of(24, 0)};
  const auto mean = mean_of_axes(lines);
  REQUIRE(mean);
  const TrendAndPlunge line = line_of_axis(mean->axis);
  CHECK_THAT(line.trend, points_to(202, 0.01));
  CHECK(line.plunge == 0);
}

TEST_CASE("axes that coincide have a cone of 0 and no precision") {
  for (const std::size_t count : {std::size_t{3}, std::size_t{4}, std::size_t{1000}}) {
    CAPTURE(count);
    const auto mean = mean_of_axes(std::vector<Vector>(count, pole_of(123.4, 56.7)));
    REQUIRE(mean);
    check_no_nan(*mean);
    CHECK_FALSE(mean->precision);
    CHECK(mean->cone95 == 0.0);
  }
}

TEST_CASE("axes that all but coincide have a small cone") {
  const auto mean = mean_of_axes(ring(6, 0.1));
  REQUIRE(mean);
  check_no_nan(*mean);
  REQUIRE(mean->precision);
  REQUIRE(mean->cone95);
  CHECK(*mean->cone95 > 0.01);
  CHECK(*mean->cone95 < 0.2);
}

TEST_CASE("the statistics of a ring about the mean follow from its radius alone") {
  const double radius = 20;
  const int count = 8;
  const auto mean = mean_of_axes(ring(count, radius));
  REQUIRE(mean);
  CHECK_THAT(mean->axis, lies_along({0, 0, 1}));
  const double resultant = count * std::cos(radius * std::numbers::pi / 180);
  CHECK(std::abs(mean->resultant - resultant) < 1e-12);
  CHECK(std::abs(mean->precision.value() - (count - 1) / (count - resultant)) < 1e-9);
  const double cosine = 1 - (count - resultant) / resultant * (std::pow(20, 1.0 / (count - 1)) - 1);
  CHECK_THAT(mean->cone95.value(), points_to(std::acos(cosine) * 180 / std::numbers::pi));
}

TEST_CASE("where the precision is under 4 there is no cone") {
  const auto mean = mean_of_axes(ring(12, 45));
  REQUIRE(mean);
  REQUIRE(mean->precision);
  CHECK(*mean->precision < 4);
  CHECK_FALSE(mean->cone95);
}

TEST_CASE("axes without a principal one have no mean") {
  CHECK_FALSE(mean_of_axes(std::vector<Vector>{{1, 0, 0}, {0, 1, 0}}));
  CHECK_FALSE(mean_of_axes(std::vector<Vector>{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}));
  CHECK_FALSE(mean_of_axes(
      std::vector<Vector>{direction_of(0, 0), direction_of(60, 0), direction_of(120, 0)}));
}

TEST_CASE("what is no direction has no mean instead of NaN") {
  CHECK_FALSE(mean_of_axes(std::vector<Vector>{{0, 0, 0}}));
  CHECK_FALSE(mean_of_axes(std::vector<Vector>{{std::nan(""), 0, 1}, {0, 0, 1}}));
}

TEST_CASE("the mean turns with its axes about the vertical") {
  Seeded random(39);
  for (int i = 0; i < 200; ++i) {
    std::vector<Vector> axes;
    std::vector<Vector> turned_axes;
    const double by = random.between(0, 360);
    const double trend = random.between(0, 360);
    for (int n = 0; n < 5; ++n) {
      axes.push_back(direction_of(trend + random.between(-15, 15), random.between(10, 40)));
      turned_axes.push_back(turned(axes.back(), {0, 0, 1}, by));
    }
    const auto mean = mean_of_axes(axes);
    const auto turned_mean = mean_of_axes(turned_axes);
    REQUIRE(mean);
    REQUIRE(turned_mean);
    check_no_nan(*mean);
    CHECK_THAT(turned_mean->axis, lies_along(turned(mean->axis, {0, 0, 1}, by)));
    CHECK(std::abs(turned_mean->resultant - mean->resultant) < 1e-12);
  }
}
