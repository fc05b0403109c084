// SPDX-License-Identifier: MIT
// Sights read from the mark, more than once, or at another station; legs typed at their far end.
#include <fmt/format.h>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/reduction/fixes.hpp>

#include "reduced.hpp"

namespace {

using namespace lodebook;
using earth::Position;
using namespace lodebook::test;

constexpr Position ridge{-44.70, 169.00};
const Position cairn = earth::travelled(ridge, 28, 15000);
const Position dome = earth::travelled(ridge, 295, 18000);
const Position saddle = earth::travelled(ridge, 100, 20000);

std::string at(const Position& p) {
  return fmt::format("{:.8f}S {:.8f}E", -p.latitude, p.longitude);
}
const std::string head = "set 0\ndeclination 24.6E ±0.4\nlandmark Cairn " + at(cairn) +
                         "\nlandmark Dome " + at(dome) + "\nlandmark Saddle " + at(saddle) + "\n";

/// A true azimuth as a dial set to 0 shows it, where the declination is 24.6E.
std::string dial(double azimuth, double off = 0) {
  return fmt::format("{:.4f}", wrap_degrees(azimuth - 24.6 + off));
}
std::string fore(const Position& mark, double off = 0) {
  return dial(earth::geodesic(ridge, mark).azimuth, off);
}
std::string back(const Position& mark, double off = 0) {
  return dial(earth::geodesic(mark, ridge).azimuth, off);
}

/// How far the station Q1 is found from the ridge, metres.
double missed(const std::string& log) {
  const Reduced reduced(log);
  for (const auto& station : reduced.reduction().fixes().stations) {
    if (station.name == "Q1" && station.position)
      return earth::distance_m(*station.position, ridge);
  }
  return std::numeric_limits<double>::infinity();
}

TEST_CASE("a bearing from the mark alone is turned round") {
  const Reduced log(head + "station Q1\nsight Cairn back 280\n");
  const Row& row = log.row();
  CHECK(off(row.as_read, 100) < exact);
  CHECK(off(row.bearing, 124.6) < exact);
  CHECK(off(row.back_bearing, 304.6) < exact);
  CHECK(miss(row.correction, 24.6) < exact);
}

TEST_CASE("the table gives the bearing from the mark as typed, and checks it") {
  const Reduced good(head + "station Q1\nsight Cairn 100 back 281\n");
  CHECK(off(good.row(0).bearing, 124.6) < exact);
  CHECK(off(good.row(0).back_bearing, 305.6) < exact);
  REQUIRE(good.check_count() == 1);
  CHECK(miss(good.check(0).figure, 1) < exact);
  CHECK(good.check(0).passed);
  const Reduced bad(head + "station Q1\nsight Cairn 100 back 290\n");
  CHECK(bad.row(0).status == Status::suspect);
  CHECK(bad.all(Code::back_bearing).size() == 1);
}

TEST_CASE("what was read at the mark has the declination of the mark") {
  const Position far = earth::travelled(ridge, 90, 100000);
  const std::string model = "date 2026-02-14\nset 0\ndeclination model\nlandmark Far " + at(far) +
                            "\nstation Q1 at " + at(ridge) + "\n";
  const auto east = [](const Position& p) {
    return earth::magnetic_field(p, 0, notebook::decimal_year({2026, 2, 14}))
        ->declination()
        .degrees_east();
  };
  REQUIRE(std::abs(east(far) - east(ridge)) > 0.1);
  const Reduced log(model + "sight Far 65 back 245\nsight Far back 245\n");
  CHECK(off(log.row(0).bearing, 65 + east(ridge)) < 1e-6);
  CHECK(off(log.row(0).back_bearing, 245 + east(far)) < 1e-6);
  CHECK(off(log.row(1).bearing, 65 + east(far)) < 1e-6);
  CHECK(miss(log.row(1).correction, east(far)) < 1e-6);
}

TEST_CASE("bearings from marks fix a station, whose meridian is not theirs") {
  const std::string all = head + "station Q1\nsight Cairn back " + back(cairn) +
                          "\nsight Dome back " + back(dome) + "\nsight Saddle back " +
                          back(saddle) + "\n";
  CHECK(missed(all) < 1);
  const std::string mixed = head + "station Q1\nsight Cairn " + fore(cairn) + " back " +
                            back(cairn) + "\nsight Dome " + fore(dome) + ", back " + back(dome) +
                            "\nsight Saddle " + fore(saddle) + "\n";
  CHECK(missed(mixed) < 1);
}

TEST_CASE("repeats of a sight are one ray, their mean") {
  const std::string log = head + "station Q1\nsight Cairn " + fore(cairn, 1) + ", " +
                          fore(cairn, -1) + ", " + fore(cairn, 20) + " doubtful, 412\nsight Dome " +
                          fore(dome, -0.5) + ", " + fore(dome, 0.5) + "\nsight Saddle " +
                          fore(saddle) + "\n";
  CHECK(missed(log) < 1);
  const Reduced reduced(log);
  const auto& fixes = reduced.reduction().fixes().sight_fixes;
  REQUIRE(fixes.size() == 1);
  REQUIRE(fixes[0].sights.size() == 3);
  CHECK(miss(fixes[0].sights[0].sigma, 0.5 / std::sqrt(2)) < 1e-9);
  CHECK(miss(fixes[0].sights[2].sigma, 0.5) < 1e-9);
  // Twice in two lines they are two rays.
  const Reduced apart(head + "station Q1\nsight Cairn " + fore(cairn) + "\nsight Cairn " +
                      fore(cairn) + "\nsight Dome " + fore(dome) + "\n");
  CHECK(apart.reduction().fixes().sight_fixes[0].sights.size() == 3);
}

TEST_CASE("repeats of a sight are held against each other, and have a mean") {
  const std::string log = head + "station Q1\nsight Cairn 359, 001, 000.5, 009\n";
  const Reduced each(log);
  REQUIRE(each.row_count() == 4);
  CHECK(each.row(3).status == Status::suspect);
  CHECK(each.row(0).status == Status::ok);
  CHECK(each.all(Code::repeat_spread).size() == 1);
  REQUIRE(each.check_count() == 1);
  CHECK(each.check(0).count == 4);
  const Reduced mean(head + "station Q1\nsight Cairn 359, 001, 412, 000.6 vertical level\n",
                     means());
  REQUIRE(mean.row_count() == 2);
  CHECK(mean.row(0).repeats == 3);
  CHECK(off(mean.row(0).as_read, 0.2) < exact);
  CHECK(off(mean.row(0).bearing, 24.8) < exact);
  CHECK(off(mean.row(0).back_bearing, 204.8) < exact);
  CHECK(miss(mean.row(0).uncertainty, std::hypot(0.5 / std::sqrt(3), 0.4)) < 1e-9);
  CHECK(miss(mean.row(0).vertical_angle, 0) < exact);
  CHECK(mean.row(1).status == Status::rejected);
}

TEST_CASE("a leg from another station leads here, and its row stands there") {
  const std::string log = "set 0\ndeclination 24.6E\nstation 14 at " + at(ridge) +
                          " ±5\nelevation 800\nstation 15\nleg from 14 S38E 120m back N37W\n"
                          "bedding N62E 37NW\n";
  const Reduced reduced(log);
  const Row& row = reduced.row(0);
  REQUIRE(row.elsewhere);
  CHECK(row.elsewhere->station == "14");
  CHECK(row.target == "15");
  CHECK(miss(row.elsewhere->elevation_m, 800) < exact);
  REQUIRE(row.elsewhere->position);
  CHECK(earth::distance_m(row.elsewhere->position->position, ridge) < 0.01);
  CHECK_FALSE(reduced.row(1).elsewhere);
  const auto& fifteen = reduced.reduction().fixes().stations[1];
  REQUIRE(fifteen.position);
  CHECK(fifteen.from == reduction::PositionFrom::legs);
  CHECK(earth::distance_m(*fifteen.position, earth::travelled(ridge, 166.6, 120)) < 0.01);
  CHECK(reduced.diagnostics().empty());
}

TEST_CASE("readings of another station have its model and its convergence") {
  const Position far = earth::travelled(ridge, 90, 100000);
  const std::string log = "date 2026-02-14\nset 0\ndeclination model\nlandmark Mast " + at(dome) +
                          "\nstation 2 at " + at(far) + "\nsight Mast N50W\nstation 3 at " +
                          at(ridge) + "\nsight Mast from 2 N50W\nsight Mast N50W\n";
  for (const North north : {North::geographic, North::grid}) {
    const Reduced reduced(log, in(north));
    CHECK(off(reduced.row(1).bearing, *reduced.row(0).bearing) < exact);
    CHECK(off(reduced.row(2).bearing, *reduced.row(0).bearing) > 0.05);
  }
}

TEST_CASE("a sight from another station helps to place that one") {
  const std::string log = head + "station Q1\nsight Cairn " + fore(cairn) + "\nstation Q2\n" +
                          "sight Dome from Q1 " + fore(dome) + "\n";
  CHECK(missed(log) < 1);
}

TEST_CASE("a station that the log does not have, and a leg to its own") {
  const Reduced unknown(head + "station Q1\nsight Cairn from Q9 100, 101\nleg from Q9 N 30m\n");
  CHECK(unknown.all(Code::station_unknown).size() == 2);
  CHECK(unknown.row(0).elsewhere->station == "Q9");
  const Reduced own(head + "station Q1\nleg from q1 N 30m\n");
  CHECK(own.all(Code::own_station).size() == 1);
  const auto& legs = own.reduction().fixes().legs;
  REQUIRE(legs.size() == 1);
  CHECK(legs[0].left_out == reduction::LeftOut::own_station);
}

}  // namespace
