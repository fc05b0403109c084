// SPDX-License-Identifier: MIT
// Two directions have no sum.
#include <lodebook/orientation/azimuth.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();
const Angle angle = Angle();

#ifdef MISUSE
const auto sum = azimuth + azimuth;
#else
const auto sum = azimuth + angle;
#endif
