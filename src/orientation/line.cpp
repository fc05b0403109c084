// SPDX-License-Identifier: MIT
// Lines in space, alone and in planes.
#include <lodebook/orientation/line.hpp>

#include <cmath>

#include "dust.hpp"

namespace lodebook {

Vector direction_of(double trend, double plunge) {
  const Angle along = Angle::from_degrees(trend).value();
  const Angle down = Angle::from_degrees(plunge).value();
  return {cos(along) * cos(down), sin(along) * cos(down), sin(down)};
}

TrendAndPlunge line_of_axis(Vector axis) {
  const Vector down = axis.down < -dust ? -axis : axis;
  const double level = std::hypot(down.north, down.east);
  if (level < dust) return {0, 90};
  const double trend = wrap_degrees(Angle::atan2(down.east, down.north).degrees());
  return {trend, down.down > dust ? Angle::atan2(down.down, level).degrees() : 0.0};
}

TrendAndPlunge line_of_arrow(Vector arrow) {
  const TrendAndPlunge line = line_of_axis(arrow);
  if (arrow.down >= -dust) return line;
  return {wrap_degrees(line.trend + 180), -line.plunge};
}

Angle trend_from_strike(Rake rake, Dip dip) {
  return Angle::atan2(sin(rake.angle()) * cos(dip.angle()), cos(rake.angle()));
}

Plunge plunge_of_rake(Rake rake, Dip dip) {
  // The arc sine loses half its digits near 90 degrees; the arc tangent of down over level does
  // not.
  const double down = sin(rake.angle()) * sin(dip.angle());
  const double level = std::hypot(cos(rake.angle()), sin(rake.angle()) * cos(dip.angle()));
  return Plunge::from_degrees(Angle::atan2(down, level).degrees()).value();
}

Dip apparent_dip(Dip dip, Angle section) {
  const double down = sin(dip.angle()) * std::abs(sin(section));
  return Dip::from_degrees(Angle::atan2(down, cos(dip.angle())).degrees()).value();
}

Angle angle_out_of_plane(Vector line, Vector pole) {
  return Angle::atan2(std::abs(dot(line, pole)), norm(cross(line, pole)));
}

std::optional<Vector> intersection(Vector pole, Vector other_pole) {
  const std::optional<Vector> axis = unit(cross(pole, other_pole));
  return axis && axis->down < 0 ? -*axis : axis;
}

}  // namespace lodebook
