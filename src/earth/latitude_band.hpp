// SPDX-License-Identifier: MIT
// The letters of the latitude bands.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace lodebook::earth {

/// 8 degrees each from 80 S; X has 12.
inline constexpr std::string_view bands = "CDEFGHJKLMNPQRSTUVWX";
inline constexpr std::size_t first_northern_band = 10;  // N

/// The band of a latitude in the hemisphere that the northing was counted in; 0 beyond the bands.
inline char band_at(double latitude, bool north) {
  if (latitude < -80 || latitude > 84) return 0;
  const auto index = static_cast<std::size_t>((latitude + 80) / 8);
  return bands[north ? std::clamp(index, first_northern_band, bands.size() - 1)
                     : std::min(index, first_northern_band - 1)];
}

}  // namespace lodebook::earth
