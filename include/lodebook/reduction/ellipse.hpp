// SPDX-License-Identifier: MIT
// How well a point is known: its covariance in the horizontal, and the ellipse that shows it.
#pragma once

namespace lodebook::reduction {

/// Of a position's error in metres east and north: variances and covariance, square metres.
struct Covariance {
  double east = 0;
  double both = 0;
  double north = 0;

  /// The same in all directions: `sigma_m` is one sigma along any axis.
  static Covariance round(double sigma_m) { return {sigma_m * sigma_m, 0, sigma_m * sigma_m}; }

  Covariance& operator+=(const Covariance& other) {
    east += other.east;
    both += other.both;
    north += other.north;
    return *this;
  }
  Covariance scaled(double factor) const { return {east * factor, both * factor, north * factor}; }
};

/// Its variances along its own axes, square metres, and the azimuth of the longer one, degrees in
/// [0, 180).
struct Axes {
  double major = 0;
  double minor = 0;
  double major_azimuth = 0;
};
Axes axes_of(const Covariance& covariance);

/// The ellipse that holds the true point with 95 % confidence: semi-axes in metres, and the azimuth
/// of the longer one, degrees in [0, 180).
struct ErrorEllipse {
  double semi_major_m = 0;
  double semi_minor_m = 0;
  double major_azimuth = 0;
};

/// One sigma along the covariance's axes, stretched to 95 % of two dimensions: by
/// sqrt(-2 ln 0.05) = 2.448.
ErrorEllipse ellipse95(const Covariance& covariance);

/// One sigma of the position in metres as a single figure: sqrt((east + north) / 2).
double circular_sigma(const Covariance& covariance);

}  // namespace lodebook::reduction
