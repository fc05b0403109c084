// SPDX-License-Identifier: MIT
// A true azimuth is not corrected again.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();
const Azimuth<north::geographic> geographic = Azimuth<north::geographic>();
const Declination declination = Declination();

#ifdef MISUSE
const auto corrected = to_geographic(geographic, declination);
#else
const auto corrected = to_geographic(magnetic, declination);
#endif
