// SPDX-License-Identifier: MIT
// A declination is applied by the functions that also change the north.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();
const Declination declination = Declination();

#ifdef MISUSE
const auto corrected = magnetic + declination;
#else
const auto corrected = to_geographic(magnetic, declination);
#endif
