// SPDX-License-Identifier: MIT
// Heights from vertical angles of sights.
#pragma once

#include "observations.hpp"

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::reduction {

/// Gives stations without an elevation one from their vertical angles to landmarks of known
/// elevation, then landmarks from the stations; both ends need positions. The mean is weighted; the
/// sight's rise is D tan v + (1 - k) D^2 / 2R, for the curvature of the earth and a refraction of k
/// = 0.13 (common practice in surveying, after Gauss).
void find_elevations(const Observations& seen, Fixes& found);

}  // namespace lodebook::reduction
