// SPDX-License-Identifier: MIT
#include "repeats.hpp"

#include <algorithm>

namespace lodebook::reduction {

namespace {

constexpr double repeat_floor = 5;

std::optional<AxisMean> mean_of_kept(std::span<const Repeat> repeats,
                                     const std::vector<Agreement::Member>& members) {
  std::vector<Vector> axes;
  axes.reserve(repeats.size());
  for (std::size_t i = 0; i < repeats.size(); ++i) {
    if (!members[i].apart) axes.push_back(repeats[i].axis);
  }
  return mean_of_axes(axes);
}

}  // namespace

double limit_of(double sigma, double floor) {
  return std::max(floor, 3 * sigma);
}

std::optional<Agreement> agreement(std::span<const Repeat> repeats) {
  if (repeats.size() < 2) return std::nullopt;
  Agreement result;
  result.members.resize(repeats.size());
  std::size_t kept = repeats.size();
  while (true) {
    const auto mean = mean_of_kept(repeats, result.members);
    if (!mean) return std::nullopt;
    result.mean = *mean;
    std::size_t worst = repeats.size();
    double worst_excess = 0;
    for (std::size_t i = 0; i < repeats.size(); ++i) {
      Agreement::Member& member = result.members[i];
      member.off = angle_between_axes(repeats[i].axis, mean->axis).degrees();
      member.limit = limit_of(repeats[i].sigma, repeat_floor);
      const double excess = member.off / member.limit;
      if (!member.apart && excess > 1 && excess > worst_excess) {
        worst = i;
        worst_excess = excess;
      }
    }
    if (worst == repeats.size()) return result;
    if (kept == 2) {
      for (Agreement::Member& member : result.members) {
        if (member.off > member.limit) member.apart = true;
      }
      return result;
    }
    result.members[worst].apart = true;
    --kept;
  }
}

}  // namespace lodebook::reduction
