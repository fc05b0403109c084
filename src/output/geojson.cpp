// SPDX-License-Identifier: MIT
// Features with the table's columns as flat properties.
#include <lodebook/output/geojson.hpp>

#include "drawn.hpp"
#include "page_rows.hpp"
#include "row_json.hpp"

namespace lodebook::output {
namespace {

template <class Place>
std::string geometry_of(const Place& place) {
  return point_geometry(place.position ? std::optional(place.position->position) : std::nullopt);
}

}  // namespace

void GeoJsonWriter::begin(std::string& out) {
  features_.begin(out, "lodebook");
}

void GeoJsonWriter::page(std::string& out, const notebook::Source& source,
                         const reduction::Page& page) {
  const std::string geometry = geometry_of(page);
  Pen pen(out);
  PageRows rows(columns_);
  for (const reduction::Row& row : page.rows) {
    features_.feature(pen);
    pen += row.elsewhere ? geometry_of(*row.elsewhere) : geometry;
    features_.properties(pen);
    pen.push_back('{');
    rows.append(pen, {source, page, row}, append_json_cell_of<Column, RowContext>);
    pen.back() = '}';
    features_.end_feature(pen);
  }
}

void GeoJsonWriter::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
