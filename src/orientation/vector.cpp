// SPDX-License-Identifier: MIT
// Lengths of vectors and angles between them.
#include <lodebook/orientation/vector.hpp>

#include <cmath>

#include "dust.hpp"

namespace lodebook {

double norm(Vector v) {
  return std::hypot(v.north, v.east, v.down);
}

std::optional<Vector> unit(Vector v) {
  const double length = norm(v);
  if (!(length > dust && std::isfinite(length))) return std::nullopt;
  return Vector{v.north / length, v.east / length, v.down / length};
}

Angle angle_between_axes(Vector a, Vector b) {
  return Angle::atan2(norm(cross(a, b)), std::abs(dot(a, b)));
}

Angle angle_between_arrows(Vector a, Vector b) {
  return Angle::atan2(norm(cross(a, b)), dot(a, b));
}

}  // namespace lodebook
