// SPDX-License-Identifier: MIT
// A horizontal direction, measured clockwise from one of four norths that do not mix.
#pragma once

#include <optional>

#include <lodebook/orientation/angle.hpp>

namespace lodebook {

/// The zero directions. `dial` is what a reading counts from: on a compass magnetic north turned
/// by the declination that was set on it. `geographic` is true north; `grid` is the map's northing.
namespace north {
struct dial {};
struct magnetic {};
struct geographic {};
struct grid {};
}  // namespace north

/// A direction in degrees clockwise from its north, in [0, 360). A point, not a difference: two
/// azimuths of one north subtract to an Angle; adding two, or mixing norths, does not compile.
template <class North>
class Azimuth {
 public:
  /// The north itself.
  constexpr Azimuth() = default;

  /// From 0 to 360 degrees, 360 being stored as 0; nothing outside that range or for NaN.
  static constexpr std::optional<Azimuth> from_degrees(double degrees) {
    if (!(degrees >= 0 && degrees <= 360)) return std::nullopt;
    return Azimuth(degrees == 360 ? 0.0 : degrees + 0.0);
  }

  /// The direction that lies `angle` clockwise of this north, wrapped.
  static Azimuth clockwise(Angle angle) { return Azimuth(wrap_degrees(angle.degrees())); }

  constexpr double degrees() const { return degrees_; }

  /// The opposite direction; exact for whole degrees.
  constexpr Azimuth opposite() const {
    if (degrees_ >= 180) return Azimuth(degrees_ - 180);
    const double turned = degrees_ + 180;  // 360 for the last number below 180: rounding
    return Azimuth(turned < 360 ? turned : 0.0);
  }

  friend Azimuth operator+(Azimuth a, Angle b) {
    return Azimuth(wrap_degrees(a.degrees_ + b.degrees()));
  }
  friend Azimuth operator-(Azimuth a, Angle b) {
    return Azimuth(wrap_degrees(a.degrees_ - b.degrees()));
  }
  /// How far clockwise `a` lies from `b`, in (-180, 180].
  friend Angle operator-(Azimuth a, Azimuth b) { return a.clockwise_from(b); }
  friend constexpr bool operator==(Azimuth, Azimuth) = default;

 private:
  explicit constexpr Azimuth(double degrees) : degrees_(degrees) {}

  // A member, because Angle's friendship does not reach the friends of its friends.
  Angle clockwise_from(Azimuth other) const {
    const double wrapped = wrap_degrees(degrees_ - other.degrees_);
    return Angle(wrapped > 180 ? wrapped - 360 : wrapped);
  }

  double degrees_ = 0;
};

/// The smaller angle between two directions, in [0, 180].
template <class North>
Angle separation(Azimuth<North> a, Azimuth<North> b) {
  const Angle difference = a - b;
  return difference < Angle{} ? -difference : difference;
}

}  // namespace lodebook
