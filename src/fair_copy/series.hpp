// SPDX-License-Identifier: MIT
// Names of stations that a page shows by its order: each at the head of its own block, numbered.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "words.hpp"

namespace lodebook::fair_copy {

/// Names such as `L1`, `KZ-2`, `Trench 3` that begin blocks of lines, as typed and in order. They
/// count where at least two have the same letters and rising numbers, and no other line begins with
/// one of them: a kind such as S1 begins any line. `line` gives the lines from 1 up to `count`.
std::vector<std::string> names_in_series(const std::function<std::string_view(std::uint32_t)>& line,
                                         std::uint32_t count, const Words& words);

}  // namespace lodebook::fair_copy
