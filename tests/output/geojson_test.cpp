// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <map>
#include <nlohmann/json.hpp>

#include "logs.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;

Json geojson(const std::vector<test::Log>& logs) {
  return Json::parse(test::written(output::GeoJsonWriter(output::columns()), logs));
}

TEST_CASE("a feature a reading, with its station's point or none") {
  const Json document = geojson({{"a.txt", test::small_log}});
  CHECK(document["type"] == "FeatureCollection");
  CHECK(document["name"] == "lodebook");
  CHECK_FALSE(document.contains("crs"));
  REQUIRE(document["features"].size() == 12);
  const Json& first = document["features"][0];
  CHECK(first["type"] == "Feature");
  CHECK(first["geometry"]["type"] == "Point");
  CHECK(first["geometry"]["coordinates"] == Json::array({169.0144, -44.6891}));
  CHECK(first["properties"]["strike"] == 266.6);
  CHECK(first["properties"]["rake"].is_null());
  // A station that sights have fixed has a point as well.
  CHECK(document["features"][8]["properties"]["position_from"] == "sights");
  CHECK(document["features"][8]["geometry"]["type"] == "Point");
  const Json nowhere = geojson({{"a.txt", "station Q1\nbedding N78E 41N\n"}});
  CHECK(nowhere["features"][0]["geometry"].is_null());
}

TEST_CASE("all features have the table's keys, each of one type, and decimals have a point") {
  const std::string text = test::written(output::GeoJsonWriter(output::columns()),
                                         {{"a", test::small_log}, {"b", test::rough}});
  CHECK(text.find("\"dip\":37.0,") != std::string::npos);
  CHECK(text.find("\"accuracy_m\":8.0,") != std::string::npos);
  const Json document = Json::parse(text);
  std::map<std::string, Json::value_t> types;
  for (const Json& feature : document["features"]) {
    std::size_t index = 0;
    for (const auto& [key, value] : feature["properties"].items()) {
      REQUIRE(index < output::columns().size());
      CHECK(key == output::columns()[index++].name);
      if (value.is_null()) continue;
      const auto [known, added] = types.try_emplace(key, value.type());
      CHECK(known->second == value.type());
    }
    CHECK(index == output::columns().size());
  }
}

TEST_CASE("no log gives an empty collection") {
  CHECK(geojson({})["features"] == Json::array());
}

}  // namespace
}  // namespace lodebook
