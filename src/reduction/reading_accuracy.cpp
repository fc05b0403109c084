// SPDX-License-Identifier: MIT
#include "reading_accuracy.hpp"

#include <algorithm>
#include <numbers>

#include <lodebook/orientation/precision.hpp>

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Degrees to which a point was told; 0 where it stands for a bearing.
double step_of(Point point, Told told) {
  switch (name_of(point).size()) {
    case 3:
      return 22.5;
    case 2:
      return 45;
    default:
      return told == Told::dip_direction ? 90 : 0;
  }
}

/// What is marked as rough is not known better than this: degrees, and percent of a distance.
constexpr double rough_angle = 5;
constexpr double rough_percent = 20;

}  // namespace

ReadingAccuracy accuracy_of(const Bearing& bearing, Told told, const Accuracy& in_force) {
  ReadingAccuracy accuracy{in_force.bearing, in_force.dip};
  if (bearing.own.sigma > 0) {
    accuracy.bearing = bearing.own.sigma;
    return accuracy;
  }
  if (bearing.notation == Notation::point) {
    const double by_point = step_sigma(step_of(bearing.point, told));
    accuracy.by_point = by_point > accuracy.bearing;
    accuracy.bearing = combined_sigma(accuracy.bearing, by_point);
  }
  if (bearing.own.rough) accuracy.bearing = std::max(accuracy.bearing, rough_angle);
  return accuracy;
}

double accuracy_of(const Slope& slope, const Accuracy& in_force) {
  if (slope.own.sigma == 0)
    return slope.own.rough ? std::max(in_force.dip, rough_angle) : in_force.dip;
  if (!slope.percent) return slope.own.sigma;
  // The slope of atan(p / 100).
  const double grade = slope.value / 100;
  return slope.own.sigma / 100 / (1 + grade * grade) * 180 / std::numbers::pi;
}

double accuracy_of(const Length& distance, const Accuracy& in_force) {
  if (distance.own.sigma > 0 && distance.value > 0)
    return 100 * distance.own.sigma / distance.value;
  return distance.own.rough ? std::max(in_force.distance_percent, rough_percent)
                            : in_force.distance_percent;
}

ReadingAccuracy accuracy_of(const PlaneAttitude& plane, const Accuracy& in_force) {
  const bool towards = plane.form == PlaneAttitude::Form::dip_direction;
  ReadingAccuracy accuracy =
      accuracy_of(plane.bearing, towards ? Told::dip_direction : Told::direction, in_force);
  accuracy.dip = accuracy_of(plane.dip, in_force);
  return accuracy;
}

ReadingAccuracy accuracy_of(const LineAttitude& line, const Accuracy& in_force) {
  // The bearing of a rake only names an end of the strike.
  const bool is_rake = line.form == LineAttitude::Form::rake;
  ReadingAccuracy accuracy = is_rake ? ReadingAccuracy{in_force.bearing, in_force.dip}
                                     : accuracy_of(line.bearing, Told::direction, in_force);
  accuracy.dip = accuracy_of(line.slope, in_force);
  return accuracy;
}

}  // namespace lodebook::reduction
