// SPDX-License-Identifier: MIT
// Azimuths in degrees, turned into another frame or to the end that is shown.
#pragma once

#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::reduction {

/// An azimuth turned by an angle, wrapped into [0, 360).
inline double added(double azimuth, Angle angle) {
  return wrap_degrees(azimuth + angle.degrees());
}

/// The decimals of a degree to which rows are shown; what shows as level or upright counts as such.
inline constexpr int shown_decimals = 1;

/// A dip or plunge shows as so many whole degrees.
inline bool shows_as(double slope, int degrees) {
  return rounded(slope, shown_decimals) == 10 * degrees;
}

/// Half a turn apart is the same strike: the end that shows below 180.
inline double axis(double azimuth) {
  const bool below = rounded_azimuth(azimuth, shown_decimals) < 10 * 180;
  return below ? azimuth : wrap_degrees(azimuth + 180);
}

}  // namespace lodebook::reduction
