// SPDX-License-Identifier: MIT
#include <lodebook/orientation/sets.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/tensor.hpp>
#include <numbers>
#include <utility>

namespace lodebook {
namespace {

using Centres = std::pair<Vector, Vector>;

double along(Vector direction, Vector centre, Ends ends) {
  const double cosine = dot(direction, centre);
  return ends == Ends::both ? std::abs(cosine) : cosine;
}

/// Where to begin: at each pair of principal axes, and half-way between their ends; arrows also at
/// the two ends of each.
std::vector<Centres> beginnings(const std::array<Vector, 3>& axes, Ends ends) {
  std::vector<Centres> pairs;
  for (const auto& [i, k] : {std::pair(0U, 1U), std::pair(0U, 2U), std::pair(1U, 2U)}) {
    pairs.emplace_back(axes[i], axes[k]);
    pairs.emplace_back(std::numbers::sqrt2 / 2 * (axes[i] + axes[k]),
                       std::numbers::sqrt2 / 2 * (axes[i] + -axes[k]));
  }
  if (ends == Ends::one) {
    const std::size_t of_axes = pairs.size();
    for (std::size_t i = 0; i < of_axes; ++i) {
      const auto [one, other] = pairs[i];
      pairs.emplace_back(-one, -other);
    }
    for (const Vector& axis : axes)
      pairs.emplace_back(axis, -axis);
  }
  return pairs;
}

/// Moves each direction to the set whose mean is nearer until none moves.
std::optional<TwoSets> settled(std::span<const Vector> directions, Ends ends, Centres centres) {
  constexpr int most_rounds = 20;
  TwoSets sets;
  for (int round = 0; round < most_rounds; ++round) {
    std::array<std::vector<std::size_t>, 2> places;
    std::array<std::vector<Vector>, 2> members;
    for (std::size_t i = 0; i < directions.size(); ++i) {
      const bool is_second =
          along(directions[i], centres.second, ends) > along(directions[i], centres.first, ends);
      places[is_second ? 1 : 0].push_back(i);
      members[is_second ? 1 : 0].push_back(directions[i]);
    }
    const bool is_settled = round > 0 && places[0] == sets[0].places;
    if (is_settled) return sets;
    for (std::size_t i = 0; i < 2; ++i) {
      const auto mean = mean_of(members[i], ends);
      if (!mean) return std::nullopt;
      sets[i] = {std::move(places[i]), *mean};
    }
    centres = {sets[0].mean.axis, sets[1].mean.axis};
  }
  return sets;
}

/// Mean square of the angles, degrees, by which the directions of a set lie off its mean along the
/// great circle towards the other set's.
double variance_towards(const DirectionSet& set, Vector other, std::span<const Vector> directions,
                        Ends ends) {
  const Vector mean = set.mean.axis;
  // Between opposite arrows any great circle will do.
  const Vector aside = std::abs(mean.down) < 0.7 ? Vector{0, 0, 1} : Vector{1, 0, 0};
  const Vector pole = unit(cross(mean, other)).value_or(*unit(cross(mean, aside)));
  const Vector across = cross(pole, mean);
  double squares = 0;
  for (const std::size_t place : set.places) {
    const Vector& direction = directions[place];
    const bool turns = ends == Ends::both && dot(direction, mean) < 0;
    const Vector here = turns ? -direction : direction;
    const double off = Angle::atan2(dot(here, across), dot(here, mean)).degrees();
    squares += off * off;
  }
  return squares / static_cast<double>(set.places.size() - 1);
}

bool are_clear(const TwoSets& sets, std::span<const Vector> directions, Ends ends) {
  constexpr std::size_t fewest = 3;
  constexpr double least_share = 0.15;
  constexpr double least_degrees = 30;
  const auto all = static_cast<double>(directions.size());
  const auto& [one, other] = sets;
  const std::size_t smaller = std::min(one.places.size(), other.places.size());
  if (smaller < fewest || static_cast<double>(smaller) < least_share * all) return false;
  const double apart = angle_between(one.mean.axis, other.mean.axis, ends).degrees();
  const double variance = (variance_towards(one, other.mean.axis, directions, ends) +
                           variance_towards(other, one.mean.axis, directions, ends)) /
                          2;
  return apart >= least_degrees && apart > (4.5 + 25 / all) * std::sqrt(variance);
}

}  // namespace

std::optional<TwoSets> two_sets(std::span<const Vector> directions, Ends ends) {
  const std::optional<OrientationTensor> tensor = orientation_tensor(directions);
  if (!tensor) return std::nullopt;
  std::optional<TwoSets> best;
  const auto length = [](const TwoSets& sets) {
    return sets[0].mean.resultant + sets[1].mean.resultant;
  };
  for (const Centres& centres : beginnings(tensor->axes, ends)) {
    auto found = settled(directions, ends, centres);
    if (found && (!best || length(*found) > length(*best))) best = std::move(found);
  }
  if (!best || !are_clear(*best, directions, ends)) return std::nullopt;
  const auto& [one, other] = *best;
  const bool is_larger_first = one.places.size() != other.places.size()
                                   ? one.places.size() > other.places.size()
                                   : one.places.front() < other.places.front();
  if (!is_larger_first) std::swap((*best)[0], (*best)[1]);
  return best;
}

}  // namespace lodebook
