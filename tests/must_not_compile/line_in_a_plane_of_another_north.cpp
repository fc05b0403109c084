// SPDX-License-Identifier: MIT
// A line takes its trend from a plane of its own north.
#include <lodebook/orientation/line.hpp>

using namespace lodebook;

const Azimuth<north::geographic> from = Azimuth<north::geographic>();
const Plane<north::geographic> plane;
const Plane<north::magnetic> other;

#ifdef MISUSE
const auto line = Line<north::geographic>::in_plane(other, Rake(), from);
#else
const auto line = Line<north::geographic>::in_plane(plane, Rake(), from);
#endif
