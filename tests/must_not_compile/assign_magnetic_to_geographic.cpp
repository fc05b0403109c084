// SPDX-License-Identifier: MIT
// A magnetic azimuth becomes a true one by a declination only.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();

#ifdef MISUSE
const Azimuth<north::geographic> azimuth = magnetic;
#else
const Azimuth<north::geographic> azimuth = to_geographic(magnetic, Declination());
#endif
