// SPDX-License-Identifier: MIT
// Gauss and Newton on the ellipsoid, from where the lines meet on a plane.
#include <lodebook/reduction/sight_fit.hpp>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <numbers>
#include <optional>

namespace lodebook::reduction {

namespace {

using Eigen::Matrix2d;
using Eigen::MatrixXd;
using Eigen::Vector2d;
using Eigen::VectorXd;

constexpr double degrees_per_radian = 180 / std::numbers::pi;
constexpr double radians_per_degree = std::numbers::pi / 180;
constexpr double equatorial_radius_m = 6378137;  // WGS 84
/// Lines that cross at less have no meeting point worth naming, degrees.
constexpr double least_cut = 3;
/// Nearer to a known point than that, metres, a sight on it says nothing.
constexpr double least_distance_m = 1;
/// Further away nothing is sighted, metres.
constexpr double sight_limit_m = 200'000;
/// The crossing of nearly parallel lines on the plane is no place to begin from, metres.
constexpr double farthest_start_m = 5'000'000;
/// Better than this, degrees, nothing is read; keeps weights finite.
constexpr double least_sigma = 1e-4;
/// With the orientation free, a turn known no better than this, degrees, is not known.
constexpr double turn_limit = 10;

/// A sight as seen with the sought point at a certain place.
struct Seen {
  double residual = 0;  ///< degrees
  double distance_m = 0;
  double sigma = 0;
  bool by_needle = true;
  /// How the azimuth grows as the point moves, degrees a metre.
  double by_east = 0;
  double by_north = 0;
};

Seen see(const SightLine& sight, const earth::Position& point) {
  Seen seen;
  earth::GeodesicLine line;
  if (sight.from_sought) {
    line = earth::geodesic(point, sight.known);
    // To the right of the line the azimuth falls; and eastwards the meridian itself turns.
    const double aside = -degrees_per_radian * line.scale / line.reduced_m;
    const double azimuth = line.azimuth * radians_per_degree;
    const double latitude = std::clamp(point.latitude, -89.9999, 89.9999) * radians_per_degree;
    seen.by_east =
        aside * std::cos(azimuth) + degrees_per_radian * std::tan(latitude) / equatorial_radius_m;
    seen.by_north = -aside * std::sin(azimuth);
  } else {
    line = earth::geodesic(sight.known, point);
    const double aside = degrees_per_radian / line.reduced_m;
    const double azimuth = line.azimuth_at_end * radians_per_degree;
    seen.by_east = aside * std::cos(azimuth);
    seen.by_north = -aside * std::sin(azimuth);
  }
  seen.residual = std::remainder(sight.azimuth - line.azimuth, 360.0);
  seen.distance_m = line.distance_m;
  seen.by_needle = sight.by_needle;
  const double known_sigma =
      degrees_per_radian * sight.known_sigma_m / std::max(line.distance_m, least_distance_m);
  seen.sigma = std::max(std::hypot(sight.sigma, known_sigma), least_sigma);
  return seen;
}

std::vector<Seen> see(std::span<const SightLine> sights, const earth::Position& point) {
  std::vector<Seen> all;
  for (const SightLine& sight : sights)
    all.push_back(see(sight, point));
  return all;
}

/// The point's plane, where the sights are straight lines, and the point nearest to all of them.
std::optional<earth::PlanePoint> meet(std::span<const SightLine> sights,
                                      const earth::Position& around) {
  const earth::LocalPlane plane(around);
  Matrix2d normals = Matrix2d::Zero();
  Vector2d right = Vector2d::Zero();
  for (const SightLine& sight : sights) {
    const earth::PlanePoint known = plane.to_plane(sight.known);
    const double turn = sight.from_sought ? 0 : plane.meridian_turn(sight.known);
    const double azimuth = (sight.azimuth + turn) * radians_per_degree;
    const Vector2d normal(std::cos(azimuth), -std::sin(azimuth));
    const double offset = normal.dot(Vector2d(known.east_m, known.north_m));
    // A reading's error moves a far line further.
    const double far = std::max(std::hypot(known.east_m, known.north_m), least_distance_m);
    const double weight = 1 / (far * far);
    normals += weight * normal * normal.transpose();
    right += weight * offset * normal;
  }
  const double determinant = normals.determinant();
  if (!(determinant > 1e-12 * normals.trace() * normals.trace())) return std::nullopt;
  const Vector2d point = normals.inverse() * right;
  if (!(point.norm() < farthest_start_m)) return std::nullopt;
  return earth::PlanePoint{point.x(), point.y()};
}

/// Where the lines meet, going closer a few times as the meridians turn with the point.
std::optional<earth::Position> start(std::span<const SightLine> sights) {
  const earth::LocalPlane plane(sights.front().known);
  earth::PlanePoint middle;
  const auto count = static_cast<double>(sights.size());
  for (const SightLine& sight : sights) {
    const earth::PlanePoint known = plane.to_plane(sight.known);
    middle.east_m += known.east_m / count;
    middle.north_m += known.north_m / count;
  }
  earth::Position point = plane.to_position(middle);
  for (int i = 0; i < 20; ++i) {
    const auto moved = meet(sights, point);
    if (!moved) return std::nullopt;
    point = earth::LocalPlane(point).to_position(*moved);
    if (std::hypot(moved->east_m, moved->north_m) < 0.1) break;
  }
  return point;
}

bool is_behind(const std::vector<Seen>& seen) {
  return std::ranges::any_of(seen, [](const Seen& one) { return std::abs(one.residual) > 90; });
}
bool is_too_far(const std::vector<Seen>& seen) {
  return std::ranges::any_of(seen, [](const Seen& one) { return one.distance_m > sight_limit_m; });
}
bool is_at_known_point(const std::vector<Seen>& seen) {
  return std::ranges::any_of(seen,
                             [](const Seen& one) { return one.distance_m < least_distance_m; });
}

/// The azimuth from the sought point, whichever way the sight goes; for crossings only.
double direction_at(const SightLine& sight, const earth::Position& point) {
  return sight.from_sought ? sight.azimuth : earth::geodesic(sight.known, point).azimuth_at_end;
}

}  // namespace

double best_cut(std::span<const double> azimuths) {
  std::vector<double> folded;
  for (const double azimuth : azimuths) {
    const double turn = std::remainder(azimuth, 180.0);
    folded.push_back(turn < 0 ? turn + 180 : turn);
  }
  std::ranges::sort(folded);
  double best = 0;
  for (const double line : folded) {
    // The lines on both sides of the one that would cross it squarely.
    const auto above = std::ranges::lower_bound(folded, line < 90 ? line + 90 : line - 90);
    if (above != folded.end()) best = std::max(best, cut(line, *above));
    if (above != folded.begin()) best = std::max(best, cut(line, *std::prev(above)));
  }
  return best;
}

namespace {

double best_cut_of(std::span<const SightLine> sights, const earth::Position& point) {
  std::vector<double> azimuths;
  for (const SightLine& sight : sights)
    azimuths.push_back(direction_at(sight, point));
  return best_cut(azimuths);
}

/// The normal equations around a point: columns east, north and, with the orientation free, turn.
class Equations {
 public:
  Equations(const std::vector<Seen>& seen, double common_sigma, bool with_turn) {
    const auto count = static_cast<Eigen::Index>(seen.size());
    MatrixXd design(count, with_turn ? 3 : 2);
    VectorXd residuals(count);
    VectorXd weights(count);
    VectorXd by_needle(count);
    for (Eigen::Index i = 0; i < count; ++i) {
      const Seen& one = seen[static_cast<std::size_t>(i)];
      design(i, 0) = one.by_east;
      design(i, 1) = one.by_north;
      // The turn is added to what is observed.
      if (with_turn) design(i, 2) = -1;
      residuals(i) = one.residual;
      weights(i) = 1 / (one.sigma * one.sigma);
      by_needle(i) = one.by_needle ? 1 : 0;
    }
    // The inverse of diag(sigma^2) + c^2 nn' is W - c^2 Wnn'W / (1 + c^2 n'Wn) (Sherman, Morrison).
    const double squared = common_sigma * common_sigma;
    const double share = squared / (1 + squared * weights.dot(by_needle));
    const MatrixXd weighted = weights.asDiagonal() * design;
    const VectorXd sums = weighted.transpose() * by_needle;
    const double residual_sum = weights.cwiseProduct(by_needle).dot(residuals);
    normals_ = design.transpose() * weighted - share * sums * sums.transpose();
    right_ = weighted.transpose() * residuals - share * residual_sum * sums;
    chi_square_ =
        weights.dot(residuals.cwiseProduct(residuals)) - share * residual_sum * residual_sum;
  }

  double chi_square() const { return chi_square_; }
  const MatrixXd& normals() const { return normals_; }
  const VectorXd& right() const { return right_; }

 private:
  MatrixXd normals_;
  VectorXd right_;
  double chi_square_ = 0;
};

std::vector<Seen> seen_from(std::span<const SightLine> sights, const earth::Position& place,
                            double turned) {
  std::vector<Seen> seen = see(sights, place);
  for (Seen& one : seen)
    one.residual = std::remainder(one.residual + turned, 360.0);
  return seen;
}

/// `turn` is what to begin with, where the orientation is free.
SightResult solve(std::span<const SightLine> sights, double common_sigma, bool with_turn,
                  double turn) {
  if (sights.size() < (with_turn ? 3u : 2u)) return SightFault::too_few;
  const bool far_apart = std::ranges::any_of(sights, [&sights](const SightLine& sight) {
    return earth::distance_m(sight.known, sights.front().known) > 2 * sight_limit_m;
  });
  if (far_apart) return SightFault::too_far;
  std::vector<SightLine> turned_sights(sights.begin(), sights.end());
  for (SightLine& sight : turned_sights)
    sight.azimuth += turn;
  const auto first = start(turned_sights);
  if (!first) return SightFault::parallel;
  earth::Position point = *first;
  if (best_cut_of(turned_sights, point) < least_cut) return SightFault::parallel;
  std::vector<Seen> seen = seen_from(sights, point, turn);
  if (is_at_known_point(seen)) return SightFault::at_known_point;
  if (is_too_far(seen)) return SightFault::too_far;
  if (is_behind(seen)) return SightFault::behind;

  bool settled = false;
  for (int i = 0; i < 60 && !settled; ++i) {
    const Equations equations(seen, common_sigma, with_turn);
    const Eigen::LDLT<MatrixXd> normals(equations.normals());
    const VectorXd step = normals.solve(equations.right());
    if (!step.allFinite()) return SightFault::undetermined;
    double nearest = sight_limit_m;
    for (const Seen& one : seen)
      nearest = std::min(nearest, one.distance_m);
    const double length = std::hypot(step(0), step(1));
    double share = std::min(1.0, nearest / 2 / std::max(length, 1e-9));
    settled = true;
    for (int halved = 0; halved < 12; ++halved, share /= 2) {
      const double azimuth = std::atan2(step(0), step(1)) * degrees_per_radian;
      const earth::Position moved = earth::travelled(point, azimuth, share * length);
      const double turned = with_turn ? turn + share * step(2) : 0;
      std::vector<Seen> next = seen_from(sights, moved, turned);
      if (is_at_known_point(next)) return SightFault::at_known_point;
      if (Equations(next, common_sigma, with_turn).chi_square() >
          equations.chi_square() * (1 + 1e-12))
        continue;
      settled = share * length < 1e-6 * nearest && share * length < 1e-3;
      point = moved;
      turn = turned;
      seen = std::move(next);
      break;
    }
  }
  if (is_behind(seen)) return SightFault::behind;
  if (is_too_far(seen)) return SightFault::too_far;

  const Equations equations(seen, common_sigma, with_turn);
  const Eigen::FullPivLU<MatrixXd> normals(equations.normals());
  const MatrixXd covariance = normals.inverse();
  if (!normals.isInvertible() || !covariance.allFinite()) return SightFault::undetermined;
  SightFit found;
  found.position = point;
  found.covariance = {covariance(0, 0), covariance(0, 1), covariance(1, 1)};
  for (const Seen& one : seen) {
    found.residuals.push_back(one.residual);
    found.distances_m.push_back(one.distance_m);
  }
  found.chi_square = equations.chi_square();
  found.freedom = sights.size() - (with_turn ? 3 : 2);
  if (!with_turn) return found;
  found.turn = std::remainder(turn, 360.0);
  found.turn_sigma = std::sqrt(covariance(2, 2));
  if (!(found.turn_sigma < turn_limit)) return SightFault::undetermined;
  return found;
}

}  // namespace

SightResult fit(std::span<const SightLine> sights, double common_sigma) {
  return solve(sights, common_sigma, false, 0);
}

SightResult fit_with_turn(std::span<const SightLine> sights) {
  SightResult best = solve(sights, 0, true, 0);
  if (std::holds_alternative<SightFit>(best)) return best;
  // A declination that is far off makes the lines meet nowhere: begin from others.
  constexpr int starts = 12;
  for (int i = 1; i < starts; ++i) {
    SightResult other = solve(sights, 0, true, 360.0 * i / starts);
    const auto* const found = std::get_if<SightFit>(&other);
    const auto* const so_far = std::get_if<SightFit>(&best);
    if (found && (!so_far || found->chi_square < so_far->chi_square)) best = std::move(other);
  }
  return best;
}

std::vector<double> rough_misfits(std::span<const SightLine> sights) {
  std::vector<double> misfits;
  const auto point = start(sights);
  if (!point) return std::vector<double>(sights.size(), 0);
  for (const Seen& one : see(sights, *point))
    misfits.push_back(std::abs(one.residual) / one.sigma);
  return misfits;
}

std::string_view words_for(SightFault fault) {
  switch (fault) {
    case SightFault::too_few:
      return "too few sights";
    case SightFault::parallel:
      return "the sight lines are nearly parallel";
    case SightFault::behind:
      return "the sight lines meet behind an observer";
    case SightFault::at_known_point:
      return "it would lie at one of the points sighted";
    case SightFault::too_far:
      return "it would lie over 200 km from a point sighted; is a position mistyped?";
    case SightFault::undetermined:
      break;
  }
  return "the sights meet nowhere";
}

double cut(double azimuth, double other) {
  const double apart = std::abs(std::remainder(azimuth - other, 180.0));
  return apart;
}

}  // namespace lodebook::reduction
