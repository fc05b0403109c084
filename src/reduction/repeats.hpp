// SPDX-License-Identifier: MIT
// Whether repeat readings of one surface agree.
#pragma once

#include <span>
#include <vector>

#include <lodebook/orientation/mean.hpp>

namespace lodebook::reduction {

/// A pole, line or arrow, and one sigma of its direction in degrees.
struct Repeat {
  Vector axis;
  double sigma = 0;
};

/// A check's limit in degrees: three sigma, but never under `floor` or over half a turn.
double limit_of(double sigma, double floor);

/// Repeats held against their mean.
struct Agreement {
  /// The mean of the repeats that agree; missing where none is better than another, as of two at
  /// right angles.
  std::optional<DirectionMean> mean;
  /// Of each repeat: its angle from that mean, its limit (both degrees), and whether it is over.
  struct Member {
    double off = 0;
    double limit = 0;
    bool apart = false;
    /// Where a slip would have to bring it: the mean, or the other one of two that disagree.
    Vector held_against;
  };
  std::vector<Member> members;
};

/// Under this, degrees, repeats of a plane or line agree.
inline constexpr double repeat_floor = 5;

/// Takes the mean; while the repeat furthest over its limit is over, sets it aside and takes the
/// mean of the others, so that one bad repeat does not condemn the good ones. Two that disagree are
/// both apart, since nothing tells which is wrong, and so are all that have no mean, by their
/// angle from the middle of them. Nothing for fewer than two repeats.
std::optional<Agreement> agreement(std::span<const Repeat> repeats, Ends ends,
                                   double floor = repeat_floor);

}  // namespace lodebook::reduction
