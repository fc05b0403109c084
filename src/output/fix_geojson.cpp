// SPDX-License-Identifier: MIT
#include <lodebook/output/fix_geojson.hpp>

#include "drawn.hpp"
#include "fix_table.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void FixGeoJson::begin(std::string& out) {
  features_.begin(out, "lodebook-fix");
}

void FixGeoJson::log(std::string& out, const notebook::Source& source,
                     const reduction::Fixes& fixes) {
  Pen pen(out);
  for (const FoundPoint& station : stations_of(fixes)) {
    features_.feature(pen);
    pen += point_geometry(station.position);
    features_.properties(pen);
    append_row_object(pen, fix_columns(), FixRow{source, station});
    features_.end_feature(pen);
  }
}

void FixGeoJson::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
