// SPDX-License-Identifier: MIT
// One figure has one value, wherever it is shown.
#include <algorithm>
#include <catch.hpp>
#include <nlohmann/json.hpp>
#include <random>

#include "reduced.hpp"
#include "schema.hpp"

namespace lodebook {
namespace {

/// What stands between the words before and behind it, at each place where the first ones stand.
std::vector<std::string> figures_between(const std::string& text, std::string_view before,
                                         std::string_view behind) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(before); at != std::string::npos; at = text.find(before, at)) {
    at += before.size();
    found.push_back(text.substr(at, text.find(behind, at) - at));
  }
  return found;
}

/// Without the end of the report, which says the worst once more.
std::string stations_of(const std::string& report) {
  return report.substr(0, report.find("worth a second look"));
}

/// Degrees in hundredths, so that every tenth figure lies half way between two tenths.
std::string hundredths(int units) {
  std::string text;
  append_figure(text, units, 2, 3);
  return text;
}

TEST_CASE("a random figure is the same in the message and in the report") {
  constexpr unsigned seed = 4;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_int_distribution<int> fore(1, 17'000);
  std::uniform_int_distribution<int> off(220, 900);
  std::string log = "set 0\ndeclination 0\nstation Q1\n";
  constexpr std::size_t count = 500;
  for (std::size_t i = 0; i < count; ++i) {
    const int azimuth = fore(random);
    log += "leg " + hundredths(azimuth) + " 50m back " +
           hundredths(azimuth + 18'000 + off(random)) + "\n";
  }
  const std::string report = stations_of(test::report(log));
  const auto checked = figures_between(report, "fore and back bearings ", "° apart");
  const auto said = figures_between(report, "disagree by ", " degrees");
  REQUIRE(checked.size() == count);
  CHECK(checked == said);
}

TEST_CASE("a figure half way between two is rounded up wherever it is shown") {
  const std::string report = stations_of(test::report(
      "set 0\ndeclination 0\nstation Q1\nfault vertical 000\nslickenline 005.25/0 on fault\n"
      "slickenline 354.75/0 on fault\nleg 010 50m back 192.25\n"));
  CHECK(figures_between(report, "\n  slickenline ", "° out of") ==
        std::vector<std::string>{"5.3", "5.3"});
  CHECK(figures_between(report, "the line lies ", " degrees") ==
        std::vector<std::string>{"5.3", "5.3"});
  CHECK(figures_between(report, "fore and back bearings ", "° apart") ==
        std::vector<std::string>{"2.3"});
  CHECK(figures_between(report, "disagree by ", " degrees") == std::vector<std::string>{"2.3"});
}

TEST_CASE("the mean of currents that point up is the same in report, JSON and table") {
  const std::string log =
      "set 0\ndeclination 0\nstation Q1\ncurrent 350/-2, 352/-3, 351/-2\n"
      "flute 090/-4, 092/-4\n";
  CHECK(figures_between(test::report(log), "mean ", "\n").front().starts_with("171/2"));
  const std::vector<test::Log> logs = {{"day.txt", log}};
  const auto document = nlohmann::ordered_json::parse(
      test::written(output::JsonWriter(reduction::North::geographic, output::columns()), logs));
  CHECK(test::fits(document, "reduction.schema.json"));
  const auto report = nlohmann::ordered_json::parse(test::written(output::JsonReport(), logs));
  CHECK(test::fits(report, "report.schema.json"));
  reduction::Options options;
  options.repeats = reduction::Repeats::mean;
  const auto lines = test::lines_of(test::csv(log, options));
  const auto& checks = document["logs"][0]["stations"][0]["checks"];
  REQUIRE(lines.size() == 1 + checks.size());
  const auto header = test::cells_of(lines.front());
  const auto column = [&](std::string_view name) {
    return static_cast<std::size_t>(std::ranges::find(header, name) - header.begin());
  };
  for (std::size_t i = 0; i < checks.size(); ++i) {
    const auto cells = test::cells_of(lines[i + 1]);
    CHECK(checks[i]["mean"]["trend"].dump() == cells.at(column("trend")));
    CHECK(checks[i]["mean"]["plunge"].dump() == cells.at(column("plunge")));
  }
}

}  // namespace
}  // namespace lodebook
