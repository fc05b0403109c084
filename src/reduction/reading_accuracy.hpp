// SPDX-License-Identifier: MIT
// How well one reading is known: the accuracy in force, and what its own notation adds to it.
#pragma once

#include <lodebook/notebook/reading.hpp>
#include <lodebook/reduction/settings.hpp>

namespace lodebook::reduction {

/// One-sigma errors of a reading, degrees.
struct ReadingAccuracy {
  double bearing = 0;
  double dip = 0;
  /// The bearing was told by a point of the rose, which is most of its error.
  bool by_point = false;
};

/// What a bearing stands for: one letter (`N`) names a quarter of the rose for a dip direction, and
/// is a bearing of 0, 90, 180 or 270 for all else.
enum class Told : std::uint8_t { direction, dip_direction };

/// Of a bearing, and of the angle from the horizontal read with it. A point of three letters is
/// told to 22.5 degrees, of two to 45, one as a dip direction to 90; that joins the instrument's
/// error.
ReadingAccuracy accuracy_of(const notebook::Bearing& bearing, Told told, const Accuracy& in_force);

/// One sigma of an angle from the horizontal, degrees, and of a distance, percent. What was typed
/// with a figure is its error; what is rough is not known better than 5 degrees or 20 percent.
double accuracy_of(const notebook::Slope& slope, const Accuracy& in_force);
double accuracy_of(const notebook::Length& distance, const Accuracy& in_force);

ReadingAccuracy accuracy_of(const notebook::PlaneAttitude& plane, const Accuracy& in_force);
ReadingAccuracy accuracy_of(const notebook::LineAttitude& line, const Accuracy& in_force);

}  // namespace lodebook::reduction
