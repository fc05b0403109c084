// SPDX-License-Identifier: MIT
// Local attraction, found from fore and back bearings by the handbook method.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace lodebook::reduction {

/// Both bearings of one leg, degrees from one north, as observed at its two ends.
struct ForeAndBack {
  std::size_t from = 0;
  std::size_t to = 0;
  double fore = 0;
  double back = 0;
};

/// What turns the needle at one station: to be added to every bearing observed there, degrees in
/// (-180, 180].
struct StationAttraction {
  std::size_t station = 0;
  bool is_free = false;
  double correction = 0;
};

/// Degrees in [0, 360).
struct CorrectedBearings {
  double fore = 0;
  double back = 0;
};

struct Attraction {
  /// In the order in which they were reached, free ones first.
  std::vector<StationAttraction> stations;
  /// By leg; missing where neither end is reached, and for a leg from a station to itself.
  std::vector<std::optional<CorrectedBearings>> legs;
};

/// The ends of a leg whose two bearings differ by 180 degrees are free of local attraction; from
/// them the correction of each next station is what its back bearing lacks (common practice in
/// surveying; any handbook of compass traversing). Each is reached over the fewest legs, of equals
/// from the station reached first. Legs count as agreeing within 0.1 degrees of the best leg, which
/// itself must agree within `tolerance` degrees; else, or with fewer than two legs, nothing is
/// known and nothing is returned. Legs from a station to itself tell nothing and are not counted.
/// All bearings are finite.
std::optional<Attraction> local_attraction(std::span<const ForeAndBack> legs, double tolerance);

}  // namespace lodebook::reduction
