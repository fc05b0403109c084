// SPDX-License-Identifier: MIT
// Directions from different norths are not comparable.
#include <lodebook/orientation/azimuth.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();
const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();

#ifdef MISUSE
const bool same = azimuth == magnetic;
#else
const bool same = azimuth == azimuth;
#endif
