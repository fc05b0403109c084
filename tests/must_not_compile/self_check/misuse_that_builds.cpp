// SPDX-License-Identifier: MIT
// A misuse that builds: the test of this snippet must fail.
#include <lodebook/orientation/angle.hpp>

using namespace lodebook;

#ifdef MISUSE
const Angle angle = Angle() + Angle();
#else
const Angle angle = Angle();
#endif
