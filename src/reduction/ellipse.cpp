// SPDX-License-Identifier: MIT
#include <lodebook/reduction/ellipse.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>

namespace lodebook::reduction {

Axes axes_of(const Covariance& covariance) {
  const double middle = (covariance.east + covariance.north) / 2;
  const double half_difference = (covariance.north - covariance.east) / 2;
  const double spread = std::hypot(half_difference, covariance.both);
  // The angle of the longer axis from north, towards east: half that of the doubled angle.
  return {middle + spread, std::max(middle - spread, 0.0),
          wrap_degrees(Angle::atan2(covariance.both, half_difference).degrees()) / 2};
}

ErrorEllipse ellipse95(const Covariance& covariance) {
  const double stretch = std::sqrt(-2 * std::log(0.05));
  const Axes axes = axes_of(covariance);
  return {stretch * std::sqrt(axes.major), stretch * std::sqrt(axes.minor), axes.major_azimuth};
}

double circular_sigma(const Covariance& covariance) {
  return std::sqrt((covariance.east + covariance.north) / 2);
}

}  // namespace lodebook::reduction
