// SPDX-License-Identifier: MIT
// An azimuth does not decay to a number that has lost its north.
#include <lodebook/orientation/azimuth.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();

#ifdef MISUSE
const double degrees = azimuth;
#else
const double degrees = azimuth.degrees();
#endif
