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

namespace {

using notebook::OwnNorth;

North named(OwnNorth read) {
  return read == OwnNorth::grid       ? North::grid
         : read == OwnNorth::magnetic ? North::magnetic
                                      : North::geographic;
}

/// Where the map's north lies at the station, also where no output asks for it.
std::optional<Convergence> convergence_at(const Site& site) {
  if (site.grid) return site.grid->convergence;
  if (site.position) return earth::grid_position(*site.position).convergence;
  return std::nullopt;
}

Correction from_own_north(const Settings& settings, North wanted, North read) {
  if (read == wanted) return {Angle(), read};
  const auto convergence = convergence_at(settings.site);
  if (wanted == North::grid && !convergence) {
    Correction nearest = from_own_north(settings, North::geographic, read);
    if (nearest.north == read && nearest.lack == Lack::nothing) nearest.lack = Lack::position;
    return nearest;
  }
  const bool by_declination = read == North::magnetic || wanted == North::magnetic;
  if (by_declination && !settings.has_figure()) {
    const bool is_void = settings.lacks_declination_by_fault();
    return {Angle(), read, 0, is_void ? Lack::void_declination : Lack::declination};
  }
  if (read == North::grid && !convergence) return {Angle(), read, 0, Lack::position};
  const auto to_true = [&](North north) {
    if (north == North::magnetic) return settings.declination.eastward();
    return north == North::grid ? convergence->eastward() : Angle();
  };
  return {to_true(read) - to_true(wanted), wanted, by_declination ? settings.declination_sigma : 0};
}

}  // namespace

std::optional<Angle> turn_between(const Settings& settings, OwnNorth from, OwnNorth to) {
  if (from == to) return Angle();
  for (const North common : {North::geographic, North::magnetic, North::grid}) {
    const Correction of_one = correction(settings, common, from);
    const Correction of_other = correction(settings, common, to);
    if (of_one.north == of_other.north) return of_one.angle - of_other.angle;
  }
  return std::nullopt;
}

Correction correction(const Settings& settings, North wanted, OwnNorth read) {
  if (read != OwnNorth::none) return from_own_north(settings, wanted, named(read));
  const Correction magnetic{-settings.set.eastward(), North::magnetic};
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
