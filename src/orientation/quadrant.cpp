// SPDX-License-Identifier: MIT
// Names of the sixteen points, and bearings in the four quadrants.
#include <lodebook/orientation/quadrant.hpp>

#include <array>
#include <cstddef>
#include <lodebook/orientation/angle.hpp>

namespace lodebook {
namespace {

constexpr std::array<std::string_view, 16> names = {"N",  "NNE", "NE", "ENE", "E",  "ESE",
                                                    "SE", "SSE", "S",  "SSW", "SW", "WSW",
                                                    "W",  "WNW", "NW", "NNW"};

/// 1 to 4 for N, E, S and W in any case; 0 for anything else.
constexpr std::size_t cardinal(char c) {
  switch (c) {
    case 'N':
    case 'n':
      return 1;
    case 'E':
    case 'e':
      return 2;
    case 'S':
    case 's':
      return 3;
    case 'W':
    case 'w':
      return 4;
    default:
      return 0;
  }
}

constexpr std::size_t longest_name = 3;
constexpr std::uint8_t no_point = 16;

/// The letters as a number to the base of five; 0 for a word that holds any other.
constexpr std::size_t spelling(std::string_view word) {
  std::size_t number = 0;
  for (const char c : word) {
    if (cardinal(c) == 0) return 0;
    number = 5 * number + cardinal(c);
  }
  return number;
}

constexpr std::array<std::uint8_t, 125> points_by_spelling() {
  std::array<std::uint8_t, 125> points{};
  points.fill(no_point);
  for (std::size_t i = 0; i < names.size(); ++i)
    points[spelling(names[i])] = static_cast<std::uint8_t>(i);
  return points;
}
constexpr std::array<std::uint8_t, 125> point_by_spelling = points_by_spelling();

}  // namespace

std::string_view name_of(Point point) {
  return names[static_cast<std::size_t>(point)];
}

std::optional<Point> point_named(std::string_view word) {
  if (word.size() > longest_name) return std::nullopt;
  const std::uint8_t point = point_by_spelling[spelling(word)];
  if (point == no_point) return std::nullopt;
  return static_cast<Point>(point);
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
