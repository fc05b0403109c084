// SPDX-License-Identifier: MIT
// One fix by sights with all that can be said of it: figures, cuts, triangle, implied declination,
// slips.
#pragma once

#include <functional>

#include "observations.hpp"
#include "sight_slips.hpp"

namespace lodebook::reduction {

/// A sight between the sought point and a known one.
struct UsableSight {
  const Observed* observed = nullptr;
  OtherPoint known;
};

/// The sought point is the observer of all `sights` (a station), or their target (a landmark).
/// Needs two. `others` gives known points that may have been sighted instead; asked for only where
/// the sights disagree.
SightFix fix_by_sights(bool is_landmark, std::span<const UsableSight> sights,
                       const std::function<std::vector<OtherPoint>()>& others);

}  // namespace lodebook::reduction
