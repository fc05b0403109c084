// SPDX-License-Identifier: MIT
#include <lodebook/earth/geodesic.hpp>

#include <GeographicLib/AzimuthalEquidistant.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <cmath>
#include <lodebook/orientation/angle.hpp>

#include "position_text.hpp"

namespace lodebook::earth {

GeodesicLine geodesic(const Position& from, const Position& to) {
  GeodesicLine line;
  double scale_back = 1;
  GeographicLib::Geodesic::WGS84().Inverse(from.latitude, from.longitude, to.latitude, to.longitude,
                                           line.distance_m, line.azimuth, line.azimuth_at_end,
                                           line.reduced_m, line.scale, scale_back);
  line.azimuth = wrap_degrees(line.azimuth);
  line.azimuth_at_end = wrap_degrees(line.azimuth_at_end);
  return line;
}

double distance_m(const Position& a, const Position& b) {
  double metres = 0;
  GeographicLib::Geodesic::WGS84().Inverse(a.latitude, a.longitude, b.latitude, b.longitude,
                                           metres);
  return metres;
}

Position travelled(const Position& from, double azimuth, double distance_m) {
  double latitude = 0;
  double longitude = 0;
  GeographicLib::Geodesic::WGS84().Direct(from.latitude, from.longitude, azimuth, distance_m,
                                          latitude, longitude);
  return normalised(latitude, longitude);
}

PlanePoint LocalPlane::to_plane(const Position& position) const {
  PlanePoint point;
  GeographicLib::AzimuthalEquidistant(GeographicLib::Geodesic::WGS84())
      .Forward(origin_.latitude, origin_.longitude, position.latitude, position.longitude,
               point.east_m, point.north_m);
  return point;
}

Position LocalPlane::to_position(const PlanePoint& point) const {
  double latitude = 0;
  double longitude = 0;
  GeographicLib::AzimuthalEquidistant(GeographicLib::Geodesic::WGS84())
      .Reverse(origin_.latitude, origin_.longitude, point.east_m, point.north_m, latitude,
               longitude);
  return normalised(latitude, longitude);
}

double LocalPlane::meridian_turn(const Position& position) const {
  const GeodesicLine radius = geodesic(origin_, position);
  if (radius.distance_m == 0) return 0;
  return std::remainder(radius.azimuth - radius.azimuth_at_end, 360.0);
}

}  // namespace lodebook::earth
