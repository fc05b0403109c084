// SPDX-License-Identifier: MIT
#include <array>
#include <cmath>
#include <lodebook/reduction/settings.hpp>

namespace lodebook::reduction {

std::string_view name_of(North north) {
  constexpr std::array<std::string_view, 3> names = {"true", "magnetic", "grid"};
  return names[static_cast<std::size_t>(north)];
}

std::optional<double> Settings::grid_magnetic_angle() const {
  if (!site.grid || !has_figure()) return std::nullopt;
  return std::remainder(declination.degrees_east() - site.grid->convergence.degrees_east(), 360.0);
}

Correction correction(const Settings& settings, North wanted) {
  const Correction magnetic{-settings.set.eastward(), North::magnetic, 0};
  Correction result{settings.declination.eastward() - settings.set.eastward(), North::geographic,
                    settings.declination_sigma};
  if (settings.as_set()) {
    // The dial shows true north; magnetic north is known only with what was turned into it.
    if (wanted == North::magnetic && settings.has_figure()) return magnetic;
    result.angle = Angle();
  } else if (wanted == North::magnetic || !settings.declination_known()) {
    return magnetic;
  }
  if (wanted != North::grid || !settings.site.grid) return result;
  return {result.angle - settings.site.grid->convergence.eastward(), North::grid, result.sigma};
}

}  // namespace lodebook::reduction
