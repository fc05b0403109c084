// SPDX-License-Identifier: MIT
// A row of a table as a JSON object.
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// Ends a JSON string that begins with a quote at `start`.
void end_json_string(Pen& out, std::size_t start, Type type);

/// A column's name and its value, and a comma; what is missing is null.
template <class TableColumn, class Context>
void append_json_cell_of(Pen& out, const TableColumn& column, const Context& context) {
  out.push_back('"');
  out += column.name;
  out += "\":";
  const bool quoted = column.type != Type::number && column.type != Type::count;
  const std::size_t start = out.size();
  if (quoted) out.push_back('"');
  const std::size_t behind_quote = out.size();
  column.append(out, context);
  if (out.size() == behind_quote) {
    out.cut(start);
    out += "null";
  } else if (quoted) {
    end_json_string(out, start, column.type);
  }
  out.push_back(',');
}

/// `{"station":"Q1", ... }`: every column, in order.
template <class TableColumns, class Context>
void append_row_object(Pen& out, const TableColumns& columns, const Context& context) {
  out.push_back('{');
  for (const auto& column : columns)
    append_json_cell_of(out, column, context);
  out.back() = '}';
}

}  // namespace lodebook::output
