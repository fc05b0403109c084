// SPDX-License-Identifier: MIT
#include "far_off.hpp"

#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/tensor.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <numeric>

namespace lodebook::reduction {
namespace {

constexpr double floor_degrees = 5;
constexpr std::size_t fewest_left = 4;

/// The furthest of a group, by a centre that all of them give.
struct Furthest {
  std::size_t place = 0;
  /// From where the others lie, and how likely one as far is.
  double degrees = 0;
  double chance = 1;
};

double angle_off_plane(const Vector& axis, const Vector& pole) {
  return 90 - angle_between_axes(axis, pole).degrees();
}

std::vector<Vector> all_but(const std::vector<Vector>& axes,
                            std::vector<Vector>::const_iterator one) {
  std::vector<Vector> rest(axes.begin(), one);
  rest.insert(rest.end(), one + 1, axes.end());
  return rest;
}

std::optional<Furthest> furthest_from_mean(const std::vector<Vector>& directions, Ends ends) {
  const auto all = mean_of(directions, ends);
  if (!all) return std::nullopt;
  const auto furthest = std::ranges::max_element(directions, {}, [&](const Vector& direction) {
    return angle_between(direction, all->axis, ends);
  });
  const auto others = mean_of(all_but(directions, furthest), ends);
  if (!others) return std::nullopt;
  const auto count = static_cast<double>(directions.size());
  const Angle off = angle_between(*furthest, others->axis, ends);
  // R of all, by the law of cosines; an axis is turned to the side of the others.
  const double resultant =
      std::sqrt(others->resultant * others->resultant + 1 + 2 * others->resultant * cos(off));
  const double scatter = count - 1 - others->resultant;
  const double gap = std::max(0.0, 1 + others->resultant - resultant);
  // P(F > x) with 2 and 2m degrees of freedom is (1 + x/m)^-m.
  const double chance = std::pow(1 + gap / std::max(scatter, 1e-12), -(count - 2));
  return Furthest{static_cast<std::size_t>(furthest - directions.begin()), off.degrees(), chance};
}

std::optional<Furthest> furthest_from_girdle(const std::vector<Vector>& axes) {
  const auto pole_of_all = orientation_tensor(axes)->axes[2];
  const auto offset = [&](const Vector& axis) { return std::abs(dot(axis, pole_of_all)); };
  const auto furthest = std::ranges::max_element(axes, {}, offset);
  const std::vector<Vector> rest = all_but(axes, furthest);
  const Vector pole = orientation_tensor(rest)->axes[2];
  double squares = 0;
  for (const Vector& axis : rest) {
    const double off = angle_off_plane(axis, pole);
    squares += off * off;
  }
  const double freedom = static_cast<double>(axes.size()) - 3;
  const double scatter = std::max(std::sqrt(squares / freedom), 1e-9);
  const double off = angle_off_plane(*furthest, pole);
  const boost::math::students_t distribution(freedom);
  const double chance = 2 * boost::math::cdf(boost::math::complement(distribution, off / scatter));
  return Furthest{static_cast<std::size_t>(furthest - axes.begin()), off, chance};
}

template <class FindFurthest>
std::vector<Apart> find_apart(std::span<const Vector> given, FindFurthest find_furthest) {
  std::vector<Vector> axes(given.begin(), given.end());
  std::vector<std::size_t> places(axes.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::vector<Apart> apart;
  while (apart.size() < most_apart && axes.size() > fewest_left) {
    const std::optional<Furthest> found = find_furthest(axes);
    if (!found || found->degrees <= floor_degrees) break;
    // Any of them might have been the furthest.
    if (found->chance * static_cast<double>(axes.size()) >= least_chance) break;
    apart.push_back({places[found->place], found->degrees});
    axes.erase(axes.begin() + static_cast<std::ptrdiff_t>(found->place));
    places.erase(places.begin() + static_cast<std::ptrdiff_t>(found->place));
  }
  std::ranges::sort(apart, {}, &Apart::index);
  return apart;
}

}  // namespace

std::vector<Apart> apart_from_mean(std::span<const Vector> directions, Ends ends) {
  return find_apart(directions, [ends](const std::vector<Vector>& left) {
    return furthest_from_mean(left, ends);
  });
}

std::vector<Apart> apart_from_sets(std::span<const Vector> directions, const TwoSets& sets,
                                   Ends ends) {
  std::array<std::vector<Vector>, 2> members;
  std::array<std::vector<std::size_t>, 2> places;
  for (std::size_t i = 0; i < directions.size(); ++i) {
    const auto off = [&](const DirectionSet& set) {
      return angle_between(directions[i], set.mean.axis, ends).degrees();
    };
    const std::size_t nearer = off(sets[1]) < off(sets[0]) ? 1 : 0;
    members[nearer].push_back(directions[i]);
    places[nearer].push_back(i);
  }
  std::vector<Apart> apart;
  for (const std::size_t set : {0U, 1U}) {
    for (const Apart& one : apart_from_mean(members[set], ends))
      apart.push_back({places[set][one.index], one.degrees});
  }
  std::ranges::sort(apart, {}, &Apart::index);
  return apart;
}

std::vector<Apart> apart_from_girdle(std::span<const Vector> axes) {
  return find_apart(axes, furthest_from_girdle);
}

}  // namespace lodebook::reduction
