// SPDX-License-Identifier: MIT
// Whether directions fall into two sets, as joints often do, rather than lie about one mean.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// One of two sets: which of the directions are in it, in their order, and their mean.
struct DirectionSet {
  std::vector<std::size_t> places;
  DirectionMean mean;
};

/// Two clear sets, the one with more directions first.
using TwoSets = std::array<DirectionSet, 2>;

/// Divides directions of unit length into the two sets whose vector sums are longest together, and
/// returns them where they are clear: in each at least three directions and 15 % of all, the means
/// at least 30 degrees apart, and D over 4.5 + 25/N. D is the angle between the means over the root
/// of the mean of both variances, these along the great circle through the means (K. M. Ashman, C.
/// M. Bird & S. E. Zepf 1994, Astronomical J. 108, 2348, from memory, who call two sets clear where
/// it is over 2; the limit is ours, since sets that are parted so have smaller variances). How
/// often it is wrong stands in docs/mathematics.md.
std::optional<TwoSets> two_sets(std::span<const Vector> directions, Ends ends);

}  // namespace lodebook
