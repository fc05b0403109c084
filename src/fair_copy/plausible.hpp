// SPDX-License-Identifier: MIT
// Slips that show beside a reading's neighbours: digits swapped, a nought left out.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// Why a reading is asked although it may stand alone: its dip with the digits swapped, or its
/// bearing with a nought behind it, is that of its neighbours, and as typed it is far off. Empty
/// for a plausible one.
std::string implausible(const Page& page, std::string_view kind, const Attitude& attitude,
                        const Statement& statement);

/// Keeps a reading as a neighbour of those to come at its station.
void remember(Page& page, const std::string& kind, const Statement& statement);

}  // namespace lodebook::fair_copy
