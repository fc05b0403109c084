// SPDX-License-Identifier: MIT
// Which axes stand far outside their group.
#pragma once

#include <span>
#include <vector>

#include <lodebook/orientation/sets.hpp>
#include <lodebook/orientation/vector.hpp>

namespace lodebook::reduction {

/// One that does: its place, and its angle in degrees from where the others lie.
struct Apart {
  std::size_t index = 0;
  double degrees = 0;
};

/// They are looked for one at a time, the furthest first, each against what the others alone say,
/// until the furthest is no outlier; at most this many, and at least four stay.
inline constexpr std::size_t most_apart = 20;

/// Apart is one that a group of its size would have by chance once in a hundred times, and that is
/// more than 5 degrees off, the limit of repeats. In the order of their places.
///
/// About the mean of a cluster: the test of discordancy of N. I. Fisher, T. Lewis & M. E. Willcox
/// 1981, Applied Statistics 30, 230: (N - 2)(1 + R' - R) / (N - 1 - R') is F with 2 and 2N - 4
/// degrees of freedom, R' being the resultant of the others (from memory).
std::vector<Apart> apart_from_mean(std::span<const Vector> directions, Ends ends);

/// From the mean of that of two sets which is nearer.
std::vector<Apart> apart_from_sets(std::span<const Vector> directions, const TwoSets& sets,
                                   Ends ends);

/// From a best great circle: the angle off that of the others is held against their scatter by
/// Student's t with N - 3 degrees of freedom.
std::vector<Apart> apart_from_girdle(std::span<const Vector> axes);

}  // namespace lodebook::reduction
