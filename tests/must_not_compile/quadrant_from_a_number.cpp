// SPDX-License-Identifier: MIT
// A quadrant bearing over 90 cannot be made.
#include <lodebook/orientation/quadrant.hpp>

using namespace lodebook;

#ifdef MISUSE
const QuadrantBearing bearing(QuadrantBearing::Pole::north, 20, QuadrantBearing::Side::west);
#else
const auto bearing =
    QuadrantBearing::from(QuadrantBearing::Pole::north, 20, QuadrantBearing::Side::west);
#endif
