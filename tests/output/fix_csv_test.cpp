// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/fix_csv.hpp>

#include "fixes_by_hand.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

std::vector<std::string> lines(const std::vector<reduction::Fixes>& logs,
                               std::string name = "day3.txt") {
  return test::lines_of(test::fix_text(output::FixCsv(), logs, std::move(name)));
}

constexpr const char* header =
    "station,latitude,longitude,easting,northing,zone,position_from,accuracy_m,semi_major_m,"
    "semi_minor_m,major_azimuth,elevation_m,sights,chi_square,freedom,agrees,suspicion,source";

TEST_CASE("a row a station, with what is known of it") {
  const auto rows = lines({test::some_fixes()});
  REQUIRE(rows.size() == 5);
  CHECK(rows[0] == header);
  CHECK(rows[1].starts_with("Q1,-44.6900000,169.0200000,"));
  CHECK(rows[1].ends_with(",59G,at,8.00,19.58,19.58,0.00,812.00,,,,,,day3.txt:20"));
  CHECK(rows[2].starts_with("Q2,-44.6891000,169.0144000,"));
  CHECK(rows[2].ends_with(",59G,sights,4.12,12.04,8.00,40.40,815.34,3,1.34,1,yes,,day3.txt:30"));
  CHECK(rows[3].ends_with(",59G,legs,3.54,,,,,,,,,,day3.txt:40"));
  CHECK(rows[4] == "Q4,,,,,,,,,,,,1,,,,,day3.txt:50");
}

TEST_CASE("sights that disagree say so, and what is suspected") {
  reduction::Fixes fixes = test::some_fixes();
  fixes.sight_fixes[0] = test::bad_fix();
  CHECK(
      lines({fixes})[2].ends_with(",3,310.44,1,no,Cairn: the other end of the needle,day3.txt:30"));
}

TEST_CASE("two sights cannot disagree, and nothing says that they agree") {
  reduction::Fixes fixes = test::some_fixes();
  fixes.sight_fixes[0].sights.pop_back();
  fixes.sight_fixes[0].freedom = 0;
  fixes.sight_fixes[0].chi_square = 0;
  CHECK(lines({fixes})[2].ends_with(",2,,0,,,day3.txt:30"));
}

TEST_CASE("names are quoted and guarded, and full paths are cut") {
  const auto rows = lines({test::awkward_fixes()}, "/home/x/day3.txt");
  REQUIRE(rows.size() == 3);
  CHECK(rows[1].starts_with("'=1+1,-17.0000000,179.9999900,"));
  CHECK(
      rows[1].ends_with(",\"'@Peak\"\"\uFFFD: read \"\"backwards\"\", at 180\uFFFD\",day3.txt:20"));
  CHECK(rows[2] == "\"Q \"\"two\"\", \uFFFD[31m\uFFFD\",,,,,,,,,,,,,,,,,day3.txt:30");
}

TEST_CASE("several logs go into one table, and none into its header alone") {
  CHECK(lines({}) == std::vector<std::string>{header});
  CHECK(lines({test::some_fixes(), {}, test::some_fixes()}).size() == 9);
}

TEST_CASE("an axis turns no further than half round") {
  reduction::Fixes fixes = test::some_fixes();
  fixes.stations[1].ellipse->major_azimuth = 179.999;
  CHECK(lines({fixes})[2].find(",12.04,8.00,0.00,") != std::string::npos);
}

}  // namespace
}  // namespace lodebook
