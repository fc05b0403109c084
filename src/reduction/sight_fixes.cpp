// SPDX-License-Identifier: MIT
#include "sight_fixes.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <map>
#include <numbers>

namespace lodebook::reduction {

namespace {

/// The implied declination differs from the declared one by more than so many sigma of both.
constexpr double differing_sigmas = 2;
/// A best cut below this, degrees, is cautioned of (navigation textbooks; error grows as 1 / sine).
constexpr double good_cut = 30;
/// With more sights not every cut is kept.
constexpr std::size_t most_cuts = 12;
/// So near to the danger circle, as a share of its radius, the orientation is not told.
constexpr double near_circle = 0.1;
/// A declination smaller than that, degrees, makes no slip.
constexpr double least_declination = 1;

SightLine line_of(bool is_landmark, const UsableSight& sight) {
  return {sight.known.position,    sight.known.sigma_m,   !is_landmark,
          sight.observed->azimuth, sight.observed->sigma, sight.observed->by_needle};
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
  std::vector<CommonSlip> slips = {{"the other end of the needle at all sights", 180}};
  const std::optional<double> declination = sights.front().observed->declination;
  const bool same = std::ranges::all_of(sights, [&declination](const UsableSight& sight) {
    return sight.observed->is_true() && sight.observed->declination == declination;
  });
  if (!same || std::abs(declination.value_or(0)) < least_declination) return slips;
  slips.push_back({"the declination applied twice at all sights", -*declination});
  slips.push_back({"the declination on the wrong side at all sights", -2 * *declination});
  return slips;
}

/// The sight that is to blame where no slip explains why they disagree.
std::optional<std::size_t> disagreeing_most(std::span<const SightLine> lines, double common_sigma,
                                            const SightFix& fix) {
  std::optional<std::size_t> blamed;
  double best = std::numeric_limits<double>::infinity();
  // Without one of three the others always agree.
  for (std::size_t i = 0; lines.size() > 3 && lines.size() <= most_cuts && i < lines.size(); ++i) {
    std::vector<SightLine> rest(lines.begin(), lines.end());
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
    const SightResult result = fit(rest, common_sigma);
    const auto* const found = std::get_if<SightFit>(&result);
    if (!found || found->chi_square >= best ||
        chance_of(found->chi_square, found->freedom) < least_chance)
      continue;
    best = found->chi_square;
    blamed = i;
  }
  if (blamed || !fix.position) return blamed;
  double worst = 0;
  for (std::size_t i = 0; i < fix.sights.size(); ++i) {
    const double off = std::abs(*fix.sights[i].residual) / fix.sights[i].sigma;
    if (off <= worst) continue;
    worst = off;
    blamed = i;
  }
  return blamed;
}

void find_cuts(SightFix& fix, std::span<const SightLine> lines) {
  std::vector<double> directions;
  for (const SightLine& line : lines) {
    const bool at_end = !line.from_sought && fix.position;
    directions.push_back(at_end ? earth::geodesic(line.known, *fix.position).azimuth_at_end
                                : line.azimuth);
  }
  fix.best_cut = best_cut(directions);
  fix.weak_cut = fix.position && fix.best_cut < good_cut;
  if (lines.size() > most_cuts) return;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t j = i + 1; j < lines.size(); ++j)
      fix.cuts.push_back({i, j, cut(directions[i], directions[j])});
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

/// Points nearer than this are one.
constexpr double same_point_m = 1;
/// Points further apart than this in latitude, degrees, are not: it is over 10 m.
constexpr double surely_apart = 1e-4;

/// The known points, each once, however often it is sighted.
std::vector<earth::Position> known_points(std::span<const SightLine> lines) {
  std::vector<earth::Position> points;
  std::multimap<double, earth::Position> by_latitude;
  for (const SightLine& line : lines) {
    const double latitude = line.known.latitude;
    const bool is_new =
        std::none_of(by_latitude.lower_bound(latitude - surely_apart),
                     by_latitude.upper_bound(latitude + surely_apart), [&line](const auto& point) {
                       return earth::distance_m(point.second, line.known) < same_point_m;
                     });
    if (!is_new) continue;
    points.push_back(line.known);
    by_latitude.emplace(latitude, line.known);
  }
  return points;
}

/// Whether the point lies near the circle through the first three of the others.
bool is_near_circle(const earth::Position& point, std::span<const earth::Position> others) {
  if (others.size() < 3) return false;
  const earth::LocalPlane plane(others[0]);
  const earth::PlanePoint b = plane.to_plane(others[1]);
  const earth::PlanePoint c = plane.to_plane(others[2]);
  const double twice = 2 * (b.east_m * c.north_m - b.north_m * c.east_m);
  const double b_squared = b.east_m * b.east_m + b.north_m * b.north_m;
  const double c_squared = c.east_m * c.east_m + c.north_m * c.north_m;
  const double east = (c.north_m * b_squared - b.north_m * c_squared) / twice;
  const double north = (b.east_m * c_squared - c.east_m * b_squared) / twice;
  const double radius = std::hypot(east, north);
  if (!std::isfinite(radius)) return false;
  const earth::PlanePoint p = plane.to_plane(point);
  return std::abs(std::hypot(p.east_m - east, p.north_m - north) - radius) < near_circle * radius;
}

/// All were read by the needle from one zero, so that they may tell where it lies.
bool turn_alike(std::span<const UsableSight> sights) {
  const notebook::OwnNorth first = sights.front().observed->typed.north;
  return std::ranges::all_of(sights, [first](const UsableSight& sight) {
    return sight.observed->by_needle && sight.observed->typed.north == first;
  });
}

void find_implied(SightFix& fix, std::span<const SightLine> lines,
                  std::span<const UsableSight> sights) {
  if (fix.is_landmark || lines.size() < 3 || !turn_alike(sights)) return;
  const SightResult result = fit_with_turn(lines);
  const auto* const free = std::get_if<SightFit>(&result);
  if (!free) {
    fix.danger_circle = fix.position && !fix.weak_cut &&
                        std::get<SightFault>(result) == SightFault::undetermined &&
                        is_near_circle(*fix.position, known_points(lines));
    return;
  }
  using Verdict = ImpliedDeclination::Verdict;
  if (fix.without_declination) {
    fix.implied = {std::remainder(free->turn, 360.0), free->turn_sigma, Verdict::none_in_force};
    return;
  }
  const bool fair = chance_of(free->chi_square, free->freedom) >= least_chance;
  const bool one_slip =
      std::ranges::any_of(fix.slips, [](const SightSlip& slip) { return slip.sight.has_value(); });
  const std::optional<double> in_force = sights.front().observed->declination;
  if (one_slip || !fair || !in_force) return;
  const double sigma = std::hypot(free->turn_sigma, common_sigma_of(sights));
  fix.implied = {
      std::remainder(*in_force + free->turn, 360.0), free->turn_sigma,
      std::abs(free->turn) > differing_sigmas * sigma ? Verdict::differs : Verdict::fits};
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
    fix.without_declination = fix.without_declination || !observed.is_true();
  }
  fix.points = known_points(lines).size();
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
    // Two sights that meet behind the observer tell no more; of three, one points the wrong way.
    fix.agrees = *fix.fault != SightFault::behind || lines.size() < 3;
  }
  find_cuts(fix, lines);
  if (!fix.agrees) fix.slips = explain_sights(typed, common_sigma, others(), common_slips(sights));
  for (const SightSlip& slip : fix.slips) {
    if (!slip.sight) continue;
    std::string& suspicion = fix.sights[*slip.sight].suspicion;
    suspicion += (suspicion.empty() ? "" : "; or ") + slip.words;
  }
  if (!fix.agrees && fix.slips.empty())
    fix.disagrees_most = disagreeing_most(lines, common_sigma, fix);
  find_implied(fix, lines, sights);
  return fix;
}

}  // namespace lodebook::reduction
