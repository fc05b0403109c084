// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/register_csv.hpp>
#include <lodebook/output/register_geojson.hpp>
#include <lodebook/output/register_json.hpp>
#include <nlohmann/json.hpp>

#include "reduced.hpp"
#include "schema.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;

const test::Log two_days = {"/home/x/day.txt",
                            "date 2026-02-14\n"
                            "; low cloud\n"
                            "station Q1 at 44.6891S 169.0144E ±8\n"
                            "  time 09:40\n"
                            "  elevation 812\n"
                            "  sample Q1-a garnet band, \"fresh\"\n"
                            "  unit banded schist\n"
                            "  joint vertical N14E ; beside a reading\n"
                            "date 2026-02-15 ; the day after\n"
                            "observer AM\n"
                            "  unit grey schist\n"
                            "  photo =17-19 looking N\n"
                            "station Q2\n"
                            "  note contact\n"};
const test::Log nothing = {"empty.txt", "set 0\n"};

constexpr const char* header =
    "station,kind,name,text,unit,date,time,observer,latitude,longitude,elevation_m,position_from,"
    "accuracy_m,source";

TEST_CASE("the register has a row for each sample, photo and note, in the order of the log") {
  const auto rows = test::lines_of(test::written(output::RegisterCsv(), {two_days}));
  const std::string at_q1 = "-44.6891000,169.0144000,812.0,at,8.0,day.txt:";
  CHECK(rows ==
        std::vector<std::string>{
            header, ",note,,low cloud,,2026-02-14,,,,,,,,day.txt:2:3",
            "Q1,sample,Q1-a,\"garnet band, \"\"fresh\"\"\",banded schist,2026-02-14,09:40,," +
                at_q1 + "6:3",
            "Q1,note,,the day after,banded schist,2026-02-15,09:40,," + at_q1 + "9:19",
            "Q1,photo,,'=17-19 looking N,grey schist,2026-02-15,09:40,AM," + at_q1 + "12:3",
            "Q2,note,,contact,,2026-02-15,,AM,,,,,,day.txt:14:3"});
}

TEST_CASE("the register's columns stand alone where the logs have nothing for it") {
  CHECK(test::written(output::RegisterCsv(), {nothing}) == std::string(header) + "\n");
}

TEST_CASE("the register as JSON fits its schema, and counts what each log has") {
  const Json document = Json::parse(
      test::written(output::RegisterJson(), {two_days, nothing, {"b.txt", "note x\n"}}));
  CHECK(document["format"] == "lodebook-register");
  CHECK(document["counts"] == Json({{"samples", 1}, {"photos", 1}, {"notes", 4}}));
  REQUIRE(document["logs"].size() == 3);
  const Json& log = document["logs"][0];
  CHECK(log["file"] == "day.txt");
  CHECK(log["counts"] == Json({{"samples", 1}, {"photos", 1}, {"notes", 3}}));
  REQUIRE(log["items"].size() == 5);
  CHECK(log["items"][3]["text"] == "=17-19 looking N");
  CHECK(log["items"][3]["name"].is_null());
  CHECK(log["items"][1]["elevation_m"] == 812.0);
  CHECK(document["logs"][1]["items"] == Json::array());
  CHECK(test::fits(document, "register.schema.json"));
  Json wrong = document;
  wrong["logs"][0]["items"][0]["kind"] = "bedding";
  CHECK_FALSE(test::fits(wrong, "register.schema.json"));
}

TEST_CASE("the register as GeoJSON has points where stations have positions") {
  const Json document =
      Json::parse(test::written(output::RegisterGeoJson(), {nothing, two_days, two_days}));
  CHECK(document["name"] == "lodebook-register");
  REQUIRE(document["features"].size() == 10);
  const Json& sample = document["features"][1];
  CHECK(sample["geometry"]["coordinates"] == Json::array({169.0144, -44.6891}));
  CHECK(sample["properties"]["name"] == "Q1-a");
  CHECK(document["features"][4]["geometry"].is_null());
  for (const Json& feature : document["features"]) {
    std::string keys;
    for (const auto& [key, value] : feature["properties"].items())
      keys += keys.empty() ? key : "," + key;
    CHECK(keys == header);
  }
}

}  // namespace
}  // namespace lodebook
