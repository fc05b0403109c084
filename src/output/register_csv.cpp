// SPDX-License-Identifier: MIT
#include <lodebook/output/register_csv.hpp>

#include "register_table.hpp"
#include "row_csv.hpp"

namespace lodebook::output {

void RegisterCsv::begin(std::string& out) {
  append_csv_names(out, register_columns());
}

void RegisterCsv::page(std::string& out, const notebook::Source& source,
                       const reduction::Page& page) {
  Pen pen(out);
  for (const reduction::Item& item : page.items)
    append_csv_row(pen, register_columns(), RegisterRow{source, page, item});
}

}  // namespace lodebook::output
