// SPDX-License-Identifier: MIT
#include "row_json.hpp"

#include "text.hpp"

namespace lodebook::output {

void append_row_object(std::string& out, Columns columns, const RowContext& context) {
  out.push_back('{');
  for (const Column& column : columns) {
    out.push_back('"');
    out += column.name;
    out += "\":";
    const std::size_t start = out.size();
    if (column.type == Type::word) out.push_back('"');
    const std::size_t value = out.size();
    column.append(out, context);
    if (out.size() == value) {
      out.resize(start);
      out += "null";
    } else if (column.type == Type::word) {
      out.push_back('"');
    } else if (column.type == Type::text) {
      const std::string raw(out, value);
      out.resize(value);
      append_json_string(out, raw);
    }
    out.push_back(',');
  }
  out.back() = '}';
}

}  // namespace lodebook::output
