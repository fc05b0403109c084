// SPDX-License-Identifier: MIT
// Summaries as a table.
#include <catch.hpp>
#include <cmath>
#include <lodebook/output/summary.hpp>
#include <map>

#include "reduced.hpp"
#include "summed_up.hpp"

namespace lodebook {
namespace {

using test::NamedLog;
using test::SummedUp;
using Row = std::map<std::string, std::string>;

const std::string heading = "set 0\ndeclination 0\nrule right\nstation Q1\n";

std::vector<std::string> lines_of(const SummedUp& sum) {
  std::string out;
  output::append_summary_csv(out, sum.document());
  return test::lines_of(out);
}

/// Each row by the names of its columns.
std::vector<Row> rows_of(const SummedUp& sum) {
  const std::vector<std::string> lines = lines_of(sum);
  const std::vector<std::string> names = test::cells_of(lines.at(0));
  std::vector<Row> rows;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const std::vector<std::string> cells = test::cells_of(lines[i]);
    REQUIRE(cells.size() == names.size());
    Row& row = rows.emplace_back();
    for (std::size_t k = 0; k < names.size(); ++k)
      row[names[k]] = cells[k];
  }
  return rows;
}
std::vector<Row> rows_of(const std::string& readings) {
  return rows_of(SummedUp(heading + readings));
}

TEST_CASE("columns have fixed names, whether there are groups or not") {
  const std::string names =
      "kind,type,unit,station,file,north,count,surfaces,suspect,suspect_left_out,rejected,partial,"
      "mean_strike,mean_dip,mean_trend,mean_plunge,resultant,precision_k,cone95,no_single_mean,"
      "eigenvalue_1,"
      "eigenvalue_2,eigenvalue_3,woodcock_k,woodcock_c,fabric,girdle_strike,girdle_dip,axis_trend,"
      "axis_plunge,axis_cone95,azimuth_count,azimuth_mean,azimuth_resultant,azimuth_arc95,"
      "azimuth_chance,far_off";
  CHECK(lines_of(SummedUp("")) == std::vector<std::string>{names});
  CHECK(lines_of(SummedUp(heading + "bedding 070 30\n")).at(0) == names);
}

TEST_CASE("without a single mean its cells are empty, and another says why") {
  const auto rows = rows_of("fault 030 40\nfault 060 70\nfault 080 50\n");
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].at("mean_strike").empty());
  CHECK(rows[0].at("mean_dip").empty());
  CHECK_FALSE(rows[0].at("resultant").empty());
  CHECK(rows[0].at("no_single_mean") == "too scattered");
  CHECK(rows_of("fault 030 40\n")[0].at("no_single_mean").empty());
}

TEST_CASE("what rounds to horizontal has no strike, and to vertical no trend") {
  const auto rows = rows_of("bedding 0.004 > 090\nlineation 090/89.997\ncurrent 030/-2\n");
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].at("mean_dip") == "0.00");
  CHECK(rows[0].at("mean_strike").empty());
  CHECK(rows[1].at("mean_plunge") == "90.00");
  CHECK(rows[1].at("mean_trend").empty());
  CHECK(rows[2].at("type") == "arrow");
  CHECK(rows[2].at("mean_trend") == "30.00");
  CHECK(rows[2].at("mean_plunge") == "-2.00");
}

TEST_CASE("planes have a strike and dip, lines a trend and plunge") {
  const auto rows = rows_of(
      "bedding 090 20\nbedding 090 30\nbedding 090 40\nlineation 030/20\nlineation 032/20\n");
  REQUIRE(rows.size() == 2);
  Row planes = rows[0];
  CHECK(planes["mean_strike"] == "90.00");
  CHECK(planes["mean_dip"] == "30.00");
  CHECK(planes["mean_trend"].empty());
  CHECK(planes["resultant"] == "2.9696");
  CHECK(planes["precision_k"] == "65.82");
  CHECK(planes["cone95"] == "15.32");
  CHECK(planes["eigenvalue_1"] == "0.9799");
  CHECK(planes["woodcock_k"].empty());
  CHECK(planes["fabric"] == "too few");
  CHECK(planes["azimuth_mean"] == "90.00");
  Row lines = rows[1];
  CHECK(lines["mean_strike"].empty());
  CHECK(lines["mean_trend"] == "31.00");
  CHECK(lines["mean_plunge"] == "20.00");
  CHECK(lines["precision_k"].empty());
  CHECK(lines["cone95"].empty());
}

TEST_CASE("what has no mean, no azimuth or no members has empty cells, not zeros") {
  auto rows = rows_of("joint 000 90\njoint 090 90\nbedding horizontal\nfault 470 30\n");
  REQUIRE(rows.size() == 3);
  for (const char* column : {"mean_strike", "mean_dip", "resultant", "precision_k", "cone95"})
    CHECK(rows[0][column].empty());
  CHECK(rows[1]["mean_strike"].empty());
  CHECK(rows[1]["mean_dip"] == "0.00");
  CHECK(rows[1]["azimuth_count"] == "0");
  CHECK(rows[1]["azimuth_resultant"].empty());
  CHECK(rows[2]["count"] == "0");
  CHECK(rows[2]["rejected"] == "1");
  CHECK(rows[2]["eigenvalue_1"].empty());
}

TEST_CASE("a girdle has its axis") {
  std::string readings;
  for (const char* plane : {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47"})
    readings += std::string("bedding ") + plane + '\n';
  Row row = rows_of(readings).at(0);
  CHECK(row["fabric"] == "girdle");
  CHECK_FALSE(row["axis_trend"].empty());
  CHECK(std::abs(std::stod(row["axis_plunge"]) - 20) < 1);
  CHECK_FALSE(row["axis_cone95"].empty());
}

TEST_CASE("strikes wrap at half a turn after rounding") {
  Row row = rows_of("joint 179 80\njoint 001 80\n").at(0);
  CHECK(row["azimuth_mean"] == "0.00");
}

TEST_CASE("names are quoted, and none becomes a formula") {
  const SummedUp sum({{"=a,\"b\".txt",
                       "set 0\ndeclination 0\nrule right\nstation +Q\nunit @x, \"y\"\n"
                       "bedding 070 30\n"}},
                     {true, true});
  const std::string line = lines_of(sum).at(1);
  CHECK(line.starts_with(
      "bedding,plane,\"'@x, \"\"y\"\"\",'+Q,\"'=a,\"\"b\"\".txt\",true,1,1,0,0,0,"));
}

TEST_CASE("what is far off is named by its place") {
  std::string readings;
  for (int i = 0; i < 10; ++i)
    readings += "lineation 03" + std::to_string(i) + "/20\n";
  CHECK(rows_of(readings + "lineation 130/20\nlineation 210/40\n").at(0)["far_off"] ==
        "day.txt:15:1 day.txt:16:1");
}

}  // namespace
}  // namespace lodebook
