// SPDX-License-Identifier: MIT
// Figures as typed: the value, its notation and its digits.
#pragma once

#include <array>
#include <string_view>

#include <lodebook/notebook/date.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::notebook {

/// The error that was typed with a figure.
struct OwnError {
  /// One sigma, in the unit of the figure; 0 if none was typed.
  double sigma = 0;
  /// Marked as rough: `~`, or `about` behind the reading.
  bool rough = false;
};

enum class Notation : std::uint8_t { azimuth, quadrant, point };

/// The north that a bearing is said to be read from (`grid`, `true`, `magnetic` behind it); none
/// where the dial's settings tell.
enum class OwnNorth : std::uint8_t { none, geographic, magnetic, grid };
/// The word for it; empty for none.
constexpr std::string_view word_of(OwnNorth north) {
  constexpr std::array<std::string_view, 4> words = {"", "true", "magnetic", "grid"};
  return words[static_cast<std::size_t>(north)];
}

/// A bearing in the notation in which it was typed.
struct Bearing {
  /// In degrees: an azimuth from 0 to 360, or a quadrant angle from 0 to 90. Unused for a point.
  double angle = 0;
  Notation notation = Notation::azimuth;
  QuadrantBearing::Pole pole = QuadrantBearing::Pole::north;
  QuadrantBearing::Side side = QuadrantBearing::Side::east;
  Point point = Point::N;
  /// Digits typed before the decimal point, and decimals. Minutes count as two decimals, seconds as
  /// four.
  std::uint8_t digits = 0;
  std::uint8_t decimals = 0;
  OwnNorth north = OwnNorth::none;
  OwnError own{};

  /// The direction as read, on the dial or from its own north, in [0, 360).
  Azimuth<north::dial> azimuth() const;
};

/// A dip, plunge, slope or rake: degrees, or a grade in percent.
struct Slope {
  /// As typed, with its sign.
  double value = 0;
  bool percent = false;
  std::uint8_t digits = 0;
  std::uint8_t decimals = 0;
  OwnError own{};

  double degrees() const { return percent ? degrees_from_percent(value) : value; }
};

enum class LengthUnit : std::uint8_t { metres, feet, paces };

/// The international foot in metres, exact (1959 agreement).
inline constexpr double metres_per_foot = 0.3048;

/// A length in the unit in which it was typed.
struct Length {
  double value = 0;
  LengthUnit unit = LengthUnit::metres;
  OwnError own{};

  /// `pace` is the length of one pace in metres; only a length in paces needs it.
  double metres(double pace) const {
    switch (unit) {
      case LengthUnit::feet:
        return value * metres_per_foot;
      case LengthUnit::paces:
        return value * pace;
      case LengthUnit::metres:
        break;
    }
    return value;
  }
};

/// A time of day: hour 0 to 23, minute 0 to 59.
struct Time {
  std::uint8_t hour = 0;
  std::uint8_t minute = 0;
};

}  // namespace lodebook::notebook
