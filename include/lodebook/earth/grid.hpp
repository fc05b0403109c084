// SPDX-License-Identifier: MIT
// Where a position lies on the grid of its map: UTM, and UPS beyond it.
#pragma once

#include <lodebook/earth/position.hpp>
#include <lodebook/orientation/declination.hpp>
#include <string>

namespace lodebook::earth {

/// A position in its standard zone (with the exceptions of Norway and Svalbard) and where that
/// zone's northing points. Within 5 nanometres and 1e-12 degrees (Karney 2011, J. Geodesy 85, 475).
struct GridPosition {
  double easting_m = 0;
  double northing_m = 0;
  /// 1 to 60; 0 for the polar grids (UPS).
  int zone = 0;
  /// The latitude band C to X; A or B for the west and east of the polar grid in the
  /// south, Y or Z in the north.
  char band = 'N';
  /// How far grid north lies east of true north; grid azimuth = true azimuth - convergence.
  Convergence convergence;

  /// `59G`: with easting and northing behind it, a position as read_position takes it. `Z` alone
  /// for a polar grid, which it does not take.
  std::string designation() const;
};

GridPosition grid_position(const Position& position);

}  // namespace lodebook::earth
