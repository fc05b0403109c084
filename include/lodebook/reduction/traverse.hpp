// SPDX-License-Identifier: MIT
// Legs from station to station: closed traverses are adjusted, open ones are carried on, and
// stations without a position get one.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <lodebook/earth/position.hpp>
#include <lodebook/reduction/ellipse.hpp>

namespace lodebook::reduction {

/// A station before its legs are used: its position, if known, and the covariance of its error.
/// Without a position the covariance has no meaning.
struct TraverseStation {
  std::optional<earth::Position> position;
  Covariance covariance;
};

/// A leg as measured: horizontal distance in metres, true azimuth at `from` in degrees, and one
/// sigma of each. The sigma of the azimuth is that of its reading, without the declination.
struct TraverseLeg {
  std::size_t from = 0;
  std::size_t to = 0;
  double azimuth = 0;
  double distance_m = 0;
  double azimuth_sigma = 0;
  double distance_sigma_m = 0;
  /// Read by the needle, and so turned by an error of the declination.
  bool by_needle = true;
};

/// A leg of a traverse, in the direction of the traverse: departure (east) and latitude (north) in
/// metres, and the correction that the adjustment adds to each. For all legs, north is that of the
/// first station.
struct TraversedLeg {
  std::size_t leg = 0;
  /// The traverse follows the leg from `to` to `from`.
  bool reversed = false;
  double departure_m = 0;
  double latitude_m = 0;
  double departure_correction_m = 0;
  double latitude_correction_m = 0;
};

/// A sequence of legs: a loop, a connection of two known stations, or an open traverse.
struct Traverse {
  enum class Kind { loop, between, open } kind = Kind::open;
  /// From the first to the last; a loop ends where it begins.
  std::vector<std::size_t> stations;
  std::vector<TraversedLeg> legs;
  double length_m = 0;
  /// Computed minus known place of the last station; zero for an open traverse.
  double departure_misclosure_m = 0;
  double latitude_misclosure_m = 0;
  double misclosure_m = 0;
  /// Length divided by misclosure: 500 means 1 in 500. Empty for an open traverse, without length,
  /// and for a misclosure up to a micrometre, which is rounding.
  std::optional<double> precision;
  /// The misclosure is larger than its errors explain (chi-square with two degrees of freedom, 1
  /// %); a millimetre in each direction is always allowed. Half of the misclosure is then added to
  /// the errors of the stations between, as one more sigma.
  bool contradicts = false;
};

/// A position that was computed from legs, with the covariance of its error.
struct TraversePlace {
  earth::Position position;
  Covariance covariance;
};

struct TraverseResult {
  /// In the order of computation: one group of connected stations after the other, the group with
  /// the first leg first. Every leg is in one of them, except a leg from a station to itself, which
  /// says nothing about positions.
  std::vector<Traverse> traverses;
  /// By station; set only for those that had no position and got one.
  std::vector<std::optional<TraversePlace>> placed;
};

/// Closes loops and connections of known stations by the compass rule (Bowditch 1808): each leg is
/// corrected in proportion to its length. Those with the fewest legs come first, open legs last.
/// Branches and several loops are allowed. A station that has got its position counts as known,
/// with its uncertainty. Loops without a connection to a known station are closed too, but give no
/// positions.
/// Each traverse is computed on a plane around its first station (earth::LocalPlane). The errors of
/// the known stations and of the declination (`declination_sigma`, degrees, common to all legs by
/// the needle) are propagated exactly through all traverses. Those of the legs are treated as
/// independent from one traverse to the next. All numbers must be finite; distances and sigmas must
/// not be negative.
TraverseResult adjust(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs,
                      double declination_sigma);

}  // namespace lodebook::reduction
