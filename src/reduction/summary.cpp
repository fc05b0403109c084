// SPDX-License-Identifier: MIT
#include <lodebook/reduction/summary.hpp>

#include <array>
#include <lodebook/reduction/chi_square.hpp>

#include "far_off.hpp"

namespace lodebook::reduction {
namespace {

/// Bingham's test of evenness: (15/2) N sum (S - 1/3)^2 is nearly chi-square with 5 degrees of
/// freedom (C. Bingham 1974, Annals of Statistics 2, 1201; K. V. Mardia & P. E. Jupp 2000,
/// Directional Statistics, sect. 10.7, from memory).
double chance_of_evenness(const OrientationTensor& tensor, std::size_t count) {
  double spread = 0;
  for (const double value : tensor.eigenvalues)
    spread += (value - 1.0 / 3) * (value - 1.0 / 3);
  constexpr std::size_t freedom = 5;
  return chance_of(7.5 * static_cast<double>(count) * spread, freedom);
}

/// S2 of axes that lie along their best great circle within 5 degrees (one sigma) of their mean:
/// sin^2 5.
constexpr double tight_share = 0.0075961;

/// How the axes lie but for those apart from their mean: one of those alone would stretch a cluster
/// into a girdle.
Fabric fabric_without(const std::vector<Vector>& axes, const std::vector<Apart>& apart) {
  constexpr std::size_t fewest = 5;
  if (axes.size() < fewest) return Fabric::too_few;
  std::vector<Vector> rest;
  auto next = apart.begin();
  for (std::size_t i = 0; i < axes.size(); ++i) {
    if (next != apart.end() && next->index == i) {
      ++next;
    } else {
      rest.push_back(axes[i]);
    }
  }
  const OrientationTensor tensor = *orientation_tensor(rest);
  if (chance_of_evenness(tensor, rest.size()) >= 0.05) return Fabric::no_preference;
  const auto& [first, second, third] = tensor.eigenvalues;
  if (second < tight_share) return Fabric::cluster;
  if (third == 0) return Fabric::girdle;
  const auto shape = tensor.shape();
  return !shape || *shape >= 1 ? Fabric::cluster : Fabric::girdle;
}

}  // namespace

std::string_view name_of(Fabric fabric) {
  constexpr std::array<std::string_view, 4> names = {"too few", "no preference", "cluster",
                                                     "girdle"};
  return names[static_cast<std::size_t>(fabric)];
}

Summary summary_of(Group group) {
  Summary summary;
  summary.group = std::move(group);
  const Group& of = summary.group;
  std::vector<Vector> axes;
  std::vector<double> azimuths;
  axes.reserve(of.members.size());
  for (const Attitude* const member : of.members) {
    axes.push_back(member->axis);
    if (member->has_direction) azimuths.push_back(*member->azimuth);
  }
  const Ends ends = of.is_arrow ? Ends::one : Ends::both;
  summary.mean = mean_of(axes, ends);
  summary.azimuths = of.is_plane ? axial_mean(azimuths) : circular_mean(azimuths);
  summary.tensor = orientation_tensor(axes);
  if (!summary.tensor) return summary;
  summary.chance_of_evenness = chance_of_evenness(*summary.tensor, axes.size());

  std::vector<Apart> apart = apart_from_mean(axes, ends);
  summary.fabric = fabric_without(axes, apart);
  if (summary.fabric == Fabric::girdle && !of.is_arrow && summary.tensor->has_best_circle()) {
    summary.girdle = Girdle{summary.tensor->axes[2], girdle_pole_cone95(axes)};
    apart = apart_from_girdle(axes);
  } else if (summary.fabric == Fabric::too_few || summary.fabric == Fabric::no_preference) {
    apart.clear();  // from nothing
  }
  for (const auto& [index, degrees] : apart)
    summary.far_off.push_back({of.members[index], degrees});
  summary.more_far_off = apart.size() == most_apart;
  return summary;
}

std::vector<Summary> summarise(const Attitudes& attitudes, const Grouping& grouping,
                               const Selection& selection) {
  std::vector<Summary> summaries;
  for (Group& group : attitudes.groups(grouping, selection))
    summaries.push_back(summary_of(std::move(group)));
  return summaries;
}

}  // namespace lodebook::reduction
