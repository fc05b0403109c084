// SPDX-License-Identifier: MIT
#include <catch.hpp>

#include "one_row.hpp"

namespace lodebook {
namespace {

using test::OneRow;

TEST_CASE("the columns stand in the promised order") {
  std::string names;
  for (const output::Column& column : output::columns()) {
    if (!names.empty()) names += ',';
    names += column.name;
  }
  CHECK(names ==
        "station,kind,type,strike,dip,dip_direction,trend,plunge,rake,bearing,back_bearing,"
        "quadrant,uncertainty,as_read,correction,north,target,distance_m,vertical_angle,facing,"
        "sense,surface,status,codes,latitude,longitude,elevation_m,position_from,accuracy_m,"
        "rotation,date,time,observer,unit,written,remark,source");
}

TEST_CASE("the grid adds three columns behind the accuracy, and nothing else") {
  const output::Columns plain = output::columns();
  const output::Columns with_grid = output::columns(true);
  REQUIRE(with_grid.size() == plain.size() + 3);
  std::string added;
  std::size_t at = 0;
  for (const output::Column& column : with_grid) {
    if (at < plain.size() && column.name == plain[at].name) {
      ++at;
    } else {
      CHECK(plain[at - 1].name == "accuracy_m");
      added += std::string(column.name) + ' ';
    }
  }
  CHECK(added == "easting northing zone ");
}

TEST_CASE("columns of attributes stand before what was written, and hold what remarks say") {
  const std::vector<std::string> keys = {"spacing", "infill"};
  const std::vector<output::Column> all = output::columns(true, keys);
  REQUIRE(all.size() == output::columns(true).size() + 2);
  const auto spacing = std::ranges::find(all, std::string_view("spacing"), &output::Column::name);
  REQUIRE(spacing != all.end());
  CHECK(spacing[-1].name == "unit");
  CHECK(spacing[1].name == "infill");
  CHECK(spacing[2].name == "written");
  OneRow one;
  const auto cell = [&](const output::Column& column) {
    std::string text;
    output::Pen pen(text);
    column.append(pen, {one.source, one.page, one.row()});
    return std::string(pen.behind(0));
  };
  CHECK(cell(spacing[0]).empty());
  one.row().remark = "wet, spacing=0.3m spacing=0.4m,";
  CHECK(cell(spacing[0]) == "0.4m");
  CHECK(cell(spacing[1]).empty());
}

TEST_CASE("easting, northing and zone are those of the station's own position") {
  OneRow one;
  one.page.settings.site.grid = earth::grid_position({33.3, 44.4});
  CHECK(one.cell("easting").empty());  // the position is that of a station above
  one.page.position.emplace();
  one.page.position->position = {33.3, 44.4};
  CHECK(one.cell("easting") == "444140.54");
  CHECK(one.cell("northing") == "3684706.36");
  CHECK(one.cell("zone") == "38S");
}

TEST_CASE("azimuths are rounded half up, then wrapped") {
  OneRow one;
  one.row().dip = 32;
  const auto strike = [&](double degrees) {
    one.row().strike = degrees;
    return one.cell("strike") + " " + one.cell("dip_direction") + " " + one.cell("quadrant") + " " +
           one.cell("rotation");
  };
  CHECK(strike(359.96) == "0.0 90.0 N 0.0");
  CHECK(strike(359.94) == "359.9 89.9 N0.1W 359.9");
  CHECK(strike(258) == "258.0 348.0 N78.0E 258.0");
  CHECK(strike(282.6) == "282.6 12.6 N77.4W 282.6");
  CHECK(strike(90) == "90.0 180.0 E 90.0");
  CHECK(strike(270.04) == "270.0 0.0 E 270.0");
  CHECK(strike(180) == "180.0 270.0 N 180.0");
  CHECK(strike(95) == "95.0 185.0 N85.0W 95.0");
  // A sum that ought to be 12.25 and is a hair less.
  CHECK(strike(12.25 - 1e-11) == "12.3 102.3 N12.3E 12.3");
}

TEST_CASE("trends and bearings keep their own end in quadrant notation") {
  OneRow one(notebook::Kind::Type::line);
  const auto quadrant = [&](double degrees) {
    one.row().trend = degrees;
    return one.cell("quadrant");
  };
  CHECK(quadrant(0) == "N");
  CHECK(quadrant(90) == "E");
  CHECK(quadrant(180) == "S");
  CHECK(quadrant(270) == "W");
  CHECK(quadrant(68.53) == "N68.5E");
  CHECK(quadrant(151.3) == "S28.7E");
  CHECK(quadrant(240) == "S60.0W");
  CHECK(quadrant(327.25) == "N32.7W");
  CHECK(quadrant(359.97) == "N");
  CHECK(one.cell("rotation") == "0.0");
}

TEST_CASE("a horizontal plane and a vertical line have no azimuth") {
  OneRow one;
  one.row().dip = 0;
  for (const char* name : {"strike", "dip_direction", "quadrant", "rotation", "uncertainty"}) {
    CHECK(one.cell(name).empty());
  }
  CHECK(one.cell("dip") == "0.0");
}

TEST_CASE("figures have their decimals and no minus before zero") {
  OneRow one;
  one.row().correction = -0.001;
  one.row().uncertainty = 0.644;
  one.row().distance_m = 36.576;
  one.row().vertical_angle = -0.04;
  one.row().surface = 0;
  one.page.elevation_m = -12.34;
  one.page.position = notebook::GivenPosition{{-44.6891, 169.01440049}, 8.0};
  CHECK(one.cell("correction") == "0.00");
  CHECK(one.cell("uncertainty") == "0.64");
  CHECK(one.cell("distance_m") == "36.58");
  CHECK(one.cell("vertical_angle") == "0.0");
  CHECK(one.cell("surface").empty());
  CHECK(one.cell("elevation_m") == "-12.3");
  CHECK(one.cell("latitude") == "-44.6891000");
  CHECK(one.cell("longitude") == "169.0144005");
  CHECK(one.cell("position_from") == "at");
  CHECK(one.cell("accuracy_m") == "8.0");

  one.row().correction = -24.6;
  one.row().surface = 3;
  one.page.position.reset();
  CHECK(one.cell("correction") == "-24.60");
  CHECK(one.cell("surface") == "3");
  CHECK(one.cell("position_from").empty());
  CHECK(one.cell("latitude").empty());
}

TEST_CASE("words and codes") {
  OneRow one;
  one.row().facing = notebook::Facing::unknown;
  one.row().sense = notebook::Sense::sinistral;
  one.row().codes = {notebook::Code::doubtful, notebook::Code::strike_uncertain};
  CHECK(one.cell("type") == "plane");
  CHECK(one.cell("facing") == "unknown");
  CHECK(one.cell("sense") == "sinistral");
  CHECK(one.cell("codes") == "doubtful strike-uncertain");
}

TEST_CASE("a date and a time stand for themselves, so that neither invents the other") {
  OneRow one;
  const auto observed = [&] { return one.cell("date") + "|" + one.cell("time"); };
  CHECK(observed() == "|");
  one.row().date = notebook::Date{2026, 2, 4};
  CHECK(observed() == "2026-02-04|");
  one.page.time = notebook::Time{9, 5};
  CHECK(observed() == "2026-02-04|09:05");
  one.row().date.reset();
  CHECK(observed() == "|09:05");
  one.page.time = notebook::Time{0, 0};
  CHECK(observed() == "|00:00");
}

TEST_CASE("the source is the file as given, or the base name of an absolute path") {
  CHECK(OneRow().cell("source") == "day3.txt:18:3");
  CHECK(OneRow(notebook::Kind::Type::plane, "logs/day3.txt").cell("source") ==
        "logs/day3.txt:18:3");
  CHECK(OneRow(notebook::Kind::Type::plane, "/home/someone/day3.txt").cell("source") ==
        "day3.txt:18:3");
}

}  // namespace
}  // namespace lodebook
