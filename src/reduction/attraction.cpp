// SPDX-License-Identifier: MIT
#include <lodebook/reduction/attraction.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>
#include <map>

namespace lodebook::reduction {
namespace {

constexpr double rounding = 1e-9;  // degrees, of decimals that are not exact
constexpr double agreeing = 0.1 + rounding;

/// Into (-180, 180].
double half_turn_at_most(double degrees) {
  const double wrapped = wrap_degrees(degrees);
  return wrapped > 180 ? wrapped - 360 : wrapped;
}

double disagreement(const ForeAndBack& leg) {
  return std::abs(half_turn_at_most(leg.back - leg.fore - 180));
}

}  // namespace

std::optional<Attraction> local_attraction(std::span<const ForeAndBack> legs, double tolerance) {
  std::vector<std::size_t> counted;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    if (legs[i].from != legs[i].to) counted.push_back(i);
  }
  if (counted.size() < 2) return std::nullopt;
  double best = 180;
  for (const std::size_t leg : counted)
    best = std::min(best, disagreement(legs[leg]));
  if (best > tolerance + rounding) return std::nullopt;

  Attraction attraction;
  std::map<std::size_t, double> corrections;
  const auto reach = [&](std::size_t station, bool is_free, double correction) {
    if (corrections.emplace(station, correction).second)
      attraction.stations.push_back({station, is_free, correction});
  };
  std::map<std::size_t, std::vector<std::size_t>> legs_at;
  for (const std::size_t leg : counted) {
    legs_at[legs[leg].from].push_back(leg);
    legs_at[legs[leg].to].push_back(leg);
    if (disagreement(legs[leg]) > best + agreeing) continue;
    reach(legs[leg].from, true, 0);
    reach(legs[leg].to, true, 0);
  }
  // Outwards, so that each station is reached over the fewest legs.
  for (std::size_t i = 0; i < attraction.stations.size(); ++i) {
    const StationAttraction here = attraction.stations[i];
    for (const std::size_t leg : legs_at[here.station]) {
      const ForeAndBack& read = legs[leg];
      const bool is_fore = read.from == here.station;
      const double bearing_here = is_fore ? read.fore : read.back;
      const double bearing_there = is_fore ? read.back : read.fore;
      reach(is_fore ? read.to : read.from, false,
            half_turn_at_most(bearing_here + here.correction + 180 - bearing_there));
    }
  }

  attraction.legs.resize(legs.size());
  for (const std::size_t leg : counted) {
    const auto from = corrections.find(legs[leg].from);
    const auto to = corrections.find(legs[leg].to);
    if (from == corrections.end() || to == corrections.end()) continue;
    attraction.legs[leg] = CorrectedBearings{wrap_degrees(legs[leg].fore + from->second),
                                             wrap_degrees(legs[leg].back + to->second)};
  }
  return attraction;
}

}  // namespace lodebook::reduction
