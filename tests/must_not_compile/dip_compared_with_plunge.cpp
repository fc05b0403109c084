// SPDX-License-Identifier: MIT
// Dips and plunges do not mix.
#include <lodebook/orientation/dip.hpp>

using namespace lodebook;

const Dip dip = Dip();
const Plunge plunge = Plunge();

#ifdef MISUSE
const bool steeper = dip > plunge;
#else
const bool steeper = dip > dip;
#endif
