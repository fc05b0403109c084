// SPDX-License-Identifier: MIT
// Readings that name their own north: corrected from there, compared in one frame, and kept in it
// where nothing leads on.
#include <lodebook/reduction/fixes.hpp>

#include <fmt/format.h>

#include <array>
#include <numbers>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/grid.hpp>

#include "reduced.hpp"

using namespace lodebook;
using namespace lodebook::test;
using earth::Position;

namespace {

constexpr Position ridge{-44.6891, 169.0144};
const std::string at_ridge = "station Q1 at 44.6891S 169.0144E\n";
const std::string compass = "set 2E\ndeclination 24.6E ±0.4\nrule right\n";

constexpr double radians = std::numbers::pi / 180;

double convergence(const Position& place = ridge) {
  return earth::grid_position(place).convergence.degrees_east();
}

/// What takes a bearing of each frame to true north, as `compass` has it at the ridge.
struct Frame {
  std::string word;
  double to_true = 0;
};
std::vector<Frame> frames(const Position& place = ridge) {
  return {{"", 22.6}, {" magnetic", 24.6}, {" true", 0}, {" grid", convergence(place)}};
}

std::string bearing(double true_azimuth, const Frame& frame) {
  return fmt::format("{:010.6f}{}", wrap_degrees(true_azimuth - frame.to_true), frame.word);
}

const std::array<North, 3> norths = {North::geographic, North::magnetic, North::grid};

double from_true(North north) {
  return north == North::geographic ? 0 : north == North::magnetic ? -24.6 : -convergence();
}

}  // namespace

TEST_CASE("whatever its north, a reading comes to the north that is wanted") {
  for (const Frame& frame : frames()) {
    CAPTURE(frame.word);
    const std::string text = compass + at_ridge + "bedding " + bearing(242, frame) + " 37\n" +
                             "bedding 37 > " + bearing(332, frame) + "\nlineation " +
                             bearing(310, frame) + " 35\nsight Peak " + bearing(44, frame) +
                             " back " + bearing(224, frame) + "\nleg " + bearing(142, frame) +
                             " 120m back " + bearing(322, frame) + "\n";
    for (const North north : norths) {
      const Reduced log(text, in(north));
      CAPTURE(name_of(north), log.codes());
      REQUIRE(log.row_count() == 5);
      const double turn = from_true(north);
      CHECK(off(log.row(0).strike, 242 + turn) < 1e-5);
      CHECK(off(log.row(1).strike, 242 + turn) < 1e-5);
      CHECK(off(log.row(2).trend, 310 + turn) < 1e-5);
      CHECK(off(log.row(3).bearing, 44 + turn) < 1e-5);
      CHECK(off(log.row(3).back_bearing, 224 + turn) < 1e-5);
      CHECK(off(log.row(4).bearing, 142 + turn) < 1e-5);
      CHECK(off(log.row(4).back_bearing, 322 + turn) < 1e-5);
      for (std::size_t i = 0; i < 5; ++i) {
        const Row& row = log.row(i);
        CHECK(row.north == north);
        const auto value = row.strike ? row.strike : row.trend ? row.trend : row.bearing;
        CHECK(off(value, *row.as_read + *row.correction) < exact);
      }
      CHECK(miss(log.row(0).dip, 37) < exact);
      CHECK(miss(log.row(2).plunge, 35) < exact);
      CHECK(log.check(0).passed);
      CHECK(log.check(1).passed);
    }
  }
}

TEST_CASE("a declination's error counts only where magnetic meets another north") {
  const auto sigma = [](const Frame& frame, North north) {
    const Reduced log(compass + at_ridge + "sight Peak " + bearing(44, frame) + "\n", in(north));
    return log.row().uncertainty;
  };
  const double crossed = std::hypot(0.5, 0.4);
  const auto all = frames();
  for (const Frame& frame : {all[0], all[1]}) {
    CHECK(miss(sigma(frame, North::geographic), crossed) < exact);
    CHECK(miss(sigma(frame, North::grid), crossed) < exact);
    CHECK(miss(sigma(frame, North::magnetic), 0.5) < exact);
  }
  for (const Frame& frame : {all[2], all[3]}) {
    CHECK(miss(sigma(frame, North::geographic), 0.5) < exact);
    CHECK(miss(sigma(frame, North::grid), 0.5) < exact);
    CHECK(miss(sigma(frame, North::magnetic), crossed) < exact);
  }
}

TEST_CASE("without a declination a magnetic bearing stays magnetic, with a warning") {
  const Reduced log("station Q1\nbedding N62E 37NW magnetic\nbedding N60E 35NW true\n");
  CHECK(log.row(0).north == North::magnetic);
  CHECK(off(log.row(0).strike, 242) < exact);
  CHECK(log.row(0).status == Status::ok);
  CHECK(log.row(1).north == North::geographic);
  CHECK(log.only(Code::north_kept).reading == 0);
  // Nothing was read on the dial, so that nobody misses what was set on it.
  CHECK(log.diagnostics().size() == 1);
  const Reduced mixed("station Q1\nbedding N62E 37NW magnetic\nbedding N60E 35NW\n");
  CHECK(mixed.count(Code::declination_missing) == 1);
}

TEST_CASE("a true bearing stays true where magnetic north is wanted and not known") {
  const Reduced log("station Q1\nlineation 310/35 true\n", in(North::magnetic));
  CHECK(log.row().north == North::geographic);
  CHECK(log.count(Code::north_kept) == 1);
}

TEST_CASE("a grid bearing stays on the grid where no position is known") {
  const std::string text = compass + "station Q1\nbedding N62E 37NW grid\n";
  const Reduced log(text);
  CHECK(log.row().north == North::grid);
  CHECK(off(log.row().strike, 242) < exact);
  CHECK(log.only(Code::north_kept).help == "give the position with 'at'");
  CHECK(Reduced(text, in(North::grid)).count(Code::north_kept) == 0);
}

TEST_CASE("without a position of its own a station has the grid of the one above, and says so") {
  const Reduced log(compass + at_ridge +
                    "station Q2\nbedding N62E 37NW grid\nbedding N62E 37NW grid\n");
  CHECK(off(log.row().strike, 242 + convergence()) < exact);
  CHECK(log.count(Code::position_borrowed) == 1);
}

TEST_CASE("a void declination alone explains what cannot be turned") {
  const Reduced log("ask declination 24.6E\nstation Q1\nbedding N62E 37NW magnetic\n");
  CHECK(log.row().north == North::magnetic);
  CHECK(log.count(Code::north_kept) == 0);
}

TEST_CASE("a rake and the plane it lies in are held in one frame") {
  for (const Frame& plane : frames()) {
    for (const Frame& end : frames()) {
      CAPTURE(plane.word, end.word);
      const std::string text = compass + at_ridge + "fault " + bearing(242, plane) + " 37 NW\n" +
                               "slickenline rake 40 from " + bearing(62, end) + "\n";
      for (const North north : norths) {
        const Reduced log(text, in(north));
        // From the strike's end towards the dip.
        const double turn =
            std::atan2(std::sin(40 * radians) * std::cos(37 * radians), std::cos(40 * radians));
        CHECK(off(log.row(1).trend, 62 - turn / radians + from_true(north)) < 1e-5);
        CHECK(off(log.row(1).trend, *log.row(1).as_read + *log.row(1).correction) < exact);
        CHECK(log.row(1).north == north);
      }
    }
  }
}

TEST_CASE("a line is held against its plane in one frame") {
  for (const Frame& plane : frames()) {
    for (const Frame& line : frames()) {
      CAPTURE(plane.word, line.word);
      const auto log_with = [&](double trend) {
        return Reduced(compass + at_ridge + "bedding " + bearing(242, plane) + " 37 NW\n" +
                       "lineation " + bearing(trend, line) + " 37 on bedding\n");
      };
      CHECK(miss(log_with(332).check().figure, 0) < 1e-5);
      CHECK(log_with(30).count(Code::line_off_plane) == 1);
    }
  }
}

TEST_CASE("from two norths that nothing joins a line is not held against its plane") {
  const Reduced log(
      "station Q1\nbedding 37 > 332 true\nlineation 332/37 on bedding\n"
      "lineation rake 90 from 062\n");
  CHECK(log.check_count() == 0);
  CHECK(off(log.row(2).trend, 332) < exact);
  CHECK(log.row(2).north == North::geographic);
}

TEST_CASE("repeats from several norths are compared in one, and have one mean") {
  std::string repeats;
  for (const Frame& frame : frames())
    repeats += (repeats.empty() ? "" : ", ") + bearing(242, frame) + " 37 NW";
  const std::string text = compass + at_ridge + "bedding " + repeats + "\n";
  for (const North north : norths) {
    const Reduced each(text, in(north));
    CHECK(miss(each.check().figure, 0) < 1e-5);
    CHECK(off(each.check().mean_azimuth, 242 + from_true(north)) < 1e-5);
    Options options = means();
    options.north = north;
    const Reduced mean(text, options);
    REQUIRE(mean.row_count() == 1);
    CHECK(mean.row().repeats == 4);
    CHECK(mean.row().north == north);
    CHECK(off(mean.row().strike, 242 + from_true(north)) < 1e-5);
    CHECK(off(mean.row().strike, *mean.row().as_read + *mean.row().correction) < exact);
    // Two of the four owe something to the declination.
    const double own = std::hypot(0.5, 1 / std::sin(37 * radians)) / 2;
    CHECK(miss(mean.row().uncertainty, std::hypot(own, 0.2)) < 1e-5);
  }
}

TEST_CASE("a repeat that is apart is advised of in its own frame") {
  const Reduced log(compass + at_ridge + "bedding 242/37 NW true, 243/36 NW true, 219.4/73 NW\n");
  CHECK(log.only(Code::repeat_spread).help.find("73 for 37") != std::string::npos);
}

TEST_CASE("repeats that nothing brings to one north are not compared") {
  const Reduced log("station Q1\nbedding 242/37 NW true, 300/37 NE, 241/36 NW true\n", means());
  REQUIRE(log.row_count() == 2);
  CHECK(log.row(0).repeats == 2);
  CHECK(log.row(1).north == North::magnetic);
  CHECK(log.check().count == 2);
}

TEST_CASE("sights from several norths are one ray, and one mean") {
  std::string repeats;
  for (const Frame& frame : frames())
    repeats += (repeats.empty() ? "" : ", ") + bearing(44, frame);
  const Reduced log(compass + at_ridge + "sight Peak " + repeats + "\n", means());
  REQUIRE(log.row_count() == 1);
  CHECK(off(log.row().bearing, 44) < 1e-5);
  CHECK(log.check().passed);
  CHECK(miss(log.row().uncertainty, std::hypot(0.25, 0.2)) < 1e-5);
}

TEST_CASE("a back bearing that nothing brings to the north of the other is not shown") {
  const Reduced log("station Q1\nsight Peak 044 true back 224\nleg 142 true 120m back 322\n");
  CHECK(log.check_count() == 0);
  CHECK_FALSE(log.row(0).back_bearing);
  CHECK_FALSE(log.row(1).back_bearing);
}

namespace {

struct Mark {
  std::string name;
  Position position;
};
std::vector<Mark> marks() {
  return {{"Cairn", earth::travelled(ridge, 28, 5000)},
          {"Dome", earth::travelled(ridge, 295, 5300)},
          {"Saddle", earth::travelled(ridge, 160, 4700)}};
}

std::string landmarks() {
  std::string text;
  for (const Mark& mark : marks())
    text += fmt::format("landmark {} {:.8f}S {:.8f}E\n", mark.name, -mark.position.latitude,
                        mark.position.longitude);
  return text;
}

std::string sights(const std::vector<Frame>& by) {
  std::string text;
  for (std::size_t i = 0; i < by.size(); ++i)
    text += "sight " + marks()[i].name + " " +
            bearing(earth::geodesic(ridge, marks()[i].position).azimuth, by[i]) + "\n";
  return text;
}

double metres_off(const std::optional<Position>& found, const Position& expected) {
  return found ? earth::distance_m(*found, expected) : 1e9;
}

double spread(const reduction::Covariance& covariance) {
  return std::sqrt(covariance.east + covariance.north);
}

}  // namespace

TEST_CASE("a fix takes sights from any north") {
  const auto all = frames();
  for (const auto& by : {std::vector{all[0], all[2], all[3]}, std::vector{all[3], all[3], all[3]},
                         std::vector{all[1], all[3], all[0]}}) {
    const Reduced log(compass + landmarks() + "station Q1\n" + sights(by));
    const auto& station = log.reduction().fixes().stations.front();
    CAPTURE(log.codes());
    CHECK(metres_off(station.position, ridge) < 0.1);
    CHECK(log.counts().warnings == 0);
  }
}

TEST_CASE("a fix of true or grid sights needs no declination, and none disturbs it") {
  const auto all = frames();
  const auto fixed = [&](const std::string& head, const std::vector<Frame>& by) {
    const Reduced log(head + landmarks() + "station Q1\n" + sights(by));
    const auto& station = log.reduction().fixes().stations.front();
    CHECK(metres_off(station.position, ridge) < 0.1);
    return spread(station.covariance.value());
  };
  const std::vector own = {all[2], all[3]};
  const double without = fixed("", own);
  CHECK(miss(fixed("set 0\ndeclination 24.6E ±3\n", own), without) < 1e-6);
  CHECK(fixed("set 2E\ndeclination 24.6E ±3\n", {all[0], all[0]}) > 2 * without);
}

TEST_CASE("only sights by the needle tell where it pointed") {
  const auto all = frames();
  const auto implied = [&](const std::vector<Frame>& by) {
    const Reduced log(compass + landmarks() + "station Q1\n" + sights(by));
    return log.reduction().fixes().sight_fixes.front().implied.has_value();
  };
  CHECK(implied({all[0], all[0], all[0]}));
  CHECK(implied({all[1], all[1], all[1]}));
  CHECK_FALSE(implied({all[0], all[1], all[0]}));
  CHECK_FALSE(implied({all[2], all[2], all[2]}));
}

TEST_CASE("sights that cannot be turned to true north leave the others their fix") {
  const auto all = frames();
  const Reduced log(landmarks() + "station Q1\n" + sights({all[2], all[0], all[2]}));
  const auto& fixes = log.reduction().fixes();
  CHECK(metres_off(fixes.stations.front().position, ridge) < 0.1);
  CHECK(fixes.sight_fixes.front().sights.size() == 2);
}

TEST_CASE("legs from any north lead on, and the declination's error turns those by the needle") {
  const auto end = earth::travelled(ridge, 142, 1000);
  const auto walked = [&](const Frame& frame, const std::string& sigma) {
    const Reduced log("set 2E\ndeclination 24.6E ±" + sigma + "\n" + at_ridge + "leg " +
                      bearing(142, frame) + " 1000m to Q2\nstation Q2\n");
    const auto& station = log.reduction().fixes().stations.back();
    CHECK(metres_off(station.position, end) < 0.1);
    return spread(station.covariance.value());
  };
  const auto all = frames();
  CHECK(walked(all[0], "5") > walked(all[0], "0.1") + 50);
  CHECK(walked(all[1], "5") > walked(all[1], "0.1") + 50);
  CHECK(miss(walked(all[2], "5"), walked(all[2], "0.1")) < 1e-6);
  CHECK(miss(walked(all[3], "5"), walked(all[3], "0.1")) < 1e-6);
}

TEST_CASE("a leg that nothing brings to the north of the others places nothing") {
  const Reduced log(at_ridge +
                    "leg 142 true 1000m to Q2\nstation Q2\nleg 142 500m to Q3\nstation Q3\n");
  const auto& fixes = log.reduction().fixes();
  CHECK(fixes.legs[0].left_out == std::nullopt);
  CHECK(fixes.legs[1].left_out == reduction::LeftOut::other_north);
  CHECK(fixes.stations[1].position);
  CHECK_FALSE(fixes.stations[2].position);
}

TEST_CASE("what turns a needle does not turn a bearing from another north") {
  const auto log_with = [](const std::string& second) {
    return Reduced("set 0\ndeclination 0\nattraction correct\n" + at_ridge +
                   "leg 040 100m back 220 to Q2\nstation Q2\nleg 100 100m back 284 to Q3\n"
                   "station Q3\nleg " +
                   second + " 100m to Q4\nstation Q4\n");
  };
  const Reduced needle = log_with("150");
  const Reduced drawn = log_with("150 true");
  CHECK(off(needle.reduction().fixes().legs[2].azimuth, 146) < exact);
  CHECK(off(drawn.reduction().fixes().legs[2].azimuth, 150) < exact);
}
