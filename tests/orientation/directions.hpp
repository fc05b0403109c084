// SPDX-License-Identifier: MIT
// What the tests of this room share: directions compared by the angle between them, and short
// names.
#pragma once

#include <algorithm>
#include <catch.hpp>
#include <cmath>
#include <cstdint>
#include <iostream>
#include <numbers>
#include <random>
#include <string>

#include <lodebook/orientation/declination.hpp>
#include <lodebook/orientation/line.hpp>

namespace lodebook::test {

/// Matches degrees that lie within `tolerance` of `expected` on the circle: 359.9 is near 0.1.
class PointsTo : public MatcherBase<double> {
 public:
  PointsTo(double expected, double tolerance) : expected_(expected), tolerance_(tolerance) {}
  bool match(const double& degrees) const override {
    return std::abs(std::remainder(degrees - expected_, 360.0)) <= tolerance_;
  }
  std::string describe() const override {
    return "points to " + Catch::StringMaker<double>::convert(expected_) + " within " +
           Catch::StringMaker<double>::convert(tolerance_) + " degrees";
  }

 private:
  double expected_;
  double tolerance_;
};

inline PointsTo points_to(double expected, double tolerance = 1e-9) {
  return PointsTo(expected, tolerance);
}

/// Matches a unit vector along the same axis, whichever way it points.
class LiesAlong : public MatcherBase<Vector> {
 public:
  LiesAlong(Vector expected, double tolerance) : expected_(expected), tolerance_(tolerance) {}
  bool match(const Vector& v) const override {
    return std::min(length(v + expected_), length(v + -expected_)) <=
           tolerance_ * std::numbers::pi / 180;
  }
  std::string describe() const override {
    const auto text = [](double x) { return Catch::StringMaker<double>::convert(x); };
    return "lies along " + text(expected_.north) + ' ' + text(expected_.east) + ' ' +
           text(expected_.down) + " within " + text(tolerance_) + " degrees";
  }

 private:
  static double length(Vector v) {
    return std::sqrt(v.north * v.north + v.east * v.east + v.down * v.down);
  }
  Vector expected_;
  double tolerance_;
};

inline LiesAlong lies_along(Vector expected, double tolerance = 1e-9) {
  return LiesAlong(expected, tolerance);
}

/// Random numbers of a fixed seed, which is printed so that a failure can be run again.
class Seeded {
 public:
  explicit Seeded(std::uint64_t seed) : engine_(seed) {
    std::cout << "seed " << seed << ": " << Catch::getResultCapture().getCurrentTestName() << '\n';
  }
  /// In [low, high).
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  /// A whole number of tenths in [0, 360), as a compass is read.
  double tenths() {
    return static_cast<double>(std::uniform_int_distribution<int>(0, 3599)(engine_)) / 10;
  }

 private:
  std::mt19937_64 engine_;
};

using True = Azimuth<north::geographic>;
using Magnetic = Azimuth<north::magnetic>;
using Dial = Azimuth<north::dial>;
using TruePlane = Plane<north::geographic>;
using TrueLine = Line<north::geographic>;

inline Angle angle(double degrees) {
  return Angle::from_degrees(degrees).value();
}
inline True azimuth(double degrees) {
  return True::from_degrees(degrees).value();
}
inline Dip dip(double degrees) {
  return Dip::from_degrees(degrees).value();
}
inline Plunge plunge(double degrees) {
  return Plunge::from_degrees(degrees).value();
}
inline Rake rake(double degrees) {
  return Rake::from_degrees(degrees).value();
}

/// `v` turned by `degrees` about a unit vector, clockwise seen along it (O. Rodrigues 1840).
inline Vector turned(Vector v, Vector about, double degrees) {
  const double radians = degrees * std::numbers::pi / 180;
  return std::cos(radians) * v + std::sin(radians) * cross(about, v) +
         (dot(about, v) * (1 - std::cos(radians))) * about;
}

}  // namespace lodebook::test
