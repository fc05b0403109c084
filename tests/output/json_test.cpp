// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "logs.hpp"
#include "reduced.hpp"
#include "schema.hpp"

namespace lodebook {
namespace {

using test::fits;
using Json = nlohmann::ordered_json;

Json reduction_document(const std::vector<test::Log>& logs) {
  return Json::parse(
      test::written(output::JsonWriter(reduction::North::geographic, output::columns()), logs));
}

Json report_document(const std::vector<test::Log>& logs) {
  return Json::parse(test::written(output::JsonReport(), logs));
}

const std::vector<test::Log> both = {{"a.txt", test::small_log}, {"/tmp/b.txt", test::rough}};

TEST_CASE("the reduction's document fits its schema") {
  Json document = reduction_document(both);
  CHECK(fits(document, "reduction.schema.json"));
  CHECK(fits(reduction_document({}), "reduction.schema.json"));
  document["logs"][0]["stations"][0]["readings"][0]["strike"] = "N78E";
  CHECK_FALSE(fits(document, "reduction.schema.json"));
}

TEST_CASE("the report's document fits its schema") {
  Json document = report_document(both);
  CHECK(fits(document, "report.schema.json"));
  CHECK(fits(report_document({}), "report.schema.json"));
  document["logs"][0]["extra"] = 1;
  CHECK_FALSE(fits(document, "report.schema.json"));
}

TEST_CASE("all schemas know every code") {
  for (const char* name : {"/reduction.schema.json", "/report.schema.json", "/fix.schema.json"}) {
    std::ifstream file(std::string(LODEBOOK_DOCS) + name);
    REQUIRE(file);
    const Json known = Json::parse(file)["$defs"]["code"]["enum"];
    CHECK(known.size() == notebook::code_count);
    for (std::size_t code = 0; code < notebook::code_count; ++code) {
      const std::string wanted(notebook::name_of(static_cast<notebook::Code>(code)));
      CHECK(std::find(known.begin(), known.end(), wanted) != known.end());
    }
  }
}

TEST_CASE("readings in JSON are the rows of the table") {
  const Json document = reduction_document(both);
  std::size_t row = 0;
  for (std::size_t log = 0; log < both.size(); ++log) {
    const auto lines = test::lines_of(test::written(test::CsvWriter(), {both[log]}));
    row = 1;
    const auto compare = [&](const Json& reading) {
      REQUIRE(row < lines.size());
      const auto cells = test::cells_of(lines[row++]);
      REQUIRE(reading.size() == output::columns().size() + 1);
      CHECK(reading.at("attributes").is_object());
      std::size_t index = 0;
      for (const output::Column& column : output::columns()) {
        const Json& value = reading.at(std::string(column.name));
        const std::string& cell = cells[index++];
        CAPTURE(column.name, row);
        if (cell.empty()) {
          CHECK(value.is_null());
        } else if (value.is_number()) {
          CHECK(value.get<double>() == std::stod(cell));
        } else {
          std::string text = value.get<std::string>();
          std::erase(text, '"');  // cells_of drops quotes
          CHECK((text == cell || "'" + text == cell));
        }
      }
    };
    for (const Json& reading : document["logs"][log]["readings"])
      compare(reading);
    for (const Json& station : document["logs"][log]["stations"]) {
      for (const Json& reading : station["readings"])
        compare(reading);
    }
    CHECK(row == lines.size());
    CHECK(document["logs"][log]["counts"]["readings"] == lines.size() - 1);
  }
}

TEST_CASE("what a remark says by key and value is an object") {
  const Json document =
      reduction_document({{"a.txt",
                           "station Q1\njoint N66W 40NE, N60W 41NE ; infill=\"clay\" spacing=0.3m\n"
                           "joint N66W 40NE ; infill clay\n"}});
  CHECK(fits(document, "reduction.schema.json"));
  const Json& readings = document["logs"][0]["stations"][0]["readings"];
  CHECK(readings[0]["attributes"] == Json({{"infill", "\"clay\""}, {"spacing", "0.3m"}}));
  CHECK(readings[1]["attributes"] == readings[0]["attributes"]);
  CHECK(readings[0]["remark"] == "infill=\"clay\" spacing=0.3m");
  CHECK(readings[2]["attributes"] == Json::object());
}

TEST_CASE("what surrounds the readings is kept") {
  const Json document = reduction_document(both);
  CHECK(document["format"] == "lodebook-reduction");
  CHECK(document["version"] == 1);
  CHECK(document["north"] == "true");
  const Json& log = document["logs"][0];
  CHECK(log["file"] == "a.txt");
  CHECK(document["logs"][1]["file"] == "b.txt");
  CHECK(log["settings"]["declination"] == 24.6);
  CHECK(log["settings"]["declination_sigma"] == 0.4);
  CHECK(log["settings"]["declination_from"] == "log");
  CHECK(log["settings"]["correction"] == 24.6);
  CHECK(log["settings"]["rule"] == "right");
  CHECK(log["settings"]["pace_m"].is_null());
  CHECK(log["landmarks"].size() == 3);
  CHECK(log["landmarks"][0]["elevation_m"] == 1412);
  const Json& station = log["stations"][0];
  CHECK(station["name"] == "Q1");
  CHECK(station["position"]["accuracy_m"] == 8);
  CHECK(station["time"] == "09:40");
  CHECK(station["samples"][0]["name"] == "Q1-a");
  CHECK(station["samples"][0]["text"] == "garnet band");
  CHECK(station["notes"][0] == "contact is 3 m upslope; float below");
  CHECK(log["comments"][0]["line"] == 5);
  CHECK(log["comments"][0]["text"] == "# nothing turned into the dial");
  CHECK(log["stations"][1]["position"]["accuracy_m"].is_number());  // by sights

  const Json& rough = document["logs"][1];
  CHECK(rough["readings"].size() == 1);
  REQUIRE(rough["stations"].back()["photos"].size() == 1);
  CHECK(rough["stations"].back()["photos"][0] == "0412 looking north");
  CHECK(rough["stations"][1]["name"].is_null());
  bool has_quadrant_angle = false;
  for (const Json& diagnostic : rough["diagnostics"]) {
    has_quadrant_angle = has_quadrant_angle || (diagnostic["code"] == "quadrant-angle" &&
                                                diagnostic["severity"] == "error");
  }
  CHECK(has_quadrant_angle);
  CHECK(document["counts"]["readings"] ==
        log["counts"]["readings"].get<int>() + rough["counts"]["readings"].get<int>());
}

TEST_CASE("checks name what was held against what") {
  const Json document = reduction_document(both);
  const Json& checks = document["logs"][0]["stations"][0]["checks"];
  bool repeats = false;
  bool in_plane = false;
  for (const Json& check : checks) {
    if (check["check"] == "repeats") {
      repeats = true;
      CHECK(check["kind"] == "bedding");
      CHECK(check["count"] == 3);
      CHECK(check["passed"] == true);
      CHECK(check["mean"]["dip"].get<double>() == Approx(35.0).margin(0.2));
    }
    if (check["check"] == "line-in-plane") {
      in_plane = true;
      CHECK(check["plane_kind"] == "bedding");
      CHECK(check["count"].is_null());
    }
  }
  CHECK(repeats);
  CHECK(in_plane);
  CHECK(document["logs"][0]["stations"][1]["checks"][0]["check"] == "fore-and-back");
}

TEST_CASE("text that is not UTF-8 or needs escapes still makes valid JSON") {
  const Json document = reduction_document(
      {{"a\"b.txt", "station Q1\n  note a \"quoted\" \\ word\n  note \xFF\n  bedding \xFF\n"}});
  CHECK(document["logs"][0]["file"] == "a\"b.txt");
  CHECK(document["logs"][0]["stations"][0]["notes"][0] == "a \"quoted\" \\ word");
  CHECK(document["logs"][0]["stations"][0]["readings"][0]["written"] == "\uFFFD");
}

TEST_CASE("what a terminal obeys stands in JSON as an escape") {
  const std::string out = test::written(
      output::JsonWriter(reduction::North::geographic, output::columns()),
      {{"day.txt", "station Q1\n  note a\u202Eb\n  bedding \x1b[1m \x7F \u009B31m\n"}});
  for (const char* typed : {"\x1b", "\x7F", "\u009B", "\u202E"})
    CHECK(out.find(typed) == out.npos);
  CHECK(out.find("a\\u202eb") != out.npos);
  const Json station = Json::parse(out)["logs"][0]["stations"][0];
  CHECK(station["notes"][0] == "a\u202Eb");
  CHECK(station["readings"][0]["written"] == "\x1b[1m \x7F \u009B31m");
}

TEST_CASE("the report's worst faults come with their place") {
  const Json document = report_document(both);
  CHECK(document["format"] == "lodebook-report");
  REQUIRE(document["worst"].size() == 3);
  CHECK(document["worst"][0]["severity"] == "error");
  CHECK(document["worst"][0]["file"] == "b.txt");
  CHECK(document["caution"].is_string());
  CHECK(document["logs"][0]["stations"][0]["line"] == 13);
  CHECK(document["logs"][0]["stations"][0]["readings"][0]["source"] == "a.txt:17:3");
}

}  // namespace
}  // namespace lodebook
