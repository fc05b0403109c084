// SPDX-License-Identifier: MIT
// The field of a place and time, in words and as JSON.
#include <catch.hpp>
#include <lodebook/notebook/notebook.hpp>
#include <lodebook/output/field.hpp>
#include <nlohmann/json.hpp>

namespace lodebook {
namespace {

using output::FieldAnswer;

FieldAnswer answer() {
  FieldAnswer some;
  some.position = {-44.6891, 169.0144};
  some.elevation_m = 812;
  some.date = "2026-02-14";
  some.model = "WMM2025";
  some.declination = 24.976;
  some.uncertainty = 0.376;
  some.annual_change = 0.084;
  some.magnetic_inclination = -70.125;
  some.horizontal_nt = 19891.46;
  some.total_nt = 58531.5;
  return some;
}

std::string text_of(const FieldAnswer& shown) {
  std::string out;
  output::append_field_text(out, shown);
  return out;
}

nlohmann::ordered_json json_of(const FieldAnswer& shown) {
  std::string out;
  output::append_field_json(out, shown);
  return nlohmann::ordered_json::parse(out);
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("a person reads the place, the statement, and what it rests on") {
  CHECK(
      text_of(answer()) ==
      "44.68910S 169.01440E, elevation 812 m, 2026-02-14\n"
      "\n"
      "declination 24.98E ±0.38\n"
      "\n"
      "  changes by 0.08 degrees east a year\n"
      "  magnetic inclination: north end rises 70.12 degrees above the horizontal\n"
      "  horizontal field 19891 nT, total field 58532 nT\n"
      "  from the model WMM2025; ± is one sigma\n"
      "\n"
      "caution: magnetic rock and steel nearby turn the needle, too, and no model knows of them\n");
}

TEST_CASE("a log can take the statement as it is") {
  for (const double degrees : {24.976, -24.976, 0.0, 0.004, -0.004, 179.999, -179.999}) {
    for (const double sigma : {0.376, 3.0, 180.0}) {
      CAPTURE(degrees, sigma);
      FieldAnswer shown = answer();
      shown.declination = degrees;
      shown.uncertainty = sigma;
      const std::string text = text_of(shown);
      const std::size_t begin = text.find("\ndeclination ") + 1;
      const std::string line = text.substr(begin, text.find('\n', begin) - begin);
      CAPTURE(line);
      std::vector<notebook::Diagnostic> diagnostics;
      const auto read = notebook::read_declination(
          notebook::Source("", line.substr(line.find(' '))), diagnostics);
      REQUIRE(read);
      CHECK(std::abs(read->declination.degrees_east() - degrees) < 0.0051);
      CHECK(std::abs(read->sigma - sigma) < 0.0051);
    }
  }
}

TEST_CASE("sides and ends are words, and nothing has a side where nothing is left of it") {
  FieldAnswer west = answer();
  west.position = {12, -30};
  west.declination = -7.006;
  west.annual_change = -0.1;
  west.magnetic_inclination = 31.5;
  CHECK(has(text_of(west), "12.00000N 30.00000W, "));
  CHECK(has(text_of(west), "declination 7.01W ±"));
  CHECK(has(text_of(west), "changes by 0.10 degrees west a year"));
  CHECK(has(text_of(west), "north end dips 31.50 degrees below the horizontal"));
  FieldAnswer still = answer();
  still.declination = -0.001;
  still.annual_change = 0.004;
  still.magnetic_inclination = -0.001;
  CHECK(has(text_of(still), "declination 0 ±"));
  CHECK(has(text_of(still), "changes by less than 0.01 degrees a year"));
  CHECK(has(text_of(still), "magnetic inclination: north end level\n"));
  still.elevation_m = -430.25;
  CHECK(has(text_of(still), "elevation -430.2 m"));
}

TEST_CASE("a caution stands above the declination, and in the JSON") {
  FieldAnswer shown = answer();
  CHECK(json_of(shown)["cautions"].empty());
  shown.cautions = {"no compass here"};
  CHECK(has(text_of(shown), "\n\ncaution: no compass here\ndeclination 24.98E"));
  CHECK(json_of(shown)["cautions"].dump() == R"(["no compass here"])");
}

TEST_CASE("a program reads one object on one line, its keys in order") {
  std::string out;
  output::append_field_json(out, answer());
  CHECK(out ==
        R"({"declination":24.976,"uncertainty":0.38,"annual_change":0.084,"inclination":-70.125,)"
        R"("horizontal_nt":19891.5,"total_nt":58531.5,"model":"WMM2025","date":"2026-02-14",)"
        R"("latitude":-44.6891,"longitude":169.0144,"elevation_m":812.0,"cautions":[]})"
        "\n");
}

TEST_CASE("figures have so many decimals and no negative zero") {
  FieldAnswer shown = answer();
  shown.declination = 1.23456789;
  shown.annual_change = -0.00001;
  shown.magnetic_inclination = 89.99999;
  shown.position = {1.123456789, -2.987654321};
  const auto object = json_of(shown);
  CHECK(object["declination"].dump() == "1.2346");
  CHECK(object["annual_change"].dump() == "0.0");
  CHECK(object["inclination"].dump() == "90.0");
  CHECK(object["latitude"].dump() == "1.1234568");
  CHECK(object["longitude"].dump() == "-2.9876543");
}

}  // namespace
}  // namespace lodebook
