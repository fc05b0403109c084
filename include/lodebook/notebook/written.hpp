// SPDX-License-Identifier: MIT
// Figures as they were typed: notation and digits kept beside the value.
#pragma once

#include <lodebook/notebook/date.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::notebook {

/// What was typed of a figure's own error.
struct OwnError {
  /// One sigma, in the figure's unit; 0 where none was typed.
  double sigma = 0;
  /// Marked as rough: `~`, or `about` behind the reading.
  bool rough = false;
};

enum class Notation : std::uint8_t { azimuth, quadrant, point };

/// A bearing in the notation in which it was typed.
struct Bearing {
  /// Azimuth, or quadrant angle, in degrees; unused for a point.
  double angle = 0;
  Notation notation = Notation::azimuth;
  QuadrantBearing::Pole pole = QuadrantBearing::Pole::north;
  QuadrantBearing::Side side = QuadrantBearing::Side::east;
  Point point = Point::N;
  /// Digits typed before the point (azimuths), and decimals: two for minutes, four for seconds.
  std::uint8_t digits = 0;
  std::uint8_t decimals = 0;
  OwnError own{};

  /// The direction on the dial, in [0, 360).
  Azimuth<north::dial> azimuth() const;
};

/// An angle from the horizontal, or within a plane: degrees or a percent grade.
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

  /// `pace` is the length of one pace in metres.
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

/// A time of day.
struct Time {
  std::uint8_t hour = 0;
  std::uint8_t minute = 0;
};

}  // namespace lodebook::notebook
