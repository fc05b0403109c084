// SPDX-License-Identifier: MIT
// Directions from different norths have no difference.
#include <lodebook/orientation/azimuth.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();
const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();

#ifdef MISUSE
const Angle angle = azimuth - magnetic;
#else
const Angle angle = azimuth - azimuth;
#endif
