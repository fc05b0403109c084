// SPDX-License-Identifier: MIT
// Which block of a fault went up or down, as people write it.
#pragma once

#include <optional>
#include <string>

#include "tokens.hpp"

namespace lodebook::fair_copy {

struct Block {
  std::string side;        ///< a point of the compass
  bool is_down = true;     ///< else it went up
  std::size_t length = 0;  ///< tokens
};

/// What begins at token `at`: `W side down`, `down to the E`, `downthrow E`; nothing for another.
std::optional<Block> block_at(const Tokens& tokens, std::size_t at);

}  // namespace lodebook::fair_copy
