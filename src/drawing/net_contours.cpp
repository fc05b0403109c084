// SPDX-License-Identifier: MIT
#include "net_contours.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/drawing/contours.hpp>
#include <lodebook/drawing/net.hpp>
#include <lodebook/orientation/density.hpp>
#include <lodebook/output/text.hpp>
#include <vector>

namespace lodebook::drawing {
namespace {

/// Levels of the contours in sigma: 2, 4, 6, ..., or wider apart where there would be too many.
std::vector<double> levels_up_to(double largest) {
  constexpr double most = 6;
  const double step = 2 * std::max(1.0, std::ceil(largest / (2 * most)));
  std::vector<double> levels;
  for (double level = step; level <= largest; level += step)
    levels.push_back(level);
  return levels;
}

/// A ring about a point or two of the grid, which is too coarse to tell its shape.
bool is_speck(const std::vector<Point>& ring) {
  constexpr double least_cells = 2;
  double twice_area = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& next = ring[(i + 1) % ring.size()];
    twice_area += ring[i].x * next.y - next.x * ring[i].y;
  }
  return std::abs(twice_area) < 2 * least_cells;
}

}  // namespace

std::string draw_contours(Picture& picture, const NetFrame& frame,
                          const reduction::Summary& summary) {
  std::vector<Vector> axes;
  for (const reduction::MeasuredSurface& surface : summary.surfaces)
    axes.push_back(surface.axis);
  if (axes.size() < fewest_with_contours) {
    return fmt::format("no contours: N {}, and of under {} the cap would be half the hemisphere",
                       axes.size(), fewest_with_contours);
  }
  const KambDensity density(axes);
  constexpr std::size_t side = 121;
  constexpr double reach = 1.06;
  constexpr double spacing = 2 * reach / (side - 1);
  std::vector<double> counts(side * side);
  double most = 0;
  for (std::size_t row = 0; row < side; ++row) {
    for (std::size_t column = 0; column < side; ++column) {
      const NetPoint at = {static_cast<double>(column) * spacing - reach,
                           reach - static_cast<double>(row) * spacing};
      if (std::hypot(at.east, at.north) > reach) continue;
      const auto count = static_cast<double>(density.count(direction_at(at)));
      counts[row * side + column] = count;
      most = std::max(most, count);
    }
  }
  picture.begin_clip(Circle{frame.center, frame.radius});
  const Point corner = frame.center - Point{frame.radius * reach, frame.radius * reach};
  std::string shown;
  const std::vector<double> levels = levels_up_to(most / density.sigma());
  for (std::size_t i = 0; i < levels.size(); ++i) {
    // Counts go in steps: the line runs between the least that reaches the level and one fewer, and
    // not through points that happen to equal it, where it would fold into hairs.
    constexpr double rounding = 1e-9;
    const double threshold = std::ceil(levels[i] * density.sigma() - rounding) - 0.5;
    auto rings = rings_around(counts, side, threshold);
    std::erase_if(rings, is_speck);
    for (auto& ring : rings) {
      for (Point& point : ring)
        point = corner + frame.radius * spacing * point;
    }
    picture.contour(i, std::move(rings));
    shown += fmt::format("{}{}", i == 0 ? "" : ", ", levels[i]);
  }
  picture.end();
  const std::string cap = output::figure_text(100 * density.fraction(), 1);
  std::string words =
      fmt::format("density after Kamb: N {}, a cap of {} % of the hemisphere", axes.size(), cap);
  words += shown.empty() ? ", nowhere 2 sigma" : fmt::format(", lines at {} sigma", shown);
  if (axes.size() < fewest_to_contour)
    words += fmt::format("; with N under {}, contours say little", fewest_to_contour);
  return words;
}

}  // namespace lodebook::drawing
