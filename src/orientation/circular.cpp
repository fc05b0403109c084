// SPDX-License-Identifier: MIT
#include <lodebook/orientation/circular.hpp>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>

#include "dust.hpp"

namespace lodebook {
namespace {

constexpr double chi_square_95_percent = 3.841458820694124;  // one degree of freedom

double rayleigh_chance(double count, double length) {
  const double exponent =
      std::sqrt(1 + 4 * count + 4 * (count * count - length * length)) - (1 + 2 * count);
  return std::min(1.0, std::exp(exponent));
}

/// Of a resultant of that length; nothing where it is too short.
std::optional<double> upton_arc(double count, double length) {
  constexpr double fewest = 3;
  if (count < fewest) return std::nullopt;
  const double chi = chi_square_95_percent;
  const double share = length / count;
  double cosine = 0;
  if (share < 0.9) {
    const double excess = 2 * length * length - count * chi;
    if (excess <= 0) return std::nullopt;
    cosine = std::sqrt(2 * count * excess / (4 * count - chi)) / length;
  } else {
    const double rest = (count * count - length * length) * std::exp(chi / count);
    const double square = count * count - rest;
    if (square <= 0) return std::nullopt;
    cosine = std::sqrt(square) / length;
  }
  if (!(cosine <= 1)) return 0.0;  // rounding, where all coincide
  return Angle::atan2(std::sqrt(1 - cosine * cosine), cosine).degrees();
}

/// Of azimuths times `fold`: 1 for arrows, 2 for axes.
CircularMean mean_of(std::span<const double> azimuths, double fold) {
  double north = 0;
  double east = 0;
  for (const double azimuth : azimuths) {
    const Angle angle = Angle::from_degrees(wrap_degrees(fold * azimuth)).value();
    north += cos(angle);
    east += sin(angle);
  }
  CircularMean mean;
  mean.count = azimuths.size();
  if (azimuths.empty()) return mean;
  const auto count = static_cast<double>(mean.count);
  const double length = std::min(std::hypot(north, east), count);
  mean.resultant = length / count;
  if (mean.resultant < dust) return mean;
  mean.azimuth = wrap_degrees(Angle::atan2(east, north).degrees()) / fold;
  mean.chance = rayleigh_chance(count, length);
  if (const auto arc = upton_arc(count, length)) mean.arc95 = *arc / fold;
  return mean;
}

}  // namespace

CircularMean circular_mean(std::span<const double> azimuths) {
  return mean_of(azimuths, 1);
}

CircularMean axial_mean(std::span<const double> azimuths) {
  return mean_of(azimuths, 2);
}

}  // namespace lodebook
