// SPDX-License-Identifier: MIT
// The mean of axes by their orientation tensor, and Fisher's statistics about it.
#include <lodebook/orientation/mean.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/tensor.hpp>

#include "dust.hpp"

namespace lodebook {
namespace {

// Where two eigenvalues agree, any axis in a plane is as principal as another.
constexpr double equal_share = 1e-9;
// Share of N by which R may miss it through rounding alone; a spread of 1e-4 degrees is above it.
constexpr double coinciding_share = 1e-12;

/// The axis about which the sum of squared cosines is largest.
std::optional<Vector> principal_axis(std::span<const Vector> axes) {
  const std::optional<OrientationTensor> tensor = orientation_tensor(axes);
  if (!tensor) return std::nullopt;
  const auto& values = tensor->eigenvalues;
  if (!(values[0] - values[1] > equal_share * values[0])) return std::nullopt;
  return tensor->axes[0];
}

// 1 - cos a = (N - R)/R (20^(1/(N - 1)) - 1), turned to 2 sin^2(a/2) so that small cones keep
// their digits.
double cone_of_95_percent(double count, double resultant) {
  const double lost = (count - resultant) / resultant * (std::pow(1 / 0.05, 1 / (count - 1)) - 1);
  const double half_sine = std::sqrt(lost / 2);
  const double half_cosine = std::sqrt(std::max(0.0, 1 - lost / 2));
  return 2 * Angle::atan2(half_sine, half_cosine).degrees();
}

/// Fisher's statistics of a vector sum.
void describe(DirectionMean& mean, Vector sum) {
  const auto count = static_cast<double>(mean.count);
  mean.resultant = std::min(norm(sum), count);
  if (mean.count < 3) return;
  const double lost = count - mean.resultant;
  if (lost <= coinciding_share * count) {
    mean.cone95 = 0;
    return;
  }
  mean.precision = (count - 1) / lost;
  if (*mean.precision >= 4) mean.cone95 = cone_of_95_percent(count, mean.resultant);
}

}  // namespace

std::optional<DirectionMean> mean_of_axes(std::span<const Vector> axes) {
  const std::optional<Vector> principal = principal_axis(axes);
  if (!principal) return std::nullopt;
  Vector sum;
  for (const Vector& axis : axes) {
    const double along = dot(axis, *principal);
    if (std::abs(along) < dust) continue;  // at right angles its two ends are alike, and cancel out
    sum = sum + (along < 0 ? -axis : axis);
  }
  const std::optional<Vector> direction = unit(sum);
  if (!direction) return std::nullopt;

  DirectionMean mean;
  mean.count = axes.size();
  const bool level = std::abs(direction->down) < dust;
  const bool backwards = level ? dot(*direction, axes.front()) < 0 : direction->down < 0;
  mean.axis = backwards ? -*direction : *direction;
  describe(mean, sum);
  return mean;
}

std::optional<DirectionMean> mean_of_arrows(std::span<const Vector> arrows) {
  if (arrows.empty()) return std::nullopt;
  Vector sum;
  for (const Vector& arrow : arrows)
    sum = sum + arrow;
  // Their average, since the dust of a sum grows with their number.
  const std::optional<Vector> direction = unit(1 / static_cast<double>(arrows.size()) * sum);
  if (!direction) return std::nullopt;
  DirectionMean mean;
  mean.count = arrows.size();
  mean.axis = *direction;
  describe(mean, sum);
  return mean;
}

}  // namespace lodebook
