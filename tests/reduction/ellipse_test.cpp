// SPDX-License-Identifier: MIT
// Covariances of positions, and their ellipses.
#include <lodebook/reduction/ellipse.hpp>

#include <catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

using namespace lodebook::reduction;

namespace {

constexpr double stretch = 2.447747;  // sqrt(5.991465), chi-square with two degrees of freedom, 5 %

/// How far two axes are apart, degrees.
double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 180.0));
}

/// One sigma `along` an azimuth and `across` it.
Covariance stretched(double azimuth, double along, double across) {
  const double east = std::sin(azimuth * std::numbers::pi / 180);
  const double north = std::cos(azimuth * std::numbers::pi / 180);
  return {along * along * east * east + across * across * north * north,
          (along * along - across * across) * east * north,
          along * along * north * north + across * across * east * east};
}

}  // namespace

TEST_CASE("a round error has a circle") {
  const ErrorEllipse circle = ellipse95(Covariance::round(3));
  CHECK(std::abs(circle.semi_major_m - 3 * stretch) < 1e-5);
  CHECK(std::abs(circle.semi_minor_m - 3 * stretch) < 1e-5);
  CHECK(circle.major_azimuth == 0);
  CHECK(circular_sigma(Covariance::round(3)) == 3);
}

TEST_CASE("no error has a point") {
  const ErrorEllipse point = ellipse95({});
  CHECK(point.semi_major_m == 0);
  CHECK(point.semi_minor_m == 0);
  CHECK(point.major_azimuth == 0);
  CHECK(circular_sigma({}) == 0);
}

TEST_CASE("the ellipse lies along the covariance's longer axis, at every azimuth") {
  for (int azimuth = 0; azimuth < 360; azimuth += 5) {
    INFO(azimuth);
    const ErrorEllipse ellipse = ellipse95(stretched(azimuth, 4, 1.5));
    CHECK(std::abs(ellipse.semi_major_m - 4 * stretch) < 1e-5);
    CHECK(std::abs(ellipse.semi_minor_m - 1.5 * stretch) < 1e-5);
    CHECK(apart(ellipse.major_azimuth, azimuth) < 1e-9);
    CHECK(ellipse.major_azimuth >= 0);
    CHECK(ellipse.major_azimuth < 180);
  }
}

TEST_CASE("an axis a hair west of north is north, not 180") {
  const ErrorEllipse ellipse = ellipse95({1, -1e-18, 4});
  CHECK(ellipse.major_azimuth >= 0);
  CHECK(ellipse.major_azimuth < 180);
}

TEST_CASE("an error along one line alone has no width") {
  const ErrorEllipse ellipse = ellipse95(stretched(37, 10, 0));
  CHECK(std::abs(ellipse.semi_major_m - 10 * stretch) < 1e-5);
  CHECK(ellipse.semi_minor_m < 1e-5);
  CHECK(apart(ellipse.major_azimuth, 37) < 1e-6);
}

TEST_CASE("the ellipse holds 95 of 100 errors") {
  constexpr unsigned seed = 11;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::normal_distribution<double> normal;
  const ErrorEllipse ellipse = ellipse95(stretched(70, 5, 2));
  const double east = std::sin(ellipse.major_azimuth * std::numbers::pi / 180);
  const double north = std::cos(ellipse.major_azimuth * std::numbers::pi / 180);
  constexpr int trials = 20'000;
  int inside = 0;
  for (int i = 0; i < trials; ++i) {
    const double along = 5 * normal(random);
    const double across = 2 * normal(random);
    const double azimuth = 70 * std::numbers::pi / 180;
    const double e = along * std::sin(azimuth) + across * std::cos(azimuth);
    const double n = along * std::cos(azimuth) - across * std::sin(azimuth);
    if (std::hypot((e * east + n * north) / ellipse.semi_major_m,
                   (e * north - n * east) / ellipse.semi_minor_m) <= 1)
      ++inside;
  }
  CHECK(inside > 0.945 * trials);
  CHECK(inside < 0.955 * trials);
}

TEST_CASE("independent errors add, and a factor scales the square of them") {
  Covariance sum = stretched(0, 3, 1);
  sum += stretched(90, 3, 1);
  CHECK(std::abs(sum.east - 10) < 1e-12);
  CHECK(std::abs(sum.north - 10) < 1e-12);
  CHECK(std::abs(sum.both) < 1e-12);
  CHECK(circular_sigma(Covariance::round(2).scaled(0.25)) == 1);
}
