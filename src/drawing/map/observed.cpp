// SPDX-License-Identifier: MIT
#include "observed.hpp"

#include <algorithm>
#include <lodebook/drawing/picture.hpp>
#include <lodebook/earth/geodesic.hpp>

namespace lodebook::drawing {

using earth::Position;
using reduction::FixedSight;
using reduction::SightFix;

namespace {

/// Where there is no fix, each sight still says that its other end lies on a line: so long that all
/// of them can meet on it.
std::pair<Position, Position> line_of_position(const SightFix& fix, const FixedSight& sight) {
  constexpr double beyond = 1.5;
  constexpr double least_m = 1000;
  double furthest = least_m;
  for (const FixedSight& other : fix.sights)
    furthest = std::max(furthest, earth::distance_m(sight.known, other.known));
  const double azimuth = fix.is_landmark ? sight.bearing : sight.bearing + 180;
  return {sight.known, earth::travelled(sight.known, azimuth, beyond * furthest)};
}

}  // namespace

std::pair<Position, Position> observed(const SightFix& fix, const FixedSight& sight) {
  if (!fix.position) return line_of_position(fix, sight);
  const earth::LocalPlane plane(sight.known);
  const earth::PlanePoint fixed = plane.to_plane(*fix.position);
  // From the station to the landmark where a landmark is fixed; else back from the landmark, for
  // which the bearing at the station is turned by how much the meridians converge.
  const double azimuth =
      fix.is_landmark ? sight.bearing : sight.bearing + 180 + plane.meridian_turn(*fix.position);
  const Point unit = towards({0, 0}, azimuth, 1);
  const double along = fixed.east_m * unit.x - fixed.north_m * unit.y;
  const Position passing = earth::travelled(sight.known, azimuth, along);
  return fix.is_landmark ? std::pair{sight.known, passing} : std::pair{passing, sight.known};
}

}  // namespace lodebook::drawing
