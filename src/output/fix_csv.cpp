// SPDX-License-Identifier: MIT
#include <lodebook/output/fix_csv.hpp>

#include "fix_table.hpp"
#include "row_csv.hpp"

namespace lodebook::output {

void FixCsv::begin(std::string& out) {
  append_csv_names(out, fix_columns());
}

void FixCsv::log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes) {
  Pen pen(out);
  for (const FoundPoint& station : stations_of(fixes))
    append_csv_row(pen, fix_columns(), FixRow{source, station});
}

}  // namespace lodebook::output
