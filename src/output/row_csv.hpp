// SPDX-License-Identifier: MIT
// A row of a table as a line of CSV.
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// Puts quotes around the text that was appended behind `start`, and guards it, where it needs
/// that.
void make_csv_cell(Pen& out, std::size_t start);

template <class TableColumns>
void append_csv_names(std::string& out, const TableColumns& columns) {
  for (const auto& column : columns) {
    out += column.name;
    out.push_back(',');
  }
  out.back() = '\n';
}

/// One cell of a row, and a comma.
template <class TableColumn, class Context>
void append_csv_cell_of(Pen& out, const TableColumn& column, const Context& context) {
  const std::size_t start = out.size();
  column.append(out, context);
  if (column.type == Type::text && out.size() > start) make_csv_cell(out, start);
  out.push_back(',');
}

template <class TableColumns, class Context>
void append_csv_row(Pen& out, const TableColumns& columns, const Context& context) {
  for (const auto& column : columns)
    append_csv_cell_of(out, column, context);
  out.back() = '\n';
}

}  // namespace lodebook::output
