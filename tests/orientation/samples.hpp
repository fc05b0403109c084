// SPDX-License-Identifier: MIT
// Random samples of known distributions, and how often something holds of them.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "directions.hpp"

namespace lodebook::test {

/// Evenly over the sphere.
inline Vector any_direction(Seeded& random) {
  const double down = random.between(-1, 1);
  const double level = std::sqrt(1 - down * down);
  const double trend = random.between(0, 2 * std::numbers::pi);
  return {level * std::cos(trend), level * std::sin(trend), down};
}

inline std::vector<Vector> any_directions(Seeded& random, int count) {
  std::vector<Vector> all;
  for (int i = 0; i < count; ++i)
    all.push_back(any_direction(random));
  return all;
}

/// A unit vector at right angles to `v`.
inline Vector beside(Vector v) {
  return unit(cross(v, std::abs(v.down) < 0.9 ? Vector{0, 0, 1} : Vector{1, 0, 0})).value();
}

/// Of Fisher's distribution about a mean: of the cosines c the density goes by exp(k c), whose
/// integral is inverted.
inline Vector fisher_direction(Seeded& random, Vector mean, double k) {
  const double share = random.between(0, 1);
  const double cosine = 1 + std::log(share + (1 - share) * std::exp(-2 * k)) / k;
  const double sine = std::sqrt(std::max(0.0, 1 - cosine * cosine));
  return cosine * mean + sine * turned(beside(mean), mean, random.between(0, 360));
}

/// Degrees either side of 0 of von Mises' distribution: tried evenly over the circle, and kept
/// with the chance exp(kappa (cos a - 1)).
inline double von_mises_degrees(Seeded& random, double kappa) {
  for (;;) {
    const double degrees = random.between(-180, 180);
    const double cosine = std::cos(degrees * std::numbers::pi / 180);
    if (random.between(0, 1) < std::exp(kappa * (cosine - 1))) return degrees;
  }
}

/// Of the normal distribution (G. E. P. Box & M. E. Muller 1958, Ann. Math. Statistics 29, 610).
inline double normal(Seeded& random, double sigma) {
  return sigma * std::sqrt(-2 * std::log(1 - random.between(0, 1))) *
         std::cos(random.between(0, 2 * std::numbers::pi));
}

/// A pole of bedding folded about `axis`: evenly over 120 degrees of the girdle, and off it by a
/// normal error.
inline Vector fold_pole(Seeded& random, Vector axis, double sigma) {
  const Vector on_girdle = turned(beside(axis), axis, random.between(-60, 60));
  return turned(on_girdle, cross(axis, on_girdle), normal(random, sigma));
}

inline std::vector<Vector> fold_poles(Seeded& random, Vector axis, double sigma, int count) {
  std::vector<Vector> poles;
  for (int i = 0; i < count; ++i)
    poles.push_back(fold_pole(random, axis, sigma));
  return poles;
}

/// Some of the axes turned end for end.
inline std::vector<Vector> with_ends_turned(Seeded& random, std::vector<Vector> axes) {
  for (Vector& axis : axes) {
    if (random.between(0, 1) < 0.5) axis = -axis;
  }
  return axes;
}

inline std::vector<Vector> all_turned(std::vector<Vector> axes, Vector about, double degrees) {
  for (Vector& axis : axes)
    axis = turned(axis, about, degrees);
  return axes;
}

/// How often something held: the percentage of trials that had an answer, and of those, in which it
/// was yes.
struct Percentages {
  double answered;
  double held;
};

/// `trial` gives a bool, or an optional one.
template <class Trial>
Percentages percentages(int trials, Trial trial) {
  int answered = 0;
  int held = 0;
  for (int i = 0; i < trials; ++i) {
    const std::optional<bool> answer = trial();
    answered += answer ? 1 : 0;
    held += answer && *answer ? 1 : 0;
  }
  return {100.0 * answered / trials, 100.0 * held / answered};
}

/// What chance alone may take a percentage of that many trials away from the true one, in 997
/// cases of 1000: three standard errors.
inline double chance_of(double percent, double trials) {
  return 3 * std::sqrt(percent * (100 - percent) / trials);
}

}  // namespace lodebook::test
