// SPDX-License-Identifier: MIT
#include <lodebook/output/fix_geojson.hpp>

#include "drawn.hpp"
#include "fix_table.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void FixGeoJson::begin(std::string& out) {
  out += "{\"type\":\"FeatureCollection\",\"name\":\"lodebook-fix\",\"features\":[";
  first_ = true;
}

void FixGeoJson::log(std::string& out, const notebook::Source& source,
                     const reduction::Fixes& fixes) {
  for (const FoundPoint& station : stations_of(fixes)) {
    out += first_ ? "\n" : ",\n";
    first_ = false;
    out += "{\"type\":\"Feature\",\"geometry\":";
    append_point(out, station.position);
    out += ",\"properties\":";
    append_row_object(out, fix_columns(), FixRow{source, station});
    out.push_back('}');
  }
}

void FixGeoJson::end(std::string& out) {
  out += "\n]}\n";
}

}  // namespace lodebook::output
