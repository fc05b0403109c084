// SPDX-License-Identifier: MIT
// Directions and distances on the ellipsoid, and a plane to compute in around a point.
#pragma once

#include <lodebook/earth/position.hpp>

namespace lodebook::earth {

/// The shortest line from one position to another on WGS 84 (Karney 2013, J. Geodesy 87, 43).
struct GeodesicLine {
  double distance_m = 0;
  /// True azimuths of the line at its start and at its end, both forwards, degrees in [0, 360).
  /// Meaningless where the distance is 0.
  double azimuth = 0;
  double azimuth_at_end = 0;
  /// How far the end moves sideways as the start turns, metres per radian: the reduced length.
  double reduced_m = 0;
  /// The distance at the end between two lines that start parallel, a metre apart: the geodesic
  /// scale M12, nearly 1 for short lines.
  double scale = 1;
};

GeodesicLine geodesic(const Position& from, const Position& to);
/// Its length alone, at less cost.
double distance_m(const Position& a, const Position& b);

/// Where one arrives along the geodesic that starts at `azimuth` (true, degrees) after
/// `distance_m`.
Position travelled(const Position& from, double azimuth, double distance_m);

/// East and north in metres, from the plane's origin.
struct PlanePoint {
  double east_m = 0;
  double north_m = 0;
};

/// The azimuthal equidistant projection around an origin: distances and azimuths from the origin
/// are true; elsewhere lengths are off by d^2 / 6R^2, 0.4 mm in a kilometre at 10 km.
class LocalPlane {
 public:
  explicit LocalPlane(const Position& origin) : origin_(origin) {}

  const Position& origin() const { return origin_; }
  PlanePoint to_plane(const Position& position) const;
  Position to_position(const PlanePoint& point) const;
  /// How far true north at `position` lies clockwise of the plane's north, degrees in [-180, 180]:
  /// azimuth on the plane = true azimuth + this. 0 at the origin.
  double meridian_turn(const Position& position) const;

 private:
  Position origin_;
};

}  // namespace lodebook::earth
