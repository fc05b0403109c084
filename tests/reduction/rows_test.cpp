// SPDX-License-Identifier: MIT
// The figures of each row: canonical form, correction, uncertainty, and what belongs to a station.
#include "reduced.hpp"

#include "references/rows.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

/// The single row of a reading on a dial that needs no correction.
struct One {
  explicit One(const std::string& readings) : log(on_true_dial(readings)), row(log.row()) {}
  Reduced log;
  const Row& row;
};

void check_plane(const std::string& reading, double strike, double dip) {
  const One one("bedding " + reading + "\n");
  INFO(reading << ": " << one.log.codes());
  CHECK(one.row.status == Status::ok);
  CHECK(off(one.row.strike, strike) < exact);
  CHECK(miss(one.row.dip, dip) < exact);
}

void check_line(const std::string& reading, double trend, double plunge) {
  const One one("lineation " + reading + "\n");
  INFO(reading << ": " << one.log.codes());
  CHECK(one.row.status == Status::ok);
  CHECK(off(one.row.trend, trend) < exact);
  CHECK(miss(one.row.plunge, plunge) < exact);
}

double degrees(double radians) {
  return radians * 180 / std::acos(-1.0);
}
double radians(double angle) {
  return angle * std::acos(-1.0) / 180;
}

}  // namespace

TEST_CASE("a strike has the plane dipping to its right") {
  check_plane("N78E 41N", 258, 41);
  check_plane("S78W/41 N", 258, 41);
  check_plane("N78E 41S", 78, 41);
  check_plane("258 41 NW", 258, 41);
  check_plane("E 41 N", 270, 41);
  check_plane("41 > 348", 258, 41);
  check_plane("61 > N12W", 258, 61);
  check_plane("32 to 5", 275, 32);
}

TEST_CASE("the hand rule in force gives the side") {
  for (const auto& [rule, strike] : {std::pair{"right", 78.0}, std::pair{"left", 258.0}}) {
    const One one(std::string("rule ") + rule + "\nbedding 078/41\n");
    CHECK(off(one.row.strike, strike) < exact);
    const One quadrant(std::string("rule ") + rule + "\nbedding N78E 41\n");
    CHECK(off(quadrant.row.strike, strike) < exact);
  }
  // A side beats it, and a later rule holds from its line on.
  const One side("rule right\nbedding 078/41 N\nrule left\nbedding 078/41\nbedding 41 > 348\n");
  CHECK(off(side.row.strike, 258) < exact);
  CHECK(off(side.log.row(1).strike, 258) < exact);
  CHECK(off(side.log.row(2).strike, 258) < exact);
}

TEST_CASE("a vertical plane is an axis unless a side was written") {
  for (const auto& [reading, strike] :
       {std::pair{"vertical N50W", 130.0}, std::pair{"vertical 200", 20.0},
        std::pair{"vertical 180", 0.0}, std::pair{"200/90", 20.0}, std::pair{"N20E 90", 20.0}}) {
    const One one("rule right\njoint " + std::string(reading) + "\n");
    INFO(reading);
    CHECK(off(one.row.strike, strike) < exact);
    CHECK(one.row.strike_is_axis);
  }
  for (const auto& [reading, strike] :
       {std::pair{"200 90 W", 200.0}, std::pair{"020/90 W", 200.0}, std::pair{"90 > 290", 200.0}}) {
    const One one("joint " + std::string(reading) + "\n");
    INFO(reading);
    CHECK(off(one.row.strike, strike) < exact);
    CHECK_FALSE(one.row.strike_is_axis);
  }
}

TEST_CASE("a vertical plane stays an axis when it is corrected") {
  const Reduced log(
      "set 0\ndeclination 24.6E\nstation Q1\njoint vertical 170\njoint vertical 350\n");
  for (std::size_t i = 0; i < 2; ++i) {
    // By its same end, so that what was read and what was added make the strike.
    CHECK(off(log.row(i).as_read, 350) < exact);
    CHECK(off(log.row(i).strike, 14.6) < exact);
  }
}

TEST_CASE("the strike of an axis is what was read and added, to the figure shown") {
  for (const auto& [reading, strike, as_read] :
       {std::tuple{"010", 34.6, 10.0}, std::tuple{"155.3", 179.9, 155.3},
        std::tuple{"155.36", 359.96, 335.36}, std::tuple{"155.4", 0.0, 335.4},
        std::tuple{"335.4", 0.0, 335.4}, std::tuple{"180", 24.6, 0.0}}) {
    const Reduced log("set 0\ndeclination 24.6E\nstation Q1\njoint vertical " +
                      std::string(reading) + "\n");
    INFO(reading);
    CHECK(off(log.row().strike, strike) < exact);
    CHECK(off(log.row().as_read, as_read) < exact);
  }
}

TEST_CASE("what shows as level or upright has no strike or trend") {
  const Reduced log(
      on_true_dial("rule right\nbedding 062/0.04\nbedding 062/0.05\nlineation 310/89.96\n"
                   "lineation 310/89.94\njoint 242/89.96\njoint 242/89.94\njoint 242 89.96 NW\n"));
  CHECK_FALSE(log.row(0).strike);
  CHECK_FALSE(log.row(0).as_read);
  CHECK(log.row(1).strike);
  CHECK_FALSE(log.row(2).trend);
  CHECK_FALSE(log.row(2).as_read);
  CHECK(log.row(3).trend);
  CHECK(off(log.row(4).strike, 62) < exact);
  CHECK(off(log.row(5).strike, 242) < exact);
  CHECK(off(log.row(6).strike, 242) < exact);
  // Nor can a rake be counted from it.
  CHECK(Reduced(on_true_dial("bedding N62E 0.04NW\nlineation rake 40 from N62E\n"))
            .count(Code::rake_no_plane) == 1);
}

TEST_CASE("a horizontal plane has a dip only, a vertical line a plunge only") {
  for (const char* reading : {"bedding horizontal", "bedding 085/0", "bedding N78E 0 N"}) {
    const One one(std::string(reading) + "\n");
    INFO(reading << one.log.codes());
    CHECK(one.row.status == Status::ok);
    CHECK(miss(one.row.dip, 0) == 0);
    CHECK_FALSE(one.row.strike);
    CHECK_FALSE(one.row.as_read);
    CHECK_FALSE(one.row.correction);
    CHECK_FALSE(one.row.uncertainty);
  }
  for (const char* reading : {"lineation vertical", "lineation 310/90", "lineation N50W -90"}) {
    const One one(std::string(reading) + "\n");
    INFO(reading << one.log.codes());
    CHECK(one.row.status == Status::ok);
    CHECK(miss(one.row.plunge, 90) == 0);
    CHECK_FALSE(one.row.trend);
    CHECK_FALSE(one.row.as_read);
    CHECK_FALSE(one.row.correction);
    CHECK_FALSE(one.row.uncertainty);
  }
}

TEST_CASE("a line has its trend where it goes down") {
  check_line("N50W 35", 310, 35);
  check_line("310/35", 310, 35);
  check_line("35 > N50W", 310, 35);
  check_line("N50W -35", 130, 35);
  check_line("horizontal N50W", 310, 0);
  CHECK(One("lineation N50W -35\n").log.count(Code::other_end) == 1);
}

TEST_CASE("azimuths move with the declination; dips, plunges, rakes and slopes never do") {
  const std::string readings =
      "landmark Peak\nstation Q1\nbedding N78E 41N\nlineation N50W 35\n"
      "slickenline rake 40 from N78E\nsight Peak N66W vertical 12\n"
      "leg S38E 120m slope -8 back N37W\n";
  const Reduced dial("set 0\ndeclination 0\n" + readings);
  const Reduced turned("set 3W\ndeclination 24.6E\n" + readings);
  const double turn = 27.6;
  for (std::size_t i = 0; i < 5; ++i) {
    const Row& was = dial.row(i);
    const Row& is = turned.row(i);
    INFO("row " << i);
    for (const auto& azimuth : {&Row::strike, &Row::trend, &Row::bearing, &Row::back_bearing}) {
      REQUIRE((was.*azimuth).has_value() == (is.*azimuth).has_value());
      if (was.*azimuth) CHECK(off(is.*azimuth, *(was.*azimuth) + turn) < exact);
    }
    for (const auto& figure :
         {&Row::dip, &Row::plunge, &Row::rake, &Row::distance_m, &Row::vertical_angle}) {
      REQUIRE((was.*figure).has_value() == (is.*figure).has_value());
      if (was.*figure) CHECK(miss(is.*figure, *(was.*figure)) < exact);
    }
    CHECK(off(is.as_read, *was.as_read) < exact);
    CHECK(miss(is.correction, turn) < exact);
  }
}

TEST_CASE("quadrant bearings of the reference rows read and turn round as they say") {
  std::size_t used = 0;
  for (const ReferenceRow& row : reference_rows("bearings.txt")) {
    INFO(row.at << ": " << row.input << " (" << row.source << ")");
    if (row.check == "quadrant to azimuth") {
      std::string typed = row.input;
      if (const std::size_t mark = typed.find('d'); mark != std::string::npos)
        typed.replace(mark, 1, "°");
      const One one("sight Peak " + typed + "\n");
      CHECK(off(one.row.bearing, number(row.expected)) < exact);
      CHECK(off(one.row.as_read, number(row.expected)) < exact);
    } else if (row.check == "back azimuth") {
      const One one("sight Peak " + row.input + "\n");
      CHECK(off(one.row.back_bearing, number(row.expected)) < exact);
    } else {
      continue;
    }
    ++used;
  }
  CHECK(used >= 8);
}

TEST_CASE("a percent grade is a dip of its arc tangent") {
  for (const ReferenceRow& row : reference_rows("percent_grade.txt")) {
    INFO(row.at << " (" << row.source << ")");
    const One one("bedding N78E " + row.input + "% N\n");
    CHECK(miss(one.row.dip, number(row.expected)) <= row.tolerance);
    const One sight("sight Peak 100 vertical -" + row.input + "%\n");
    CHECK(miss(sight.row.vertical_angle, -number(row.expected)) <= row.tolerance);
  }
}

TEST_CASE("a rake gives the line of its plane, as in the published apparent dips") {
  std::size_t used = 0;
  for (const ReferenceRow& row : reference_rows("planes_and_lines.txt")) {
    if (row.check != "apparent dip at angle from strike") continue;
    ++used;
    const auto parts = split(row.input, ',');
    const double dip = number(parts.at(0));
    const double section = number(parts.at(1));
    // The line seen in that section has the rake atan(tan section / cos dip): Napier.
    const double rake = degrees(std::atan(std::tan(radians(section)) / std::cos(radians(dip))));
    INFO(row.at << ": " << row.input << " (" << row.source << ")");
    for (const auto& [end, trend] :
         {std::pair{"from N20E", 20 + section}, std::pair{"from S20W", 200 - section},
          std::pair{"from 060", 20 + section}}) {
      const One one("bedding N20E " + parts.at(0) + "E\nlineation rake " + std::to_string(rake) +
                    " " + end + "\n");
      const Row& line = one.log.row(1);
      CHECK(off(line.trend, trend) < 1e-4);
      CHECK(miss(line.plunge, number(row.expected)) <= row.tolerance);
      CHECK(miss(line.rake, rake) < 1e-6);
    }
  }
  CHECK(used == 4);
}

TEST_CASE("rakes of 0 and 90 run along the strike and down the dip") {
  const One one(
      "bedding N20E 40E\nlineation rake 0 from N20E\nlineation rake 0 from S20W\n"
      "lineation rake 90 from N20E\nfault vertical N20E\nslickenline rake 90 from N20E\n"
      "slickenline rake 30 from S20W\n");
  CHECK(off(one.log.row(1).trend, 20) < exact);
  CHECK(miss(one.log.row(1).plunge, 0) < exact);
  CHECK(off(one.log.row(2).trend, 200) < exact);
  CHECK(off(one.log.row(3).trend, 110) < exact);
  CHECK(miss(one.log.row(3).plunge, 40) < exact);
  CHECK(miss(one.log.row(5).plunge, 90) == 0);
  CHECK_FALSE(one.log.row(5).trend);
  CHECK(off(one.log.row(6).trend, 200) < exact);
  CHECK(miss(one.log.row(6).plunge, 30) < exact);
}

TEST_CASE("a rake keeps to its plane when the set changes between the two") {
  // Both are in one rock: the plane's strike is 20 on the old dial and 25 on the new one.
  const Reduced log(
      "declination 10E\nset 0\nstation Q1\nfault N20E 90 E\nset 5E\n"
      "slickenline rake 30 from N25E\n");
  CHECK(off(log.row(1).trend, 30) < exact);
  CHECK(off(log.row(1).as_read, 25) < exact);
  CHECK(miss(log.row(1).correction, 5) < exact);
}

TEST_CASE("a rake without its plane is rejected") {
  for (const auto& [readings, why] :
       {std::pair{"", "none before"}, std::pair{"bedding N98E 41N\n", "a rejected one"},
        std::pair{"bedding N78E 41N\nbedding N98E 41N\n", "the last rejected"},
        std::pair{"bedding horizontal\n", "a horizontal one"},
        std::pair{"bedding N78E 41N\nstation Q2\n", "another station's"}}) {
    INFO(why);
    const Reduced log(on_true_dial(std::string(readings) + "lineation rake 40 from N78E\n"));
    const Row& rake = log.row(log.row_count() - 1);
    CHECK(rake.status == Status::rejected);
    CHECK_FALSE(rake.trend);
    CHECK_FALSE(rake.rake);
    CHECK(rake.codes == std::vector{Code::rake_no_plane});
    CHECK(log.only(Code::rake_no_plane).severity == Severity::error);
  }
  const Reduced across(on_true_dial("bedding N78E 41N\nlineation rake 40 from N5E\n"));
  CHECK(across.row(1).status == Status::rejected);
  CHECK(across.row(1).codes == std::vector{Code::rake_end});
  // 67.5 degrees and no more.
  CHECK(Reduced(on_true_dial("bedding 000/32 E\nlineation rake 40 from 067.5\n")).counts().ok == 2);
  CHECK(Reduced(on_true_dial("bedding 000/32 E\nlineation rake 40 from 67.6\n")).counts().ok == 1);
}

TEST_CASE("the plane of a rake is the last one read, or the last of the kind named") {
  const One one(
      "bedding N78E 41N\nfault N20E 60E\nslickenline rake 90 from N20E\n"
      "lineation rake 90 from N78E on bedding\nslickenline rake 90 from N20E on fault\n");
  INFO(one.log.codes());
  CHECK(off(one.log.row(2).trend, 110) < exact);
  CHECK(off(one.log.row(3).trend, 348) < exact);
  CHECK(miss(one.log.row(3).plunge, 41) < exact);
  CHECK(miss(one.log.row(4).plunge, 60) < exact);
}

TEST_CASE("a sight off the south end is turned round") {
  const Reduced log(
      "set 0\ndeclination 10E\nlandmark Peak\nstation Q1\nsight Peak S20E south-end\n");
  CHECK(off(log.row().as_read, 340) < exact);
  CHECK(off(log.row().bearing, 350) < exact);
  CHECK(off(log.row().back_bearing, 170) < exact);
}

TEST_CASE("legs have their length in metres and their own back bearing") {
  const One one(
      "pace 0.76m\nleg S38E 120m back N37W\nleg 090 100ft\nleg 090 50 paces slope -10%\n"
      "leg N14E 20m south-end slope 12\npace 3ft\nleg 090 50 paces\n");
  INFO(one.log.codes());
  CHECK(miss(one.row.distance_m, 120) < exact);
  CHECK(off(one.row.bearing, 142) < exact);
  CHECK(off(one.row.back_bearing, 323) < exact);
  CHECK(miss(one.log.row(1).distance_m, 30.48) < exact);
  CHECK_FALSE(one.log.row(1).back_bearing);
  CHECK(miss(one.log.row(2).distance_m, 38) < exact);
  CHECK(miss(one.log.row(2).vertical_angle, degrees(std::atan(-0.1))) < exact);
  CHECK(off(one.log.row(3).bearing, 194) < exact);
  CHECK(miss(one.log.row(3).vertical_angle, 12) < exact);
  CHECK(miss(one.log.row(4).distance_m, 50 * 3 * 0.3048) < exact);
}

TEST_CASE("sights and legs name their target as first written") {
  const Reduced log(on_true_dial("sight PEAK N50W\nleg N 20m to q2\nleg N 20m\nstation Q2\n"));
  CHECK(log.row(0).target == "Peak");
  CHECK(log.row(1).target == "q2");
  CHECK(log.row(2).target.empty());
  CHECK(log.count(Code::station_unknown) == 0);
}

TEST_CASE("a sight on an unknown name is suspect and its bearing stands") {
  const Reduced log(on_true_dial("sight Peek N50W\nsight Q2 N50W\nsight Q1 N50W\nstation Q2\n"));
  CHECK(log.row(0).status == Status::suspect);
  CHECK(off(log.row(0).bearing, 310) < exact);
  CHECK(log.only(Code::landmark_unknown).help.find("Peak") != std::string::npos);
  // A station may be sighted, also one that comes later.
  CHECK(log.row(1).status == Status::ok);
  CHECK(log.row(2).status == Status::ok);
}

TEST_CASE("a leg to a station that the log does not have is noted") {
  const Reduced log(on_true_dial("leg N50W 20m to Q9\nleg N50W 20m to Peak\n"));
  CHECK(log.count(Code::station_unknown) == 2);
  CHECK(log.all(Code::station_unknown).front()->severity == Severity::note);
  CHECK(log.row(0).status == Status::ok);
  CHECK(log.row(0).codes == std::vector{Code::station_unknown});
}

TEST_CASE("the uncertainty of a strike grows as the dip gets shallow, as published") {
  std::size_t used = 0;
  for (const ReferenceRow& row : reference_rows("planes_and_lines.txt")) {
    if (row.check != "strike sigma of dip sigma at dip") continue;
    ++used;
    const auto parts = split(row.input, ',');
    INFO(row.at << " (" << row.source << ")");
    const One one("accuracy bearing 0.001 dip " + parts.at(0) + "\nbedding N78E " + parts.at(1) +
                  "N\n");
    CHECK(miss(one.row.uncertainty, number(row.expected)) <= row.tolerance);
  }
  CHECK(used == 3);
}

TEST_CASE("the uncertainty joins the errors of bearing, dip and declination") {
  const std::string readings =
      "landmark Peak\nstation Q1\nbedding N78E 30N\nlineation N50W 60\nsight Peak N66W\n"
      "leg S38E 120m\n";
  const auto check = [&](const std::string& heading, North north, double bearing, double dip,
                         double declination) {
    const Reduced log(heading + readings, in(north));
    INFO(heading << log.codes());
    // sin 30 = cos 60 = 1/2
    CHECK(miss(log.row(0).uncertainty,
               std::sqrt(bearing * bearing + 4 * dip * dip + declination * declination)) < exact);
    CHECK(miss(log.row(1).uncertainty,
               std::sqrt(4 * bearing * bearing + declination * declination)) < exact);
    const double level = std::sqrt(bearing * bearing + declination * declination);
    CHECK(miss(log.row(2).uncertainty, level) < exact);
    CHECK(miss(log.row(3).uncertainty, level) < exact);
  };
  const std::string declination = "set 0\ndeclination 24.6E ±0.4\n";
  check(declination, North::geographic, 0.5, 1, 0.4);
  check(declination, North::magnetic, 0.5, 1, 0);
  check(declination + "accuracy dip 3\n", North::geographic, 0.5, 3, 0.4);
  check(declination + "accuracy bearing 2 dip 3\n", North::geographic, 2, 3, 0.4);
  check("set 0\ndeclination 24.6E\n", North::geographic, 0.5, 1, 0);
  check("", North::geographic, 0.5, 1, 0);
}

TEST_CASE("a direction that means nothing has no uncertainty") {
  // At the default errors: 0.5 / cos plunge and 1 / sin dip pass 10 and 52 degrees.
  struct Case {
    const char* reading;
    bool noted;
    bool empty;
  };
  for (const Case& c :
       {Case{"bedding N78E 6N", false, false}, Case{"bedding N78E 5N", true, false},
        Case{"bedding N78E 1.2N", true, false}, Case{"bedding N78E 1N", true, true},
        Case{"lineation N50W 87", false, false}, Case{"lineation N50W 87.2", true, false},
        Case{"lineation N50W 89.4", true, false}, Case{"lineation N50W 89.5", true, true},
        Case{"accuracy bearing 51\nsight Peak N50W", false, false},
        Case{"accuracy bearing 53\nsight Peak N50W", false, true}}) {
    const One one(std::string(c.reading) + "\n");
    INFO(c.reading << ": " << one.log.codes());
    CHECK(one.row.status == Status::ok);
    CHECK(one.row.uncertainty.has_value() != c.empty);
    CHECK(one.row.as_read.has_value());
    const bool plane = one.row.dip.has_value();
    CHECK(one.log.count(plane ? Code::strike_uncertain : Code::trend_uncertain) ==
          (c.noted ? 1u : 0u));
    CHECK(one.row.codes.size() == (c.noted ? 1u : 0u));
  }
}

TEST_CASE("facing and sense stand on the row") {
  using notebook::Facing;
  using notebook::Sense;
  const One one(
      "bedding N78E 41N overturned\nbedding N78E 41N facing unknown\nbedding N78E 41N upright\n"
      "bedding N78E 41N\nfault N20E 60E reverse\nslickenline N25E 8 dextral\n");
  INFO(one.log.codes());
  CHECK(one.log.row(0).facing == Facing::overturned);
  CHECK(one.log.row(1).facing == Facing::unknown);
  CHECK(one.log.row(2).facing == Facing::upright);
  CHECK(one.log.row(3).facing == Facing::unstated);
  CHECK(one.log.row(4).sense == Sense::reverse);
  CHECK(one.log.row(5).sense == Sense::dextral);
}

TEST_CASE("surfaces are numbered within the station and shared by repeats") {
  const One one(
      "bedding N78E 41N, N77E 40N\nlineation N50W 30\nsight Peak N\nbedding N98E 41N\n"
      "leg N 20m\ncleavage 61 > N12W\nstation Q2\nbedding N78E 41N\n");
  std::vector<std::uint32_t> numbers;
  for (std::size_t i = 0; i < one.log.row_count(); ++i)
    numbers.push_back(one.log.row(i).surface);
  CHECK(numbers == std::vector<std::uint32_t>{1, 1, 2, 0, 3, 0, 4, 1});
}

TEST_CASE("the first unit of a station holds for the readings before it too") {
  const One one(
      "joint vertical N\nunit schist\njoint vertical N14E\nunit # gneiss; grey\n"
      "joint vertical N20E\nstation Q2\njoint vertical N\n");
  CHECK(one.log.row(0).unit == "schist");
  CHECK(one.log.row(1).unit == "schist");
  CHECK(one.log.row(2).unit == "# gneiss; grey");
  CHECK(one.log.row(3).unit.empty());
}

TEST_CASE("position, elevation and time belong to the whole station") {
  const Reduced log(on_true_dial(
      "joint vertical N\nat 44.5S 169.25E ±8\nelevation 100 ft\ntime 09:40\nstation Q2\n"
      "joint vertical N\nstation Q3 at 44S 169E\nat 45S 169E\n"));
  REQUIRE(log.pages().size() == 4);
  const Page& first = log.pages()[1];
  REQUIRE(first.position);
  CHECK(miss(first.position->position.latitude, -44.5) < exact);
  CHECK(miss(first.position->position.longitude, 169.25) < exact);
  CHECK(miss(first.position->accuracy_m, 8) < exact);
  CHECK(miss(first.elevation_m, 30.48) < exact);
  REQUIRE(first.time);
  CHECK(first.time->hour == 9);
  CHECK(first.time->minute == 40);
  CHECK_FALSE(log.pages()[2].position);
  CHECK_FALSE(log.pages()[2].elevation_m);
  CHECK_FALSE(log.pages()[2].time);
  // The first one counts where it is stated twice.
  REQUIRE(log.pages()[3].position);
  CHECK(miss(log.pages()[3].position->position.latitude, -44) < exact);
  CHECK(log.count(Code::already_stated) == 1);
}

TEST_CASE("date and observer are those of the reading's line") {
  const One one(
      "date 2026-02-14\nobserver AM\njoint vertical N\ndate 2026-02-15\nobserver BN\n"
      "joint vertical N\n");
  CHECK(one.log.row(0).date == notebook::Date{2026, 2, 14});
  CHECK(one.log.row(0).observer == "AM");
  CHECK(one.log.row(1).date == notebook::Date{2026, 2, 15});
  CHECK(one.log.row(1).observer == "BN");
}

TEST_CASE("a row keeps what was typed and the remark beside it") {
  const One one("bedding N78E 41N, 081/42 N ; hinge\nsight Peak N66W; tip\n");
  CHECK(one.log.row(0).written == "N78E 41N");
  CHECK(one.log.row(1).written == "081/42 N");
  CHECK(one.log.row(0).remark == "hinge");
  CHECK(one.log.row(1).remark == "hinge");
  CHECK(one.log.row(2).written == "Peak N66W");
  CHECK(one.log.row(2).remark == "tip");
}

TEST_CASE("samples, photos, notes and lone remarks stay with their station") {
  const One one(
      "sample Q1-a garnet band\nphoto 0412\nnote float # below; here\n; alone\nunit x\n"
      "joint vertical N ; beside\nstation Q2\nnote second\n");
  const auto said = [&](std::size_t page) {
    std::string all;
    for (const Item& item : one.log.pages().at(page).items)
      all.append(name_of(item.what)).append(":").append(item.name).append(":").append(item.text) +=
          '|';
    return all;
  };
  CHECK(said(1) == "sample:Q1-a:garnet band|photo::0412|note::float # below; here|note::alone|");
  CHECK(said(2) == "note::second|");
}

TEST_CASE("unit, date and observer of an item are those of its line") {
  const Reduced log(
      "date 2026-02-14\nstation A\nsample A1\nunit gneiss\nphoto 1\nunit schist\nobserver BN\n"
      "note x\ndate 2026-02-15 ; later\nstation B\nnote y\n");
  const auto said = [&](std::size_t page, std::size_t item) {
    const Item& one_item = log.pages().at(page).items.at(item);
    return std::string(one_item.unit) + '|' + std::string(one_item.observer) + '|' +
           notebook::iso_date(*one_item.date) + '|' + std::to_string(one_item.line) + ':' +
           std::to_string(one_item.column);
  };
  CHECK(said(1, 0) == "gneiss||2026-02-14|3:1");  // the first unit holds for what stands before it
  CHECK(said(1, 1) == "gneiss||2026-02-14|5:1");
  CHECK(said(1, 2) == "schist|BN|2026-02-14|8:1");
  CHECK(said(1, 3) == "schist|BN|2026-02-15|9:19");
  CHECK(said(2, 0) == "|BN|2026-02-15|11:1");
}

TEST_CASE("a rejected reading is a row without figures, and its repeats stand") {
  const One one("bedding N78E 41N, N98E 40N, N77E 40N\nleg N50W 120\nsight Peak N95W\n");
  REQUIRE(one.log.row_count() == 5);
  for (const std::size_t i : {1u, 3u, 4u}) {
    const Row& row = one.log.row(i);
    INFO("row " << i);
    CHECK(row.status == Status::rejected);
    CHECK(row.codes.size() == 1);
    for (const auto& figure : {&Row::strike, &Row::dip, &Row::trend, &Row::plunge, &Row::rake,
                               &Row::bearing, &Row::back_bearing, &Row::as_read, &Row::correction,
                               &Row::uncertainty, &Row::distance_m, &Row::vertical_angle})
      CHECK_FALSE((row.*figure).has_value());
  }
  CHECK(one.log.row(0).status == Status::ok);
  CHECK(one.log.row(2).status == Status::ok);
  CHECK(one.log.row(4).target == "Peak");
}

TEST_CASE("readings that wait for an answer are rejected rows with their code") {
  const Reduced log(on_true_dial("joint 242/37\njoint 240 35, 243/36\nleg N 30 paces\n"));
  REQUIRE(log.row_count() == 4);
  CHECK(log.codes() == "dip-side-missing pace-missing ");
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(log.row(i).status == Status::rejected);
    CHECK(log.row(i).codes == std::vector<Code>{Code::dip_side_missing});
  }
  CHECK(log.row(3).codes == std::vector<Code>{Code::pace_missing});
  CHECK(log.counts().rejected == 4);
  CHECK(log.counts().errors == 2);
}

TEST_CASE("what stands below a misspelt station line belongs to no station above") {
  const Reduced log(
      "set 0\ndeclination 0\nstation A at 44S 169E\nstaton B\nleg N 100m to C\n"
      "joint vertical N14E\nstation C\n");
  REQUIRE(log.row_count() == 2);
  CHECK(log.pages().size() == 4);
  CHECK_FALSE(log.pages()[2].position);
  CHECK(log.pages()[2].station.empty());
  CHECK_FALSE(log.pages()[3].position);
  CHECK(log.row(1).status == Status::ok);
}

TEST_CASE("landmarks are listed with what was said of them") {
  const Reduced log("landmark Cairn 44.65S 169.03E elevation 100 ft\nlandmark Peak\nstation Q1\n");
  const auto& landmarks = log.reduction().landmarks();
  REQUIRE(landmarks.size() == 2);
  CHECK(landmarks[0].name == "Cairn");
  REQUIRE(landmarks[0].position);
  CHECK(miss(landmarks[0].elevation_m, 30.48) < exact);
  CHECK(landmarks[1].name == "Peak");
  CHECK_FALSE(landmarks[1].position);
}
