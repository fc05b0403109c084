// SPDX-License-Identifier: MIT
// A bare number is no dip: it could be over 90.
#include <lodebook/orientation/dip.hpp>

using namespace lodebook;

#ifdef MISUSE
const Dip dip(32);
#else
const Dip dip = Dip::from_degrees(32).value();
#endif
