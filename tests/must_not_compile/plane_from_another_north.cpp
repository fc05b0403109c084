// SPDX-License-Identifier: MIT
// A plane keeps the north of its strike.
#include <lodebook/orientation/plane.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();
const Azimuth<north::magnetic> magnetic = Azimuth<north::magnetic>();

#ifdef MISUSE
const auto plane = Plane<north::geographic>::from_strike(magnetic, Dip(), HandRule::right);
#else
const auto plane = Plane<north::geographic>::from_strike(azimuth, Dip(), HandRule::right);
#endif
