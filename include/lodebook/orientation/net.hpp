// SPDX-License-Identifier: MIT
// The equal-area net: directions of the lower hemisphere on a disc.
#pragma once

#include <vector>

#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// A place on the net, whose rim has radius 1.
struct NetPoint {
  double east = 0;
  double north = 0;
};

/// Lambert's azimuthal equal-area projection, which the trade calls Schmidt's net: a line that
/// plunges by p lies sqrt(2) sin(45 - p/2) from the centre, towards its trend. Level lines lie on
/// the rim, rising ones beyond it, within sqrt(2); only straight up has no place, and is put at the
/// centre. Unit vectors in.
NetPoint equal_area(Vector direction);
/// The direction at a place within sqrt(2) of the centre.
Vector direction_at(NetPoint point);

/// Directions around a pole at `half_angle` degrees from it, in even steps of at most `step`
/// degrees (over 0), the first again at the end: a cone; at 90 degrees the great circle of a plane,
/// of which half lies above the horizon.
std::vector<Vector> small_circle(Vector pole, double half_angle, double step);

/// The lower half of a great circle, from one end of its strike to the other, in steps of at most
/// `step` degrees. A level plane's is the whole rim.
std::vector<Vector> great_circle(Vector pole, double step);

}  // namespace lodebook
