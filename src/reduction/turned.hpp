// SPDX-License-Identifier: MIT
// Azimuths in degrees, turned into another frame or to the end that is shown.
#pragma once

#include <lodebook/orientation/angle.hpp>

namespace lodebook::reduction {

/// An azimuth turned by an angle, wrapped into [0, 360).
inline double added(double azimuth, Angle angle) {
  return wrap_degrees(azimuth + angle.degrees());
}

/// Half a turn apart is the same strike.
inline double axis(double azimuth) {
  return azimuth >= 180 ? azimuth - 180 : azimuth;
}

}  // namespace lodebook::reduction
