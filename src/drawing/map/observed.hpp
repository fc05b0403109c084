// SPDX-License-Identifier: MIT
// Sights of a fix as they were observed, whether they agree or not.
#pragma once

#include <lodebook/reduction/fixes.hpp>
#include <utility>

namespace lodebook::drawing {

/// A sight of a fix as it was observed: from the known point to where it passes the fix, so that
/// sights that disagree do so on the map. It does pass: where a sight points away, there is no fix
/// (SightFault::behind). Where there is no fix: a line from the known point as far as its
/// observer may be.
std::pair<earth::Position, earth::Position> observed(const reduction::SightFix& fix,
                                                     const reduction::FixedSight& sight);

}  // namespace lodebook::drawing
