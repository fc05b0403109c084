// SPDX-License-Identifier: MIT
// Directions on a net of a certain size.
#pragma once

#include <span>
#include <vector>

#include <lodebook/drawing/picture.hpp>
#include <lodebook/orientation/net.hpp>

namespace lodebook::drawing {

/// A smaller rise counts as level: rounding must not tear a great circle off its ends on the rim.
inline constexpr double level_on_net = 1e-9;

/// Where a net lies on its paper.
struct NetFrame {
  Point center;
  double radius = 0;

  /// Of an axis, by its lower end.
  Point place(Vector axis) const {
    const NetPoint point = equal_area(axis.down < -level_on_net ? -axis : axis);
    return {center.x + radius * point.east, center.y - radius * point.north};
  }
};

/// A line over the sphere on the net: what rises above the horizon goes on at the opposite rim, so
/// that it may fall into several parts.
std::vector<std::vector<Point>> parts_on_net(const NetFrame& frame, std::span<const Vector> line);

}  // namespace lodebook::drawing
