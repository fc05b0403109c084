// SPDX-License-Identifier: MIT
#include "aligned.hpp"

#include <algorithm>
#include <lodebook/notebook/source.hpp>

namespace lodebook::output {

void append_aligned(std::string& out, const std::vector<AlignedRow>& rows) {
  std::vector<std::size_t> widths;
  for (const AlignedRow& row : rows) {
    widths.resize(std::max(widths.size(), row.cells.size()));
    for (std::size_t i = 0; i < row.cells.size(); ++i)
      widths[i] = std::max<std::size_t>(widths[i], notebook::count_columns(row.cells[i]));
  }
  for (const AlignedRow& row : rows) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::size_t blanks = widths[i] - notebook::count_columns(row.cells[i]);
      out += "  ";
      if (i > 0) out.append(blanks, ' ');
      out += row.cells[i];
      if (i == 0) out.append(blanks, ' ');
    }
    if (!row.tail.empty()) {
      out += "  ";
      out += row.tail;
    }
    out.erase(out.find_last_not_of(' ') + 1);
    out.push_back('\n');
  }
}

}  // namespace lodebook::output
