// SPDX-License-Identifier: MIT
#include "fix_legs.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>
#include <map>
#include <numbers>

namespace lodebook::reduction {

namespace {

FixLeg level(const ObservedLeg& walked, std::size_t to) {
  const Observed& observed = walked.observed;
  FixLeg leg;
  leg.line = observed.line;
  leg.reading = observed.reading;
  leg.from = observed.station;
  leg.to = to;
  leg.fore = observed.azimuth;
  leg.azimuth = observed.azimuth;
  leg.back = walked.back;
  if (leg.back) leg.disagreement = std::abs(std::remainder(*leg.back - leg.fore - 180, 360.0));
  leg.vertical_angle = observed.vertical;
  leg.left_out = walked.left_out;
  const Angle slope = *Angle::from_degrees(observed.vertical.value_or(0));
  leg.measured_m = walked.distance_m;
  leg.distance_m = walked.distance_m * cos(slope);
  const double by_distance = leg.distance_m * observed.accuracy.distance_percent / 100;
  const double by_slope =
      walked.distance_m * sin(slope) * observed.accuracy.dip * std::numbers::pi / 180;
  leg.distance_sigma_m = std::hypot(by_distance, by_slope);
  return leg;
}

void find_attraction(const Observations& seen, Fixes& found) {
  std::vector<ForeAndBack> both;
  std::vector<std::size_t> leg_numbers;
  for (std::size_t i = 0; i < found.legs.size(); ++i) {
    const FixLeg& leg = found.legs[i];
    const ObservedLeg& walked = seen.legs[i];
    // What turns a needle turns no other bearing. A slope says nothing of the bearings.
    const bool by_needle = walked.observed.by_needle && walked.back_by_needle;
    if (!leg.back || !by_needle || leg.left_out == LeftOut::doubtful) continue;
    both.push_back({leg.from, leg.to, leg.fore, *leg.back});
    leg_numbers.push_back(i);
  }
  found.attraction = local_attraction(both, seen.back_bearing_sigma());
  if (!found.attraction) return;
  for (std::size_t i = 0; i < leg_numbers.size(); ++i)
    found.legs[leg_numbers[i]].corrected = found.attraction->legs[i];
}

/// Every leg read at a station whose correction is known, also those without a back bearing.
void free_legs(const Observations& seen, Fixes& found) {
  std::map<std::size_t, double> corrections;
  for (const StationAttraction& station : found.attraction->stations)
    corrections[station.station] = station.correction;
  for (std::size_t i = 0; i < found.legs.size(); ++i) {
    FixLeg& leg = found.legs[i];
    const auto correction = corrections.find(leg.from);
    if (correction != corrections.end() && seen.legs[i].observed.by_needle)
      leg.azimuth = wrap_degrees(leg.fore + correction->second);
  }
  found.attraction_applied = true;
}

}  // namespace

std::string_view words_for(LeftOut why) {
  switch (why) {
    case LeftOut::own_station:
      return "leads to its own station";
    case LeftOut::doubtful:
      return "marked doubtful";
    case LeftOut::other_north:
      return "read from another north than the rest";
    case LeftOut::percent_or_degrees:
      break;
  }
  return "its slope may be a percent grade";
}

void take_legs(const Observations& seen, Fixes& found) {
  std::map<notebook::NameId, std::size_t> numbers;
  for (std::size_t i = 0; i < seen.stations.size(); ++i)
    numbers[seen.stations[i].name] = i;
  for (const ObservedLeg& walked : seen.legs)
    found.legs.push_back(level(walked, numbers.at(walked.observed.target)));
  find_attraction(seen, found);
  if (seen.attraction_stated && found.attraction) free_legs(seen, found);
}

}  // namespace lodebook::reduction
