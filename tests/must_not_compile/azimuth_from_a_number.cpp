// SPDX-License-Identifier: MIT
// A bare number is no azimuth: it could be out of range.
#include <lodebook/orientation/azimuth.hpp>

using namespace lodebook;

#ifdef MISUSE
const Azimuth<north::geographic> azimuth(310);
#else
const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>::from_degrees(310).value();
#endif
