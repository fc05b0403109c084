// SPDX-License-Identifier: MIT
// The lines of the station report.
#pragma once

#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::output {

/// The log's name and heading, and how its bearings are corrected; several lines.
void append_heading(std::string& out, const reduction::Reduction& reduction, bool color);

/// A station on one line: where it is, what was read and how well, what was checked. `shown_in` is
/// for the means, `wanted` the north that was asked for.
void append_station(std::string& out, const reduction::Page& page, reduction::North wanted,
                    ShownIn shown_in, bool color);

/// `  notes: line 23 strike-uncertain, line 25 other-end`, if there are any.
void append_notes(std::string& out, const std::vector<notebook::Diagnostic>& diagnostics);

}  // namespace lodebook::output
