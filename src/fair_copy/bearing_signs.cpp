// SPDX-License-Identifier: MIT
#include "bearing_signs.hpp"

#include <algorithm>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// A word that only an attitude has.
bool is_of_attitude(const Token& token) {
  if (token.type != Type::word || token.use != Token::Use::none) return false;
  switch (token.meaning) {
    case Meaning::kind:
    case Meaning::strike:
    case Meaning::dip:
    case Meaning::direction:
    case Meaning::trend:
    case Meaning::plunge:
    case Meaning::rake:
    case Meaning::youngs:
    case Meaning::facing:
    case Meaning::sense:
    case Meaning::vertical:
      return true;
    default:
      return false;
  }
}

}  // namespace

void BearingSigns::settle_vertical_angles() {
  for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
    const bool angle = is_free_figure(i + 1) && tokens_[i + 1].digits <= 2 && !is_length(i + 1) &&
                       !is(i + 2, Meaning::unit);
    if (is(i, Meaning::vertical) && tokens_[i - 1].type == Type::bearing && angle)
      tokens_[i].meaning = Meaning::slope;
  }
}

bool BearingSigns::has_attitude(bool leg) const {
  const bool paced = leg && has(Meaning::paces);
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    // `along the crest to A3: 096, 110 steps`
    const bool is_place = paced && i > 0 && is(i, Meaning::kind) &&
                          (is(i - 1, Meaning::filler) || is(i - 1, Meaning::toward));
    const bool is_azimuth = leg && (is(i, Meaning::trend) || is(i, Meaning::direction)) &&
                            folded(tokens_[i].text).starts_with("az");
    if (is_of_attitude(tokens_[i]) && !is_place && !is_azimuth) return true;
  }
  return false;
}

bool BearingSigns::is_leg() const {
  bool length = false;
  bool bearing = false;
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    if (is_length(i)) {
      length = true;
      ++i;
    } else if (is_bearing(i)) {
      bearing = true;
    }
  }
  return length && bearing;
}

bool BearingSigns::has_pair(bool leg) const {
  // Only a sight or a leg has a back bearing.
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    if (is(i, Meaning::back) && is_bearing(i + 1)) return false;
  }
  for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
    const bool joins = is(i, '/') || is(i, '>');
    const bool slope = leg && is_figure(i + 1) && tokens_[i + 1].has_sign;
    const bool bearing = is_bearing(i - 1) && !is_point(i - 1);
    if (joins && bearing && is_free_figure(i + 1) && !is_length(i + 1) && !slope) return true;
  }
  for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
    // `N24W 62`, `130 8 NE`: a sight has no second figure right behind its bearing.
    const bool bearing = is_bearing(i) && !is_point(i);
    const bool figure =
        is_free_figure(i + 1) && !tokens_[i + 1].has_sign && !tokens_[i + 1].is_percent;
    if (!bearing || !figure) continue;
    const bool side = is_point(i + 2) && is_free(i + 2);
    if (!leg || (side && !is_length(i + 1))) return true;
  }
  return false;
}

}  // namespace lodebook::fair_copy
