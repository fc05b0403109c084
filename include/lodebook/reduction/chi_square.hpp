// SPDX-License-Identifier: MIT
// Whether observations agree within their errors, by the chi-square test.
#pragma once

#include <cstddef>

namespace lodebook::reduction {

/// They disagree where a chi-square as large has less chance than this: one good fix or traverse in
/// a hundred is suspected for nothing.
inline constexpr double least_chance = 0.01;

/// How probable a chi-square of at least that is where nothing is wrong; 1 without freedom.
double chance_of(double chi_square, std::size_t freedom);

}  // namespace lodebook::reduction
