// SPDX-License-Identifier: MIT
// Declination, and what was turned into the dial, as a heading in prose says it.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// Whether a new clause begins at token `i`, or the mark there parts two: a comma, an `and`, the
/// end of a sentence, a tab.
bool ends_clause(std::string_view line, const Tokens& tokens, std::size_t i);

/// The statements `set ...` and `declination ...` of a line; none where it says neither.
Lines compass_of(std::string_view line, Tokens& tokens, Page& page);

}  // namespace lodebook::fair_copy
