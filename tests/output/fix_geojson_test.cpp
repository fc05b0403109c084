// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/fix_csv.hpp>
#include <lodebook/output/fix_geojson.hpp>
#include <nlohmann/json.hpp>

#include "fixes_by_hand.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;

Json document(const std::vector<reduction::Fixes>& logs) {
  return Json::parse(test::fix_text(output::FixGeoJson(), logs));
}

TEST_CASE("a feature a station, with its point or none") {
  const Json found = document({test::some_fixes()});
  CHECK(found["type"] == "FeatureCollection");
  CHECK(found["name"] == "lodebook-fix");
  REQUIRE(found["features"].size() == 4);
  const Json& station = found["features"][1];
  CHECK(station["type"] == "Feature");
  CHECK(station["geometry"]["type"] == "Point");
  CHECK(station["geometry"]["coordinates"] == Json::array({169.0144, -44.6891}));
  CHECK(station["properties"]["semi_major_m"] == 12.04);
  CHECK(station["properties"]["sights"] == 3);
  CHECK(station["properties"]["agrees"] == "yes");
  CHECK(found["features"][0]["properties"]["agrees"].is_null());
  CHECK(found["features"][3]["geometry"].is_null());
  CHECK(document({})["features"] == Json::array());
}

TEST_CASE("its properties are the columns of the CSV") {
  const Json found = document({test::some_fixes(), test::awkward_fixes()});
  const auto header = test::cells_of(test::lines_of(test::fix_text(output::FixCsv(), {}))[0]);
  for (const Json& feature : found["features"]) {
    std::size_t index = 0;
    for (const auto& [key, value] : feature["properties"].items()) {
      REQUIRE(index < header.size());
      CHECK(key == header[index++]);
    }
    CHECK(index == header.size());
  }
  CHECK(found["features"][4]["properties"]["station"] == "=1+1");
  CHECK(found["features"][5]["properties"]["station"] == "Q \"two\", \x1b[31m\uFFFD");
}

}  // namespace
}  // namespace lodebook
