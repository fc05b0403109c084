// SPDX-License-Identifier: MIT
// The rows of a page, which mostly repeat the row above.
#pragma once

#include <algorithm>
#include <vector>

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// Writes the rows of one page to one string. Columns side by side that depend on the same make a
/// run; its text is copied from the row above where it is the same there.
class PageRows {
 public:
  explicit PageRows(Columns columns) {
    runs_.reserve(columns.size());
    for (auto rest = columns; !rest.empty(); rest = rest.subspan(runs_.back().columns.size())) {
      const auto end = std::ranges::find_if(
          rest, [&](const Column& column) { return column.as_above != rest.front().as_above; });
      runs_.push_back({rest.first(static_cast<std::size_t>(end - rest.begin()))});
    }
  }

  /// Appends a row: `append_cell(out, column, at)` for each column whose text is not copied.
  template <class AppendCell>
  void append(Pen& out, const RowContext& at, AppendCell append_cell) {
    for (Run& run : runs_) {
      const std::size_t start = out.size();
      const auto as_above = run.columns.front().as_above;
      if (above_ != nullptr && as_above != nullptr && as_above(*above_, at.row)) {
        out.repeat(run.start, run.size);
      } else {
        for (const Column& column : run.columns)
          append_cell(out, column, at);
        run.size = out.size() - start;
      }
      run.start = start;
    }
    above_ = &at.row;
  }

 private:
  struct Run {
    Columns columns;
    /// The place of its text in the row above.
    std::size_t start = 0;
    std::size_t size = 0;
  };
  std::vector<Run> runs_;
  const reduction::Row* above_ = nullptr;
};

}  // namespace lodebook::output
