// SPDX-License-Identifier: MIT
// Features with the table's columns as flat properties.
#include <lodebook/output/geojson.hpp>

#include "drawn.hpp"
#include "page_rows.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void GeoJsonWriter::begin(std::string& out) {
  features_.begin(out, "lodebook");
}

void GeoJsonWriter::page(std::string& out, const notebook::Source& source,
                         const reduction::Page& page) {
  std::string geometry;
  append_point(geometry, page.position ? std::optional(page.position->position) : std::nullopt);
  PageRows rows(columns_);
  for (const reduction::Row& row : page.rows) {
    features_.feature(out);
    out += geometry;
    features_.properties(out);
    out.push_back('{');
    rows.append(out, {source, page, row}, append_json_cell_of<Column, RowContext>);
    out.back() = '}';
    features_.end_feature(out);
  }
}

void GeoJsonWriter::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
