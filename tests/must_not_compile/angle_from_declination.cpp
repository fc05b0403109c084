// SPDX-License-Identifier: MIT
// A declination changes the frame; it is no angle.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Declination declination = Declination();

#ifdef MISUSE
const Angle angle = declination;
#else
const Angle angle = declination.eastward();
#endif
