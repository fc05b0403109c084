// SPDX-License-Identifier: MIT
// A declination has a side, not a sign.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Declination declination = Declination();

#ifdef MISUSE
const auto other = -declination;
#else
const Angle other = -declination.eastward();
#endif
