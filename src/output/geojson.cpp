// SPDX-License-Identifier: MIT
// Features with the table's columns as flat properties.
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/geojson.hpp>

#include "row_json.hpp"

namespace lodebook::output {

void GeoJsonWriter::begin(std::string& out) {
  out += "{\"type\":\"FeatureCollection\",\"name\":\"lodebook\",\"features\":[";
  first_ = true;
}

void GeoJsonWriter::page(std::string& out, const notebook::Source& source,
                         const reduction::Page& page) {
  std::string geometry = "null";
  if (page.position) {
    const auto& [latitude, longitude] = page.position->position;
    geometry = "{\"type\":\"Point\",\"coordinates\":[";
    append_figure(geometry, rounded(longitude, 7), 7);
    geometry.push_back(',');
    append_figure(geometry, rounded(latitude, 7), 7);
    geometry += "]}";
  }
  for (const reduction::Row& row : page.rows) {
    out += first_ ? "\n" : ",\n";
    first_ = false;
    out += "{\"type\":\"Feature\",\"geometry\":";
    out += geometry;
    out += ",\"properties\":";
    append_row_object(out, columns_, {source, page, row});
    out.push_back('}');
  }
}

void GeoJsonWriter::end(std::string& out) {
  out += "\n]}\n";
}

}  // namespace lodebook::output
