// SPDX-License-Identifier: MIT
// Angles down from the horizontal, or within a plane, that lie between 0 and 90 degrees.
#pragma once

#include <compare>
#include <optional>

#include <lodebook/orientation/angle.hpp>

namespace lodebook {

/// An angle in [0, 90] degrees that means one quantity; different quantities do not mix and none
/// is ever corrected for declination.
template <class Quantity>
class QuarterTurnAngle {
 public:
  /// Zero: horizontal, or along the strike.
  constexpr QuarterTurnAngle() = default;

  /// 0 to 90 degrees; nothing otherwise.
  static constexpr std::optional<QuarterTurnAngle> from_degrees(double degrees) {
    if (!(degrees >= 0 && degrees <= 90)) return std::nullopt;
    return QuarterTurnAngle(degrees + 0.0);
  }

  constexpr double degrees() const { return degrees_; }
  constexpr Angle angle() const { return Angle(degrees_); }
  friend constexpr auto operator<=>(QuarterTurnAngle, QuarterTurnAngle) = default;

 private:
  explicit constexpr QuarterTurnAngle(double degrees) : degrees_(degrees) {}

  double degrees_ = 0;
};

/// Steepest slope of a plane below the horizontal.
using Dip = QuarterTurnAngle<struct DipQuantity>;
/// Slope of a line below the horizontal.
using Plunge = QuarterTurnAngle<struct PlungeQuantity>;
/// Acute angle within a plane between its strike and a line.
using Rake = QuarterTurnAngle<struct RakeQuantity>;

/// The slope in degrees of a percent grade: atan(percent / 100), 1 % being one up in a hundred
/// level (J. A. Moss, Manual of Military Training, par. 1868). Of either sign; exact at 0 and 100.
double degrees_from_percent(double percent);

}  // namespace lodebook
