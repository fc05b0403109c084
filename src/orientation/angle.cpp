// SPDX-License-Identifier: MIT
// Trigonometry in degrees, reduced to an eighth of a turn so that quarter turns stay exact.
#include <lodebook/orientation/angle.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace lodebook {
namespace {

constexpr double degrees_per_radian = 180 / std::numbers::pi;
constexpr double radians_per_degree = std::numbers::pi / 180;

// For |degrees| <= 45. The two cases are those that a radian cannot hold and a handbook prints.
double small_sine(double degrees) {
  const double size = std::abs(degrees);
  if (size == 30) return std::copysign(0.5, degrees);
  if (size == 45) return std::copysign(std::sqrt(0.5), degrees);
  return std::sin(degrees * radians_per_degree);
}

double small_cosine(double degrees) {
  return std::abs(degrees) == 45 ? std::sqrt(0.5) : std::cos(degrees * radians_per_degree);
}

/// An angle as quarter turns, of which only the last two bits count, and a rest within [-45, 45].
/// Exact.
struct Reduced {
  int quarters;
  double rest;
};

Reduced reduced(double degrees) {
  // Slopes need no division.
  if (std::abs(degrees) <= 45) return {0, degrees};
  if (degrees > 45 && degrees < 135) return {1, degrees - 90};
  int quarters = 0;
  const double rest = std::remquo(degrees, 90.0, &quarters);
  return {quarters, rest};
}

// Adding or subtracting from zero drops the minus of zero.
double sine(Reduced angle) {
  switch (angle.quarters & 3) {
    case 0:
      return small_sine(angle.rest) + 0.0;
    case 1:
      return small_cosine(angle.rest);
    case 2:
      return 0.0 - small_sine(angle.rest);
    default:
      return -small_cosine(angle.rest);
  }
}

double cosine(Reduced angle) {
  return sine({angle.quarters + 1, angle.rest});
}

}  // namespace

Angle Angle::atan2(double y, double x) {
  if (std::isnan(y) || std::isnan(x)) return Angle();
  if (y == 0) return Angle(x < 0 ? 180.0 : 0.0);
  const double rise = std::abs(y);
  const double run = std::abs(x);
  double degrees = degrees_per_radian * std::atan2(std::min(rise, run), std::max(rise, run));
  if (rise > run) degrees = 90 - degrees;
  if (x < 0) degrees = 180 - degrees;
  // A y too small to count must not turn 180 into -180.
  return Angle(y < 0 && degrees < 180 ? 0.0 - degrees : degrees);
}

double sin(Angle angle) {
  return sine(reduced(angle.degrees()));
}

double cos(Angle angle) {
  return cosine(reduced(angle.degrees()));
}

double tan(Angle angle) {
  constexpr double epsilon = std::numeric_limits<double>::epsilon();
  constexpr double very_large = 1 / (epsilon * epsilon);
  const Reduced parts = reduced(angle.degrees());
  const double s = sine(parts);
  const double c = cosine(parts);
  return c == 0 ? std::copysign(very_large, s) : s / c + 0.0;
}

}  // namespace lodebook
