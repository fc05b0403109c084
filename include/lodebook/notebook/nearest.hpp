// SPDX-License-Identifier: MIT
// The known word that a mistyped one was probably meant to be.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace lodebook::notebook {

inline constexpr std::size_t most_known_words = 1000;

/// The word of `known` that is nearest to `word`, ignoring the case and marks of Latin letters: the
/// fewest letters missing, added, changed or swapped with their neighbour (Damerau 1964, CACM 7(3),
/// 171, no letter touched twice), and at most a third of the letters of the longer word; or the
/// only one whose first part, before a hyphen, is `word`. Of equally near words the first where one
/// letter is wrong, and nothing where more are. The result is a view from `known`. Words over 64
/// bytes are not compared, and nothing is found among more than `most_known_words`: a call costs at
/// most 64^2 steps for each of so many, or a log of nothing but unknown names beside as many known
/// ones would cost their product.
std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> known);

}  // namespace lodebook::notebook
