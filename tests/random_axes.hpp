// SPDX-License-Identifier: MIT
// Random groups of axes of known shape, the same on every machine.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <vector>

#include <lodebook/orientation/vector.hpp>

namespace lodebook::test {

/// Draws by arithmetic of its own, since distributions differ between standard libraries.
class RandomAxes {
 public:
  explicit RandomAxes(std::uint32_t seed) : random_(seed) {}

  /// In (0, 1).
  double share() { return (static_cast<double>(random_()) + 0.5) / 4294967296.0; }
  std::size_t below(std::size_t count) {
    return static_cast<std::size_t>(share() * static_cast<double>(count));
  }
  /// Of mean 0 and deviation 1 (G. E. P. Box & M. E. Muller 1958, Ann. Math. Statist. 29, 610).
  double normal() {
    return std::sqrt(-2 * std::log(share())) * std::cos(2 * std::numbers::pi * share());
  }
  /// Anywhere on the sphere.
  Vector anywhere() {
    const double down = 2 * share() - 1;
    const double turn = 2 * std::numbers::pi * share();
    const double level = std::sqrt(1 - down * down);
    return {level * std::cos(turn), level * std::sin(turn), down};
  }
  /// About `center` by Fisher's distribution of that precision (N. I. Fisher, T. Lewis & B. J. J.
  /// Embleton 1987, Statistical Analysis of Spherical Data, sect. 3.6.2, from memory).
  Vector about(Vector center, double precision) {
    const double lambda = std::exp(-2 * precision);
    const double cosine = 1 + std::log(share() * (1 - lambda) + lambda) / precision;
    const double sine = std::sqrt(std::max(0.0, 1 - cosine * cosine));
    const double turn = 2 * std::numbers::pi * share();
    const auto [along, across] = beside(center);
    return cosine * center + sine * (std::cos(turn) * along + std::sin(turn) * across);
  }
  /// Evenly over `span` degrees of the great circle of `pole`, off it by `scatter` degrees.
  Vector folded(Vector pole, double span, double scatter) {
    const auto [along, across] = beside(pole);
    const double turn = (share() - 0.5) * span * std::numbers::pi / 180;
    const double off = normal() * scatter * std::numbers::pi / 180;
    return std::cos(off) * (std::cos(turn) * along + std::sin(turn) * across) +
           std::sin(off) * pole;
  }
  std::vector<Vector> cluster(std::size_t count, Vector center, double precision) {
    std::vector<Vector> axes;
    for (std::size_t i = 0; i < count; ++i)
      axes.push_back(about(center, precision));
    return axes;
  }
  std::vector<Vector> girdle(std::size_t count, Vector pole, double span, double scatter) {
    std::vector<Vector> axes;
    for (std::size_t i = 0; i < count; ++i)
      axes.push_back(folded(pole, span, scatter));
    return axes;
  }

 private:
  /// Two directions at right angles to one and to each other.
  static std::pair<Vector, Vector> beside(Vector axis) {
    const Vector other = std::abs(axis.down) < 0.7 ? Vector{0, 0, 1} : Vector{1, 0, 0};
    const Vector along = unit(cross(axis, other)).value_or(other);
    return {along, cross(axis, along)};
  }

  std::mt19937 random_;
};

}  // namespace lodebook::test
