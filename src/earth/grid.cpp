// SPDX-License-Identifier: MIT
#include <lodebook/earth/grid.hpp>

#include <GeographicLib/UTMUPS.hpp>

#include "latitude_band.hpp"

namespace lodebook::earth {

std::string GridPosition::designation() const {
  std::string text = zone == 0 ? std::string() : std::to_string(zone);
  if (text.size() == 1) text.insert(0, 1, '0');
  return text + band;
}

GridPosition grid_position(const Position& position) {
  GridPosition result;
  bool north = false;
  double convergence = 0;
  double scale = 0;
  GeographicLib::UTMUPS::Forward(position.latitude, position.longitude, result.zone, north,
                                 result.easting_m, result.northing_m, convergence, scale);
  if (result.zone == GeographicLib::UTMUPS::UPS) {
    constexpr double pole_easting_m = 2'000'000;
    const bool west = result.easting_m < pole_easting_m;
    result.band = north ? (west ? 'Y' : 'Z') : (west ? 'A' : 'B');
  } else {
    result.band = band_at(position.latitude, north);
  }
  result.convergence =
      convergence < 0 ? *Convergence::west(-convergence) : *Convergence::east(convergence);
  return result;
}

}  // namespace lodebook::earth
