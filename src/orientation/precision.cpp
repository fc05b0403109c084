// SPDX-License-Identifier: MIT
// How well a strike, a trend, a pole or a line is known.
#include <lodebook/orientation/precision.hpp>

#include <cmath>
#include <limits>

namespace lodebook {
namespace {

constexpr double unknown = std::numeric_limits<double>::infinity();

}  // namespace

double strike_sigma(double bearing_sigma, double dip_sigma, Dip dip) {
  const double slope = sin(dip.angle());
  return slope == 0 ? unknown : combined_sigma(bearing_sigma, dip_sigma / slope);
}

double worst_strike_error(Angle levelling_error, Dip dip) {
  const double error = std::abs(levelling_error.degrees());
  if (error >= dip.degrees()) return 90;
  const double sine = std::abs(tan(levelling_error)) / tan(dip.angle());
  return Angle::atan2(sine, std::sqrt((1 - sine) * (1 + sine))).degrees();
}

double trend_sigma(double bearing_sigma, Plunge plunge) {
  const double level = cos(plunge.angle());
  return level == 0 ? unknown : bearing_sigma / level;
}

RakeTurnSigma rake_turn_sigma(double rake_sigma, double dip_sigma, Dip dip, Rake rake) {
  const double down = sin(rake.angle());
  const double along = cos(rake.angle());
  const double level = cos(dip.angle());
  // cos^2 of the plunge.
  const double flat = along * along + down * down * level * level;
  if (flat == 0) return {unknown, unknown};
  return {rake_sigma * level / flat, dip_sigma * sin(dip.angle()) * down * along / flat};
}

double step_sigma(double step) {
  return step / std::sqrt(12.0);
}

double pole_sigma(double bearing_sigma, double dip_sigma, Dip dip) {
  return combined_sigma(dip_sigma, bearing_sigma * sin(dip.angle()));
}

double line_sigma(double bearing_sigma, double dip_sigma) {
  return combined_sigma(dip_sigma, bearing_sigma);
}

}  // namespace lodebook
