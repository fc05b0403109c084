// SPDX-License-Identifier: MIT
// Names of the sixteen points, and bearings in the four quadrants.
#include <lodebook/orientation/quadrant.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <lodebook/orientation/angle.hpp>

namespace lodebook {
namespace {

constexpr std::array<std::string_view, 16> names = {"N",  "NNE", "NE", "ENE", "E",  "ESE",
                                                    "SE", "SSE", "S",  "SSW", "SW", "WSW",
                                                    "W",  "WNW", "NW", "NNW"};

constexpr char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

}  // namespace

std::string_view name_of(Point point) {
  return names[static_cast<std::size_t>(point)];
}

std::optional<Point> point_named(std::string_view word) {
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (std::ranges::equal(word, names[i], {}, upper)) return static_cast<Point>(i);
  }
  return std::nullopt;
}

Point nearest_eighth(double degrees) {
  const double wrapped = wrap_degrees(degrees);
  const int quarter = static_cast<int>(wrapped / 90);
  const double rest = wrapped - 90 * quarter;
  int eighth = 2 * quarter;
  if (rest >= 67.5) {
    eighth += 2;
  } else if (rest > 22.5) {
    eighth += 1;
  }
  return static_cast<Point>(eighth % 8 * 2);
}

QuadrantBearing QuadrantBearing::of_degrees(double azimuth) {
  const double wrapped = wrap_degrees(azimuth);
  if (wrapped <= 90) return {Pole::north, wrapped, Side::east};
  if (wrapped <= 180) return {Pole::south, 180 - wrapped, Side::east};
  if (wrapped < 270) return {Pole::south, wrapped - 180, Side::west};
  return {Pole::north, 360 - wrapped, Side::west};
}

}  // namespace lodebook
