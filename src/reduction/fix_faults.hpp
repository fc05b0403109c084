// SPDX-License-Identifier: MIT
// Diagnostics about positions.
#pragma once

#include "observations.hpp"

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::reduction {

/// Gives `found`, which has all its positions and heights, its diagnostics. Sights at stations that
/// state their position are held against it here, one by one.
void find_faults(const Observations& seen, Fixes& found);

}  // namespace lodebook::reduction
