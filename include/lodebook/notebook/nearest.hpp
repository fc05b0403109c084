// SPDX-License-Identifier: MIT
// The known word that a mistyped one was probably meant to be.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace lodebook::notebook {

/// `nearest` finds nothing among more words than this.
inline constexpr std::size_t most_known_words = 1000;

/// The word of `known` (a view from it) that `word` was probably meant to be, or nothing.
/// The distance of two words is the number of letters missing, added, changed, or swapped with
/// their neighbour (Damerau 1964, CACM 7(3), 171; no letter is touched twice). Case and the marks
/// of Latin letters do not count. The nearest word is returned if at most a third of the letters of
/// the longer word are wrong. A word that equals the part of a known one before its hyphen, and has
/// three letters or more, counts as two letters off. If several words are equally near, the first
/// is returned if one letter is wrong, and none if more are. Words over 64 bytes are not compared.
/// Together with `most_known_words` this limits the cost of a call to 64^2 steps for each known
/// word. Otherwise a log of unknown names beside as many known ones would take quadratic time.
std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> known);

}  // namespace lodebook::notebook
