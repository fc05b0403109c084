// SPDX-License-Identifier: MIT
#include <lodebook/reduction/traverse.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <numbers>
#include <utility>

#include "traverse_runs.hpp"

namespace lodebook::reduction {
namespace {

using earth::LocalPlane;
using earth::PlanePoint;

constexpr double radians = std::numbers::pi / 180;  // per degree
constexpr double rounding_m = 1e-6;
constexpr double always_allowed_m2 = 1e-6;  // a millimetre, squared

PlanePoint operator+(const PlanePoint& a, const PlanePoint& b) {
  return {a.east_m + b.east_m, a.north_m + b.north_m};
}
PlanePoint operator*(const PlanePoint& a, double factor) {
  return {a.east_m * factor, a.north_m * factor};
}
PlanePoint operator-(const PlanePoint& a, const PlanePoint& b) {
  return a + b * -1;
}

PlanePoint towards(double azimuth, double distance_m) {
  const Angle angle = Angle::from_degrees(azimuth).value_or(Angle());
  return PlanePoint{sin(angle), cos(angle)} * distance_m;
}

/// How a point moves, in metres per radian, if all is turned clockwise around the origin.
PlanePoint turned(const PlanePoint& point) {
  return {point.north_m, -point.east_m};
}

/// The error of a position, kept by its sources, so that the part that two positions share is
/// known.
struct Error {
  /// The weight of the error of a known station in it. Shares are sorted by station number.
  struct Share {
    std::size_t station = 0;
    double weight = 0;
  };
  std::vector<Share> shares;
  /// The effect of an error of the declination, metres per radian.
  PlanePoint turning;
  /// The covariance from the errors of the legs.
  Covariance own;
};

/// The error of a * weight_a + b * weight_b. The errors of the legs are treated as independent.
Error combined(const Error& a, double weight_a, const Error& b, double weight_b) {
  Error sum;
  auto next_a = a.shares.begin();
  auto next_b = b.shares.begin();
  while (next_a != a.shares.end() || next_b != b.shares.end()) {
    const bool take_a = next_b == b.shares.end() ||
                        (next_a != a.shares.end() && next_a->station <= next_b->station);
    const bool take_b = next_a == a.shares.end() ||
                        (next_b != b.shares.end() && next_b->station <= next_a->station);
    Error::Share share{take_a ? next_a->station : next_b->station, 0};
    if (take_a) share.weight += weight_a * (next_a++)->weight;
    if (take_b) share.weight += weight_b * (next_b++)->weight;
    sum.shares.push_back(share);
  }
  sum.turning = a.turning * weight_a + b.turning * weight_b;
  sum.own = a.own.scaled(weight_a * weight_a);
  sum.own += b.own.scaled(weight_b * weight_b);
  return sum;
}

/// A leg on the plane, in the direction of its run.
struct MeasuredLeg {
  PlanePoint vector;
  Covariance covariance;
};

/// Puts a leg on the plane from `start` on. If `reversed`, the run follows the leg from `to` to
/// `from`, and `start` is its `to`.
MeasuredLeg measured(const TraverseLeg& leg, bool reversed, const PlanePoint& start,
                     const std::optional<LocalPlane>& plane) {
  const double along = reversed ? -leg.distance_m : leg.distance_m;
  const auto turn_at = [&](const PlanePoint& point) {
    return plane ? plane->meridian_turn(plane->to_position(point)) : 0.0;
  };
  double azimuth = leg.azimuth + turn_at(start);
  // The azimuth holds at `from`. For a reversed leg this is its other end, and where that lies
  // depends on the azimuth. Each step reduces the error by the factor length / distance to the
  // pole.
  constexpr int most_steps = 10;
  for (int step = 0; reversed && step < most_steps; ++step) {
    const double before = azimuth;
    azimuth = leg.azimuth + turn_at(start + towards(azimuth, along));
    if (std::abs(azimuth - before) < 1e-9) break;
  }

  MeasuredLeg result;
  result.vector = towards(azimuth, along);
  const PlanePoint direction = towards(azimuth, 1);
  const double in_length = leg.distance_sigma_m * leg.distance_sigma_m;
  const double aside_sigma = leg.distance_m * leg.azimuth_sigma * radians;
  const double aside = aside_sigma * aside_sigma;
  const double& east = direction.east_m;
  const double& north = direction.north_m;
  result.covariance.east = in_length * east * east + aside * north * north;
  result.covariance.north = in_length * north * north + aside * east * east;
  result.covariance.both = (in_length - aside) * east * north;
  return result;
}

class Adjustment {
 public:
  Adjustment(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs,
             double declination_sigma);
  Traverse compute(const TraverseRun& run);
  std::vector<std::optional<TraversePlace>> placed() const;

 private:
  /// A tied station: its position, or in a group without any position its point on a plane.
  struct Place {
    std::optional<earth::Position> position;
    PlanePoint point;
    Error error;
  };

  /// Cumulative sums along the traverse, one per station: each is the sum of the legs from the
  /// first station to that one.
  struct Course {
    Place start;
    std::optional<LocalPlane> plane;
    std::vector<PlanePoint> points = std::vector<PlanePoint>(1);
    /// The same of those legs alone that an error of the declination turns.
    std::vector<PlanePoint> by_needle = std::vector<PlanePoint>(1);
    std::vector<double> lengths = std::vector<double>(1);
    std::vector<Covariance> covariances = std::vector<Covariance>(1);
    PlanePoint misclosure;
    Error end_error;
    /// The errors of earlier legs in a loop's origin. They are the same for the whole loop, so they
    /// are left out between its ends.
    Covariance from_legs_before;

    /// The share of the misclosure up to station `i`: by length, or evenly if no leg has any
    /// length.
    double share(std::size_t i) const {
      return lengths.back() > 0 ? lengths[i] / lengths.back()
                                : static_cast<double>(i) / static_cast<double>(points.size() - 1);
    }
    Error computed(std::size_t i) const;
    Error computed_back(std::size_t i) const;
  };

  Course course_of(const TraverseRun& run);
  Place place_on(const Course& course, std::size_t i, bool is_closed) const;
  Covariance covariance_of(const Error& error) const;
  bool is_contradiction(const PlanePoint& misclosure, const Error& error) const;

  std::span<const TraverseStation> stations_;
  std::span<const TraverseLeg> legs_;
  double declination_sigma_ = 0;  // radians
  std::vector<std::optional<Place>> places_;
};

Adjustment::Adjustment(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs,
                       double declination_sigma)
    : stations_(stations),
      legs_(legs),
      declination_sigma_(declination_sigma * radians),
      places_(stations.size()) {
  for (std::size_t i = 0; i < stations.size(); ++i) {
    if (!stations[i].position) continue;
    Place known;
    known.position = stations[i].position;
    known.error.shares = {{i, 1}};
    places_[i] = std::move(known);
  }
}

/// The error of station `i`, computed from the first station of the run.
Error Adjustment::Course::computed(std::size_t i) const {
  Error error = start.error;
  error.own += covariances[i];
  error.turning = error.turning + turned(by_needle[i]);
  return error;
}

/// The error of station `i`, computed back from the last station of the run.
Error Adjustment::Course::computed_back(std::size_t i) const {
  Error error = end_error;
  error.own += covariances.back();
  error.own += covariances[i].scaled(-1);
  error.turning = error.turning - turned(by_needle.back() - by_needle[i]);
  return error;
}

Covariance Adjustment::covariance_of(const Error& error) const {
  Covariance sum = error.own;
  for (const Error::Share& share : error.shares)
    sum += stations_[share.station].covariance.scaled(share.weight * share.weight);
  const PlanePoint turning = error.turning * declination_sigma_;
  sum += {turning.east_m * turning.east_m, turning.east_m * turning.north_m,
          turning.north_m * turning.north_m};
  return sum;
}

bool Adjustment::is_contradiction(const PlanePoint& misclosure, const Error& error) const {
  const Covariance covariance = covariance_of(error);
  // The test is made along the axes of the covariance, so that an axis with a variance of zero does
  // no harm.
  const Axes axes = axes_of(covariance);
  const PlanePoint axis = towards(axes.major_azimuth, 1);
  const double in_length = misclosure.east_m * axis.east_m + misclosure.north_m * axis.north_m;
  const double aside = misclosure.east_m * axis.north_m - misclosure.north_m * axis.east_m;
  const double chi_square = in_length * in_length / (axes.major + always_allowed_m2) +
                            aside * aside / (axes.minor + always_allowed_m2);
  return chance_of(chi_square, 2) < least_chance;
}

Adjustment::Course Adjustment::course_of(const TraverseRun& run) {
  std::optional<Place>& beginning = places_[run.stations.front()];
  if (!beginning) beginning = Place{};
  Course course;
  course.start = *beginning;
  if (course.start.position) course.plane.emplace(*course.start.position);
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const TraverseLeg& leg = legs_[run.legs[i]];
    const MeasuredLeg on_plane =
        measured(leg, leg.from != run.stations[i], course.points.back(), course.plane);
    course.points.push_back(course.points.back() + on_plane.vector);
    course.by_needle.push_back(course.by_needle.back() + on_plane.vector * (leg.by_needle ? 1 : 0));
    course.lengths.push_back(course.lengths.back() + leg.distance_m);
    course.covariances.push_back(course.covariances.back());
    course.covariances.back() += on_plane.covariance;
  }
  if (run.kind == Traverse::Kind::open) return course;

  const Place& end = *places_[run.stations.back()];
  course.end_error = end.error;
  PlanePoint known;
  if (run.kind == Traverse::Kind::loop) {
    std::swap(course.from_legs_before, course.start.error.own);
    course.end_error.own = {};
  } else {
    known = course.plane ? course.plane->to_plane(*end.position) : end.point - course.start.point;
  }
  course.misclosure = course.points.back() - known;
  return course;
}

Traverse Adjustment::compute(const TraverseRun& run) {
  const Course course = course_of(run);
  Traverse traverse;
  traverse.kind = run.kind;
  traverse.stations = run.stations;
  traverse.length_m = course.lengths.back();
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const PlanePoint vector = course.points[i + 1] - course.points[i];
    const PlanePoint correction =
        PlanePoint{} - course.misclosure * (course.share(i + 1) - course.share(i));
    traverse.legs.push_back({.leg = run.legs[i],
                             .reversed = legs_[run.legs[i]].from != run.stations[i],
                             .departure_m = vector.east_m,
                             .latitude_m = vector.north_m,
                             .departure_correction_m = correction.east_m,
                             .latitude_correction_m = correction.north_m});
  }
  const bool is_closed = run.kind != Traverse::Kind::open;
  if (is_closed) {
    traverse.departure_misclosure_m = course.misclosure.east_m;
    traverse.latitude_misclosure_m = course.misclosure.north_m;
    traverse.misclosure_m = std::hypot(course.misclosure.east_m, course.misclosure.north_m);
    if (traverse.misclosure_m > rounding_m && traverse.length_m > 0)
      traverse.precision = traverse.length_m / traverse.misclosure_m;
    traverse.contradicts = is_contradiction(
        course.misclosure, combined(course.computed(run.legs.size()), 1, course.end_error, -1));
  }
  const std::size_t last_new = run.legs.size() - (is_closed ? 1 : 0);
  for (std::size_t i = 1; i <= last_new; ++i) {
    places_[run.stations[i]] = place_on(course, i, is_closed);
    // Some leg is probably wrong, but nobody knows which stations it has moved.
    if (traverse.contradicts)
      places_[run.stations[i]]->error.own += Covariance::round(traverse.misclosure_m / 2);
  }
  return traverse;
}

Adjustment::Place Adjustment::place_on(const Course& course, std::size_t i, bool is_closed) const {
  Place place;
  place.point = course.points[i] - course.misclosure * course.share(i);
  if (course.plane) {
    place.position = course.plane->to_position(place.point);
  } else {
    place.point = course.start.point + place.point;
  }
  // The adjusted place is (1 - share) times the one computed from the start, and share times the
  // one computed back from the end; in the open it is the first alone.
  if (is_closed) {
    place.error =
        combined(course.computed(i), 1 - course.share(i), course.computed_back(i), course.share(i));
  } else {
    place.error = course.computed(i);
  }
  place.error.own += course.from_legs_before;
  return place;
}

std::vector<std::optional<TraversePlace>> Adjustment::placed() const {
  std::vector<std::optional<TraversePlace>> placed(places_.size());
  for (std::size_t i = 0; i < places_.size(); ++i) {
    if (stations_[i].position || !places_[i] || !places_[i]->position) continue;
    placed[i] = TraversePlace{*places_[i]->position, covariance_of(places_[i]->error)};
  }
  return placed;
}

}  // namespace

TraverseResult adjust(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs,
                      double declination_sigma) {
  Adjustment adjustment(stations, legs, declination_sigma);
  TraverseResult result;
  for (const TraverseRun& run : traverse_runs(stations, legs))
    result.traverses.push_back(adjustment.compute(run));
  result.placed = adjustment.placed();
  return result;
}

}  // namespace lodebook::reduction
