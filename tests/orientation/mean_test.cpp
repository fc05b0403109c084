// SPDX-License-Identifier: MIT
// The mean of axes and its statistics.
#include <lodebook/orientation/mean.hpp>

#include <cmath>
#include <vector>

#include "samples.hpp"

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

double degrees_from(Vector a, Vector b) {
  return std::atan2(norm(cross(a, b)), dot(a, b)) * 180 / std::numbers::pi;
}

}  // namespace

TEST_CASE("nothing has no mean") {
  CHECK_FALSE(mean_of_axes({}));
}

TEST_CASE("the mean of one axis is that axis, and says nothing of its precision") {
  const std::vector<Vector> one = {pole_of(258, 41)};
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

TEST_CASE("axes at right angles to the mean leave it alone, whichever end they have") {
  for (const Vector across : {Vector{1, 0, 0}, Vector{-1, 0, 0}, Vector{0, -1, 0}}) {
    const auto mean = mean_of_axes(std::vector<Vector>{{0, 0, 1}, {0, 0, 1}, across, {0, 0, -1}});
    REQUIRE(mean);
    CHECK_THAT(mean->axis, lies_along({0, 0, 1}));
    CHECK(mean->resultant == 3);
    CHECK(mean->precision == 3.0);
  }
}

TEST_CASE("the mean of arrows keeps their arrow") {
  const auto up = mean_of_arrows(std::vector<Vector>{direction_of(10, -40), direction_of(10, -60)});
  REQUIRE(up);
  CHECK_THAT(up->axis, lies_along(direction_of(10, -50)));
  CHECK(up->axis.down < 0);
  CHECK(up->count == 2);
  CHECK_FALSE(up->precision);
  CHECK_FALSE(up->cone95);
}

TEST_CASE("the mean of one arrow is that arrow") {
  const std::vector<Vector> one = {direction_of(200, -30)};
  const auto mean = mean_of_arrows(one);
  REQUIRE(mean);
  CHECK(norm(mean->axis + -one[0]) < 1e-15);
  CHECK_FALSE(mean->precision);
}

TEST_CASE("arrows that coincide have a cone of 0 and no precision") {
  const auto mean = mean_of_arrows(std::vector<Vector>(50, direction_of(321, -12)));
  REQUIRE(mean);
  check_no_nan(*mean);
  CHECK_FALSE(mean->precision);
  CHECK(mean->cone95 == 0.0);
}

TEST_CASE("arrows that cancel out have no mean, also many") {
  CHECK_FALSE(mean_of_arrows({}));
  CHECK_FALSE(mean_of_arrows(std::vector<Vector>{{0, 0, 1}, {0, 0, -1}}));
  CHECK_FALSE(mean_of_arrows(std::vector<Vector>{{0, 0, 0}}));
  CHECK_FALSE(mean_of_arrows(std::vector<Vector>{{std::nan(""), 0, 1}, {0, 0, 1}}));
  for (const int count : {3, 7, 100001})
    CHECK_FALSE(mean_of_arrows(ring(count, 90)));
}

TEST_CASE("arrows that nearly cancel out have a mean without a cone") {
  const auto mean = mean_of_arrows(std::vector<Vector>{{1, 0, 0}, {-1, 0, 0}, {0, 0, 1}});
  REQUIRE(mean);
  check_no_nan(*mean);
  CHECK_THAT(mean->axis, lies_along({0, 0, 1}));
  CHECK(mean->precision == 1.0);
  CHECK_FALSE(mean->cone95);
}

TEST_CASE("the mean of arrows turns with them in space") {
  Seeded random(44);
  for (int i = 0; i < 200; ++i) {
    std::vector<Vector> arrows;
    const Vector centre = any_direction(random);
    for (int n = 0; n < 6; ++n)
      arrows.push_back(fisher_direction(random, centre, 5));
    const Vector about = any_direction(random);
    const double by = random.between(0, 360);
    const auto mean = mean_of_arrows(arrows);
    const auto moved = mean_of_arrows(all_turned(arrows, about, by));
    REQUIRE(mean);
    REQUIRE(moved);
    check_no_nan(*mean);
    CHECK(norm(moved->axis + -turned(mean->axis, about, by)) < 1e-12);
    CHECK(std::abs(moved->resultant - mean->resultant) < 1e-12);
  }
}

TEST_CASE("arrows in one hemisphere have the mean and the cone of their axes") {
  Seeded random(42);
  for (int i = 0; i < 100; ++i) {
    const Vector centre = direction_of(random.between(0, 360), random.between(30, 90));
    std::vector<Vector> arrows;
    while (arrows.size() < 10) {
      const Vector arrow = fisher_direction(random, centre, 30);
      if (degrees_from(centre, arrow) < 30) arrows.push_back(arrow);
    }
    const auto mean = mean_of_arrows(arrows);
    const auto axis = mean_of_axes(with_ends_turned(random, arrows));
    REQUIRE(mean);
    REQUIRE(axis);
    CHECK_THAT(axis->axis, lies_along(mean->axis));
    CHECK(std::abs(axis->resultant - mean->resultant) < 1e-12);
    CHECK(std::abs(axis->cone95.value() - mean->cone95.value()) < 1e-9);
  }
}

TEST_CASE("Fisher's cone holds the true direction in 95 % of samples") {
  // 5,000 samples know 95 % to 0.3 %; 20,000 gave 94.8 to 95.3.
  struct Cluster {
    double k;
    int count;
  };
  Seeded random(43);
  for (const auto& [k, count] :
       {Cluster{10, 8}, Cluster{10, 30}, Cluster{50, 8}, Cluster{50, 30}}) {
    CAPTURE(k, count);
    constexpr int samples = 5000;
    const Percentages found = percentages(samples, [&, n = count, precision = k] {
      const Vector truth = any_direction(random);
      std::vector<Vector> arrows;
      for (int i = 0; i < n; ++i)
        arrows.push_back(fisher_direction(random, truth, precision));
      const DirectionMean mean = mean_of_arrows(arrows).value();
      if (!mean.cone95) return std::optional<bool>();
      return std::optional(degrees_from(truth, mean.axis) <= *mean.cone95);
    });
    CAPTURE(found.answered, found.held);
    CHECK(found.answered > 99.5);
    CHECK(std::abs(found.held - 95) <= chance_of(95, samples));
  }
}
