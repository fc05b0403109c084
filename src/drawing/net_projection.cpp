// SPDX-License-Identifier: MIT
#include "net_projection.hpp"

namespace lodebook::drawing {
namespace {

/// Where the way from one direction to the next passes the horizon.
Vector crossing(Vector from, Vector to) {
  const double share = from.down / (from.down - to.down);
  const Vector between = (1 - share) * from + share * to;
  return unit(Vector{between.north, between.east, 0}).value_or(from);
}

}  // namespace

std::vector<std::vector<Point>> parts_on_net(const NetFrame& frame, std::span<const Vector> line) {
  std::vector<std::vector<Point>> parts;
  bool rises = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vector direction = line[i];
    const bool rises_now = direction.down < -level_on_net;
    if (i == 0 || rises_now != rises) {
      const bool passes = i > 0 && std::abs(line[i - 1].down) > level_on_net;
      if (passes) {
        const Vector rim = crossing(line[i - 1], direction);
        parts.back().push_back(frame.place(rises ? -rim : rim));
        parts.push_back({frame.place(rises_now ? -rim : rim)});
      } else {
        parts.emplace_back();
        if (i > 0) parts.back().push_back(frame.place(rises_now ? -line[i - 1] : line[i - 1]));
      }
      rises = rises_now;
    }
    parts.back().push_back(frame.place(rises ? -direction : direction));
  }
  return parts;
}

}  // namespace lodebook::drawing
