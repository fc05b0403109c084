// SPDX-License-Identifier: MIT
// Grid convergence does not correct a magnetic azimuth.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();
const Declination declination = Declination();
const Convergence convergence = Convergence();

#ifdef MISUSE
const auto corrected = to_geographic(magnetic, convergence);
#else
const auto corrected = to_geographic(magnetic, declination);
#endif
