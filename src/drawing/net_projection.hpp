// SPDX-License-Identifier: MIT
// Directions on a net of a certain size.
#pragma once

#include <span>
#include <vector>

#include <lodebook/drawing/picture.hpp>
#include <lodebook/orientation/net.hpp>

namespace lodebook::drawing {

/// Where a net lies on its paper.
struct NetFrame {
  Point center;
  double radius = 0;

  /// Of a direction of the lower hemisphere.
  Point place(Vector direction) const {
    const NetPoint point = equal_area(direction);
    return {center.x + radius * point.east, center.y - radius * point.north};
  }
};

/// A line over the sphere on the net: what rises above the horizon goes on at the opposite rim, so
/// that it may fall into several parts.
std::vector<std::vector<Point>> parts_on_net(const NetFrame& frame, std::span<const Vector> line);

}  // namespace lodebook::drawing
