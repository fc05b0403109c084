// SPDX-License-Identifier: MIT
#include <lodebook/orientation/net.hpp>

#include <algorithm>
#include <cmath>

#include "dust.hpp"

namespace lodebook {
namespace {

/// A level direction at right angles to the pole: the strike, with the dip to its right, of an
/// inclined plane.
Vector strike_of(Vector pole) {
  // The downward pole points away from the dip: the strike lies a quarter turn to its right.
  const Vector down = pole.down < 0 ? -pole : pole;
  return unit(Vector{-down.east, down.north, 0}).value_or(Vector{1, 0, 0});
}

std::vector<Vector> arc(Vector pole, double half_angle, double from, double to, double step) {
  const Vector along = strike_of(pole);
  const Vector across = cross(pole, along);
  const Angle half = Angle::from_degrees(half_angle).value();
  const int steps = static_cast<int>(std::ceil((to - from) / step));
  std::vector<Vector> points;
  points.reserve(static_cast<std::size_t>(steps) + 1);
  for (int i = 0; i <= steps; ++i) {
    const Angle turn = Angle::from_degrees(from + (to - from) * i / steps).value();
    points.push_back(cos(half) * pole + sin(half) * (cos(turn) * along + sin(turn) * across));
  }
  return points;
}

}  // namespace

NetPoint equal_area(Vector direction) {
  const double rise = 1 + direction.down;
  if (rise < dust) return {};
  const double scale = 1 / std::sqrt(rise);
  return {scale * direction.east, scale * direction.north};
}

Vector direction_at(NetPoint point) {
  const double square = point.east * point.east + point.north * point.north;
  const double scale = std::sqrt(std::max(0.0, 2 - square));
  return {scale * point.north, scale * point.east, 1 - square};
}

std::vector<Vector> small_circle(Vector pole, double half_angle, double step) {
  return arc(pole, half_angle, 0, 360, step);
}

std::vector<Vector> great_circle(Vector pole, double step) {
  const Vector down = pole.down < 0 ? -pole : pole;
  const bool is_level = std::hypot(down.north, down.east) < dust;
  return arc(down, 90, 0, is_level ? 360 : 180, step);
}

}  // namespace lodebook
