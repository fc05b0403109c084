// SPDX-License-Identifier: MIT
// Positions from sights and legs as one JSON document.
#pragma once

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// Writes the document of `docs/fix.schema.json`: begin, log for each log, end.
class FixJson {
 public:
  void begin(std::string& out);
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes);
  void end(std::string& out);

 private:
  bool first_ = true;
};

}  // namespace lodebook::output
