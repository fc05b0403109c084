// SPDX-License-Identifier: MIT
// Places for everything on a map that would lie over something else.
#pragma once

#include <span>
#include <string>

#include "placement.hpp"

namespace lodebook::drawing {

/// Something with its own place that is drawn there anyhow; what is moved keeps clear of it.
struct Spot {
  Point at;
  double radius = 0;
};
/// A symbol of a station, and whether it may claim the station's place.
struct CrowdSymbol {
  std::size_t spot = 0;
  double radius = 0;
  bool claims_place = false;
};
/// A name beside a point.
struct CrowdName {
  Point at;
  Role role = Role::label;
  std::string text;
};

struct Crowd {
  /// The symbols' middles.
  std::vector<Point> symbols;
  /// What the names fill.
  std::vector<Box> names;
};

/// Symbols that claim a place have it where it is free, then names are placed, then the other
/// symbols; each as near as there is room.
/// Nothing where the frame has too little room.
std::optional<Crowd> arrange(const Box& frame, std::span<const Spot> spots,
                             std::span<const CrowdSymbol> symbols,
                             std::span<const CrowdName> names);

}  // namespace lodebook::drawing
