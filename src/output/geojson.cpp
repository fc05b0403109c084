// SPDX-License-Identifier: MIT
// Features with the table's columns as flat properties.
#include <lodebook/output/geojson.hpp>

#include "drawn.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void GeoJsonWriter::begin(std::string& out) {
  out += "{\"type\":\"FeatureCollection\",\"name\":\"lodebook\",\"features\":[";
  first_ = true;
}

void GeoJsonWriter::page(std::string& out, const notebook::Source& source,
                         const reduction::Page& page) {
  std::string geometry;
  append_point(geometry, page.position ? std::optional(page.position->position) : std::nullopt);
  for (const reduction::Row& row : page.rows) {
    out += first_ ? "\n" : ",\n";
    first_ = false;
    out += "{\"type\":\"Feature\",\"geometry\":";
    out += geometry;
    out += ",\"properties\":";
    append_row_object(out, columns_, RowContext{source, page, row});
    out.push_back('}');
  }
}

void GeoJsonWriter::end(std::string& out) {
  out += "\n]}\n";
}

}  // namespace lodebook::output
