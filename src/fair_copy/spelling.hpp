// SPDX-License-Identifier: MIT
// Marks and points of the compass in the many ways in which people type them.
#pragma once

#include <string>
#include <string_view>

namespace lodebook::fair_copy {

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
/// Of the Latin alphabet, without accents.
constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// A mark as typed, and the one that is meant.
struct Spelling {
  std::string_view typed;
  std::string_view meant;
};

/// The longest mark that `text` begins with; nothing for a text that begins with none of them.
const Spelling* spelling_at(std::string_view text);

/// Bytes of the white space at `at`: a blank, a tab, or a space that does not break; 0 for none.
std::size_t blank_at(std::string_view line, std::size_t at);

/// The value of `½` and its like; 0 for another mark.
double part_of(std::string_view fraction);

/// `NW` of `NW`, `nw`; `N` of `NS`, a strike by both its ends; empty for another word. Small
/// letters alone may be a word (`we`): of one or three they are a point only where `glued` to a
/// figure.
std::string point_by_initials(const std::string& word, bool glued);

/// `NW` of `north-west`, `northwesterly`; empty for another word.
std::string point_spelled(const std::string& word);

}  // namespace lodebook::fair_copy
