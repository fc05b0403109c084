// SPDX-License-Identifier: MIT
// A row of the table as a JSON object.
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// `{"station":"Q1", ... }`: every column's name, in order; what is missing is null.
void append_row_object(std::string& out, Columns columns, const RowContext& context);

}  // namespace lodebook::output
