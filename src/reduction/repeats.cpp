// SPDX-License-Identifier: MIT
#include "repeats.hpp"

#include <algorithm>
#include <numeric>

namespace lodebook::reduction {

namespace {

constexpr double repeat_floor = 5;

std::vector<Vector> axes_of(std::span<const Repeat> repeats, const std::vector<std::size_t>& kept) {
  std::vector<Vector> axes;
  axes.reserve(kept.size());
  for (const std::size_t i : kept)
    axes.push_back(repeats[i].axis);
  return axes;
}

/// The middle of directions that have no mean: of their sum, axes turned to the side of the first.
Vector middle(const std::vector<Vector>& directions, Ends ends) {
  Vector sum;
  for (const Vector& direction : directions) {
    const bool turns = ends == Ends::both && dot(direction, directions.front()) < 0;
    sum = sum + (turns ? -direction : direction);
  }
  return unit(sum).value_or(directions.front());
}

}  // namespace

double limit_of(double sigma, double floor) {
  constexpr double half_turn = 180;  // further apart than any two directions
  return std::clamp(3 * sigma, floor, half_turn);
}

std::optional<Agreement> agreement(std::span<const Repeat> repeats, Ends ends) {
  if (repeats.size() < 2) return std::nullopt;
  Agreement result;
  std::vector<Agreement::Member>& members = result.members;
  members.resize(repeats.size());
  std::vector<std::size_t> kept(repeats.size());
  std::iota(kept.begin(), kept.end(), std::size_t{0});
  const auto excess = [&members](std::size_t i) { return members[i].off / members[i].limit; };
  while (true) {
    const std::vector<Vector> axes = axes_of(repeats, kept);
    result.mean = mean_of(axes, ends);
    const Vector centre = result.mean ? result.mean->axis : middle(axes, ends);
    for (std::size_t i = 0; i < repeats.size(); ++i) {
      const double off = angle_between(repeats[i].axis, centre, ends).degrees();
      const double limit = limit_of(repeats[i].sigma, repeat_floor);
      members[i] = {off, limit, off > limit, centre};
    }
    const auto worst =
        std::max_element(kept.begin(), kept.end(),
                         [&excess](std::size_t a, std::size_t b) { return excess(a) < excess(b); });
    if (!members[*worst].apart) return result;
    if (kept.size() == 2) {
      members[kept[0]].held_against = axes[1];
      members[kept[1]].held_against = axes[0];
      return result;
    }
    if (!result.mean) return result;
    kept.erase(worst);
  }
}

}  // namespace lodebook::reduction
