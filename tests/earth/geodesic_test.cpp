// SPDX-License-Identifier: MIT
// Directions and distances on the ellipsoid, and the plane around a point.
#include <lodebook/earth/geodesic.hpp>

#include <catch.hpp>
#include <cmath>
#include <random>

namespace {

using namespace lodebook::earth;

double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

}  // namespace

TEST_CASE("a geodesic leads where it is travelled to") {
  constexpr unsigned seed = 5;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> latitudes(-89, 89);
  std::uniform_real_distribution<double> longitudes(-180, 180);
  std::uniform_real_distribution<double> azimuths(0, 360);
  std::uniform_real_distribution<double> lengths(10, 100'000);
  for (int i = 0; i < 1000; ++i) {
    const Position from{latitudes(random), longitudes(random)};
    const double azimuth = azimuths(random);
    const double length = lengths(random);
    const Position to = travelled(from, azimuth, length);
    const GeodesicLine line = geodesic(from, to);
    CHECK(std::abs(line.distance_m - length) < 1e-6);
    CHECK(apart(line.azimuth, azimuth) < 1e-6);
    CHECK(std::abs(distance_m(from, to) - length) < 1e-6);
    // Seen back from the end.
    CHECK(apart(geodesic(to, from).azimuth, line.azimuth_at_end + 180) < 1e-6);
  }
}

TEST_CASE("the line is straight over the date line, the equator and the pole") {
  CHECK(apart(geodesic({0, 179.9}, {0, -179.9}).azimuth, 90) < 1e-9);
  CHECK(apart(geodesic({-0.1, 10}, {0.1, 10}).azimuth, 0) < 1e-9);
  CHECK(apart(geodesic({89.9, 0}, {89.9, 180}).azimuth, 0) < 1e-9);
  CHECK(geodesic({89.9, 0}, {89.9, 180}).distance_m < 22'400);
}

TEST_CASE("the plane's azimuths and distances from its origin are true, and its points come back") {
  const LocalPlane plane({70, 20});
  const Position place{70.2, 20.7};
  const PlanePoint point = plane.to_plane(place);
  const GeodesicLine line = geodesic(plane.origin(), place);
  CHECK(std::abs(std::hypot(point.east_m, point.north_m) - line.distance_m) < 1e-6);
  CHECK(apart(std::atan2(point.east_m, point.north_m) * 180 / M_PI, line.azimuth) < 1e-9);
  CHECK(distance_m(plane.to_position(point), place) < 1e-6);
}

TEST_CASE("true north elsewhere is turned on the plane by the convergence of the meridians") {
  const LocalPlane plane({60, 10});
  CHECK(plane.meridian_turn({60, 10}) == 0);
  // East of the origin in the north true north leans to the left; by dlon sin lat to first order.
  CHECK(std::abs(plane.meridian_turn({60, 10.1}) + 0.1 * std::sin(M_PI / 3)) < 1e-3);
  CHECK(std::abs(plane.meridian_turn({60, 9.9}) - 0.1 * std::sin(M_PI / 3)) < 1e-3);
  CHECK(LocalPlane({-60, 10}).meridian_turn({-60, 10.1}) > 0.08);
  // A small step north there goes that way on the plane.
  const Position place{60.05, 10.1};
  const PlanePoint a = plane.to_plane(place);
  const PlanePoint b = plane.to_plane(travelled(place, 0, 10));
  CHECK(apart(std::atan2(b.east_m - a.east_m, b.north_m - a.north_m) * 180 / M_PI,
              plane.meridian_turn(place)) < 1e-3);
}
