// SPDX-License-Identifier: MIT
// Words that say where something was read (`by the stream`, `10 m upstream`), and words that nobody
// knows.
#pragma once

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// A preposition leads to token `at` with nothing but words between them: `off the hinge`.
bool is_in_place(const Tokens& tokens, std::size_t at);

/// Between `begin` and the attitude at token `at` an unknown word stands that may be a kind: one
/// that is in no place.
bool has_strange_word(const Tokens& tokens, std::size_t begin, std::size_t at);

}  // namespace lodebook::fair_copy
