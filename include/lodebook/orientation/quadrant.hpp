// SPDX-License-Identifier: MIT
// Quadrant bearings (N50W) and the sixteen points of the compass rose.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace lodebook {

/// The sixteen points, clockwise, each 22.5 degrees from the next.
enum class Point : std::uint8_t {
  N,
  NNE,
  NE,
  ENE,
  E,
  ESE,
  SE,
  SSE,
  S,
  SSW,
  SW,
  WSW,
  W,
  WNW,
  NW,
  NNW
};

/// Degrees clockwise from north; exact.
constexpr double degrees_of(Point point) {
  return 22.5 * static_cast<double>(point);
}

/// `N`, `NNE`, ... in capitals.
std::string_view name_of(Point point);

/// The point of that name, in any case; nothing for any other word.
std::optional<Point> point_named(std::string_view word);

/// The nearest of the eight main points (N, NE, E, ...); half-way cases go to N, E, S or W.
Point nearest_eighth(double degrees);

/// An angle of 0 to 90 degrees from north or south towards east or west.
class QuadrantBearing {
 public:
  enum class Pole : std::uint8_t { north, south };
  enum class Side : std::uint8_t { east, west };

  /// Nothing unless the angle lies in [0, 90].
  static constexpr std::optional<QuadrantBearing> from(Pole pole, double angle, Side side) {
    if (!(angle >= 0 && angle <= 90)) return std::nullopt;
    return QuadrantBearing(pole, angle + 0.0, side);
  }

  /// The quadrant bearing of an azimuth, wrapped first. North and south have side east, east and
  /// west have pole north.
  static QuadrantBearing of_degrees(double azimuth);

  constexpr Pole pole() const { return pole_; }
  constexpr double angle() const { return angle_; }
  constexpr Side side() const { return side_; }

  /// Clockwise from north, in [0, 360); exact for whole degrees.
  constexpr double degrees() const {
    if (pole_ == Pole::south) return side_ == Side::east ? 180 - angle_ : 180 + angle_;
    if (side_ == Side::east) return angle_;
    const double turned = 360 - angle_;  // 360 also for tiny angles: rounding
    return turned < 360 ? turned : 0.0;
  }

 private:
  constexpr QuadrantBearing(Pole pole, double angle, Side side)
      : angle_(angle), pole_(pole), side_(side) {}

  double angle_;
  Pole pole_;
  Side side_;
};

}  // namespace lodebook
