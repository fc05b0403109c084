// SPDX-License-Identifier: MIT
#include "elevations.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <map>
#include <numbers>

namespace lodebook::reduction {

namespace {

constexpr double refraction = 0.13;
constexpr double earth_radius_m = 6371000;
/// Straight up or down a vertical angle says nothing of a height, degrees.
constexpr double steepest_sight = 89;

/// One rise and its variance.
struct Rise {
  double metres = 0;
  double variance = 0;
};

Rise rise_of(const Observed& sight, double distance_m, double distance_sigma_m) {
  const Angle vertical = *Angle::from_degrees(*sight.vertical);
  const double steepness = tan(vertical);
  const double secant_squared = 1 + steepness * steepness;
  const double by_angle = distance_m * secant_squared * sight.accuracy.dip * std::numbers::pi / 180;
  return {
      distance_m * steepness + (1 - refraction) * distance_m * distance_m / (2 * earth_radius_m),
      by_angle * by_angle + steepness * steepness * distance_sigma_m * distance_sigma_m};
}

/// A weighted mean of heights.
class Mean {
 public:
  void add(double height, double variance) {
    // Differences from the first keep the squares small.
    if (count_ == 0) first_ = lowest_ = highest_ = height;
    const double weight = 1 / std::max(variance, 1e-6);
    const double off = height - first_;
    sum_ += weight * off;
    squares_ += weight * off * off;
    weights_ += weight;
    lowest_ = std::min(lowest_, height);
    highest_ = std::max(highest_, height);
    ++count_;
  }
  std::optional<FoundElevation> result() const {
    if (count_ == 0) return std::nullopt;
    FoundElevation found;
    found.elevation_m = first_ + sum_ / weights_;
    found.sigma_m = std::sqrt(1 / weights_);
    found.sights = count_;
    found.lowest_m = lowest_;
    found.highest_m = highest_;
    const double chi_square = std::max(squares_ - sum_ * sum_ / weights_, 0.0);
    found.agrees = chance_of(chi_square, count_ - 1) >= least_chance;
    if (!found.agrees) found.sigma_m *= std::sqrt(chi_square / static_cast<double>(count_ - 1));
    return found;
  }

 private:
  double first_ = 0;
  double sum_ = 0;
  double squares_ = 0;
  double weights_ = 0;
  double lowest_ = 0;
  double highest_ = 0;
  std::size_t count_ = 0;
};

template <class Located>
std::optional<Rise> height_of(const Located& one) {
  if (one.stated_elevation_m) return Rise{*one.stated_elevation_m, 0};
  if (one.elevation)
    return Rise{one.elevation->elevation_m, one.elevation->sigma_m * one.elevation->sigma_m};
  return std::nullopt;
}

}  // namespace

void find_elevations(const Observations& seen, Fixes& found) {
  std::map<notebook::NameId, std::size_t> landmarks;
  for (std::size_t i = 0; i < seen.landmarks.size(); ++i)
    landmarks.emplace(seen.landmarks[i].name, i);
  struct Line {
    std::size_t station;
    std::size_t landmark;
    Rise rise;
  };
  std::vector<Line> lines;
  for (const Observed& sight : seen.sights) {
    if (sight.doubtful || !sight.vertical || std::abs(*sight.vertical) >= steepest_sight) continue;
    const auto target = landmarks.find(sight.target);
    const LocatedStation& station = found.stations[sight.station];
    if (target == landmarks.end() || !station.position) continue;
    const LocatedLandmark& landmark = found.landmarks[target->second];
    if (!landmark.position) continue;
    const double sigma = std::hypot(circular_sigma(station.covariance.value_or(Covariance())),
                                    circular_sigma(landmark.covariance.value_or(Covariance())));
    lines.push_back(
        {sight.station, target->second,
         rise_of(sight, earth::distance_m(*station.position, *landmark.position), sigma)});
  }
  std::vector<Mean> of_stations(found.stations.size());
  for (const Line& line : lines) {
    if (const auto height = height_of(found.landmarks[line.landmark]))
      of_stations[line.station].add(height->metres - line.rise.metres,
                                    height->variance + line.rise.variance);
  }
  for (std::size_t i = 0; i < found.stations.size(); ++i) {
    if (!found.stations[i].stated_elevation_m)
      found.stations[i].elevation = of_stations[i].result();
  }
  std::vector<Mean> of_landmarks(found.landmarks.size());
  for (const Line& line : lines) {
    if (const auto height = height_of(found.stations[line.station]))
      of_landmarks[line.landmark].add(height->metres + line.rise.metres,
                                      height->variance + line.rise.variance);
  }
  for (std::size_t i = 0; i < found.landmarks.size(); ++i) {
    if (!found.landmarks[i].stated_elevation_m)
      found.landmarks[i].elevation = of_landmarks[i].result();
  }
}

}  // namespace lodebook::reduction
