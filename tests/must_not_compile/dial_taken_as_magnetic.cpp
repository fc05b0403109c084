// SPDX-License-Identifier: MIT
// What a dial shows is magnetic only once its own setting is taken off.
#include <lodebook/orientation/declination.hpp>

using namespace lodebook;

const Azimuth<north::dial> read = Azimuth<north::dial>();
const Declination declination = Declination();

#ifdef MISUSE
const auto corrected = to_geographic(read, declination);
#else
const auto corrected = to_geographic(to_magnetic(read, declination), declination);
#endif
