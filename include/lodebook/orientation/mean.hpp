// SPDX-License-Identifier: MIT
// The mean of directions in space: of axes, which have no arrow, and of arrows.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// Fisher's statistics. Axes (poles or lines) were turned to one hemisphere by their principal axis
/// first, so that no arrow is assumed; one at right angles to it adds nothing to R.
struct DirectionMean {
  /// Unit vector; of axes pointing down or level.
  Vector axis;
  std::size_t count = 0;
  /// Length of the vector sum R, at most `count`.
  double resultant = 0;
  /// (N - 1) / (N - R) (R. A. Fisher 1953, Proc. R. Soc. A 217, 295). Nothing for N < 3, where it
  /// means nothing, or where all axes coincide.
  std::optional<double> precision;
  /// Half-angle of the cone that holds the mean with 95 % confidence, degrees:
  /// cos a = 1 - (N - R)/R ((1/0.05)^(1/(N - 1)) - 1). Nothing for N < 3 or precision < 4; 0 where
  /// all axes coincide.
  std::optional<double> cone95;
};

/// The mean of one or more axes of unit length. Nothing for an empty span, or where there is no
/// principal axis, as for two axes at right angles. A horizontal mean points to the end that is
/// nearer to the first axis.
std::optional<DirectionMean> mean_of_axes(std::span<const Vector> axes);

/// The mean of directions with an arrow, such as those of a current, each of unit length. Nothing
/// for an empty span, or where they cancel out.
std::optional<DirectionMean> mean_of_arrows(std::span<const Vector> arrows);

/// Of axes, or of arrows.
inline std::optional<DirectionMean> mean_of(std::span<const Vector> directions, Ends ends) {
  return ends == Ends::one ? mean_of_arrows(directions) : mean_of_axes(directions);
}

}  // namespace lodebook
