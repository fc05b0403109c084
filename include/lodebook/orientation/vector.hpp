// SPDX-License-Identifier: MIT
// Unit vectors in space: north, east, down.
#pragma once

#include <cstdint>
#include <optional>

#include <lodebook/orientation/angle.hpp>

namespace lodebook {

/// Direction cosines to north, east and down (a right-handed frame). Functions that take one as a
/// direction expect unit length.
struct Vector {
  double north = 0;
  double east = 0;
  double down = 0;

  friend constexpr Vector operator-(Vector v) { return {-v.north, -v.east, -v.down}; }
  friend constexpr Vector operator+(Vector a, Vector b) {
    return {a.north + b.north, a.east + b.east, a.down + b.down};
  }
  friend constexpr Vector operator*(double s, Vector v) {
    return {s * v.north, s * v.east, s * v.down};
  }
};

constexpr double dot(Vector a, Vector b) {
  return a.north * b.north + a.east * b.east + a.down * b.down;
}
constexpr Vector cross(Vector a, Vector b) {
  return {a.east * b.down - a.down * b.east, a.down * b.north - a.north * b.down,
          a.north * b.east - a.east * b.north};
}
double norm(Vector v);

/// The vector of length 1 along `v`, or nothing where `v` is too short to have a direction: below
/// 1e-12, the dust of sums of unit vectors.
std::optional<Vector> unit(Vector v);

/// The angle between two axes (directions without an arrow), in [0, 90] degrees, accurate also for
/// nearly parallel ones: atan2(|a x b|, |a . b|).
Angle angle_between_axes(Vector a, Vector b);
/// The angle between two arrows, in [0, 180] degrees: atan2(|a x b|, a . b).
Angle angle_between_arrows(Vector a, Vector b);

/// Whether a direction counts at both its ends or at one.
enum class Ends : std::uint8_t { both, one };
/// Of axes, or of arrows.
inline Angle angle_between(Vector a, Vector b, Ends ends) {
  return ends == Ends::one ? angle_between_arrows(a, b) : angle_between_axes(a, b);
}

}  // namespace lodebook
