// SPDX-License-Identifier: MIT
// The positions found in a log, point by point, for the outputs of `fix`.
#pragma once

#include <vector>

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// A station or landmark with all that was found of it.
struct FoundPoint {
  std::string_view name;
  /// Missing for a landmark that no sights fix.
  std::optional<std::uint32_t> line;
  std::optional<earth::Position> position;
  reduction::PositionFrom from = reduction::PositionFrom::at;
  std::optional<reduction::Covariance> covariance;
  std::optional<reduction::ErrorEllipse> ellipse;
  std::optional<double> stated_elevation_m;
  std::optional<reduction::FoundElevation> found_elevation;
  /// The sights on or from it; null where there are none.
  const reduction::SightFix* fix = nullptr;

  /// How its position is known, or nothing.
  std::string_view position_from() const;
  /// One sigma of its position, metres.
  std::optional<double> accuracy_m() const;
  /// As stated, or else as found.
  std::optional<double> elevation_m() const;
  /// One sigma of an elevation that was found and not stated, metres.
  std::optional<double> elevation_sigma_m() const;
  /// Whether the sights hold each other to account: there are more of them than a position needs.
  bool is_checked() const;
};

/// All stations.
std::vector<FoundPoint> stations_of(const reduction::Fixes& fixes);
/// The landmarks of which something was sought: a position from sights, or an elevation.
std::vector<FoundPoint> landmarks_of(const reduction::Fixes& fixes);

/// Where a position lies on its grid, with so many decimals of the metres: `59G 345210.1
/// 5052310.3`.
void append_grid(std::string& out, const earth::Position& position, int decimals);

}  // namespace lodebook::output
