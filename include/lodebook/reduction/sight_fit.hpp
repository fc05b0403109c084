// SPDX-License-Identifier: MIT
// The point from which, or at which, sights on known points meet: weighted least squares on the
// ellipsoid, with honest errors.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>
#include <variant>
#include <vector>

#include <lodebook/earth/position.hpp>
#include <lodebook/reduction/ellipse.hpp>

namespace lodebook::reduction {

/// A sight between a known point and the one that is sought.
struct SightLine {
  earth::Position known;
  /// One sigma of the known point along any axis, metres.
  double known_sigma_m = 0;
  /// The observer is sought (resection); otherwise the target is, and the observer known.
  bool from_sought = true;
  /// True azimuth from the observer to the target, degrees, and one sigma of its reading.
  double azimuth = 0;
  double sigma = 0;
  /// Read by the needle, and so turned by an error of the declination.
  bool by_needle = true;
};

/// The point that fits best.
struct SightFit {
  earth::Position position;
  Covariance covariance;
  /// By sight: observed less computed azimuth, degrees in [-180, 180], and the distance.
  std::vector<double> residuals;
  std::vector<double> distances_m;
  /// The weighted sum of squared residuals, and the number of redundant sights.
  double chi_square = 0;
  std::size_t freedom = 0;
  /// With the orientation free: what would have to be added to every azimuth, degrees, and one
  /// sigma of it.
  double turn = 0;
  double turn_sigma = 0;
};

enum class SightFault {
  too_few,         ///< under two sights, or three with the orientation free
  parallel,        ///< no two sight lines cross at more than 3 degrees
  behind,          ///< the lines meet behind an observer
  at_known_point,  ///< the point falls on a known one, where a sight has no direction
  too_far,         ///< it lies over 200 km from one of the points sighted
  undetermined,    ///< no such point, or with the orientation free one near the danger circle
};

/// In words, such as `the sight lines meet behind an observer`.
std::string_view words_for(SightFault fault);

using SightResult = std::variant<SightFit, SightFault>;

/// With the orientation as declared. `common_sigma` (degrees) is that of the declination, which
/// turns all sights by the needle alike: the residuals' covariance is diag(sigma^2) +
/// common_sigma^2 nn', where n is 1 for each of them and 0 for the others. Needs two sights.
SightResult fit(std::span<const SightLine> sights, double common_sigma);

/// With the orientation free, for what the sights themselves say of it; needs three sights, all
/// from the point that is sought.
SightResult fit_with_turn(std::span<const SightLine> sights);

/// The angle at which two sight lines cross, degrees in [0, 90]; and the best of many.
double cut(double azimuth, double other);
double best_cut(std::span<const double> azimuths);

/// For each sight, its residual in sigmas where the lines meet on a plane, whichever way they
/// point: a hint which to suspect, even without a fit.
std::vector<double> rough_misfits(std::span<const SightLine> sights);

}  // namespace lodebook::reduction
