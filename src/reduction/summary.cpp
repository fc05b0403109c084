// SPDX-License-Identifier: MIT
#include <lodebook/reduction/summary.hpp>

#include <algorithm>
#include <array>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/plane.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <span>

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

/// A mean whose cone or arc is wider says no more than the half of the sky that it is in.
constexpr double widest_mean = 25;

/// Whether two readings of a group are repeats of one surface.
bool is_repeat(const Attitude& one, const Attitude& other) {
  return one.surface != 0 && one.surface == other.surface;
}

/// The readings of one surface as one; nothing where they have no mean.
std::optional<MeasuredSurface> surface_of(std::span<const Attitude* const> readings, Ends ends) {
  const Attitude& first = *readings.front();
  const bool has_direction =
      std::ranges::all_of(readings, [](const Attitude* reading) { return reading->has_direction; });
  if (readings.size() == 1)
    return MeasuredSurface{first.axis, has_direction ? first.azimuth : std::nullopt};
  std::vector<Vector> axes;
  for (const Attitude* const reading : readings)
    axes.push_back(reading->axis);
  const auto mean = mean_of(axes, ends);
  if (!mean) return std::nullopt;
  MeasuredSurface surface{mean->axis, std::nullopt};
  if (has_direction) {
    surface.azimuth =
        first.is_plane ? plane_of_pole(mean->axis).strike : line_of_arrow(mean->axis).trend;
  }
  return surface;
}

/// Those of a group's readings, but for some that are left out, by their places in order.
std::vector<MeasuredSurface> surfaces_of(const Group& group, Ends ends,
                                         const std::vector<Apart>& left_out = {}) {
  std::vector<MeasuredSurface> surfaces;
  std::vector<const Attitude*> readings;
  const auto finish = [&] {
    if (readings.empty()) return;
    if (const auto surface = surface_of(readings, ends)) surfaces.push_back(*surface);
    readings.clear();
  };
  auto next = left_out.begin();
  for (std::size_t i = 0; i < group.members.size(); ++i) {
    const Attitude* const member = group.members[i];
    if (next != left_out.end() && next->index == i) {
      ++next;
      continue;
    }
    if (!readings.empty() && !is_repeat(*readings.back(), *member)) finish();
    readings.push_back(member);
  }
  finish();
  return surfaces;
}

std::vector<Vector> axes_of(const std::vector<MeasuredSurface>& surfaces) {
  std::vector<Vector> axes;
  axes.reserve(surfaces.size());
  for (const MeasuredSurface& surface : surfaces)
    axes.push_back(surface.axis);
  return axes;
}

/// By the eigenvalues alone.
Fabric fabric_of(const std::vector<Vector>& axes) {
  const OrientationTensor tensor = *orientation_tensor(axes);
  if (chance_of_evenness(tensor, axes.size()) >= 0.05) return Fabric::no_preference;
  const auto& [first, second, third] = tensor.eigenvalues;
  if (second < tight_share) return Fabric::cluster;
  if (third == 0) return Fabric::girdle;
  const auto shape = tensor.shape();
  return !shape || *shape >= 1 ? Fabric::cluster : Fabric::girdle;
}

/// How the axes lie but for those apart from their mean: one of those alone would stretch a cluster
/// into a girdle.
void find_fabric(Summary& summary, const std::vector<Apart>& apart, Ends ends) {
  constexpr std::size_t fewest = 5;
  if (summary.surfaces.size() < fewest) return;
  const std::vector<Vector> rest = axes_of(surfaces_of(summary.group, ends, apart));
  if (rest.empty()) return;
  summary.sets = two_sets(rest, ends);
  summary.fabric = summary.sets && !summary.group.folds ? Fabric::two_sets : fabric_of(rest);
}

void find_girdle(Summary& summary, const std::vector<Vector>& axes) {
  const bool is_one = summary.fabric == Fabric::girdle && !summary.group.is_arrow;
  if (is_one && summary.tensor->has_best_circle())
    summary.girdle = Girdle{summary.tensor->axes[2], girdle_pole_cone95(axes)};
}

/// Where the fabric gives readings a place, those that are not there.
std::vector<Apart> far_off_of(const Summary& summary, const std::vector<Vector>& readings,
                              std::vector<Apart> from_mean, Ends ends) {
  if (summary.girdle) return apart_from_girdle(readings);
  switch (summary.fabric) {
    case Fabric::too_few:
    case Fabric::no_preference:
      return {};
    case Fabric::two_sets:
      return apart_from_sets(readings, *summary.sets, ends);
    case Fabric::cluster:
    case Fabric::girdle:
      return from_mean;
  }
  return {};
}

std::optional<NoMean> why_no_mean(const Summary& summary) {
  if (!summary.mean) return NoMean::none_better;
  if (summary.sets) return NoMean::two_sets;
  const DirectionMean& mean = *summary.mean;
  const bool is_wide = mean.precision && (!mean.cone95 || *mean.cone95 > widest_mean);
  return is_wide ? std::optional(NoMean::scattered) : std::nullopt;
}

/// The strike or trend of a surface of which nothing else was read; nothing where its readings have
/// no mean.
std::optional<double> half_azimuth(std::span<const Attitude* const> readings, bool axial) {
  std::vector<double> azimuths;
  for (const Attitude* const reading : readings) {
    if (reading->has_direction) azimuths.push_back(*reading->azimuth);
  }
  if (azimuths.size() == 1) return azimuths.front();
  return axial ? axial_mean(azimuths).azimuth : circular_mean(azimuths).azimuth;
}

void find_directions(Summary& summary) {
  const auto add = [&summary](const std::optional<double>& azimuth) {
    if (azimuth) {
      summary.directions.push_back(*azimuth);
    } else {
      ++summary.undirected;
    }
  };
  for (const MeasuredSurface& surface : summary.surfaces)
    add(surface.azimuth);
  const std::span<const Attitude* const> halves = summary.group.halves;
  for (std::size_t i = 0, end = 0; i < halves.size(); i = end) {
    while (end < halves.size() && (end == i || is_repeat(*halves[i], *halves[end])))
      ++end;
    // Beside whole readings of the same surface a half says nothing. Surfaces are in log order.
    const std::size_t surface = halves[i]->surface;
    const bool is_known = surface != 0 && std::ranges::binary_search(summary.group.members, surface,
                                                                     {}, &Attitude::surface);
    if (!is_known) add(half_azimuth(halves.subspan(i, end - i), summary.group.is_axial()));
  }
}

void find_azimuths(Summary& summary) {
  find_directions(summary);
  const std::vector<double>& azimuths = summary.directions;
  std::vector<Vector> directions;
  directions.reserve(azimuths.size());
  for (const double azimuth : azimuths)
    directions.push_back(direction_of(azimuth, 0));
  const bool is_axial = summary.group.is_axial();
  summary.azimuths = is_axial ? axial_mean(azimuths) : circular_mean(azimuths);
  const CircularMean& mean = summary.azimuths;
  constexpr std::size_t fewest = 3;
  if (mean.count == 0) return;
  if (!mean.azimuth) {
    summary.no_azimuth = NoMean::none_better;
  } else if (two_sets(directions, is_axial ? Ends::both : Ends::one)) {
    summary.no_azimuth = NoMean::two_sets;
  } else if (mean.count >= fewest && !(mean.arc95 && *mean.arc95 <= widest_mean)) {
    summary.no_azimuth = NoMean::scattered;
  }
}

}  // namespace

std::string_view name_of(Fabric fabric) {
  constexpr std::array<std::string_view, 5> names = {"too few", "no preference", "cluster",
                                                     "girdle", "two sets"};
  return names[static_cast<std::size_t>(fabric)];
}

std::string_view name_of(NoMean why) {
  constexpr std::array<std::string_view, 3> names = {"no direction stands out", "two clear sets",
                                                     "too scattered"};
  return names[static_cast<std::size_t>(why)];
}

Summary summary_of(Group group) {
  Summary summary;
  summary.group = std::move(group);
  const Group& of = summary.group;
  if (of.members.empty() && of.halves.empty()) return summary;
  const Ends ends = of.is_arrow ? Ends::one : Ends::both;
  summary.surfaces = surfaces_of(of, ends);
  const std::vector<Vector> axes = axes_of(summary.surfaces);
  summary.mean = mean_of(axes, ends);
  find_azimuths(summary);
  summary.tensor = orientation_tensor(axes);
  if (summary.tensor) {
    summary.chance_of_evenness = chance_of_evenness(*summary.tensor, axes.size());
    std::vector<Vector> readings;
    readings.reserve(of.members.size());
    for (const Attitude* const member : of.members)
      readings.push_back(member->axis);
    std::vector<Apart> apart = apart_from_mean(readings, ends);
    find_fabric(summary, apart, ends);
    find_girdle(summary, axes);
    apart = far_off_of(summary, readings, std::move(apart), ends);
    for (const auto& [index, degrees] : apart)
      summary.far_off.push_back({of.members[index], degrees});
    summary.more_far_off = apart.size() >= most_apart;
  }
  if (!of.members.empty()) summary.no_mean = why_no_mean(summary);
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
