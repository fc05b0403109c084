// SPDX-License-Identifier: MIT
// The equal-area net, and the circles drawn on it.
#include <lodebook/orientation/net.hpp>

#include <cmath>
#include <vector>

#include "samples.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

double radius(NetPoint point) {
  return std::hypot(point.east, point.north);
}

double degrees_between(Vector a, Vector b) {
  return std::atan2(norm(cross(a, b)), dot(a, b)) * 180 / std::numbers::pi;
}

// Closer than `tolerance` as points, so with the same arrow.
bool coincide(Vector a, Vector b, double tolerance = 1e-12) {
  return norm(a + -b) <= tolerance;
}

void check_great_circle(Vector pole, double step) {
  const std::vector<Vector> points = great_circle(pole, step);
  REQUIRE(points.size() >= 2);
  for (std::size_t i = 0; i < points.size(); ++i) {
    CHECK(std::abs(norm(points[i]) - 1) < 1e-14);
    CHECK(std::abs(dot(points[i], pole)) < 1e-14);
    CHECK(points[i].down >= -1e-14);
    CHECK(radius(equal_area(points[i])) <= 1 + 1e-14);
    if (i > 0) CHECK(degrees_between(points[i - 1], points[i]) <= step + 1e-9);
  }
}

}  // namespace

TEST_CASE("straight down is the centre, level lines the rim, in their directions") {
  CHECK(radius(equal_area({0, 0, 1})) == 0);
  const NetPoint north = equal_area({1, 0, 0});
  CHECK(north.north == 1);
  CHECK(north.east == 0);
  const NetPoint east = equal_area({0, 1, 0});
  CHECK(east.east == 1);
  CHECK(east.north == 0);
  const NetPoint southwest = equal_area(direction_of(225, 0));
  CHECK(std::abs(southwest.north + std::sqrt(0.5)) < 1e-15);
  CHECK(std::abs(southwest.east + std::sqrt(0.5)) < 1e-15);
}

TEST_CASE("a line lies by its plunge from the centre, towards its trend") {
  Seeded random(230);
  for (int i = 0; i < 500; ++i) {
    const double trend = random.between(0, 360);
    const double plunge = random.between(-80, 90);
    const NetPoint point = equal_area(direction_of(trend, plunge));
    const double formula =
        std::sqrt(2) * std::sin((90 - plunge) / 2 * std::numbers::pi / 180);  // Lambert 1772
    CHECK(std::abs(radius(point) - formula) < 1e-12);
    CHECK_THAT(std::atan2(point.east, point.north) * 180 / std::numbers::pi,
               points_to(trend, 1e-6));
  }
}

TEST_CASE("a place on the net is that of its direction, and back") {
  Seeded random(231);
  for (int i = 0; i < 2000; ++i) {
    const Vector direction = any_direction(random);
    CHECK(coincide(direction_at(equal_area(direction)), direction, 1e-11));
    const double far = std::sqrt(random.between(0, 1.99));
    const double trend = random.between(0, 2 * std::numbers::pi);
    const NetPoint point = {far * std::sin(trend), far * std::cos(trend)};
    CHECK(std::abs(norm(direction_at(point)) - 1) < 1e-14);
    const NetPoint back = equal_area(direction_at(point));
    CHECK(std::hypot(back.east - point.east, back.north - point.north) < 1e-12);
  }
}

TEST_CASE("straight up has no place, and nothing lies beyond the outermost circle") {
  CHECK(radius(equal_area({0, 0, -1})) == 0);
  for (const double plunge : {-89.0, -89.99, -89.9999, -89.99999999}) {
    const NetPoint point = equal_area(direction_of(77, plunge));
    CAPTURE(plunge, radius(point));
    CHECK(std::isfinite(radius(point)));
    CHECK(radius(point) <= std::sqrt(2) * (1 + 1e-12));
  }
  CHECK(coincide(direction_at({0, std::sqrt(2)}), {0, 0, -1}, 1e-7));
  CHECK(coincide(direction_at({2, 0}), {0, 0, -3}));
}

TEST_CASE("equal areas of the sphere are equal areas on the net") {
  // 20,000 directions know a share to 0.35 % or better.
  Seeded random(232);
  constexpr int count = 20000;
  std::vector<double> radii;
  for (int i = 0; i < count; ++i) {
    const Vector direction = any_direction(random);
    radii.push_back(radius(equal_area(direction.down < 0 ? -direction : direction)));
  }
  for (const double r : {0.1, 0.3, 0.5, 0.7, 0.9, 1.0}) {
    CAPTURE(r);
    const auto inside = std::ranges::count_if(radii, [&](double found) { return found <= r; });
    CHECK(std::abs(static_cast<double>(inside) / count - r * r) < 0.0115);
  }
}

TEST_CASE("a small patch keeps its area wherever it lies") {
  Seeded random(233);
  for (int i = 0; i < 200; ++i) {
    const Vector centre = direction_of(random.between(0, 360), random.between(0, 90));
    const Vector along = beside(centre);
    const Vector across = cross(centre, along);
    constexpr double size = 1e-4;
    const auto place = [&](Vector aside) { return equal_area(*unit(centre + size * aside)); };
    const auto [e1, n1] = place(along);
    const auto [e2, n2] = place(-along);
    const auto [e3, n3] = place(across);
    const auto [e4, n4] = place(-across);
    const double area = std::abs((e1 - e2) * (n3 - n4) - (e3 - e4) * (n1 - n2));
    // The hemisphere's 2 pi become the disc's pi.
    CHECK(std::abs(area / (2 * size * 2 * size) - 0.5) < 1e-6);
  }
}

TEST_CASE("a great circle runs below the horizon, from one end of its strike to the other") {
  Seeded random(234);
  for (int i = 0; i < 300; ++i) {
    const double strike = random.between(0, 360);
    const double dip = random.between(0.001, 90);
    const double step = random.between(0.5, 20);
    const Vector pole = pole_of(strike, dip);
    check_great_circle(pole, step);
    for (const Vector end : {pole, -pole}) {
      const std::vector<Vector> points = great_circle(end, step);
      CHECK(coincide(points.front(), direction_of(strike, 0)));
      CHECK(coincide(points.back(), direction_of(strike + 180, 0)));
      // The dip is to the right of the strike.
      const std::vector<Vector> three = great_circle(end, 90);
      REQUIRE(three.size() == 3);
      CHECK(coincide(three[1], direction_of(strike + 90, dip)));
    }
  }
}

TEST_CASE("the great circle of a vertical plane is a diameter") {
  for (const double strike : {0.0, 30.0, 90.0, 245.0}) {
    const Vector pole = pole_of(strike, 90);
    check_great_circle(pole, 10);
    const std::vector<Vector> points = great_circle(pole, 90);
    REQUIRE(points.size() == 3);
    CHECK(coincide(points[1], {0, 0, 1}));
    CHECK_THAT(points.front(), lies_along(direction_of(strike, 0)));
    CHECK(coincide(points.back(), -points.front()));
  }
}

TEST_CASE("the great circle of a level plane is the whole rim, closed") {
  for (const double down : {1.0, -1.0}) {
    check_great_circle({0, 0, down}, 10);
    const std::vector<Vector> points = great_circle({0, 0, down}, 10);
    REQUIRE(points.size() == 37);
    CHECK(coincide(points.front(), points.back(), 0));
    for (const Vector& point : points)
      CHECK(std::abs(radius(equal_area(point)) - 1) < 1e-15);
    CHECK(coincide(points[18], -points[0]));
  }
}

TEST_CASE("a small circle lies at its angle from its pole, and is closed") {
  Seeded random(235);
  for (int i = 0; i < 300; ++i) {
    const Vector pole = i == 0 ? Vector{0, 0, 1} : i == 1 ? Vector{1, 0, 0} : any_direction(random);
    const double half_angle = i == 2 ? 0 : random.between(0.01, 180);
    const double step = random.between(1, 30);
    const std::vector<Vector> points = small_circle(pole, half_angle, step);
    REQUIRE(points.size() == static_cast<std::size_t>(std::ceil(360 / step)) + 1);
    CHECK(coincide(points.front(), points.back(), 1e-15));
    Vector sum;
    for (std::size_t n = 0; n + 1 < points.size(); ++n) {
      CHECK(std::abs(norm(points[n]) - 1) < 1e-14);
      CHECK(std::abs(degrees_between(points[n], pole) - half_angle) < 1e-9);
      sum = sum + points[n];
    }
    // Even all round, so their average lies on the pole's line.
    const auto count = static_cast<double>(points.size() - 1);
    const double cosine = std::cos(half_angle * std::numbers::pi / 180);
    CHECK(coincide(1 / count * sum, cosine * pole));
  }
}

TEST_CASE("a small circle of 90 degrees is a great circle, both halves of it") {
  const Vector pole = pole_of(40, 30);
  const std::vector<Vector> whole = small_circle(pole, 90, 10);
  const std::vector<Vector> half = great_circle(pole, 10);
  REQUIRE(whole.size() == 37);
  REQUIRE(half.size() == 19);
  for (std::size_t i = 0; i < half.size(); ++i) {
    CHECK(coincide(whole[i], half[i]));
    CHECK(coincide(whole[i + 18], -half[i]));
  }
}
