// SPDX-License-Identifier: MIT
// Times of day and heights as people write them beside a station.
#pragma once

#include <optional>
#include <string>

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// The time on the line as `09:40`, whose tokens are then settled; nothing if there is none.
/// `0840` alone is one only where `is_place`: a station's heading, or a position, is on the line.
std::optional<std::string> take_time(Tokens& tokens, bool is_place);

/// The height on the line as `812 m` or `2664 ft`, whose tokens are then settled. Without a word
/// for it, only where `is_place`: a position or a time stands on the line; and where nothing else
/// could be so long: apart from other words.
std::optional<std::string> take_elevation(Tokens& tokens, bool is_place);

}  // namespace lodebook::fair_copy
