// SPDX-License-Identifier: MIT
// Planes and their poles.
#include <lodebook/orientation/plane.hpp>

#include <lodebook/orientation/line.hpp>

namespace lodebook {

Vector pole_of(double strike, double dip) {
  const Angle along = Angle::from_degrees(strike).value();
  const Angle down = Angle::from_degrees(dip).value();
  return {sin(along) * sin(down), 0.0 - cos(along) * sin(down), cos(down)};
}

StrikeAndDip plane_of_pole(Vector pole) {
  const auto [trend, plunge] = line_of_axis(pole);
  if (plunge == 90) return {0, 0};
  return {wrap_degrees(trend + 90), 90 - plunge};
}

}  // namespace lodebook
