// SPDX-License-Identifier: MIT
// The stations and how well they are known, as CSV (RFC 4180).
#pragma once

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// One row for each station: begin, which names the columns, and log for each log. Text that a
/// spreadsheet would run as a formula gets a leading apostrophe.
class FixCsv {
 public:
  void begin(std::string& out);
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes);
};

}  // namespace lodebook::output
