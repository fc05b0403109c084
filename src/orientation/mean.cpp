// SPDX-License-Identifier: MIT
// The mean of axes by their orientation tensor, and Fisher's statistics about it.
#include <lodebook/orientation/mean.hpp>

#include <algorithm>
#include <cmath>

#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include "dust.hpp"

namespace lodebook {
namespace {

// Where two eigenvalues agree, any axis in a plane is as principal as another.
constexpr double equal_share = 1e-9;
// Share of N by which R may miss it through rounding alone; a spread of 1e-4 degrees is above it.
constexpr double coinciding_share = 1e-12;

// The axis about which the sum of squared cosines is largest (A. E. Scheidegger 1965, USGS Prof.
// Paper 525-C, 164), as the eigenvector of the largest eigenvalue.
std::optional<Vector> principal_axis(std::span<const Vector> axes) {
  Eigen::Matrix3d tensor = Eigen::Matrix3d::Zero();
  for (const Vector& axis : axes) {
    const Eigen::Vector3d v(axis.north, axis.east, axis.down);
    tensor += v * v.transpose();
  }
  if (!tensor.allFinite()) return std::nullopt;
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(tensor);
  const Eigen::Vector3d& values = solver.eigenvalues();  // increasing
  if (!(values[2] - values[1] > equal_share * values[2])) return std::nullopt;
  const Eigen::Vector3d v = solver.eigenvectors().col(2);
  return Vector{v[0], v[1], v[2]};
}

// 1 - cos a = (N - R)/R (20^(1/(N - 1)) - 1), turned to 2 sin^2(a/2) so that small cones keep
// their digits.
double cone_of_95_percent(double count, double resultant) {
  const double lost = (count - resultant) / resultant * (std::pow(1 / 0.05, 1 / (count - 1)) - 1);
  const double half_sine = std::sqrt(lost / 2);
  const double half_cosine = std::sqrt(std::max(0.0, 1 - lost / 2));
  return 2 * Angle::atan2(half_sine, half_cosine).degrees();
}

}  // namespace

std::optional<AxisMean> mean_of_axes(std::span<const Vector> axes) {
  if (axes.empty()) return std::nullopt;
  const std::optional<Vector> principal = principal_axis(axes);
  if (!principal) return std::nullopt;
  Vector sum;
  for (const Vector& axis : axes)
    sum = sum + (dot(axis, *principal) < 0 ? -axis : axis);
  const std::optional<Vector> direction = unit(sum);
  if (!direction) return std::nullopt;

  AxisMean mean;
  mean.count = axes.size();
  const bool level = std::abs(direction->down) < dust;
  const bool backwards = level ? dot(*direction, axes.front()) < 0 : direction->down < 0;
  mean.axis = backwards ? -*direction : *direction;
  const auto count = static_cast<double>(mean.count);
  mean.resultant = std::min(norm(sum), count);
  if (mean.count < 3) return mean;
  const double lost = count - mean.resultant;
  if (lost <= coinciding_share * count) {
    mean.cone95 = 0;
    return mean;
  }
  mean.precision = (count - 1) / lost;
  if (*mean.precision >= 4) mean.cone95 = cone_of_95_percent(count, mean.resultant);
  return mean;
}

}  // namespace lodebook
