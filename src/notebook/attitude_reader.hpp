// SPDX-License-Identifier: MIT
// Reads planes and lines from tokens.
#pragma once

#include <lodebook/notebook/notebook.hpp>

#include "bearing_reader.hpp"

namespace lodebook::notebook {

/// What is in force for bare pairs on this line.
struct PairRules {
  std::optional<HandRule> rule;
  PlaneOrder planes = PlaneOrder::unstated;
  LineOrder lines = LineOrder::unstated;
};

/// Reads a plane up to its side. Faults: those of bearings and dip-range, dip-side-missing,
/// dip-side-impossible, attitude-ambiguous, pair-order, incomplete.
std::optional<PlaneAttitude> read_plane_attitude(Cursor& cursor, const PairRules& rules);

/// Reads a line of `kind` up to its plunge, or its trend alone. Faults: those of bearings and
/// plunge-range, rake-range, pair-order, incomplete; a negative plunge is noted (other-end).
std::optional<LineAttitude> read_line_attitude(Cursor& cursor, const PairRules& rules,
                                               const Kind& kind);

/// Whether the tokens look like an attitude. This tells a reading without a kind from a line that
/// begins with an unknown word.
bool looks_like_attitude(const Cursor& cursor);

}  // namespace lodebook::notebook
