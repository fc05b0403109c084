// SPDX-License-Identifier: MIT
// Corrects one reading, takes one mean and prints both, to link every part of the package.
#include <array>
#include <cstdio>
#include <string>

#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/declination.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/precision.hpp>
#include <lodebook/orientation/quadrant.hpp>

int main() {
  using namespace lodebook;
  const QuadrantBearing read = QuadrantBearing::of_degrees(310);
  const auto dial = Azimuth<north::dial>::from_degrees(read.degrees()).value();
  const auto geographic =
      to_geographic(to_magnetic(dial, Declination()), Declination::east(24.6).value());

  const auto plane = Plane<north::geographic>::from_strike(
      geographic, Dip::from_degrees(30).value(), HandRule::right);
  const std::array<Vector, 1> poles = {plane.pole()};
  const StrikeAndDip mean = plane_of_pole(mean_of_axes(poles).value().axis);
  const double sigma = strike_sigma(0.5, 1, plane.dip());

  std::string text;
  append_figure(text, rounded_azimuth(mean.strike, 1), 1, 3);
  text += '/';
  append_figure(text, rounded(mean.dip, 0), 0, 2);
  text += " +-";
  append_figure(text, rounded(sigma, 1), 1);
  std::puts(text.c_str());
  return text == "334.6/30 +-2.1" ? 0 : 1;
}
