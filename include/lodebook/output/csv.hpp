// SPDX-License-Identifier: MIT
// The table as CSV (RFC 4180).
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// The line of column names.
void append_csv_header(std::string& out, Columns columns);

/// One line for each row of the page. Text that a spreadsheet would run as a formula gets a leading
/// apostrophe.
void append_csv(std::string& out, Columns columns, const notebook::Source& source,
                const reduction::Page& page);

/// One cell of text, quoted where RFC 4180 asks for it.
void append_csv_cell(std::string& out, std::string_view text);

}  // namespace lodebook::output
