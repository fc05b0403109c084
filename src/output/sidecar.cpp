// SPDX-License-Identifier: MIT
// Column types in the words of GDAL's CSV driver, and WGS 84 as well-known text.
#include <lodebook/output/sidecar.hpp>

namespace lodebook::output {
namespace {

std::string_view type_of(const Column& column) {
  if (column.name == "longitude") return "CoordX";
  if (column.name == "latitude") return "CoordY";
  switch (column.type) {
    case Type::number:
      return "Real";
    case Type::count:
      return "Integer";
    case Type::date:
      return "Date";
    case Type::time:
      return "Time";
    case Type::word:
    case Type::text:
      break;
  }
  return "String";
}

}  // namespace

std::string column_types(Columns columns) {
  std::string out;
  for (const Column& column : columns) {
    if (!out.empty()) out.push_back(',');
    out.push_back('"');
    out += type_of(column);
    out.push_back('"');
  }
  out.push_back('\n');
  return out;
}

std::string_view coordinate_system() {
  // Without its EPSG numbers, programs take it for a system of the user's own that resembles it.
  return R"(GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,)"
         R"(AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],)"
         R"(PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],)"
         R"(UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]])"
         "\n";
}

}  // namespace lodebook::output
