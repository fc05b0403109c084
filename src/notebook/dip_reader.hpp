// SPDX-License-Identifier: MIT
// Reads the dip of a plane and the side to which it dips.
#pragma once

#include "attitude_reader.hpp"

namespace lodebook::notebook {

/// Reads a dip: 0 to 90 degrees, or percent. Faults: number, dip-range.
std::optional<Slope> read_dip(Cursor& cursor);

/// Finishes `plane`, whose strike and dip are read: the side follows, or else the rule decides. The
/// spans are those of strike and dip, for advice. Faults: dip-side-missing, dip-side-impossible.
std::optional<PlaneAttitude> finish_strike_dip(Cursor& cursor, PlaneAttitude plane,
                                               const PairRules& rules, Span strike_span,
                                               Span dip_span);

}  // namespace lodebook::notebook
