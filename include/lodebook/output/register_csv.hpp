// SPDX-License-Identifier: MIT
// Samples, photos and notes as CSV (RFC 4180).
#pragma once

#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

/// One row for each item: begin, which names the columns, then page for each page. Text that a
/// spreadsheet would run as a formula gets a leading apostrophe.
class RegisterCsv {
 public:
  void begin(std::string& out);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
};

}  // namespace lodebook::output
