// SPDX-License-Identifier: MIT
// In which runs, and in which order, legs are computed: a matter of who is tied to whom alone.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <lodebook/reduction/traverse.hpp>

namespace lodebook::reduction {

/// A run as it lies among the stations: one station more than legs, a loop ends where it begins.
/// All its stations but the first, and the last of a closed run, are new. The first one of a run is
/// tied to a known station, or to an earlier run, or begins a group that has no known station.
struct TraverseRun {
  Traverse::Kind kind = Traverse::Kind::open;
  std::vector<std::size_t> stations;
  std::vector<std::size_t> legs;
};

/// Group by group: closed runs first, always one with the fewest legs (of equals that the search
/// meets, the one whose legs come first; where no station is known and many legs meet at one, not
/// all are met), going the way that most of its legs go. Open legs lead to
/// loops that nothing else ties; what is left when all loops are closed is carried on as it comes.
std::vector<TraverseRun> traverse_runs(std::span<const TraverseStation> stations,
                                       std::span<const TraverseLeg> legs);

}  // namespace lodebook::reduction
