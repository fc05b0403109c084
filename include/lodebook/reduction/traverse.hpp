// SPDX-License-Identifier: MIT
// Legs from station to station: what closes is adjusted, what does not is carried on, and stations
// without a position get one.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <lodebook/earth/position.hpp>
#include <lodebook/reduction/ellipse.hpp>

namespace lodebook::reduction {

/// A station as far as it is known before its legs are used. Without a position its covariance
/// means nothing.
struct TraverseStation {
  std::optional<earth::Position> position;
  Covariance covariance;
};

/// A leg as measured: level distance in metres, true azimuth at its `from` in degrees, one sigma of
/// each. The azimuth's sigma is its reading's alone.
struct TraverseLeg {
  std::size_t from = 0;
  std::size_t to = 0;
  double azimuth = 0;
  double distance_m = 0;
  double azimuth_sigma = 0;
  double distance_sigma_m = 0;
};

/// A leg within a traverse: departure (to the east) and latitude (to the north) in metres, in the
/// direction in which the traverse runs, and what the adjustment adds to each. North is that of the
/// traverse's first station throughout.
struct TraversedLeg {
  std::size_t leg = 0;
  /// The traverse runs against it.
  bool reversed = false;
  double departure_m = 0;
  double latitude_m = 0;
  double departure_correction_m = 0;
  double latitude_correction_m = 0;
};

/// A run of legs: around a loop, between two known stations, or out into the open.
struct Traverse {
  enum class Kind { loop, between, open } kind = Kind::open;
  /// From the first to the last; a loop ends where it begins.
  std::vector<std::size_t> stations;
  std::vector<TraversedLeg> legs;
  double length_m = 0;
  /// What the sums come out too large by: computed less known. Zero in the open.
  double departure_misclosure_m = 0;
  double latitude_misclosure_m = 0;
  double misclosure_m = 0;
  /// 1 in so many of the length; missing in the open, where there is no length, and where nothing
  /// is misclosed: up to a micrometre, which is the computation's own.
  std::optional<double> precision;
  /// The misclosure is larger than its errors allow (chi-square with two degrees of freedom, 1 %);
  /// a millimetre each way is always allowed. Half of it is then one more sigma of the stations
  /// between.
  bool contradicts = false;
};

/// A station that has got its position from legs, with the covariance of its error.
struct TraversePlace {
  earth::Position position;
  Covariance covariance;
};

struct TraverseResult {
  /// In the order computed, one group of connected stations after the other, the group with the
  /// first leg first. Every leg is in one of them, except those from a station to itself: such a
  /// leg says nothing of any position, and is left out.
  std::vector<Traverse> traverses;
  /// By station; only those that had no position and have one now.
  std::vector<std::optional<TraversePlace>> placed;
};

/// Closes loops and runs between known stations by the compass rule (Bowditch 1808: each leg is
/// corrected in proportion to its length), the shortest first, then carries open legs on. Branches
/// and several loops are allowed; a station once placed counts as known, with its uncertainty.
/// Loops among stations that are not tied to a known one are closed too, and give no positions.
/// Computes on a plane around each run's first station (earth::LocalPlane). Errors of known
/// stations and of the declination (`declination_sigma`, degrees, common to all legs) are followed
/// through all runs exactly, those of the legs from one run to the next as if independent. All
/// numbers are finite; distances and sigmas are not negative.
TraverseResult adjust(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs,
                      double declination_sigma);

}  // namespace lodebook::reduction
