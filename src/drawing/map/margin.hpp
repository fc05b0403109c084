// SPDX-License-Identifier: MIT
// The margin under a map: scale, norths, legend, closures, and what the map does not show.
#pragma once

#include <vector>

#include <lodebook/drawing/map.hpp>

#include "grid.hpp"
#include "survey.hpp"

namespace lodebook::drawing {

/// What it is drawn from. The last three say whether the map has such things.
struct Margin {
  const Survey& survey;
  const MapGrid& grid;
  double scale = 1000;
  MapSize size = MapSize::own;
  /// At the map's middle, degrees east.
  double convergence = 0;
  bool has_leaders = false;
  bool has_landmarks_inside = false;
  bool has_landmarks_outside = false;
};

/// All of it from the top left, `width` wide; the picture's height is what it takes.
Picture margin_picture(const Margin& margin, double width);

/// The survey's remarks and the caution, from `y` down; returns where they end.
double draw_footer(Picture& picture, const Survey& survey, double y, double width);

/// Arrows to the norths from one foot, true, grid and magnetic, at their angles to the grid. Within
/// a circle of `norths_radius` around the foot, their names included. Returns where they end.
double draw_norths(Picture& picture, Point foot, double convergence,
                   const std::optional<double>& declination);
inline constexpr double norths_radius = 26;

/// The symbols and lines that are on the map, in columns; returns where they end.
double draw_legend(Picture& picture, const Margin& margin, double y, double width);

}  // namespace lodebook::drawing
