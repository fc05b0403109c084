// SPDX-License-Identifier: MIT
// What a group of readings adds up to: its mean, its fabric, its fold axis, and who stands apart.
#pragma once

#include <lodebook/orientation/circular.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/sets.hpp>
#include <lodebook/orientation/tensor.hpp>
#include <lodebook/reduction/attitudes.hpp>

namespace lodebook::reduction {

/// How the axes of a group lie, but for those that are far off: too few of them to say (under five
/// in all); in no way that could not be chance (Bingham's test at 5 %); about one direction
/// (Woodcock's K of 1 or more); along a great circle; or, of what does not fold, in two clear sets.
/// Axes that spread along their circle by less than 5 degrees (one sigma), the limit of repeats,
/// are about one direction whatever K says, or vertical joints of nearly one strike would make a
/// girdle.
enum class Fabric : std::uint8_t { too_few, no_preference, cluster, girdle, two_sets };
/// `too few`, `no preference`, `cluster`, `girdle`, `two sets`.
std::string_view name_of(Fabric fabric);

/// Why a group has no single mean to speak of: none is better than another, or they cancel out; it
/// lies in two clear sets; or it is scattered so widely that the mean is not known to 25 degrees
/// with 95 % confidence.
enum class NoMean : std::uint8_t { none_better, two_sets, scattered };
/// `no direction stands out`, `two clear sets`, `too scattered`.
std::string_view name_of(NoMean why);

/// A surface or line as its readings in a group give it. It counts once, however often it was read.
struct MeasuredSurface {
  /// Their mean, as of an Attitude.
  Vector axis;
  /// Strike or trend as of an Attitude; missing unless all readings have a direction.
  std::optional<double> azimuth;
};

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
/// else from the mean (of its set, where there are two), each as the others give it.
struct FarOff {
  const Attitude* attitude = nullptr;
  double degrees = 0;
};

struct Summary {
  Group group;
  /// In log order; those whose readings have no mean, as two at right angles, are left out. All
  /// below is of these, and N is their number; only what is far off is looked for among readings.
  std::vector<MeasuredSurface> surfaces;
  /// Of poles or lines as axes, or of arrows; nothing without surfaces, or where none is better
  /// than another.
  std::optional<DirectionMean> mean;
  /// Why that is no single mean to speak of, if it is none.
  std::optional<NoMean> no_mean;
  /// Nothing without surfaces.
  std::optional<OrientationTensor> tensor;
  Fabric fabric = Fabric::too_few;
  /// Apart from what is far off.
  std::optional<TwoSets> sets;
  /// The chance that axes lying evenly would give such eigenvalues, all of them counted.
  double chance_of_evenness = 1;
  /// Of a girdle of axes only: arrows have a mean, however they are spread.
  std::optional<Girdle> girdle;
  /// Strikes or trends of surfaces that have a direction, also of those of which no more was read.
  std::vector<double> directions;
  /// Surfaces without one, also those of which only a dip was read.
  std::size_t undirected = 0;
  /// Of the directions: strikes and two-ended lines as axes, other trends as arrows.
  CircularMean azimuths;
  std::optional<NoMean> no_azimuth;
  /// In log order. They are not left out of anything here.
  std::vector<FarOff> far_off;
  /// As many were found as are looked for (20), so that there may be more.
  bool more_far_off = false;

  /// The girdle is one of planes that are commonly folded.
  bool may_have_fold_axis() const { return girdle && group.folds; }
};

Summary summary_of(Group group);

/// Of every group, in their order.
std::vector<Summary> summarise(const Attitudes& attitudes, const Grouping& grouping,
                               const Selection& selection);

}  // namespace lodebook::reduction
