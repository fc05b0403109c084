// SPDX-License-Identifier: MIT
// A plane in space: strike and dip in one frame.
#pragma once

#include <cstdint>
#include <optional>

#include <lodebook/orientation/azimuth.hpp>
#include <lodebook/orientation/dip.hpp>
#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// Which way a plane dips for someone who stands on its strike and looks along it.
enum class HandRule : std::uint8_t { right, left };

/// Downward pole (normal) of a plane that strikes at `strike` degrees and dips to its right.
Vector pole_of(double strike, double dip);

/// An inclined, vertical or horizontal plane. The strike is stored with the dip to its right, so
/// dip direction = strike + 90. A horizontal plane has no strike, a vertical one two equal sides.
template <class North>
class Plane {
 public:
  using Direction = Azimuth<North>;

  /// Furthest that a written side may lie from the dip direction, degrees: three of the sixteen
  /// points. Common practice, no source.
  static constexpr double side_tolerance = 67.5;

  /// The horizontal plane.
  constexpr Plane() = default;

  static Plane from_strike(Direction strike, Dip dip, HandRule rule) {
    return Plane(rule == HandRule::right ? strike : strike.opposite(), dip);
  }
  static Plane from_dip_direction(Direction direction, Dip dip) {
    return Plane(direction - quarter(), dip);
  }
  /// From either end of the strike and a direction on the side that goes down. Nothing if the side
  /// lies more than `side_tolerance` from both dip directions: no such plane dips there.
  static std::optional<Plane> from_strike_and_side(Direction strike, Dip dip, Direction side) {
    const double right = separation(side, strike + quarter()).degrees();
    if (right <= side_tolerance) return Plane(strike, dip);
    if (right >= 180 - side_tolerance) return Plane(strike.opposite(), dip);
    return std::nullopt;
  }

  constexpr Dip dip() const { return dip_; }
  constexpr bool is_horizontal() const { return dip_.degrees() == 0; }
  constexpr bool is_vertical() const { return dip_.degrees() == 90; }

  /// In [0, 360), dip to the right. Meaningless, and north, for a horizontal plane.
  constexpr Direction strike() const { return strike_; }
  Direction dip_direction() const { return strike_ + quarter(); }

  /// The downward normal.
  Vector pole() const { return pole_of(strike_.degrees(), dip_.degrees()); }

 private:
  Plane(Direction strike, Dip dip) : strike_(strike), dip_(dip) {}
  static Angle quarter() { return *Angle::from_degrees(90); }

  Direction strike_;
  Dip dip_;
};

/// The strike (degrees, dip to the right, in [0, 360)) and dip (degrees) of the plane whose pole is
/// `pole`, which may point up or down. Strike 0 for a horizontal plane. A dip within 1e-10 degrees
/// of 0 or 90 is dust of the arithmetic and becomes exactly that.
struct StrikeAndDip {
  double strike;
  double dip;
};
StrikeAndDip plane_of_pole(Vector pole);

}  // namespace lodebook
