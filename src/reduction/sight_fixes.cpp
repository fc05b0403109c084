// SPDX-License-Identifier: MIT
#include "sight_fixes.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <numbers>

namespace lodebook::reduction {

namespace {

/// The implied declination differs from the declared one by more than so many sigma of both.
constexpr double differing_sigmas = 2;
/// A declination smaller than that, degrees, makes no slip.
constexpr double least_declination = 1;

SightLine line_of(bool is_landmark, const UsableSight& sight) {
  return {sight.known.position, sight.known.sigma_m, !is_landmark, sight.observed->azimuth,
          sight.observed->sigma};
}

/// The declination is common to all; where it was stated anew between the sights, the worst of
/// them.
double common_sigma_of(std::span<const UsableSight> sights) {
  double sigma = 0;
  for (const UsableSight& sight : sights)
    sigma = std::max(sigma, sight.observed->declination_sigma);
  return sigma;
}

std::vector<CommonSlip> common_slips(std::span<const UsableSight> sights) {
  const double declination = sights.front().observed->declination;
  const bool same = std::ranges::all_of(sights, [declination](const UsableSight& sight) {
    return sight.observed->is_true && sight.observed->declination == declination;
  });
  if (!same || std::abs(declination) < least_declination) return {};
  return {{"the declination applied twice, at all sights", -declination},
          {"the declination on the wrong side, at all sights", -2 * declination}};
}

void find_cuts(SightFix& fix, std::span<const SightLine> lines) {
  const auto direction = [&](const SightLine& line) {
    if (line.from_sought || !fix.position) return line.azimuth;
    return earth::geodesic(line.known, *fix.position).azimuth_at_end;
  };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t j = i + 1; j < lines.size(); ++j)
      fix.cuts.push_back({i, j, cut(direction(lines[i]), direction(lines[j]))});
  }
}

std::optional<ErrorTriangle> triangle_of(std::span<const SightLine> lines) {
  if (lines.size() != 3) return std::nullopt;
  ErrorTriangle triangle;
  for (std::size_t left_out = 0; left_out < 3; ++left_out) {
    const std::array<SightLine, 2> two = {lines[(left_out + 1) % 3], lines[(left_out + 2) % 3]};
    const SightResult met = fit(two, 0);
    const auto* const found = std::get_if<SightFit>(&met);
    if (!found) return std::nullopt;
    triangle.corners[left_out] = found->position;
  }
  const earth::LocalPlane plane(triangle.corners[0]);
  const earth::PlanePoint b = plane.to_plane(triangle.corners[1]);
  const earth::PlanePoint c = plane.to_plane(triangle.corners[2]);
  triangle.area_m2 = std::abs(b.east_m * c.north_m - b.north_m * c.east_m) / 2;
  triangle.longest_side_m =
      std::max({std::hypot(b.east_m, b.north_m), std::hypot(c.east_m, c.north_m),
                std::hypot(b.east_m - c.east_m, b.north_m - c.north_m)});
  return triangle;
}

void find_implied(SightFix& fix, std::span<const SightLine> lines,
                  std::span<const UsableSight> sights) {
  if (fix.is_landmark || lines.size() < 3) return;
  const SightResult result = fit_with_turn(lines);
  if (const auto* const free = std::get_if<SightFit>(&result)) {
    const double sigma = std::hypot(free->turn_sigma, common_sigma_of(sights));
    const double declared = fix.without_declination ? 0 : sights.front().observed->declination;
    const bool fair = chance_of(free->chi_square, free->freedom) >= least_chance;
    const bool one_slip = std::ranges::any_of(
        fix.slips, [](const SightSlip& slip) { return slip.sight.has_value(); });
    fix.implied = {std::remainder(declared + free->turn, 360.0), free->turn_sigma,
                   !fix.without_declination && !one_slip && fair &&
                       std::abs(free->turn) > differing_sigmas * sigma};
  } else {
    fix.danger_circle = fix.position && std::get<SightFault>(result) == SightFault::undetermined;
  }
}

}  // namespace

SightFix fix_by_sights(bool is_landmark, std::span<const UsableSight> sights,
                       const std::function<std::vector<OtherPoint>()>& others) {
  SightFix fix;
  fix.is_landmark = is_landmark;
  std::vector<SightLine> lines;
  std::vector<TypedSight> typed;
  for (const UsableSight& sight : sights) {
    const Observed& observed = *sight.observed;
    lines.push_back(line_of(is_landmark, sight));
    typed.push_back(
        {lines.back(), observed.typed, observed.south_end, observed.correction, sight.known.name});
    FixedSight fixed;
    fixed.line = observed.line;
    fixed.reading = observed.reading;
    fixed.name = sight.known.name;
    fixed.known = sight.known.position;
    fixed.bearing = observed.azimuth;
    fixed.sigma = observed.sigma;
    fix.sights.push_back(std::move(fixed));
    fix.without_declination = fix.without_declination || !observed.is_true;
  }
  if (fix.without_declination) {
    find_implied(fix, lines, sights);
    return fix;
  }
  const double common_sigma = common_sigma_of(sights);
  const SightResult result = fit(lines, common_sigma);
  if (const auto* const found = std::get_if<SightFit>(&result)) {
    fix.position = found->position;
    fix.chi_square = found->chi_square;
    fix.freedom = found->freedom;
    fix.chance = chance_of(found->chi_square, found->freedom);
    fix.agrees = fix.chance >= least_chance;
    fix.covariance =
        fix.agrees
            ? found->covariance
            : found->covariance.scaled(found->chi_square / static_cast<double>(found->freedom));
    fix.ellipse = ellipse95(fix.covariance);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      FixedSight& sight = fix.sights[i];
      sight.residual = found->residuals[i];
      sight.distance_m = found->distances_m[i];
      sight.offset_m = found->residuals[i] * std::numbers::pi / 180 * found->distances_m[i];
    }
    fix.triangle = triangle_of(lines);
  } else {
    fix.fault = std::get<SightFault>(result);
    fix.agrees = *fix.fault != SightFault::behind;
  }
  find_cuts(fix, lines);
  if (!fix.agrees) fix.slips = explain_sights(typed, common_sigma, others(), common_slips(sights));
  find_implied(fix, lines, sights);
  return fix;
}

}  // namespace lodebook::reduction
