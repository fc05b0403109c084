// SPDX-License-Identifier: MIT
// How densely axes lie about a direction, by Kamb's method.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <lodebook/orientation/vector.hpp>

namespace lodebook {

/// Counts the axes in a cap about a direction, both ends of each, in multiples of the standard
/// deviation of what chance alone would put there. The cap takes the fraction A = 9 / (N + 9) of
/// the hemisphere, so that N axes spread evenly stand at E = 3 sigma, sigma being sqrt(N A (1 - A))
/// = 3N / (N + 9) (W. B. Kamb 1959, J. Geophysical Research 64, 1891).
class KambDensity {
 public:
  /// Axes of unit length, at least one.
  explicit KambDensity(std::span<const Vector> axes);

  /// The cap's share of the hemisphere, in (0, 0.9].
  double fraction() const { return fraction_; }
  double sigma() const { return sigma_; }
  /// Axes in the cap about a direction.
  std::size_t count(Vector direction) const;
  /// The same in multiples of sigma.
  double at(Vector direction) const { return static_cast<double>(count(direction)) / sigma_; }

 private:
  std::vector<Vector> axes_;
  double fraction_;
  double sigma_;
  double least_cosine_;
};

}  // namespace lodebook
