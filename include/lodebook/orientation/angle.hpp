// SPDX-License-Identifier: MIT
// The angle between two directions, and trigonometry that is exact at quarter turns.
#pragma once

#include <cmath>
#include <compare>
#include <optional>

namespace lodebook {

/// Wraps any finite number of degrees into [0, 360). Exact for positive numbers and whole degrees;
/// never 360 and never -0, also for tiny negative input such as -1e-17.
inline double wrap_degrees(double degrees) {
  // Sums and differences of azimuths seldom leave these turns, in which the remainder is exact.
  if (degrees >= 0 && degrees < 360) return degrees + 0.0;
  if (degrees >= 360 && degrees < 720) return degrees - 360;
  double wrapped = std::fmod(degrees, 360.0);
  if (wrapped < 0) wrapped += 360.0;
  return wrapped >= 360.0 ? 0.0 : wrapped + 0.0;
}

/// A difference of directions, in degrees, of either sign, always finite. Clockwise seen from above
/// is positive for differences of azimuths. Degrees are stored so that whole degrees stay exact.
class Angle {
 public:
  /// Zero.
  constexpr Angle() = default;

  /// Any finite number of degrees; nothing for NaN or infinity.
  static std::optional<Angle> from_degrees(double degrees) {
    if (!std::isfinite(degrees)) return std::nullopt;
    return Angle(degrees + 0.0);
  }

  /// The angle whose tangent is y/x, in (-180, 180]; exact at eighth turns. Zero for (0, 0)
  /// and for NaN, which have no direction.
  static Angle atan2(double y, double x);

  constexpr double degrees() const { return degrees_; }
  constexpr Angle operator-() const { return Angle(0.0 - degrees_); }
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.degrees_ + b.degrees_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.degrees_ - b.degrees_); }
  friend constexpr auto operator<=>(Angle, Angle) = default;

 private:
  template <class North>
  friend class Azimuth;
  template <class Quantity>
  friend class QuarterTurnAngle;
  friend class Declination;
  friend class Convergence;
  explicit constexpr Angle(double degrees) : degrees_(degrees) {}

  double degrees_ = 0;
};

/// Sine, cosine and tangent. The argument is reduced to [-45, 45] degrees first, so that multiples
/// of 90 degrees give exactly 0 and +-1. Exact also: sin 30 = cos 60 = 0.5, tan 45 = 1. Elsewhere
/// within 2 ulp, the tangent within 4. The tangent of 90 degrees is a very large number, never an
/// infinity.
double sin(Angle angle);
double cos(Angle angle);
double tan(Angle angle);

}  // namespace lodebook
