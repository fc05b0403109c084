// SPDX-License-Identifier: MIT
// The single slips that people make with sights, tried one by one where sights do not agree. They
// are offered as advice and never applied.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include <lodebook/notebook/reading.hpp>
#include <lodebook/reduction/fixes.hpp>

namespace lodebook::reduction {

/// A slip explains it where what remains has this chance at least. It is less, or one true slip in
/// a hundred would not be named for the other readings' errors.
inline constexpr double least_chance_explained = 0.001;

/// A sight as it was typed.
struct TypedSight {
  SightLine line;
  notebook::Bearing typed;
  /// Turned round when it was read in.
  bool south_end = false;
  /// What was added to the bearing on the dial, degrees.
  double correction = 0;
  std::string_view name;
};

/// A point that may have been sighted instead.
struct OtherPoint {
  std::string_view name;
  earth::Position position;
  double sigma_m = 0;
};

/// What each way to misapply the declination adds to every azimuth, in words.
struct CommonSlip {
  std::string words;
  double turn = 0;  ///< degrees
};

/// The slips that bring the fit to a fair chance: the best first, and those within 4 of its
/// chi-square.
std::vector<SightSlip> explain_sights(std::span<const TypedSight> sights, double common_sigma,
                                      std::span<const OtherPoint> others,
                                      std::span<const CommonSlip> common);

}  // namespace lodebook::reduction
