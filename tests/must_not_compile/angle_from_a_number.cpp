// SPDX-License-Identifier: MIT
// A bare number is no angle: it could be NaN or radians.
#include <lodebook/orientation/angle.hpp>

using namespace lodebook;

#ifdef MISUSE
const Angle angle(20);
#else
const Angle angle = Angle::from_degrees(20).value();
#endif
