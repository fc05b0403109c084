// SPDX-License-Identifier: MIT
// The offsets between norths, and the only functions that carry an azimuth from one to another.
//
// true = read - set + declination, magnetic = read - set, grid = true - convergence, all angles
// positive to the east (FM 3-25.26, ch. 6).
#pragma once

#include <optional>

#include <lodebook/orientation/azimuth.hpp>

namespace lodebook {

/// How far magnetic north lies from true north. Built by side only, so that a sign cannot be
/// forgotten; east is positive inside. Not an Angle: it changes the frame of an azimuth.
class Declination {
 public:
  /// Magnetic north is true north.
  constexpr Declination() = default;

  /// 0 to 180 degrees; nothing otherwise.
  static constexpr std::optional<Declination> east(double degrees) {
    if (!(degrees >= 0 && degrees <= 180)) return std::nullopt;
    return Declination(degrees + 0.0);
  }
  static constexpr std::optional<Declination> west(double degrees) {
    if (!(degrees >= 0 && degrees <= 180)) return std::nullopt;
    return Declination(0.0 - degrees);
  }

  constexpr double degrees_east() const { return degrees_east_; }
  Angle eastward() const { return Angle(degrees_east_); }
  friend constexpr bool operator==(Declination, Declination) = default;

 private:
  explicit constexpr Declination(double east) : degrees_east_(east) {}

  double degrees_east_ = 0;
};

/// How far the map's northing lies clockwise (east) of true north.
class Convergence {
 public:
  constexpr Convergence() = default;

  /// 0 to 180 degrees; nothing otherwise.
  static constexpr std::optional<Convergence> east(double degrees) {
    if (!(degrees >= 0 && degrees <= 180)) return std::nullopt;
    return Convergence(degrees + 0.0);
  }
  static constexpr std::optional<Convergence> west(double degrees) {
    if (!(degrees >= 0 && degrees <= 180)) return std::nullopt;
    return Convergence(0.0 - degrees);
  }

  constexpr double degrees_east() const { return degrees_east_; }
  Angle eastward() const { return Angle(degrees_east_); }
  friend constexpr bool operator==(Convergence, Convergence) = default;

 private:
  explicit constexpr Convergence(double east) : degrees_east_(east) {}

  double degrees_east_ = 0;
};

inline Azimuth<north::magnetic> to_magnetic(Azimuth<north::dial> read, Declination set) {
  return Azimuth<north::magnetic>::clockwise(read - Azimuth<north::dial>() - set.eastward());
}
inline Azimuth<north::geographic> to_geographic(Azimuth<north::magnetic> azimuth,
                                                Declination declination) {
  return Azimuth<north::geographic>::clockwise(azimuth - Azimuth<north::magnetic>() +
                                               declination.eastward());
}
inline Azimuth<north::magnetic> to_magnetic(Azimuth<north::geographic> azimuth,
                                            Declination declination) {
  return Azimuth<north::magnetic>::clockwise(azimuth - Azimuth<north::geographic>() -
                                             declination.eastward());
}
inline Azimuth<north::grid> to_grid(Azimuth<north::geographic> azimuth, Convergence convergence) {
  return Azimuth<north::grid>::clockwise(azimuth - Azimuth<north::geographic>() -
                                         convergence.eastward());
}

}  // namespace lodebook
