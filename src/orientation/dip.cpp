// SPDX-License-Identifier: MIT
// Percent grades.
#include <lodebook/orientation/dip.hpp>

namespace lodebook {

double degrees_from_percent(double percent) {
  return Angle::atan2(percent, 100).degrees();
}

}  // namespace lodebook
