// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/fix_json.hpp>
#include <nlohmann/json.hpp>

#include "fixes_by_hand.hpp"
#include "schema.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;

Json document(const std::vector<reduction::Fixes>& logs) {
  return Json::parse(test::fix_text(output::FixJson(), logs));
}

TEST_CASE("the document of fixes fits its schema") {
  reduction::Fixes bad = test::some_fixes();
  bad.sight_fixes[0] = test::bad_fix();
  bad.legs[0].left_out = reduction::LeftOut::own_station;
  Json found = document({test::some_fixes(), bad, test::awkward_fixes(), {}});
  CHECK(test::fits(found, "fix.schema.json"));
  CHECK(test::fits(document({}), "fix.schema.json"));
  SECTION("a wrong type") {
    found["logs"][0]["stations"][1]["sights"][0]["bearing"] = "N17E";
  }
  SECTION("a key too many") {
    found["logs"][0]["stations"][0]["extra"] = 1;
  }
  SECTION("a fix without its text") {
    found["logs"][0]["diagnostics"][0]["fixes"][0].erase("text");
  }
  SECTION("a key too few") {
    found["logs"][0]["traverses"][0]["legs"][0].erase("reversed");
  }
  SECTION("a sight of the wrong kind") {
    found["logs"][0]["stations"][1]["sights"] = found["logs"][0]["landmarks"][0]["sights"];
  }
  CHECK_FALSE(test::fits(found, "fix.schema.json"));
}

TEST_CASE("a station has its position, its error and its sights") {
  const Json found = document({test::some_fixes()});
  CHECK(found["format"] == "lodebook-fix");
  CHECK(found["version"] == 1);
  CHECK(found["caution"].get<std::string>().find("one time in four") != std::string::npos);
  const Json& log = found["logs"][0];
  CHECK(log["file"] == "day3.txt");
  const Json& station = log["stations"][1];
  CHECK(station["name"] == "Q2");
  CHECK(station["line"] == 30);
  CHECK(station["latitude"] == -44.6891);
  CHECK(station["longitude"] == 169.0144);
  CHECK(station["grid"].get<std::string>().starts_with("59G 342"));
  CHECK(station["position_from"] == "sights");
  CHECK(station["accuracy_m"] == 4.12);  // sqrt((9 + 25) / 2)
  CHECK(station["semi_minor_m"] == 8);
  CHECK(station["major_azimuth"] == 40.4);
  CHECK(station["elevation_m"] == 815.34);
  CHECK(station["elevation_sigma_m"] == 2.06);
  REQUIRE(station["sights"].size() == 3);
  CHECK(station["sights"][1]["landmark"] == "Trig-Dome");
  CHECK(station["sights"][1]["line"] == 32);
  CHECK(station["sights"][1]["bearing"] == 318.34);
  CHECK(station["sights"][1]["residual"] == -0.26);
  CHECK(station["sights"][1]["offset_m"] == -11.24);
  CHECK(station["sights"][1]["distance_m"] == 2140.06);
  CHECK(station["sights"][1]["suspicion"].is_null());
  CHECK(station["cuts"][1] == Json({{"first", "Cairn"}, {"second", "Saddle"}, {"degrees", 75.62}}));
  CHECK(station["chi_square"] == 1.34);
  CHECK(station["freedom"] == 1);
  CHECK(station["chance"] == 0.247);
  CHECK(station["agrees"] == true);
  CHECK(station["fault"].is_null());
  CHECK(station["slips"] == Json::array());
  CHECK(station["triangle"]["corners"][0] == Json::array({169.0314, -44.6502}));
  CHECK(station["triangle"]["area_m2"] == 312.04);
  CHECK(station["implied_declination"]["declination"] == 24.14);
  CHECK(station["implied_declination"]["differs"] == false);
  CHECK(station["danger_circle"] == false);
}

TEST_CASE("a station without sights has empty arrays and nulls") {
  const Json found = document({test::some_fixes()});
  const Json& station = found["logs"][0]["stations"][0];
  CHECK(station["position_from"] == "at");
  CHECK(station["elevation_m"] == 812);
  for (const char* const key : {"sights", "cuts", "slips"})
    CHECK(station[key] == Json::array());
  for (const char* const key : {"chi_square", "freedom", "chance", "agrees", "fault", "triangle",
                                "implied_declination", "danger_circle", "elevation_sigma_m"}) {
    CAPTURE(key);
    CHECK(station[key].is_null());
  }
}

TEST_CASE("without a position the fault says why") {
  const auto fault_of = [](const reduction::Fixes& fixes) {
    const Json station = document({fixes})["logs"][0]["stations"][3];
    for (const char* const key : {"latitude", "longitude", "grid", "position_from", "accuracy_m",
                                  "semi_major_m", "chi_square", "freedom", "chance", "agrees"}) {
      CAPTURE(key);
      CHECK(station[key].is_null());
    }
    CHECK(station["sights"][0]["residual"].is_null());
    CHECK(station["sights"][0]["bearing"] == 0);  // 359.996
    return station["fault"].get<std::string>();
  };
  using reduction::SightFault;
  const std::pair<SightFault, const char*> faults[] = {
      {SightFault::too_few, "too-few"},
      {SightFault::parallel, "parallel"},
      {SightFault::behind, "behind"},
      {SightFault::at_known_point, "at-known-point"},
      {SightFault::undetermined, "undetermined"},
  };
  reduction::Fixes fixes = test::some_fixes();
  for (const auto& [fault, word] : faults) {
    fixes.sight_fixes[1].fault = fault;
    CHECK(fault_of(fixes) == word);
  }
  fixes.sight_fixes[1].fault.reset();
  fixes.sight_fixes[1].without_declination = true;
  CHECK(fault_of(fixes) == "without-declination");
}

TEST_CASE("slips name their sight, or none where all would have it") {
  reduction::Fixes fixes = test::some_fixes();
  fixes.sight_fixes[0] = test::bad_fix();
  const Json station = document({fixes})["logs"][0]["stations"][1];
  CHECK(station["agrees"] == false);
  CHECK(station["sights"][0]["suspicion"] == "the other end of the needle");
  REQUIRE(station["slips"].size() == 2);
  CHECK(station["slips"][0]["sight"] == "Cairn");
  CHECK(station["slips"][0]["slip"] == "the other end of the needle");
  CHECK(station["slips"][0]["chi_square"] == 1.24);
  CHECK(station["slips"][1]["sight"].is_null());
}

TEST_CASE("landmarks are there where something was sought of them") {
  reduction::Fixes fixes = test::some_fixes();
  Json landmarks = document({fixes})["logs"][0]["landmarks"];
  REQUIRE(landmarks.size() == 1);
  CHECK(landmarks[0]["name"] == "Peak");
  CHECK(landmarks[0]["line"] == 5);
  CHECK(landmarks[0]["position_from"] == "sights");
  CHECK(landmarks[0]["semi_major_m"] == 30);
  CHECK(landmarks[0]["sights"][1]["station"] == "Q2");
  CHECK(landmarks[0]["agrees"].is_null());
  CHECK(landmarks[0]["freedom"] == 0);
  // One that vertical angles gave a height, and one that no line declares.
  fixes.landmarks[0].stated_elevation_m.reset();
  fixes.landmarks[0].elevation = reduction::FoundElevation{1410, 3, 1};
  fixes.landmarks[0].covariance = reduction::Covariance::round(25);
  fixes.landmarks.pop_back();
  landmarks = document({fixes})["logs"][0]["landmarks"];
  REQUIRE(landmarks.size() == 2);
  CHECK(landmarks[0]["name"] == "Cairn");
  CHECK(landmarks[0]["line"].is_null());
  CHECK(landmarks[0]["position_from"] == "at");
  CHECK(landmarks[0]["elevation_m"] == 1410);
  CHECK(landmarks[0]["accuracy_m"] == 25);
  CHECK(landmarks[0]["semi_major_m"] == 61.19);
  CHECK(landmarks[1]["name"] == "Peak");
  CHECK(landmarks[1]["position_from"] == "sights");
}

TEST_CASE("traverses have their legs, and local attraction its stations") {
  const Json found = document({test::some_fixes()});
  const Json& log = found["logs"][0];
  REQUIRE(log["traverses"].size() == 2);
  const Json& loop = log["traverses"][0];
  CHECK(loop["kind"] == "loop");
  CHECK(loop["stations"] == Json::array({"Q1", "Q2", "Q1"}));
  CHECK(loop["length_m"] == 910.12);
  CHECK(loop["misclosure_m"] == 1.12);
  CHECK(loop["departure_misclosure_m"] == -0.98);
  CHECK(loop["latitude_misclosure_m"] == 0.54);
  CHECK(loop["precision"] == 812);
  CHECK(loop["contradicts"] == false);
  const Json& leg = loop["legs"][0];
  CHECK(leg["line"] == 23);
  CHECK(leg["from"] == "Q1");
  CHECK(leg["to"] == "Q2");
  CHECK(leg["reversed"] == false);
  CHECK(leg["azimuth"] == 282.64);
  CHECK(leg["distance_m"] == 455.06);
  CHECK(leg["departure_m"] == -444.04);
  CHECK(leg["latitude_m"] == 99.54);
  CHECK(leg["departure_correction_m"] == 0.46);
  CHECK(leg["latitude_correction_m"] == -0.34);
  CHECK(log["traverses"][1]["kind"] == "open");
  CHECK(log["traverses"][1]["precision"].is_null());
  CHECK(log["traverses"][1]["legs"][0]["reversed"] == true);
  CHECK(log["attraction"][0] == Json({{"station", "Q1"}, {"free", true}, {"correction", 0.0}}));
  CHECK(log["attraction"][1] == Json({{"station", "Q2"}, {"free", false}, {"correction", 0.64}}));
  REQUIRE(log["attraction_legs"].size() == 1);
  CHECK(log["attraction_legs"][0]["fore"] == 282.64);
  CHECK(log["attraction_legs"][0]["back"] == 102);
  CHECK(log["attraction_legs"][0]["corrected_back"] == 102.64);
  CHECK(log["attraction_applied"] == false);
  REQUIRE(log["diagnostics"].size() == 1);
  CHECK(log["diagnostics"][0]["code"] == "back-bearing");
  CHECK(log["diagnostics"][0]["line"] == 23);
  CHECK(log["diagnostics"][0]["fixes"] == Json::parse(R"([
          {"line": 23, "column": 15, "end_line": 23, "end_column": 19, "text": "S17E"},
          {"line": 23, "column": 1, "end_line": 23, "end_column": 1, "text": "rule right\n"}])"));
}

TEST_CASE("legs that place nothing are listed with the reason") {
  reduction::Fixes fixes = test::some_fixes();
  REQUIRE(fixes.legs.size() >= 2);
  CHECK(document({fixes})["logs"][0]["legs_left_out"].empty());
  fixes.legs[1].left_out = reduction::LeftOut::percent_or_degrees;
  const auto left_out = document({fixes})["logs"][0]["legs_left_out"];
  REQUIRE(left_out.size() == 1);
  CHECK(left_out[0]["line"] == fixes.legs[1].line);
  CHECK(left_out[0]["from"] == fixes.stations[fixes.legs[1].from].name);
  CHECK(left_out[0]["reason"] == "percent-or-degrees");
}

TEST_CASE("names are kept as valid UTF-8") {
  const Json found = document({test::awkward_fixes()});
  const Json& log = found["logs"][0];
  CHECK(log["stations"][0]["name"] == "=1+1");
  CHECK(log["stations"][0]["sights"][0]["landmark"] == "@Peak\"\x07");
  CHECK(log["stations"][1]["name"] == "Q \"two\", \x1b[31m\uFFFD");
}

}  // namespace
}  // namespace lodebook
