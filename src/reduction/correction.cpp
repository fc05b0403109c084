// SPDX-License-Identifier: MIT
#include <lodebook/reduction/settings.hpp>

namespace lodebook::reduction {

std::string_view name_of(North north) {
  return north == North::geographic ? "true" : "magnetic";
}

Correction correction(const Settings& settings, North wanted) {
  const Correction magnetic{-settings.set.eastward(), North::magnetic, 0};
  if (settings.as_set) {
    // The dial shows true north; magnetic north is known only with what was turned into it.
    if (wanted == North::magnetic && settings.set_from != From::nowhere) return magnetic;
    return {Angle(), North::geographic, settings.declination_sigma};
  }
  if (wanted == North::magnetic || settings.declination_from == From::nowhere) return magnetic;
  return {settings.declination.eastward() - settings.set.eastward(), North::geographic,
          settings.declination_sigma};
}

}  // namespace lodebook::reduction
