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
  for (const FoundPoint& station : stations_of(fixes)) {
    features_.feature(out);
    append_point(out, station.position);
    features_.properties(out);
    append_row_object(out, fix_columns(), FixRow{source, station});
    features_.end_feature(out);
  }
}

void FixGeoJson::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
