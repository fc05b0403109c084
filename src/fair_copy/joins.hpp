// SPDX-License-Identifier: MIT
// Pieces of a line that belong together: the letters and the figure of a bearing, the words of a
// phrase, a figure and its degrees.
#pragma once

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// Joins them, and gives words their meanings.
void join_tokens(Tokens& tokens, const Words& words);

}  // namespace lodebook::fair_copy
