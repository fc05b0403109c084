// SPDX-License-Identifier: MIT
// Rake and dip cannot be swapped.
#include <lodebook/orientation/line.hpp>

using namespace lodebook;

const Rake rake = Rake();
const Dip dip = Dip();

#ifdef MISUSE
const Plunge plunge = plunge_of_rake(dip, rake);
#else
const Plunge plunge = plunge_of_rake(rake, dip);
#endif
