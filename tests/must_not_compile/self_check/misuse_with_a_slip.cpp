// SPDX-License-Identifier: MIT
// A misuse refused for a misspelt name: the test of this snippet must fail.
#include <lodebook/orientation/angle.hpp>

using namespace lodebook;

#ifdef MISUSE
const Angle angle = Angel();
#else
const Angle angle = Angle();
#endif
