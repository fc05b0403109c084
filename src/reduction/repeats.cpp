// SPDX-License-Identifier: MIT
#include "repeats.hpp"

#include <algorithm>
#include <lodebook/orientation/precision.hpp>
#include <numeric>

namespace lodebook::reduction {

namespace {

/// Where there are several times so many, they are not set aside one by one.
constexpr std::size_t at_once = 100;

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

/// How far off it is, where 1 is its limit.
double excess(const Agreement::Member& member) {
  return member.off / member.limit;
}

/// Takes the furthest out of those kept; of hundreds, one in a hundred at once, if they are apart.
void set_aside_furthest(std::vector<std::size_t>& kept,
                        const std::vector<Agreement::Member>& members) {
  std::vector<std::size_t> furthest(std::max<std::size_t>(1, kept.size() / at_once));
  std::ranges::partial_sort_copy(kept, furthest, [&members](std::size_t a, std::size_t b) {
    return std::pair(-excess(members[a]), a) < std::pair(-excess(members[b]), b);
  });
  std::erase_if(furthest, [&members](std::size_t i) { return !members[i].apart; });
  std::ranges::sort(furthest);
  std::erase_if(kept,
                [&furthest](std::size_t i) { return std::ranges::binary_search(furthest, i); });
}

}  // namespace

double limit_of(double sigma, double floor) {
  constexpr double half_turn = 180;  // further apart than any two directions
  return std::clamp(3 * sigma, floor, half_turn);
}

std::optional<Agreement> agreement(std::span<const Repeat> repeats, Ends ends, double floor) {
  if (repeats.size() < 2) return std::nullopt;
  Agreement result;
  std::vector<Agreement::Member>& members = result.members;
  members.resize(repeats.size());
  std::vector<std::size_t> kept(repeats.size());
  std::iota(kept.begin(), kept.end(), std::size_t{0});
  while (true) {
    const std::vector<Vector> axes = axes_of(repeats, kept);
    result.mean = mean_of(axes, ends);
    double others = 0;
    for (const std::size_t i : kept)
      others = combined_sigma(others, repeats[i].sigma);
    // The mean is no better known than this, where one is far coarser than the rest.
    const double of_mean = others / static_cast<double>(kept.size());
    const Vector centre = result.mean ? result.mean->axis : middle(axes, ends);
    for (std::size_t i = 0; i < repeats.size(); ++i) {
      const double off = angle_between(repeats[i].axis, centre, ends).degrees();
      const double limit = limit_of(std::max(repeats[i].sigma, of_mean), floor);
      members[i] = {off, limit, off > limit, centre};
    }
    const auto worst = std::ranges::max_element(
        kept, {}, [&members](std::size_t i) { return excess(members[i]); });
    if (!members[*worst].apart) return result;
    if (kept.size() == 2) {
      members[kept[0]].held_against = axes[1];
      members[kept[1]].held_against = axes[0];
      return result;
    }
    if (!result.mean) return result;
    set_aside_furthest(kept, members);
  }
}

}  // namespace lodebook::reduction
