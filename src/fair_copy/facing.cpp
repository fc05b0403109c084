// SPDX-License-Identifier: MIT
#include "facing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::fair_copy {

namespace {

/// A younging direction nearer to the strike than this says nothing of the facing, degrees.
constexpr double near_strike = 22.5;

bool goes_on(const Token& token) {
  return token.type == Token::Type::word && !token.is(Meaning::kind) && !token.is(Meaning::facing);
}

/// Words that deny, also at the end of others (`couldn't`, `cannae`).
bool denies(std::string_view said) {
  constexpr std::array<std::string_view, 10> words = {" no ",   " not ",    "n't ",    "n’t ",
                                                      "nae ",   "cannot ",  "unclear", "unknown",
                                                      "unsure", "uncertain"};
  return std::ranges::any_of(
      words, [&](std::string_view word) { return said.find(word) != std::string_view::npos; });
}

}  // namespace

void join_unseen_facing(std::string_view line, Tokens& tokens) {
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!tokens[i].is(Meaning::way_up)) continue;
    std::size_t first = i;
    while (first > 0 && (goes_on(tokens[first - 1]) || tokens[first - 1].is('\'')))
      --first;
    std::size_t end = i + 1;
    while (end < tokens.size() && goes_on(tokens[end]))
      ++end;
    const std::string said = ' ' + folded(typed(line, tokens, first, end)) + ' ';
    if (!denies(said) && !tokens[end - 1].text.starts_with('?')) continue;
    for (std::size_t k = first; k < end; ++k)
      tokens[k].use = Token::Use::stated;
    tokens[i].use = Token::Use::none;
    tokens[i].meaning = Meaning::facing;
    tokens[i].says = "unknown";
  }
}

std::string_view facing_by_younging(std::optional<double> dip_direction, std::string_view point) {
  if (!dip_direction) return {};
  const double off =
      std::abs(std::remainder(degrees_of(*point_named(point)) - *dip_direction, 360.0));
  if (std::abs(off - 90) < near_strike) return {};
  return off < 90 ? "upright" : "overturned";
}

}  // namespace lodebook::fair_copy
