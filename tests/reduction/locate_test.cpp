// SPDX-License-Identifier: MIT
// What a log implies of its places: stations from sights and legs, landmarks from stations,
// heights, and the slips that are offered.
#include <lodebook/reduction/fixes.hpp>

#include <fmt/format.h>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/geomagnetic.hpp>

#include "reduced.hpp"
#include "small_log.hpp"

namespace {

using namespace lodebook;
using earth::Position;
using notebook::Code;
using reduction::Fixes;
using reduction::LocatedStation;
using reduction::PositionFrom;
using reduction::SightFix;
using test::Reduced;

constexpr Position ridge{-44.70, 169.00};
constexpr double declination = 24.6;

std::string at(const Position& p) {
  return fmt::format("{:.7f}{} {:.7f}{}", std::abs(p.latitude), p.latitude < 0 ? 'S' : 'N',
                     std::abs(p.longitude), p.longitude < 0 ? 'W' : 'E');
}
std::string landmark(const std::string& name, const Position& p) {
  return "landmark " + name + " " + at(p) + "\n";
}
/// The bearing on the dial, to a hundredth of a degree, turned by `off`.
std::string dial(const Position& from, const Position& to, double off = 0) {
  return fmt::format("{:06.2f}",
                     wrap_degrees(earth::geodesic(from, to).azimuth - declination + off));
}
std::string sight(const std::string& name, const Position& from, const Position& to,
                  double off = 0) {
  return "sight " + name + " " + dial(from, to, off) + "\n";
}

const std::string head = "set 0\ndeclination 24.6E ±0.4\n";

struct Peak {
  std::string name;
  Position position;
};
const std::vector<Peak>& peaks() {
  static const std::vector<Peak> all = {{"Cairn", earth::travelled(ridge, 28, 5000)},
                                        {"Dome", earth::travelled(ridge, 295, 5300)},
                                        {"Saddle", earth::travelled(ridge, 160, 4700)},
                                        {"Peak", earth::travelled(ridge, 90, 4800)}};
  return all;
}
std::string landmarks(std::size_t count = 4) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i)
    text += landmark(peaks()[i].name, peaks()[i].position);
  return text;
}
std::string sights(std::size_t count = 4, const Position& from = ridge) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i)
    text += sight(peaks()[i].name, from, peaks()[i].position);
  return text;
}

const LocatedStation& station(const Fixes& fixes, std::string_view name) {
  const auto found = std::ranges::find(fixes.stations, name, &LocatedStation::name);
  REQUIRE(found != fixes.stations.end());
  return *found;
}
const SightFix& fix(const Fixes& fixes, std::string_view name) {
  const auto found = std::ranges::find(fixes.sight_fixes, name, &SightFix::name);
  REQUIRE(found != fixes.sight_fixes.end());
  return *found;
}
double off_m(const std::optional<Position>& found, const Position& expected) {
  REQUIRE(found);
  return earth::distance_m(*found, expected);
}

}  // namespace

TEST_CASE("a station without a position gets it from its sights, in every output") {
  const Reduced log(head + landmarks() + "station Q1\n" + sights() + "bedding N78E 41N\n");
  const Fixes& fixes = log.reduction().fixes();
  CHECK(station(fixes, "Q1").from == PositionFrom::sights);
  CHECK(off_m(station(fixes, "Q1").position, ridge) < 1);
  CHECK(log.codes().empty());
  const auto& page = log.pages()[1];
  REQUIRE(page.position);
  CHECK(page.position_from == PositionFrom::sights);
  CHECK(earth::distance_m(page.position->position, ridge) < 1);
  CHECK(*page.position->accuracy_m > 10);
  CHECK(*page.position->accuracy_m < 100);
  const SightFix& found = fix(fixes, "Q1");
  CHECK(found.agrees);
  CHECK(found.freedom == 2);
  CHECK(found.cuts.size() == 6);
  REQUIRE(found.implied);
  CHECK(std::abs(found.implied->degrees_east - 24.6) < 0.1);
  CHECK(found.implied->verdict == reduction::ImpliedDeclination::Verdict::fits);
  CHECK(found.points == 4);
  CHECK(!found.triangle);  // four sights make none
}

TEST_CASE("the small log of the language fixes its second station and walks to its third") {
  const Reduced log(test::small_log);
  const Fixes& fixes = log.reduction().fixes();
  CHECK(station(fixes, "Q1").from == PositionFrom::at);
  CHECK(station(fixes, "Q2").from == PositionFrom::sights);
  CHECK(station(fixes, "Q3").from == PositionFrom::legs);
  CHECK(fix(fixes, "Q2").agrees);
  CHECK(fix(fixes, "Q2").triangle);
  CHECK(std::abs(earth::distance_m(*station(fixes, "Q2").position, *station(fixes, "Q3").position) -
                 120) < 0.01);
  CHECK(log.counts().errors == 0);
  CHECK(log.counts().warnings == 0);
}

TEST_CASE("a sight off the other end of the needle is suspected, offered and not applied") {
  std::string text = head + landmarks() + "station Q1\n";
  for (std::size_t i = 0; i < 4; ++i)
    text += sight(peaks()[i].name, ridge, peaks()[i].position, i == 2 ? 180 : 0);
  const Reduced log(text);
  const auto& misfit = log.only(Code::sight_misfit);
  CHECK(misfit.severity == notebook::Severity::warning);
  CHECK(misfit.help.find("the other end of the needle") != std::string::npos);
  CHECK(log.row(2).status == reduction::Status::suspect);
  CHECK(log.row(0).status == reduction::Status::ok);
  const SightFix& found = fix(log.reduction().fixes(), "Q1");
  CHECK(found.sights[2].suspicion.find("the other end of the needle") != std::string::npos);
  CHECK(found.sights[0].suspicion.empty());
  CHECK(!log.pages()[1].position);  // they meet nowhere as they stand
}

TEST_CASE("where no slip explains it the sight that disagrees most is suspected") {
  std::string text = head + landmarks() + "station Q1\n";
  for (std::size_t i = 0; i < 4; ++i)
    text += sight(peaks()[i].name, ridge, peaks()[i].position, i == 1 ? 6 : i == 3 ? 5 : 0);
  const Reduced log(text);
  const SightFix& found = fix(log.reduction().fixes(), "Q1");
  CHECK(!found.agrees);
  CHECK(log.count(Code::sight_misfit) == 1);
  // The ellipse is stretched by what disagrees.
  const Reduced good(head + landmarks() + "station Q1\n" + sights());
  CHECK(found.ellipse.semi_major_m > 2 * fix(good.reduction().fixes(), "Q1").ellipse.semi_major_m);
}

TEST_CASE("a landmark is found from two stations, and then serves a third") {
  const Position a = earth::travelled(ridge, 270, 3000);
  const Position b = earth::travelled(ridge, 180, 3000);
  const Position c = earth::travelled(ridge, 45, 2500);
  const Reduced log(head + "landmark New\n" + landmark("Cairn", peaks()[0].position) +
                    landmark("Dome", peaks()[1].position) + "station A at " + at(a) + "\n" +
                    sight("New", a, ridge) + "station B at " + at(b) + "\n" +
                    sight("New", b, ridge) + "station C\n" + sight("New", c, ridge) +
                    sight("Cairn", c, peaks()[0].position) + sight("Dome", c, peaks()[1].position));
  const Fixes& fixes = log.reduction().fixes();
  const SightFix& found = fix(fixes, "New");
  CHECK(found.is_landmark);
  CHECK(off_m(found.position, ridge) < 2);
  CHECK(off_m(station(fixes, "C").position, c) < 5);
  CHECK(fix(fixes, "C").sights.size() == 3);
}

TEST_CASE("legs lead on from a station that sights have fixed, and close") {
  const Position b = earth::travelled(ridge, 60, 300);
  const Position c = earth::travelled(ridge, 120, 300);
  const auto leg = [](const Position& from, const Position& to, const std::string& name) {
    return fmt::format("leg {} {:.2f}m to {}\n", dial(from, to), earth::distance_m(from, to), name);
  };
  const Reduced log(head + landmarks() + "station A\n" + sights() + leg(ridge, b, "B") +
                    "station B\n" + leg(b, c, "C") + "station C\n" + leg(c, ridge, "A"));
  const Fixes& fixes = log.reduction().fixes();
  CHECK(off_m(station(fixes, "B").position, b) < 2);
  CHECK(station(fixes, "C").from == PositionFrom::legs);
  REQUIRE(fixes.traverses.size() == 1);
  CHECK(fixes.traverses.front().kind == reduction::Traverse::Kind::loop);
  CHECK(fixes.traverses.front().misclosure_m < 0.1);
  CHECK(log.codes().empty());
}

TEST_CASE("the level part of a sloping leg counts, paces and feet in metres") {
  const Reduced log(
      "set 0\ndeclination 0\npace 0.8m\nstation A at 0N 10E\n"
      "leg 090 100 paces slope 100% to B\nstation B\nleg 000 100ft to C\nstation C\n");
  const Fixes& fixes = log.reduction().fixes();
  CHECK(off_m(station(fixes, "B").position, earth::travelled({0, 10}, 90, 80 * std::sqrt(0.5))) <
        0.01);
  CHECK(std::abs(fixes.legs[1].distance_m - 30.48) < 1e-9);
}

TEST_CASE("without a declination there is no position, but what the sights say of it") {
  const Reduced log("set 0\n" + landmarks() + "station Q1\n" + sights());
  const SightFix& found = fix(log.reduction().fixes(), "Q1");
  CHECK(found.without_declination);
  CHECK(!found.position);
  REQUIRE(found.implied);
  CHECK(std::abs(found.implied->degrees_east - 24.6) < 0.1);
  CHECK(log.count(Code::no_fix) == 1);
}

TEST_CASE("a void declination explains why there is no position, and is said alone") {
  const Reduced sighted("set 0\ndeclination 24.6\n" + landmarks() + "station Q1\n" + sights());
  CHECK(fix(sighted.reduction().fixes(), "Q1").without_declination);
  CHECK(sighted.count(Code::no_fix) == 0);
  CHECK(sighted.counts().errors == 1);
  const Reduced walked(
      "set 0\ndeclination 24.6\nstation A at 0N 10E\nleg 000 100m to B\nstation B\n");
  CHECK(!station(walked.reduction().fixes(), "B").position);
  CHECK(walked.count(Code::no_fix) == 0);
}

TEST_CASE("legs without a declination close among themselves and place nothing") {
  const Reduced log("set 0\nstation A at 0N 10E\nleg 000 100m to B\nstation B\n");
  CHECK(!station(log.reduction().fixes(), "B").position);
  CHECK(log.count(Code::no_fix) == 1);
  CHECK(log.reduction().fixes().traverses.size() == 1);
}

TEST_CASE("what was found along legs does not come back to the station that it was found from") {
  // B by a leg from A; New from A and B; B must stay where the leg put it.
  const Position b = earth::travelled(ridge, 60, 400);
  const Position peak = earth::travelled(ridge, 20, 900);
  const Reduced log(head + "landmark New\n" + landmark("Cairn", peaks()[0].position) +
                    "station A at " + at(ridge) + "\n" + sight("New", ridge, peak) + "leg " +
                    dial(ridge, b) + " 400m to B\nstation B\n" + sight("New", b, peak) +
                    sight("Cairn", b, peaks()[0].position, 8));
  CHECK(station(log.reduction().fixes(), "B").from == PositionFrom::legs);
  CHECK(off_m(station(log.reduction().fixes(), "B").position, b) < 1);
}

TEST_CASE("a station without legs may be fixed by sights on one that legs have placed") {
  const Position b = earth::travelled(ridge, 60, 3000);
  const Position c = earth::travelled(ridge, 120, 4000);
  const Reduced log(head + "station A at " + at(ridge) + "\nleg " + dial(ridge, b) +
                    " 3000m to B\nstation B\nstation C\n" + sight("A", c, ridge) +
                    sight("B", c, b));
  CHECK(station(log.reduction().fixes(), "C").from == PositionFrom::sights);
  CHECK(off_m(station(log.reduction().fixes(), "C").position, c) < 3);
}

TEST_CASE("a doubtful sight is left to the others") {
  std::string text = head + landmarks() + "station Q1\n" + sights(3);
  text += "sight Peak " + dial(ridge, peaks()[3].position, 180) + " doubtful\n";
  const Reduced log(text);
  CHECK(off_m(station(log.reduction().fixes(), "Q1").position, ridge) < 1);
  CHECK(fix(log.reduction().fixes(), "Q1").sights.size() == 3);
  CHECK(log.count(Code::sight_misfit) == 0);
}

TEST_CASE("the sight without which the others agree is blamed") {
  std::string text = head + landmarks() + "station Q1\n";
  for (std::size_t i = 0; i < 4; ++i)
    text += sight(peaks()[i].name, ridge, peaks()[i].position, i == 3 ? -65 : 0);
  const Reduced log(text);
  CHECK(log.row(3).status == reduction::Status::suspect);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(log.row(i).status == reduction::Status::ok);
}

TEST_CASE("two sights that meet behind blame neither") {
  const Reduced log(head + landmarks(2) + "station Q1\n" +
                    sight("Cairn", ridge, peaks()[0].position, 180) +
                    sight("Dome", ridge, peaks()[1].position, 180));
  CHECK(log.only(Code::no_fix).message.find("behind") != std::string::npos);
  CHECK(log.count(Code::sight_misfit) == 0);
  CHECK(log.row(0).status == reduction::Status::ok);
}

TEST_CASE("a declination applied twice is named, and the sights' own is told") {
  std::string text = "set 0\ndeclination 24.6E ±0.4\n" + landmarks() + "station Q1\n";
  for (const Peak& peak : peaks())
    text += sight(peak.name, ridge, peak.position, declination);  // the dial was right already
  const Reduced log(text);
  CHECK(log.only(Code::implied_declination).help.find("applied twice") != std::string::npos);
  CHECK(log.count(Code::sight_misfit) == 0);
}

TEST_CASE("two points sighted are no check, however often, and no danger circle") {
  const Reduced log(head + landmarks(2) + "station Q1\n" + sights(2) + sights(1));
  CHECK(log.count(Code::no_check) == 1);
  CHECK(log.count(Code::danger_circle) == 0);
  CHECK(fix(log.reduction().fixes(), "Q1").points == 2);
}

TEST_CASE("sights at a station with a position are held against it") {
  std::string text = head + landmarks() + "station Q1 at " + at(ridge) + " ±8\n" + sights(2) +
                     "sight Saddle " + dial(ridge, peaks()[2].position, 180) + "\n" +
                     "sight Peak " + dial(ridge, peaks()[3].position, 2) + "\n";
  const Reduced log(text);
  const auto& off = log.only(Code::sight_misfit);
  CHECK(off.help.find("the other end of the needle") != std::string::npos);
  CHECK(log.row(2).status == reduction::Status::suspect);
  CHECK(log.row(3).status == reduction::Status::ok);  // within the floor of three degrees
  // A dial that was set already, and a declination added where it had to be subtracted.
  for (const auto& [times, words] : {std::pair(1, "the declination applied twice? then 0.0"),
                                     std::pair(2, "the declination on the wrong side? then 0.0")}) {
    const Reduced turned(head + landmarks(1) + "station Q1 at " + at(ridge) + "\n" +
                         sight("Cairn", ridge, peaks()[0].position, times * declination));
    CHECK(turned.only(Code::sight_misfit).help.find(words) != std::string::npos);
    CHECK(turned.row().status == reduction::Status::suspect);
  }
  // What no slip explains is no better.
  const Reduced noted(head + landmarks(1) + "station Q1 at " + at(ridge) + "\n" +
                      sight("Cairn", ridge, peaks()[0].position, 33));
  CHECK(noted.only(Code::sight_off).severity == notebook::Severity::warning);
  CHECK(noted.row().status == reduction::Status::suspect);
}

TEST_CASE("a landmark mistyped to another hemisphere is too far to be sighted") {
  const Reduced log(head + landmarks(1) + "landmark Dome 44.68N 168.94E\nstation Q1\n" + sights(2));
  CHECK(log.only(Code::no_fix).message.find("200 km") != std::string::npos);
}

TEST_CASE("a leg that contradicts a located station is suspect") {
  const Position b = earth::travelled(ridge, 60, 400);
  const Reduced log(head + "station A at " + at(ridge) + "\nleg " + dial(ridge, b, 30) +
                    " 400m to B\nstation B at " + at(b) + "\n");
  CHECK(log.only(Code::misclosure).message.find("'B'") != std::string::npos);
  CHECK(log.row().status == reduction::Status::suspect);
}

TEST_CASE(
    "a leg without a back bearing is corrected too, where its station's attraction is known") {
  const Reduced log(
      "attraction correct\nset 0\ndeclination 0\nstation A at 0N 10E\n"
      "leg 044 100m back 224 to B\nstation B\nleg 096 100m back 266 to C\n"
      "station C\nleg 030 100m to D\nstation D\n");
  CHECK(std::abs(log.reduction().fixes().legs[2].azimuth - 40) < 1e-9);
  // Asked for in vain, also in a log without any leg.
  CHECK(Reduced("attraction correct\nset 0\ndeclination 0\nstation A\nbedding N20E 30E\n")
            .count(Code::attraction_unapplied) == 1);
}

TEST_CASE("the model's declination is that of the place which is found with it") {
  const earth::Position place{64.9, -18.6};
  const double east = earth::magnetic_field(place, 0, 2026)->declination().degrees_east();
  std::string text = "date 2026-01-01\nset 0\ndeclination model\n";
  std::string seen;
  for (const double azimuth : {30.0, 110.0, 250.0}) {
    const Position peak = earth::travelled(place, azimuth, 9000);
    const std::string name = fmt::format("P{}", azimuth);
    text += landmark(name, peak);
    seen += fmt::format("sight {} {:07.3f}\n", name, wrap_degrees(azimuth - east));
  }
  const Reduced log(text + "station Q1\n" + seen);
  CHECK(off_m(station(log.reduction().fixes(), "Q1").position, place) < 1);
  CHECK(std::abs(*log.row().correction - east) < 1e-4);
}

TEST_CASE("vertical angles give a station its height, with the earth's curvature") {
  const Position far = earth::travelled(ridge, 28, 5000);
  const double rise = 5000 * std::tan(7 * M_PI / 180) + 0.87 * 5000.0 * 5000 / (2 * 6371000);
  const Reduced log(head + "landmark Cairn " + at(far) +
                    fmt::format(" elevation {:.2f}", 800 + rise) + "\nstation Q1 at " + at(ridge) +
                    "\nsight Cairn " + dial(ridge, far) + " vertical 7\n");
  const auto& found = station(log.reduction().fixes(), "Q1").elevation;
  REQUIRE(found);
  CHECK(std::abs(found->elevation_m - 800) < 0.1);
  CHECK(std::abs(found->sigma_m - 5000 * (1 + std::pow(std::tan(7 * M_PI / 180), 2)) * M_PI / 180) <
        1);
  CHECK(test::miss(log.pages()[1].elevation_m, 800) < 0.1);
}

TEST_CASE("local attraction is told, and corrected in the legs where the log asks") {
  const std::string legs =
      "station A at 0N 10E\nleg 044 100m back 224 to B\nstation B\nleg 096 100m back 274 to C\n"
      "station C\nleg 030 100m back 212 to D\nstation D\nleg 320 100m back 140 to E\nstation E\n";
  const std::string heading = "set 0\ndeclination 0\n";
  const Reduced told(heading + legs);
  CHECK(told.count(Code::local_attraction) == 1);
  CHECK(told.only(Code::local_attraction).place.line == 7);
  CHECK(!told.reduction().fixes().attraction_applied);
  const Reduced corrected("attraction correct\n" + heading + legs);
  CHECK(corrected.reduction().fixes().attraction_applied);
  CHECK(std::abs(corrected.reduction().fixes().legs[2].azimuth - 32) < 1e-9);
  CHECK(std::abs(told.reduction().fixes().legs[2].azimuth - 30) < 1e-9);
}

TEST_CASE("heights that disagree are told, and their error stretched") {
  const auto with = [&](double second) {
    return Reduced(head + "landmark Cairn " + at(peaks()[0].position) + " elevation 1300\n" +
                   "landmark Dome " + at(peaks()[1].position) + " elevation 1300\nstation Q1 at " +
                   at(ridge) + "\nsight Cairn " + dial(ridge, peaks()[0].position) +
                   " vertical 6\nsight Dome " + dial(ridge, peaks()[1].position) +
                   fmt::format(" vertical {}\n", second));
  };
  const Reduced good = with(5.6);
  CHECK(good.count(Code::heights_disagree) == 0);
  const Reduced bad = with(-5.6);
  CHECK(bad.only(Code::heights_disagree).severity == notebook::Severity::warning);
  CHECK(station(bad.reduction().fixes(), "Q1").elevation->sigma_m >
        5 * station(good.reduction().fixes(), "Q1").elevation->sigma_m);
}

TEST_CASE("a doubtful sight gives no height, nor one that may be a percent grade") {
  const std::string text = head + "landmark Cairn " + at(peaks()[0].position) +
                           " elevation 1300\nstation Q1 at " + at(ridge) + "\nsight Cairn " +
                           dial(ridge, peaks()[0].position) + " vertical ";
  const auto has_height = [&](const std::string& vertical) {
    const Reduced log(text + vertical + "\n");
    CHECK(log.pages()[1].elevation_m.has_value() ==
          station(log.reduction().fixes(), "Q1").elevation.has_value());
    return log.pages()[1].elevation_m.has_value();
  };
  CHECK(has_height("6"));
  CHECK(has_height("-45"));
  CHECK(has_height("62%"));
  CHECK_FALSE(has_height("6 doubtful"));
  CHECK_FALSE(has_height("62"));
  CHECK_FALSE(has_height("-62"));
}

TEST_CASE("a station and a landmark that share a name do not share what is found") {
  // The sights lead behind, so that the station has no position; and then they do not.
  const auto with = [](double off) {
    return Reduced(head + landmarks(2) + landmark("Knoll", peaks()[3].position) +
                   "station Knoll\n" + sight("Cairn", ridge, peaks()[0].position, off) +
                   sight("Dome", ridge, peaks()[1].position, off) + "station Q2\n" +
                   sight("Knoll", ridge, peaks()[3].position) +
                   sight("Cairn", ridge, peaks()[0].position));
  };
  const Reduced nowhere = with(180);
  CHECK(!station(nowhere.reduction().fixes(), "Knoll").position);
  const Reduced somewhere = with(0);
  CHECK(off_m(station(somewhere.reduction().fixes(), "Knoll").position, ridge) < 1);
  for (const Reduced* log : {&nowhere, &somewhere}) {
    CHECK(off_m(station(log->reduction().fixes(), "Q2").position, ridge) < 1);
    CHECK(!log->reduction().fixes().landmarks[2].is_found);
  }
}

TEST_CASE("where only the dial knows the declination, sights imply none") {
  // As it was read on a dial that had been set.
  std::string seen;
  for (const Peak& peak : peaks())
    seen += fmt::format("sight {} {:06.2f}\n", peak.name,
                        earth::geodesic(ridge, peak.position).azimuth);
  const Reduced log("declination as-set\n" + landmarks() + "station Q1\n" + seen);
  const SightFix& found = fix(log.reduction().fixes(), "Q1");
  CHECK(off_m(found.position, ridge) < 1);
  CHECK(!found.implied);
}

TEST_CASE("the model's declination for a block without a position is the same in fix and table") {
  const Position other{64.9, -13.6};
  const Reduced log(
      "date 2026-01-01\nset 0\ndeclination model\nlandmark New\nstation Q1 at 64.9N 18.6W\n"
      "station Q2 at " +
      at(other) + "\nsight New 330\nstation Q1\nsight New 050\n");
  // The second block states nothing: its place is taken from above, and said so.
  CHECK(log.count(Code::position_borrowed) == 1);
  const double east = earth::magnetic_field(other, 0, 2026)->declination().degrees_east();
  const auto& sights = fix(log.reduction().fixes(), "New").sights;
  REQUIRE(sights.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(std::abs(*log.row(i).correction - east) < 1e-4);
    CHECK(test::off(sights[i].bearing, *log.row(i).bearing) < 1e-9);
  }
}
