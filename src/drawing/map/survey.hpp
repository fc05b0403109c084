// SPDX-License-Identifier: MIT
// The data that a map keeps of its logs: plain values, all directions from true north.
#pragma once

#include <array>
#include <lodebook/drawing/picture.hpp>
#include <lodebook/earth/position.hpp>
#include <lodebook/reduction/ellipse.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "symbol.hpp"

namespace lodebook::drawing {

struct Survey {
  struct Station {
    /// May be empty.
    std::string name;
    std::optional<earth::Position> position;
    /// Among the logs.
    std::size_t log = 0;
  };
  struct Landmark {
    std::string name;
    earth::Position position;
    std::size_t log = 0;
  };
  /// A plane or line that has a place and a direction.
  struct Measured {
    std::size_t station = 0;
    BeginReading reading;
    /// Its azimuth is still from true north.
    MapSymbol symbol;
  };
  /// A sight or leg from one place to another; also a sight on which no fix could rest, which runs
  /// from the known point as far as its observer may be.
  struct Sighted {
    BeginReading reading;
    earth::Position from;
    earth::Position to;
  };
  /// A sight on a point whose place is not known: its true azimuth.
  struct OpenSight {
    BeginReading reading;
    earth::Position from;
    double azimuth = 0;
  };
  struct ErrorOfPosition {
    earth::Position center;
    reduction::ErrorEllipse ellipse;
  };
  /// Why a reading is not on the map.
  enum class Why : std::uint8_t { position, declination, other_end, rejected, direction };
  static constexpr std::size_t whys = 5;
  struct Missing {
    std::string station;
    /// Among the logs.
    std::size_t log = 0;
    std::size_t readings = 0;
  };
  /// Magnetic north, at the first station where it is known.
  struct Magnetic {
    double declination = 0;
    /// `as stated`, `by WMM2025`.
    std::string origin;
    std::string station;
    double least = 0;
    double most = 0;
  };

  /// Only readings of these are on the map, unless it is empty.
  std::vector<std::string> kinds;
  std::vector<std::string> logs;
  std::string area;
  std::vector<Station> stations;
  std::vector<Landmark> landmarks;
  std::vector<Measured> measured;
  std::vector<Sighted> sights;
  std::vector<OpenSight> open_sights;
  std::vector<Sighted> legs;
  std::vector<ErrorOfPosition> errors;
  std::vector<std::array<earth::Position, 3>> triangles;
  /// Traverses as measured, from their starts.
  std::vector<std::vector<earth::Position>> raw_traverses;
  /// Their misclosures in words.
  std::vector<std::string> closures;
  std::array<std::vector<Missing>, whys> missing;
  std::optional<Magnetic> magnetic;
  std::size_t readings = 0;
  std::size_t suspect = 0;
  /// Suspect ones that were not wanted.
  std::size_t left_out = 0;

  /// What the map is laid out by: the stations', or the landmarks' where no station has any.
  std::vector<earth::Position> places() const;
  /// As Map::too_wide.
  std::optional<std::string> too_wide() const;
  /// `3 stations, 1 of them without a position`.
  std::string stations_in_words() const;
  /// One sentence for each reason.
  std::vector<std::string> remarks() const;
};

}  // namespace lodebook::drawing
