// SPDX-License-Identifier: MIT
#include "blocks.hpp"

namespace lodebook::fair_copy {

std::optional<Block> block_at(const Tokens& tokens, std::size_t at) {
  const auto is = [&](std::size_t k, Meaning meaning) {
    return at + k < tokens.size() && tokens[at + k].is(meaning);
  };
  const auto is_point = [&](std::size_t k) {
    return at + k < tokens.size() && tokens[at + k].type == Token::Type::point;
  };
  Block found;
  if (is_point(0)) {
    std::size_t k = 1;
    while (is(k, Meaning::block))
      ++k;
    found.is_down = is(k, Meaning::down) || is(k, Meaning::downthrow);
    if (!found.is_down && !is(k, Meaning::up) && !is(k, Meaning::upthrow)) return std::nullopt;
    found.side = tokens[at].text;
    found.length = k + 1;
    return found;
  }
  if (!is(0, Meaning::downthrow) && !is(0, Meaning::upthrow) && !is(0, Meaning::down))
    return std::nullopt;
  const std::size_t k = is(1, Meaning::toward) ? 2 : 1;
  if (!is_point(k)) return std::nullopt;
  found.is_down = !is(0, Meaning::upthrow);
  found.side = tokens[at + k].text;
  found.length = is(k + 1, Meaning::block) ? k + 2 : k + 1;
  return found;
}

}  // namespace lodebook::fair_copy
