// SPDX-License-Identifier: MIT
// A row of a table as a JSON object.
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// Makes what was appended behind `start` a JSON value: a word or text in quotes, a figure as it
/// is, nothing as null.
void make_json_value(std::string& out, std::size_t start, Type type);

/// A column's name and its value, and a comma; what is missing is null.
template <class TableColumn, class Context>
void append_json_cell_of(std::string& out, const TableColumn& column, const Context& context) {
  out.push_back('"');
  out += column.name;
  out += "\":";
  const std::size_t start = out.size();
  column.append(out, context);
  make_json_value(out, start, column.type);
  out.push_back(',');
}

/// `{"station":"Q1", ... }`: every column, in order.
template <class TableColumns, class Context>
void append_row_object(std::string& out, const TableColumns& columns, const Context& context) {
  out.push_back('{');
  for (const auto& column : columns)
    append_json_cell_of(out, column, context);
  out.back() = '}';
}

}  // namespace lodebook::output
