// SPDX-License-Identifier: MIT
// Positions on a line, as receivers, phones and maps show them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// Tokens of a line that are a position, or its datum.
struct PlaceHere {
  std::string text;  ///< as the language writes it
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// The first position on the line that the language takes: decimal commas become points.
std::optional<PlaceHere> position_on(std::string_view line, const Tokens& tokens);

/// Figures as long as those of a position, which are none as they stand; `headed`: behind the name
/// of a station also a short reference to a national grid.
std::optional<PlaceHere> faulty_position_on(std::string_view line, const Tokens& tokens,
                                            bool headed);

/// The name of a datum: `WGS84`, `GDA2020`.
std::optional<PlaceHere> datum_on(const Tokens& tokens);

}  // namespace lodebook::fair_copy
