// SPDX-License-Identifier: MIT
// Divides the legs into runs and orders these. Only the connections between stations count, not
// their positions.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <lodebook/reduction/traverse.hpp>

namespace lodebook::reduction {

/// A run of legs, with one station more than legs; a loop ends where it begins. Its first station,
/// and the last one of a closed run, is known or belongs to an earlier run; in a group without a
/// known station, the first run begins anywhere. All other stations of a run are new.
struct TraverseRun {
  Traverse::Kind kind = Traverse::Kind::open;
  std::vector<std::size_t> stations;
  std::vector<std::size_t> legs;
};

/// Group by group. The closed runs come first, always one with the fewest legs; among equals that
/// the search finds, the one with the lowest leg numbers. (In a group without a known station where
/// many legs meet at one station, the search does not find all equals.) A closed run goes in the
/// direction of most of its legs. Open runs come early only if they lead to a loop that nothing
/// else connects. When all loops are closed, the legs that are left are carried on in input order.
std::vector<TraverseRun> traverse_runs(std::span<const TraverseStation> stations,
                                       std::span<const TraverseLeg> legs);

}  // namespace lodebook::reduction
