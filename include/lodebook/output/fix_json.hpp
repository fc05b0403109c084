// SPDX-License-Identifier: MIT
// Positions from sights and legs as one JSON document.
#pragma once

#include <lodebook/reduction/fixes.hpp>
#include <string>
#include <string_view>

namespace lodebook::output {

/// Writes the document of `docs/fix.schema.json`: begin, log for each log, with `between` between
/// their texts, end.
class FixJson {
 public:
  static constexpr std::string_view between = ",";

  void begin(std::string& out);
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes);
  void end(std::string& out);
};

}  // namespace lodebook::output
