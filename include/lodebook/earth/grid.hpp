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

/// One zone's grid carried on beyond its own edges, so that all that stands on one map stands on
/// one grid. Eastings and northings are those of the zone, as far as they go; band and zone are
/// those of `home` everywhere.
class ZoneGrid {
 public:
  /// The standard zone of a position.
  explicit ZoneGrid(const Position& home);

  GridPosition grid_position(const Position& position) const;
  Position position(double easting_m, double northing_m) const;
  /// Lengths on the grid are there within 1.5 % of the true ones: some 9 degrees of longitude from
  /// a zone's meridian at the equator, and 17 degrees of latitude from the pole.
  bool reaches(const Position& position) const;

 private:
  /// On the grid, and how much longer lengths are on it there.
  GridPosition project(const Position& position, double& scale) const;

  GridPosition home_;
  bool north_ = true;
  double meridian_ = 0;
};

}  // namespace lodebook::earth
