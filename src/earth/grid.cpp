// SPDX-License-Identifier: MIT
#include <lodebook/earth/grid.hpp>

#include <GeographicLib/PolarStereographic.hpp>
#include <GeographicLib/TransverseMercator.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <cmath>

#include "latitude_band.hpp"

namespace lodebook::earth {
namespace {

constexpr double pole_easting_m = 2'000'000;
constexpr double pole_northing_m = 2'000'000;
constexpr double meridian_easting_m = 500'000;
constexpr double equator_northing_south_m = 10'000'000;

/// None where a zone's grid has no north: on the equator 90 degrees from its meridian.
Convergence convergence_of(double degrees_east) {
  const auto convergence =
      degrees_east < 0 ? Convergence::west(-degrees_east) : Convergence::east(degrees_east);
  return convergence.value_or(Convergence());
}

double equator_northing_m(bool north) {
  return north ? 0 : equator_northing_south_m;
}

}  // namespace

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
    const bool west = result.easting_m < pole_easting_m;
    result.band = north ? (west ? 'Y' : 'Z') : (west ? 'A' : 'B');
  } else {
    result.band = band_at(position.latitude, north);
  }
  result.convergence = convergence_of(convergence);
  return result;
}

ZoneGrid::ZoneGrid(const Position& home)
    : home_(earth::grid_position(home)),
      north_(home.latitude >= 0),
      meridian_(6.0 * home_.zone - 183) {}

GridPosition ZoneGrid::project(const Position& position, double& scale) const {
  GridPosition result = home_;
  double convergence = 0;
  if (home_.zone == 0) {
    GeographicLib::PolarStereographic::UPS().Forward(north_, position.latitude, position.longitude,
                                                     result.easting_m, result.northing_m,
                                                     convergence, scale);
    result.easting_m += pole_easting_m;
    result.northing_m += pole_northing_m;
  } else {
    GeographicLib::TransverseMercator::UTM().Forward(meridian_, position.latitude,
                                                     position.longitude, result.easting_m,
                                                     result.northing_m, convergence, scale);
    result.easting_m += meridian_easting_m;
    result.northing_m += equator_northing_m(north_);
  }
  result.convergence = convergence_of(convergence);
  return result;
}

GridPosition ZoneGrid::grid_position(const Position& position) const {
  double scale = 0;
  return project(position, scale);
}

bool ZoneGrid::reaches(const Position& position) const {
  constexpr double longest = 0.015;
  // A zone's grid runs over the poles to the far side of the earth, where it is of no use.
  constexpr double quarter_of_the_earth_m = 10'000'000;
  double scale = 0;
  const GridPosition there = project(position, scale);
  return std::abs(scale - 1) <= longest &&
         std::abs(there.northing_m - home_.northing_m) <= quarter_of_the_earth_m;
}

Position ZoneGrid::position(double easting_m, double northing_m) const {
  Position result;
  if (home_.zone == 0) {
    GeographicLib::PolarStereographic::UPS().Reverse(north_, easting_m - pole_easting_m,
                                                     northing_m - pole_northing_m, result.latitude,
                                                     result.longitude);
  } else {
    GeographicLib::TransverseMercator::UTM().Reverse(meridian_, easting_m - meridian_easting_m,
                                                     northing_m - equator_northing_m(north_),
                                                     result.latitude, result.longitude);
  }
  return result;
}

}  // namespace lodebook::earth
