// SPDX-License-Identifier: MIT
#include <lodebook/output/register_geojson.hpp>

#include "drawn.hpp"
#include "register_table.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void RegisterGeoJson::begin(std::string& out) {
  features_.begin(out, "lodebook-register");
}

void RegisterGeoJson::page(std::string& out, const notebook::Source& source,
                           const reduction::Page& page) {
  if (page.items.empty()) return;
  const std::string geometry =
      point_geometry(page.position ? std::optional(page.position->position) : std::nullopt);
  Pen pen(out);
  for (const reduction::Item& item : page.items) {
    features_.feature(pen);
    pen += geometry;
    features_.properties(pen);
    append_row_object(pen, register_columns(), RegisterRow{source, page, item});
    features_.end_feature(pen);
  }
}

void RegisterGeoJson::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
