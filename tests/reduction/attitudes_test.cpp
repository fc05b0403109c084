// SPDX-License-Identifier: MIT
// Planes and lines of many logs, in groups.
#include <lodebook/reduction/attitudes.hpp>

#include <catch.hpp>
#include <lodebook/orientation/line.hpp>

#include "gathered.hpp"

using namespace lodebook;
using namespace lodebook::test;
using reduction::Attitude;
using reduction::Attitudes;
using reduction::Group;
using reduction::Grouping;
using reduction::North;
using reduction::Selection;

namespace {

const std::string heading = "set 0\ndeclination 0\n";

Attitudes of(const std::string& readings) {
  return gathered({{"day.txt", heading + readings}});
}

/// What a group is of, and how many readings it has.
std::string title(const Attitudes& attitudes, const Group& group) {
  std::string title = attitudes.kind(group.kind);
  if (group.unit) title += ", unit " + attitudes.unit(*group.unit);
  if (group.station) title += ", station " + attitudes.station(*group.station);
  if (group.log) title += " of " + attitudes.logs()[*group.log].name;
  return title + ": " + std::to_string(group.members.size());
}

std::vector<std::string> titles(const Attitudes& attitudes, const Grouping& by = {},
                                const Selection& which = {}) {
  std::vector<std::string> titles;
  for (const Group& group : attitudes.groups(by, which))
    titles.push_back(title(attitudes, group));
  return titles;
}

using Titles = std::vector<std::string>;

double between(Vector a, Vector b) {
  return angle_between_axes(a, b).degrees();
}

}  // namespace

TEST_CASE("planes and lines are gathered, sights and legs counted") {
  const Attitudes attitudes =
      of("landmark Peak\nstation Q1\nbedding 070/30 S\nsight Peak 020\nlineation 110/20\n"
         "leg 090 20m\n");
  REQUIRE(attitudes.all().size() == 2);
  CHECK(attitudes.sights_and_legs() == 2);
  const Attitude& plane = attitudes.all()[0];
  CHECK(plane.is_plane);
  CHECK(attitudes.kind(plane.kind) == "bedding");
  CHECK(attitudes.station(plane.station) == "Q1");
  CHECK(attitudes.unit(plane.unit).empty());
  CHECK(plane.line == 5);
  CHECK(plane.column == 1);
  CHECK(plane.azimuth == 70.0);
  CHECK(plane.has_direction);
  CHECK(plane.written == "070/30 S");
  // It dips 30 towards 160: its pole goes down 60 towards 340.
  CHECK(between(plane.axis, direction_of(340, 60)) < 1e-9);
  CHECK(plane.axis.down > 0);
  const Attitude& line = attitudes.all()[1];
  CHECK_FALSE(line.is_plane);
  CHECK(between(line.axis, direction_of(110, 20)) < 1e-9);
}

TEST_CASE("corrected figures enter, not those that were read") {
  const Attitudes attitudes =
      gathered({{"day.txt", "set 0\ndeclination 10E\nstation Q1\nlineation 110/20\n"}});
  CHECK(attitudes.all()[0].azimuth == 120.0);
  CHECK(between(attitudes.all()[0].axis, direction_of(120, 20)) < 1e-9);
}

TEST_CASE("what has no direction has no azimuth, but an axis") {
  const Attitudes attitudes =
      of("station Q1\nbedding horizontal\nlineation vertical\nbedding 020/1 E\n");
  REQUIRE(attitudes.all().size() == 3);
  for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
    CHECK_FALSE(attitudes.all()[i].azimuth);
    CHECK_FALSE(attitudes.all()[i].has_direction);
    CHECK(between(attitudes.all()[i].axis, {0, 0, 1}) < 1e-9);
  }
  // A strike at a dip of a degree is known to no better than a right angle.
  CHECK(attitudes.all()[2].azimuth == 20.0);
  CHECK_FALSE(attitudes.all()[2].has_direction);
}

TEST_CASE("rejected readings never enter, suspect ones unless they are left out") {
  const Attitudes attitudes =
      of("station Q1\nbedding 070/30 S\nbedding 071/30 S doubtful\nbedding 400/30 S\n");
  const Group all = attitudes.groups({}, {}).at(0);
  CHECK(all.members.size() == 2);
  CHECK(all.suspect == 1);
  CHECK(all.rejected == 1);
  CHECK(all.left_out == 0);
  const Group sure = attitudes.groups({}, {{}, true}).at(0);
  REQUIRE(sure.members.size() == 1);
  CHECK(sure.members[0]->written == "070/30 S");
  CHECK(sure.suspect == 0);
  CHECK(sure.rejected == 1);
  CHECK(sure.left_out == 1);
}

TEST_CASE("a group of which nothing enters is there and says why") {
  const Attitudes attitudes = of("station Q1\nbedding 400/30 S\njoint 070/30 S doubtful\n");
  CHECK(titles(attitudes, {}, {{}, true}) == Titles{"bedding: 0", "joint: 0"});
}

TEST_CASE("groups stand in the order in which their kinds, units and stations are read") {
  const Attitudes attitudes =
      of("station Q2\nunit marl\njoint 070/30 S\nbedding 070/30 S\n"
         "station Q1\nunit Chalk\nbedding 071/30 S\nunit MARL\nbedding 072/30 S\n"
         "station Q3\njoint 073/30 S\n");
  CHECK(titles(attitudes) == Titles{"joint: 2", "bedding: 3"});
  CHECK(titles(attitudes, {true, false}) == Titles{"joint, unit marl: 1", "joint, unit : 1",
                                                   "bedding, unit marl: 2",
                                                   "bedding, unit Chalk: 1"});
  CHECK(titles(attitudes, {false, true}) ==
        Titles{"joint, station Q2 of day.txt: 1", "joint, station Q3 of day.txt: 1",
               "bedding, station Q2 of day.txt: 1", "bedding, station Q1 of day.txt: 2"});
  CHECK(titles(attitudes, {true, true}) == Titles{"joint, unit marl, station Q2 of day.txt: 1",
                                                  "joint, unit , station Q3 of day.txt: 1",
                                                  "bedding, unit marl, station Q2 of day.txt: 1",
                                                  "bedding, unit marl, station Q1 of day.txt: 1",
                                                  "bedding, unit Chalk, station Q1 of day.txt: 1"});
  CHECK(titles(attitudes, {}, {{"BEDDING"}, false}) == Titles{"bedding: 3"});
}

TEST_CASE("readings outside stations have a group of their own") {
  const Attitudes attitudes = of("bedding 070/30 S\nstation Q1\nbedding 070/30 S\n");
  CHECK(titles(attitudes, {false, true}) ==
        Titles{"bedding, station  of day.txt: 1", "bedding, station Q1 of day.txt: 1"});
}

TEST_CASE("stations of one name in two logs are two, units of one name are one") {
  const std::string log = heading + "station Q1\nunit marl\nbedding 070/30 S\n";
  const Attitudes attitudes = gathered({{"one.txt", log}, {"two.txt", log}});
  CHECK(titles(attitudes, {true, true}) == Titles{"bedding, unit marl, station Q1 of one.txt: 1",
                                                  "bedding, unit marl, station Q1 of two.txt: 1"});
  CHECK(titles(attitudes, {true, false}) == Titles{"bedding, unit marl: 2"});
  CHECK(attitudes.groups({}, {}).at(0).surfaces == 2);
}

TEST_CASE("a name that is a plane's in one log and a line's in another is of two kinds") {
  const Attitudes attitudes = gathered({
      {"one.txt", heading + "kind striae line\nstation Q1\nstriae 020/10\n"},
      {"two.txt", heading + "kind Striae plane\nstation Q1\nstriae 020/70 E\nstriae 021/70 E\n"},
  });
  const std::vector<Group> groups = attitudes.groups({}, {{"striae"}, false});
  REQUIRE(groups.size() == 2);
  CHECK_FALSE(groups[0].is_plane);
  CHECK(groups[0].members.size() == 1);
  CHECK(groups[1].is_plane);
  CHECK(groups[1].members.size() == 2);
  CHECK(groups[0].kind != groups[1].kind);
  CHECK(attitudes.kinds().size() == 2);  // as each is spelled
}

TEST_CASE("the kinds that were read are named once each, rejected ones too") {
  const Attitudes attitudes = gathered({
      {"one.txt", heading + "station Q1\nbedding 400/10 S\ncurrent 020/10\n"},
      {"two.txt", heading + "station Q1\nbedding 070/30 S\n"},
  });
  CHECK(attitudes.kinds() == std::vector<std::string>{"bedding", "current"});
  const std::vector<Group> groups = attitudes.groups({}, {});
  CHECK_FALSE(groups[0].is_arrow);
  CHECK(groups[1].is_arrow);
}

TEST_CASE("a list of kinds may name some that were not read") {
  const Attitudes attitudes = of("station Q1\nbedding 070/30 S\n");
  CHECK(titles(attitudes, {}, {{"joint", "bedding", "bedding"}, false}) == Titles{"bedding: 1"});
  CHECK(titles(attitudes, {}, {{"joint"}, false}).empty());
}

TEST_CASE("repeats share their surface, also where others stand between") {
  const Attitudes attitudes =
      of("station Q1\nbedding 070/30 S, 071/30 S\njoint 010/80 E\nbedding 072/30 S\n"
         "station Q2\nbedding 070/30 S, 071/30 S, 400/30 S\n");
  const std::vector<Group> groups = attitudes.groups({}, {});
  CHECK(groups[0].members.size() == 5);
  CHECK(groups[0].surfaces == 3);
  CHECK(groups[1].surfaces == 1);
}

TEST_CASE("repeats may count once, as their mean") {
  reduction::Options options;
  options.repeats = reduction::Repeats::mean;
  const Attitudes attitudes =
      gathered({{"day.txt", heading + "station Q1\nbedding 070/30 S, 072/30 S\n"}}, options);
  const Group group = attitudes.groups({}, {}).at(0);
  REQUIRE(group.members.size() == 1);
  CHECK(between(group.members[0]->axis, pole_of(71, 30)) < 0.05);
}

TEST_CASE("readings that refer to different norths are never one group") {
  const Attitudes attitudes = gathered({
      {"one.txt", "set 0\ndeclination 5E\nstation Q1\nbedding 070/30 S\n"},
      {"two.txt", "set 0\nstation Q1\nbedding 070/30 S\n"},
  });
  const std::vector<Group> groups = attitudes.groups({}, {});
  REQUIRE(groups.size() == 2);
  CHECK(groups[0].north == North::geographic);
  CHECK(groups[1].north == North::magnetic);
}

TEST_CASE("of each log its declinations are known, where it has any with planes and lines") {
  const Attitudes attitudes = gathered({
      {"one.txt",
       "set 0\ndeclination 5E\nstation Q1\nbedding 070/30 S\ndeclination 2W\nstation Q2\n"
       "joint 070/30 S\ndeclination 40E\nstation Q3\n"},
      {"two.txt", "set 0\ndial quadrant\nstation Q1\nbedding N70E 30S\n"},
      {"three.txt",
       "set 0\ndeclination model\ndate 1978-07-19\nstation Q1 at 55.6N 62.4W\nbedding 070/30 S\n"},
  });
  const auto& logs = attitudes.logs();
  REQUIRE(logs.size() == 3);
  CHECK(logs[0].least_declination == -2.0);
  CHECK(logs[0].most_declination == 5.0);
  CHECK_FALSE(logs[0].by_model);
  CHECK_FALSE(logs[1].least_declination);
  REQUIRE(logs[2].least_declination);
  CHECK(logs[2].by_model);
}

TEST_CASE("words are in quadrants where all dials are") {
  const NamedLog quadrant = {"one.txt", "dial quadrant\n"};
  const NamedLog azimuth = {"two.txt", "dial azimuth\n"};
  CHECK(gathered({quadrant, quadrant}).notation() == notebook::Notation::quadrant);
  CHECK(gathered({quadrant, azimuth}).notation() == notebook::Notation::azimuth);
  CHECK(gathered({azimuth, quadrant, quadrant}).notation() == notebook::Notation::azimuth);
  CHECK(gathered({}).notation() == notebook::Notation::azimuth);
}

TEST_CASE("nothing gathers to nothing") {
  CHECK(Attitudes().groups({true, true}, {}).empty());
  CHECK(gathered({{"empty.txt", ""}}).groups({}, {}).empty());
}

TEST_CASE("a current that rises points where it was typed, a line that rises is turned round") {
  const Attitudes attitudes = of("station Q1\ncurrent 310/-35\nlineation 310/-35\n");
  REQUIRE(attitudes.all().size() == 2);
  CHECK(attitudes.all()[0].azimuth == 310.0);
  CHECK(norm(attitudes.all()[0].axis + direction_of(130, 35)) < 1e-9);
  CHECK(attitudes.all()[1].azimuth == 130.0);
  CHECK(norm(attitudes.all()[1].axis + -direction_of(130, 35)) < 1e-9);
}

TEST_CASE("collections added together are as one that took all the logs") {
  const std::vector<NamedLog> logs = {
      {"a.txt", heading + "dial quadrant\nkind Scarp plane\nstation Q1\nunit grey\n"
                          "fault N14E 40E, N12E 41E\nbedding N70E 30S\n"},
      {"b.txt",
       "declination 12E\ndial quadrant\nstation Q2\nbedding N75E 31S\nunit Black\n"
       "bedding N98E 3S\nlineation N20E 5\nleg N90E 20m\n"},
      {"c.txt", heading + "kind SCARP plane\nstation q1\nunit GREY\nscarp 010/40 E\nunit black\n"
                          "bedding 070/30 S doubtful\n"}};
  const Attitudes at_once = gathered(logs);
  for (std::size_t first = 0; first <= logs.size(); ++first) {
    Attitudes added = gathered({logs.begin(), logs.begin() + static_cast<std::ptrdiff_t>(first)});
    for (std::size_t log = first; log < logs.size(); ++log)
      added.add(gathered({logs[log]}));
    CHECK(added.notation() == at_once.notation());
    CHECK(added.sights_and_legs() == at_once.sights_and_legs());
    CHECK(added.kinds() == at_once.kinds());
    REQUIRE(added.logs().size() == at_once.logs().size());
    CHECK(added.logs()[1].name == "b.txt");
    CHECK(added.logs()[1].most_declination == at_once.logs()[1].most_declination);
    REQUIRE(added.all().size() == at_once.all().size());
    for (std::size_t i = 0; i < at_once.all().size(); ++i) {
      const Attitude& one = added.all()[i];
      const Attitude& other = at_once.all()[i];
      CHECK(one.log == other.log);
      CHECK(one.surface == other.surface);
      CHECK(one.written == other.written);
      CHECK(added.kind(one.kind) == at_once.kind(other.kind));
      CHECK(added.station(one.station) == at_once.station(other.station));
      CHECK(added.unit(one.unit) == at_once.unit(other.unit));
    }
    for (const Grouping by : {Grouping{}, Grouping{true, true}})
      CHECK(titles(added, by) == titles(at_once, by));
  }
}
