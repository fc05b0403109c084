// SPDX-License-Identifier: MIT
// A line in space: trend and plunge in one frame, and lines that lie in planes.
#pragma once

#include <optional>

#include <lodebook/orientation/plane.hpp>

namespace lodebook {

/// Downward direction of a line.
Vector direction_of(double trend, double plunge);

/// The trend (degrees, [0, 360)) and plunge (degrees) of an axis, whichever way `axis` points.
/// Trend 0 for a vertical one. A plunge within 1e-10 degrees of 0 or 90 becomes exactly that; a
/// horizontal axis keeps the end that `axis` points to.
struct TrendAndPlunge {
  double trend;
  double plunge;
};
TrendAndPlunge line_of_axis(Vector axis);
/// The same for an arrow, which has one direction: its plunge is negative where it rises.
TrendAndPlunge line_of_arrow(Vector arrow);

/// The horizontal angle in degrees to the trend of a line of that rake, from the end of the strike
/// it is measured from, towards the dip: atan2(sin rake cos dip, cos rake). And its plunge:
/// asin(sin rake sin dip). (Right spherical triangle on strike, line and dip direction: Napier.)
Angle trend_from_strike(Rake rake, Dip dip);
Plunge plunge_of_rake(Rake rake, Dip dip);

/// The dip seen in a vertical section at `section` degrees from the strike:
/// tan(apparent) = tan(true) |sin(section)|. Zero along the strike, also of a vertical plane.
Dip apparent_dip(Dip dip, Angle section);

/// The smallest angle between a line and a plane, in [0, 90].
Angle angle_out_of_plane(Vector line, Vector pole);

/// The line in which two planes meet, pointing down, or nothing for parallel planes.
std::optional<Vector> intersection(Vector pole, Vector other_pole);

/// A line that plunges below the horizontal towards its trend. A vertical one has no trend.
template <class North>
class Line {
 public:
  using Direction = Azimuth<North>;

  /// Horizontal, to the north.
  constexpr Line() = default;
  constexpr Line(Direction trend, Plunge plunge) : trend_(trend), plunge_(plunge) {}

  /// The line in `plane` at `rake` from the end of its strike within 67.5 degrees of `from`.
  /// Nothing if `from` lies further from both ends, or the plane is horizontal.
  static std::optional<Line> in_plane(const Plane<North>& plane, Rake rake, Direction from) {
    if (plane.is_horizontal()) return std::nullopt;
    const double off = separation(from, plane.strike()).degrees();
    const Angle turn = trend_from_strike(rake, plane.dip());
    const Plunge plunge = plunge_of_rake(rake, plane.dip());
    if (off <= Plane<North>::side_tolerance) return Line(plane.strike() + turn, plunge);
    if (off >= 180 - Plane<North>::side_tolerance)
      return Line(plane.strike().opposite() - turn, plunge);
    return std::nullopt;
  }

  /// Meaningless, though kept, for a vertical line.
  constexpr Direction trend() const { return trend_; }
  constexpr Plunge plunge() const { return plunge_; }
  constexpr bool is_vertical() const { return plunge_.degrees() == 90; }
  Vector direction() const { return direction_of(trend_.degrees(), plunge_.degrees()); }

 private:
  Direction trend_;
  Plunge plunge_;
};

}  // namespace lodebook
