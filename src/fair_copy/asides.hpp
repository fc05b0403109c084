// SPDX-License-Identifier: MIT
// Which figures of a line are shown to be no reading: by a unit, by a word before them, by a form
// that only dates, times and numbers of things have.
#pragma once

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// Settles the `use` of such figures. Lengths in metres, feet and paces are among them, unless
/// `keep_lengths`, for a leg.
void set_aside(Tokens& tokens, bool keep_lengths);

/// The first token from `from` on whose use nobody has settled, of those that may be a reading's:
/// figures, bearings, points of the compass; the number of tokens if there is none.
std::size_t first_unsettled(const Tokens& tokens, std::size_t from = 0);

/// What no statement of the line says, for its remark.
std::string unstated(std::string_view line, const Tokens& tokens);

}  // namespace lodebook::fair_copy
