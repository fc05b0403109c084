// SPDX-License-Identifier: MIT
// The parts of the text report on positions.
#pragma once

#include "fix_pieces.hpp"

namespace lodebook::output {

/// A station or landmark: where it is, how that is known, and the sights behind it; several lines.
/// `before` stands before its name.
void append_found_point(std::string& out, std::string_view before, const FoundPoint& point,
                        bool color);

/// A run of legs as a small table, with its misclosure.
void append_traverse(std::string& out, const reduction::Fixes& fixes,
                     const reduction::Traverse& traverse, bool color);

/// The legs that place nothing, and why.
void append_left_out_legs(std::string& out, const reduction::Fixes& fixes, bool color);

/// The fore and back bearings of the legs that have both, and where local attraction is known what
/// turns the needle at each station and the bearings freed from it.
void append_back_bearings(std::string& out, const reduction::Fixes& fixes, bool color);

}  // namespace lodebook::output
