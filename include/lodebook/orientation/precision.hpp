// SPDX-License-Identifier: MIT
// How well a strike or trend is known, one sigma, in degrees.
#pragma once

#include <cmath>

#include <lodebook/orientation/dip.hpp>

namespace lodebook {

/// Two independent errors together: the root of the sum of their squares. Degrees are never so
/// large or small that their squares are out of range, so that std::hypot, which is several times
/// slower, is not needed.
inline double combined_sigma(double one, double other) {
  return std::sqrt(one * one + other * other);
}

/// strike^2 = bearing^2 + (dip_sigma / sin dip)^2, degrees: the shallower the plane, the more a
/// levelling error turns its strike (Cruden & Charlesworth 1976, GSA Bulletin 87(7), 977). Infinite
/// for a horizontal plane, which has no strike.
double strike_sigma(double bearing_sigma, double dip_sigma, Dip dip);

/// The largest strike error that a levelling error can cause: asin(tan error / tan dip), degrees
/// (Woodcock 1976, J. Geology 84, 350). 90 where the error is not smaller than the dip.
double worst_strike_error(Angle levelling_error, Dip dip);

/// trend = bearing_sigma / cos plunge, degrees. Infinite for a vertical line.
double trend_sigma(double bearing_sigma, Plunge plunge);

/// What the trend of a line known by its rake owes to the rake and to the dip of its plane, one
/// sigma each, degrees; its plane's strike turns it by as much as it is wrong itself. By simple
/// propagation of tan(turn) = cos dip tan rake; infinite for a vertical line.
struct RakeTurnSigma {
  double by_rake;
  double by_dip;
};
RakeTurnSigma rake_turn_sigma(double rake_sigma, double dip_sigma, Dip dip, Rake rake);

/// One sigma of a direction that was only told to a step of so many degrees, such as a point of the
/// rose: step / sqrt(12), that of a uniform distribution.
double step_sigma(double step);

/// One sigma of the direction of a pole, degrees: the dip's error across the strike, the bearing's
/// along it, sqrt(dip_sigma^2 + (bearing_sigma sin dip)^2).
double pole_sigma(double bearing_sigma, double dip_sigma, Dip dip);

/// One sigma of the direction of a line, degrees: sqrt(dip_sigma^2 + bearing_sigma^2), the plunge
/// being read with the clinometer like a dip.
double line_sigma(double bearing_sigma, double dip_sigma);

}  // namespace lodebook
