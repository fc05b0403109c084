// SPDX-License-Identifier: MIT
// The units and the zone that a page states once for all that stands below: `tape in ft, slope in
// percent`, `all UTM 35K`.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace lodebook::fair_copy {

enum class Unit : std::uint8_t { none, metres, feet, paces, degrees, percent, other };

/// The unit that a word stands for.
Unit unit_named(std::string_view word);

/// What figures without a unit are in.
struct Units {
  Unit length = Unit::none;
  Unit slope = Unit::none;
  std::string zone;  ///< of the grid, with its band: `35K`

  /// Takes what a line of prose states.
  void learn(std::string_view line);
};

/// As the language writes it behind a figure: `m`, `ft`, ` paces`.
std::string_view length_unit(Unit unit);

}  // namespace lodebook::fair_copy
