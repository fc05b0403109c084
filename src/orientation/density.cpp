// SPDX-License-Identifier: MIT
#include <lodebook/orientation/density.hpp>

#include <algorithm>
#include <cmath>

namespace lodebook {

KambDensity::KambDensity(std::span<const Vector> axes) : axes_(axes.begin(), axes.end()) {
  const auto count = static_cast<double>(axes_.size());
  fraction_ = 9 / (count + 9);
  sigma_ = 3 * count / (count + 9);
  least_cosine_ = 1 - fraction_;  // a cap of half-angle a has the share 1 - cos a of a hemisphere
}

std::size_t KambDensity::count(Vector direction) const {
  return static_cast<std::size_t>(std::ranges::count_if(
      axes_, [&](const Vector& axis) { return std::abs(dot(axis, direction)) >= least_cosine_; }));
}

}  // namespace lodebook
