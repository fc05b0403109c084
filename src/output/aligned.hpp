// SPDX-License-Identifier: MIT
// Small tables of a text report.
#pragma once

#include <string>
#include <vector>

namespace lodebook::output {

/// A line of cells; `tail` follows them. Text must be printable.
struct AlignedRow {
  std::vector<std::string> cells;
  std::string tail;
};

/// Appends the rows with two spaces before each and between cells. The first column is left-aligned
/// and all others to the right, counted in code points; no line ends in a space.
void append_aligned(std::string& out, const std::vector<AlignedRow>& rows);

}  // namespace lodebook::output
