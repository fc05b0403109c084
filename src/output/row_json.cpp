// SPDX-License-Identifier: MIT
#include "row_json.hpp"

#include <lodebook/output/text.hpp>

namespace lodebook::output {

void make_json_value(std::string& out, std::size_t start, Type type) {
  if (out.size() == start) {
    out += "null";
  } else if (type == Type::word) {
    out.insert(start, 1, '"');
    out.push_back('"');
  } else if (type == Type::text) {
    const std::string raw(out, start);
    out.resize(start);
    append_json_string(out, raw);
  }
}

}  // namespace lodebook::output
