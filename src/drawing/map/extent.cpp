// SPDX-License-Identifier: MIT
#include "extent.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace lodebook::drawing {

Extent extent_of(const Survey& survey, const MapGrid& grid) {
  std::optional<Extent> extent;
  const auto include = [&](const earth::PlanePoint& point) {
    if (!extent) extent = Extent{point, point};
    extent->include(point);
  };
  for (const Survey::Station& station : survey.stations) {
    if (station.position) include(grid.place(*station.position).at);
  }
  if (!extent) {
    for (const Survey::Landmark& landmark : survey.landmarks)
      include(grid.place(landmark.position).at);
    return *extent;
  }
  // What belongs to the stations is shown too, as far as it does not make them small; where they
  // lie in one place, all of it is, and all landmarks.
  constexpr double near_share = 0.5;
  constexpr double one_place_m = 20;
  const double side = std::max(extent->east_m(), extent->north_m());
  const Extent stations = *extent;
  const auto include_near = [&](const earth::PlanePoint& point) {
    const double reach =
        side < one_place_m ? std::numeric_limits<double>::infinity() : near_share * side;
    include(
        {std::clamp(point.east_m, stations.least.east_m - reach, stations.most.east_m + reach),
         std::clamp(point.north_m, stations.least.north_m - reach, stations.most.north_m + reach)});
  };
  if (side < one_place_m) {
    for (const Survey::Landmark& landmark : survey.landmarks)
      include(grid.place(landmark.position).at);
  }
  for (const auto& raw : survey.raw_traverses) {
    for (const earth::Position& position : raw)
      include_near(grid.place(position).at);
  }
  for (const auto& triangle : survey.triangles) {
    for (const earth::Position& corner : triangle)
      include_near(grid.place(corner).at);
  }
  for (const Survey::ErrorOfPosition& error : survey.errors) {
    const earth::PlanePoint at = grid.place(error.center).at;
    const double reach = error.ellipse.semi_major_m;
    include_near({at.east_m - reach, at.north_m - reach});
    include_near({at.east_m + reach, at.north_m + reach});
  }
  return *extent;
}

}  // namespace lodebook::drawing
