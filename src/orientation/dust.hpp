// SPDX-License-Identifier: MIT
// The size below which a component of a unit vector is rounding and no direction.
#pragma once

namespace lodebook {

/// 6e-11 degrees: far above the rounding of a sum of a few thousand unit vectors, far below any
/// reading.
inline constexpr double dust = 1e-12;

}  // namespace lodebook
