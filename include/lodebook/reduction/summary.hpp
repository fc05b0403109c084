// SPDX-License-Identifier: MIT
// What a group of readings adds up to: its mean, its fabric, its fold axis, and who stands apart.
#pragma once

#include <lodebook/orientation/circular.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/tensor.hpp>
#include <lodebook/reduction/attitudes.hpp>

namespace lodebook::reduction {

/// How the axes of a group lie, but for those that are far off: too few of them to say (under five
/// in all); in no way that could not be chance (Bingham's test at 5 %); about one direction
/// (Woodcock's K of 1 or more); or along a great circle. Axes that spread along their circle by
/// less than 5 degrees (one sigma), the limit of repeats, are about one direction whatever K says,
/// or vertical joints of nearly one strike would make a girdle.
enum class Fabric : std::uint8_t { too_few, no_preference, cluster, girdle };
/// `too few`, `no preference`, `cluster`, `girdle`.
std::string_view name_of(Fabric fabric);

/// The best great circle of axes and its pole, which for poles of folded planes is the fold axis.
struct Girdle {
  Vector pole;
  /// Half-angle in degrees of the cone that holds it with 95 % confidence, by bootstrap.
  std::optional<double> cone95;

  /// Its cone is no wider than 45 degrees. Beyond that the pole may lie nearly anywhere, and so may
  /// the great circle.
  bool is_known() const { return cone95 && *cone95 <= 45; }
};

/// A reading far outside its group: by its angle in degrees from the great circle of a girdle, or
/// else from the mean, each as the others give it.
struct FarOff {
  const Attitude* attitude = nullptr;
  double degrees = 0;
};

struct Summary {
  Group group;
  /// Of poles or lines as axes, or of arrows; nothing without members, or where none is better than
  /// another.
  std::optional<DirectionMean> mean;
  /// Nothing without members.
  std::optional<OrientationTensor> tensor;
  Fabric fabric = Fabric::too_few;
  /// The chance that axes lying evenly would give such eigenvalues, all of them counted.
  double chance_of_evenness = 1;
  /// Of a girdle of axes only: arrows have a mean, however they are spread.
  std::optional<Girdle> girdle;
  /// Of strikes as axes, or of trends as arrows; of those members that have a direction.
  CircularMean azimuths;
  /// In log order. They are not left out of anything here.
  std::vector<FarOff> far_off;
  /// As many were found as are looked for (20), so that there may be more.
  bool more_far_off = false;
};

Summary summary_of(Group group);

/// Of every group, in their order.
std::vector<Summary> summarise(const Attitudes& attitudes, const Grouping& grouping,
                               const Selection& selection);

}  // namespace lodebook::reduction
