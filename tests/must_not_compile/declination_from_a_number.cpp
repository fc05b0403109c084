// SPDX-License-Identifier: MIT
// A declination without its side is a sign waiting to be wrong.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

#ifdef MISUSE
const Declination declination(24.6);
#else
const Declination declination = Declination::east(24.6).value();
#endif
