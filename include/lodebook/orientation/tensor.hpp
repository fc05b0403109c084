// SPDX-License-Identifier: MIT
// The orientation tensor of axes: how they gather about a direction or along a great circle.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// The mean of v v^T over axes v (A. E. Scheidegger 1965, USGS Prof. Paper 525-C, 164), by its
/// eigenvalues S1 >= S2 >= S3 >= 0, whose sum is 1, and their eigenvectors: unit vectors at right
/// angles, each pointing down or level. The third is the pole of the best great circle. Eigenvalues
/// below 1e-12 are dust of the arithmetic and become 0.
struct OrientationTensor {
  std::array<double, 3> eigenvalues;
  std::array<Vector, 3> axes;

  /// Whether one great circle is best: S2 is above S3. Where axes coincide, or lie evenly about
  /// one, any circle through it is as good, and the second and third axis mean nothing.
  bool has_best_circle() const;

  /// Woodcock's K = ln(S1/S2) / ln(S2/S3): over 1 the axes gather in a cluster, under 1 along a
  /// girdle; C = ln(S1/S3) says how strongly (N. H. Woodcock 1977, GSA Bulletin 88, 1231). Nothing
  /// where an eigenvalue vanishes; K neither without a best circle.
  std::optional<double> shape() const;
  std::optional<double> strength() const;
};

/// Nothing for an empty span or a vector without direction. Axes have unit length, either end.
std::optional<OrientationTensor> orientation_tensor(std::span<const Vector> axes);

/// How well the pole of the best great circle is known: the half-angle in degrees, at most 90, of
/// the cone about it that holds 95 % of the poles of bootstrap samples, as many axes drawn with
/// replacement from them (B. Efron 1979, Annals of Statistics 7, 1). 1000 samples; of more than
/// 10,000 axes fewer, down to 200. Few axes mostly show less than their true scatter: of simulated
/// folds it held the axis in 92 % for 20 poles and in 94 % for 60, be they 3 or 8 degrees off the
/// girdle. The draws are those of one fixed seed. Nothing for fewer than five axes, whose samples
/// repeat themselves, nor without a best circle.
std::optional<double> girdle_pole_cone95(std::span<const Vector> axes);

}  // namespace lodebook
