// SPDX-License-Identifier: MIT
// The dip of a plane is not the plunge of a line.
#include <lodebook/orientation/line.hpp>

using namespace lodebook;

const Azimuth<north::geographic> azimuth = Azimuth<north::geographic>();
const Dip dip = Dip();
const Plunge plunge = Plunge();

#ifdef MISUSE
const Line<north::geographic> line(azimuth, dip);
#else
const Line<north::geographic> line(azimuth, plunge);
#endif
