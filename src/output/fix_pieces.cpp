// SPDX-License-Identifier: MIT
#include "fix_pieces.hpp"

#include <lodebook/earth/grid.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <unordered_map>

namespace lodebook::output {
namespace {

using reduction::Fixes;
using reduction::LocatedLandmark;
using reduction::SightFix;

using ByName = std::unordered_map<std::string_view, const SightFix*>;

ByName sight_fixes_of(const Fixes& fixes, bool landmarks) {
  ByName by_name;
  for (const SightFix& fix : fixes.sight_fixes) {
    if (fix.is_landmark == landmarks) by_name.try_emplace(fix.name, &fix);
  }
  return by_name;
}

const SightFix* named(const ByName& by_name, std::string_view name) {
  const auto found = by_name.find(name);
  return found == by_name.end() ? nullptr : found->second;
}

void take_fix(FoundPoint& point, const SightFix& fix) {
  point.fix = &fix;
  point.line = fix.line;
  if (!fix.position || (point.position && point.from != reduction::PositionFrom::sights)) return;
  point.position = fix.position;
  point.from = reduction::PositionFrom::sights;
  point.covariance = fix.covariance;
  point.ellipse = fix.ellipse;
}

FoundPoint point_of(const LocatedLandmark& landmark) {
  FoundPoint point;
  point.name = landmark.name;
  point.position = landmark.position;
  if (landmark.is_found) point.from = reduction::PositionFrom::sights;
  point.covariance = landmark.covariance;
  if (landmark.covariance) point.ellipse = reduction::ellipse95(*landmark.covariance);
  point.stated_elevation_m = landmark.stated_elevation_m;
  point.found_elevation = landmark.elevation;
  return point;
}

}  // namespace

std::string_view FoundPoint::position_from() const {
  return position ? reduction::name_of(from) : std::string_view();
}

std::optional<double> FoundPoint::accuracy_m() const {
  if (!position || !covariance) return std::nullopt;
  return reduction::circular_sigma(*covariance);
}

std::optional<double> FoundPoint::elevation_m() const {
  if (stated_elevation_m) return stated_elevation_m;
  if (found_elevation) return found_elevation->elevation_m;
  return std::nullopt;
}

std::optional<double> FoundPoint::elevation_sigma_m() const {
  if (stated_elevation_m || !found_elevation) return std::nullopt;
  return found_elevation->sigma_m;
}

bool FoundPoint::is_checked() const {
  return fix != nullptr && fix->position && fix->freedom > 0;
}

std::vector<FoundPoint> stations_of(const Fixes& fixes) {
  const ByName by_name = sight_fixes_of(fixes, false);
  std::vector<FoundPoint> points;
  for (const reduction::LocatedStation& station : fixes.stations) {
    FoundPoint point;
    point.name = station.name;
    point.line = station.line;
    point.position = station.position;
    point.from = station.from;
    point.covariance = station.covariance;
    point.ellipse = station.ellipse;
    point.stated_elevation_m = station.stated_elevation_m;
    point.found_elevation = station.elevation;
    point.fix = named(by_name, station.name);
    points.push_back(point);
  }
  return points;
}

std::vector<FoundPoint> landmarks_of(const Fixes& fixes) {
  ByName by_name = sight_fixes_of(fixes, true);
  std::vector<FoundPoint> points;
  for (const LocatedLandmark& landmark : fixes.landmarks) {
    const SightFix* const fix = named(by_name, landmark.name);
    if (fix == nullptr && !landmark.is_found && !landmark.elevation) continue;
    FoundPoint point = point_of(landmark);
    if (fix != nullptr) take_fix(point, *fix);
    by_name.erase(landmark.name);
    points.push_back(point);
  }
  // Those that were sighted but never declared.
  for (const SightFix& fix : fixes.sight_fixes) {
    if (by_name.erase(fix.name) == 0) continue;
    FoundPoint point;
    point.name = fix.name;
    take_fix(point, fix);
    points.push_back(point);
  }
  return points;
}

void append_grid(std::string& out, const earth::Position& position, int decimals) {
  const earth::GridPosition grid = earth::grid_position(position);
  out += grid.designation();
  for (const double metres : {grid.easting_m, grid.northing_m}) {
    out.push_back(' ');
    append_figure(out, rounded(metres, decimals), decimals);
  }
}

}  // namespace lodebook::output
