// SPDX-License-Identifier: MIT
#include "reading_accuracy.hpp"

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

}  // namespace

ReadingAccuracy accuracy_of(const Bearing& bearing, Told told, const Accuracy& in_force) {
  ReadingAccuracy accuracy{in_force.bearing, in_force.dip};
  if (bearing.notation != Notation::point) return accuracy;
  const double by_point = step_sigma(step_of(bearing.point, told));
  accuracy.by_point = by_point > accuracy.bearing;
  accuracy.bearing = combined_sigma(accuracy.bearing, by_point);
  return accuracy;
}

ReadingAccuracy accuracy_of(const PlaneAttitude& plane, const Accuracy& in_force) {
  const bool towards = plane.form == PlaneAttitude::Form::dip_direction;
  return accuracy_of(plane.bearing, towards ? Told::dip_direction : Told::direction, in_force);
}

ReadingAccuracy accuracy_of(const LineAttitude& line, const Accuracy& in_force) {
  // The bearing of a rake only names an end of the strike.
  if (line.form == LineAttitude::Form::rake) return {in_force.bearing, in_force.dip};
  return accuracy_of(line.bearing, Told::direction, in_force);
}

}  // namespace lodebook::reduction
