// SPDX-License-Identifier: MIT
// Summaries for programs.
#include <catch.hpp>
#include <cmath>
#include <lodebook/output/summary.hpp>
#include <nlohmann/json.hpp>

#include "schema.hpp"
#include "summed_up.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;
using test::NamedLog;
using test::SummedUp;

const std::string heading = "set 0\ndeclination 0\nrule right\nstation Q1\n";

Json json_of(const SummedUp& sum) {
  std::string out;
  output::append_summary_json(out, sum.document());
  CHECK(out.ends_with("]}\n"));
  return Json::parse(out);
}
Json json_of(const std::string& readings) {
  return json_of(SummedUp(heading + readings));
}

TEST_CASE("a group has its figures, and what is missing is null") {
  const Json document = json_of("bedding 090 20\nbedding 090 30\nbedding 090 40\nsight Peak 020\n");
  CHECK(document["format"] == "lodebook-summary");
  CHECK(document["version"] == 1);
  CHECK(document["sights_and_legs"] == 1);
  REQUIRE(document["groups"].size() == 1);
  const Json& group = document["groups"][0];
  CHECK(group["kind"] == "bedding");
  CHECK(group["type"] == "plane");
  CHECK(group["unit"].is_null());
  CHECK(group["station"].is_null());
  CHECK(group["file"].is_null());
  CHECK(group["north"] == "true");
  CHECK(group["count"] == 3);
  CHECK(group["mean"] == Json::parse(R"({"strike": 90.0, "dip": 30.0,
      "pole": {"trend": 0.0, "plunge": 60.0}, "resultant": 2.9696, "precision_k": 65.82,
      "cone95": 15.32})"));
  CHECK(group["tensor"]["eigenvalues"] == Json::parse("[0.9799, 0.0201, 0.0]"));
  CHECK(group["tensor"]["woodcock_k"].is_null());
  CHECK(group["fabric"] == "too few");
  CHECK(group["girdle"].is_null());
  CHECK(group["no_single_mean"].is_null());
  CHECK(group["sets"].empty());
  CHECK(group["azimuths"]["of"] == "strikes");
  CHECK(group["azimuths"]["axial"] == true);
  CHECK(group["azimuths"]["mean"] == 90.0);
  CHECK(group["far_off"].empty());
}

TEST_CASE("a girdle has its axis, lines their mean") {
  std::string readings = "lineation 030/20\n";
  for (const char* plane : {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47"})
    readings += std::string("bedding ") + plane + '\n';
  const Json document = json_of(readings);
  CHECK(document["groups"][0]["mean"]["trend"] == 30.0);
  const Json& girdle = document["groups"][1]["girdle"];
  // Those planes hold a line that plunges 20 towards north, to half a degree.
  const double trend = girdle["axis"]["trend"];
  CHECK(std::abs(std::remainder(trend, 360)) < 1);
  CHECK(std::abs(double{girdle["axis"]["plunge"]} - 20) < 1);
  CHECK(std::abs(double{girdle["dip"]} - 70) < 1);
  CHECK(girdle["axis"]["cone95"].is_number());
  CHECK(test::fits(document, "summary.schema.json"));
}

TEST_CASE("two sets have no single mean, and the document says why") {
  std::string joints;
  for (const char* plane : {"012 85", "016 88", "193 84", "020 83", "014 86", "018 84", "104 85",
                            "101 88", "284 84", "108 83"})
    joints += std::string("joint ") + plane + '\n';
  const Json document = json_of(joints);
  const Json& group = document["groups"][0];
  CHECK(group["fabric"] == "two sets");
  CHECK(group["no_single_mean"] == "two clear sets");
  CHECK(group["mean"]["strike"].is_null());
  CHECK(group["mean"]["dip"].is_null());
  CHECK(group["mean"]["pole"].is_null());
  CHECK(group["mean"]["resultant"].is_number());
  CHECK(group["girdle"].is_null());
  REQUIRE(group["sets"].size() == 2);
  CHECK(group["sets"][0]["surfaces"] == 6);
  CHECK(group["sets"][1]["surfaces"] == 4);
  CHECK(std::abs(group["sets"][1]["mean"]["dip"].get<double>() - 85) < 4);
  CHECK(group["azimuths"]["mean"].is_null());
  CHECK(group["azimuths"]["no_single_mean"] == "two clear sets");
  CHECK(test::fits(document, "summary.schema.json"));
}

TEST_CASE("only planes that fold may have a fold axis") {
  const auto girdle_of = [](const std::string& kind) {
    std::string readings;
    for (const char* plane : {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47"})
      readings += kind + ' ' + plane + '\n';
    return json_of(readings)["groups"][0]["girdle"];
  };
  CHECK(girdle_of("bedding")["may_be_fold_axis"] == true);
  CHECK(girdle_of("joint")["may_be_fold_axis"] == false);
}

TEST_CASE("horizontal and vertical means have no azimuth") {
  const Json document = json_of("bedding horizontal\nlineation vertical\n");
  CHECK(document["groups"][0]["mean"]["strike"].is_null());
  CHECK(document["groups"][0]["mean"]["pole"]["trend"].is_null());
  CHECK(document["groups"][1]["mean"]["trend"].is_null());
  CHECK(document["groups"][0]["azimuths"]["mean"].is_null());
  CHECK(document["groups"][0]["azimuths"]["resultant"].is_null());
  CHECK(test::fits(document, "summary.schema.json"));
}

TEST_CASE("the document fits its schema, whatever the logs, and the schema can refuse") {
  const std::string awkward =
      "station \"Q\\\x07\xff\nunit <b>\xc3(\nbedding 070 30\n"
      "bedding 470 30\njoint 000 90\njoint 090 90\ncurrent 010/00\n";
  for (const reduction::Grouping by :
       {reduction::Grouping{}, {true, false}, {false, true}, {true, true}}) {
    CHECK(test::fits(json_of(SummedUp(std::vector<NamedLog>{{"a\n\x1b.txt", awkward},
                                                            {"b.txt", heading + awkward},
                                                            {"empty.txt", ""}},
                                      by)),
                     "summary.schema.json"));
  }
  Json document = json_of("bedding 070 30\n");
  document["groups"][0]["mean"]["dip"] = 91;
  CHECK_FALSE(test::fits(document, "summary.schema.json"));
}

TEST_CASE("how the groups were made is said") {
  reduction::Options options;
  options.repeats = reduction::Repeats::mean;
  const Json document = json_of(SummedUp({{"day.txt", heading + "unit marl\nbedding 070 30\n"}},
                                         {true, true}, {{"bedding"}, true}, options));
  CHECK(document["by_unit"] == true);
  CHECK(document["by_station"] == true);
  CHECK(document["without_suspect"] == true);
  CHECK(document["repeats"] == "mean");
  CHECK(document["groups"][0]["unit"] == "marl");
  CHECK(document["groups"][0]["station"] == "Q1");
  CHECK(document["groups"][0]["file"] == "day.txt");
  CHECK(document["logs"][0] == Json::parse(R"({"file": "day.txt", "least_declination": 0.0,
      "most_declination": 0.0, "by_model": false})"));
}

TEST_CASE("what is far off has its place, words and angle") {
  std::string readings;
  for (int i = 0; i < 10; ++i)
    readings += "current 03" + std::to_string(i) + "/20\n";
  const Json far_off = json_of(readings + "current 214/00\n")["groups"][0]["far_off"];
  REQUIRE(far_off.size() == 1);
  CHECK(far_off[0]["source"] == "day.txt:15:1");
  CHECK(far_off[0]["station"] == "Q1");
  CHECK(far_off[0]["written"] == "214/00");
  CHECK(far_off[0]["degrees"].get<double>() > 150);
}

TEST_CASE("no logs and empty ones make a document") {
  CHECK(json_of(SummedUp(std::vector<NamedLog>()))["groups"].empty());
  const Json empty = json_of(SummedUp(""));
  CHECK(empty["groups"].empty());
  CHECK(empty["logs"][0]["least_declination"].is_null());
  CHECK(test::fits(empty, "summary.schema.json"));
}

}  // namespace
}  // namespace lodebook
