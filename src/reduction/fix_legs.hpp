// SPDX-License-Identifier: MIT
// The legs of a log made level, and what their two bearings say of local attraction.
#pragma once

#include "observations.hpp"

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::reduction {

/// Gives `found` its legs and their local attraction, which is corrected where the log asks for it.
void take_legs(const Observations& seen, Fixes& found);

}  // namespace lodebook::reduction
