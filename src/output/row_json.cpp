// SPDX-License-Identifier: MIT
#include "row_json.hpp"

#include <lodebook/output/text.hpp>

namespace lodebook::output {

void end_json_string(Pen& out, std::size_t start, Type type) {
  const std::string_view text = out.behind(start + 1);
  if (type != Type::text || is_plain_json(text)) {
    out.push_back('"');
    return;
  }
  const std::string string = json_string(text);
  out.cut(start);
  out += string;
}

}  // namespace lodebook::output
