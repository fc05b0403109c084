// SPDX-License-Identifier: MIT
// The dip of a plane, and the side that goes down.
#pragma once

#include "attitude_reader.hpp"

namespace lodebook::notebook {

/// A dip: a figure of 0 to 90 degrees, or percent. Faults: number, dip-range.
std::optional<Slope> read_dip(Cursor& cursor);

/// Behind strike and dip, which stand in `plane`: the side, or else the rule. The spans are those
/// of the two, for advice. Faults: dip-side-missing, dip-side-impossible.
std::optional<PlaneAttitude> finish_strike_dip(Cursor& cursor, PlaneAttitude plane,
                                               const PairRules& rules, Span strike_span,
                                               Span dip_span);

}  // namespace lodebook::notebook
