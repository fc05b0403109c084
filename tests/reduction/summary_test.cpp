// SPDX-License-Identifier: MIT
// What groups add up to.
#include <lodebook/reduction/summary.hpp>

#include <algorithm>
#include <catch.hpp>
#include <cmath>
#include <lodebook/orientation/line.hpp>

#include "gathered.hpp"
#include "random_axes.hpp"

using namespace lodebook;
using namespace lodebook::test;
using reduction::Attitude;
using reduction::Fabric;
using reduction::Group;
using reduction::Summary;
using reduction::summary_of;

namespace {

/// Readings as if logged, which outlive the groups made of them.
class Readings {
 public:
  explicit Readings(const std::vector<Vector>& axes) {
    for (const Vector& axis : axes) {
      Attitude attitude;
      attitude.axis = axis.down < 0 ? -axis : axis;
      attitudes_.push_back(attitude);
    }
  }
  explicit Readings(const std::vector<double>& azimuths) {
    for (const double azimuth : azimuths) {
      Attitude attitude;
      attitude.azimuth = azimuth;
      attitude.has_direction = true;
      attitude.axis = direction_of(azimuth, 0);
      attitudes_.push_back(attitude);
    }
  }
  Group group(bool planes = true, bool arrows = false) const {
    Group group;
    group.folds = planes;
    group.is_plane = planes;
    group.is_arrow = arrows;
    for (const Attitude& attitude : attitudes_)
      group.members.push_back(&attitude);
    return group;
  }
  const Attitude* at(std::size_t i) const { return &attitudes_[i]; }

 private:
  std::vector<Attitude> attitudes_;
};

Summary of_axes(const std::vector<Vector>& axes) {
  return summary_of(Readings(axes).group());
}

double between(Vector a, Vector b) {
  return angle_between_axes(a, b).degrees();
}

}  // namespace

TEST_CASE("nothing adds up to nothing") {
  const Summary summary = summary_of({});
  CHECK_FALSE(summary.mean);
  CHECK_FALSE(summary.tensor);
  CHECK_FALSE(summary.girdle);
  CHECK(summary.fabric == Fabric::too_few);
  CHECK(summary.azimuths.count == 0);
  CHECK(summary.far_off.empty());
}

TEST_CASE("three planes have Fisher's figures, but too few for a fabric") {
  // The pole of 090/20 goes down 70 towards north, and so on: 10 degrees on either side of 090/30.
  const Summary summary = of_axes({pole_of(90, 20), pole_of(90, 30), pole_of(90, 40)});
  REQUIRE(summary.mean);
  CHECK(between(summary.mean->axis, pole_of(90, 30)) < 1e-9);
  // R = 1 + 2 cos 10 = 2.969616; k = 2 / (3 - R) = 65.82; cos a = 1 - (N - R) / R (sqrt 20 - 1).
  CHECK(std::abs(summary.mean->resultant - 2.969616) < 1e-6);
  REQUIRE(summary.mean->precision);
  CHECK(std::abs(*summary.mean->precision - 65.823) < 1e-3);
  REQUIRE(summary.mean->cone95);
  CHECK(std::abs(*summary.mean->cone95 - 15.318) < 1e-3);
  CHECK(summary.fabric == Fabric::too_few);
  CHECK_FALSE(summary.girdle);
}

TEST_CASE("fewer than three, or all alike, have no precision") {
  CHECK_FALSE(of_axes({pole_of(90, 20)}).mean->precision);
  CHECK_FALSE(of_axes({pole_of(90, 20), pole_of(90, 30)}).mean->cone95);
  const Summary alike = of_axes(std::vector<Vector>(6, pole_of(90, 20)));
  CHECK_FALSE(alike.mean->precision);
  CHECK(alike.mean->cone95 == 0.0);
  CHECK_FALSE(alike.tensor->shape());
  CHECK_FALSE(alike.tensor->strength());
  CHECK(alike.fabric == Fabric::cluster);
  CHECK(alike.far_off.empty());
}

TEST_CASE("scattered wide, there is a mean but no cone") {
  const Summary summary = of_axes({direction_of(0, 90), direction_of(0, 30), direction_of(120, 30),
                                   direction_of(240, 30), direction_of(60, 80)});
  REQUIRE(summary.mean);
  REQUIRE(summary.mean->precision);
  CHECK(*summary.mean->precision < 4);
  CHECK_FALSE(summary.mean->cone95);
}

TEST_CASE("a cluster is called so, and has no fold axis") {
  RandomAxes random(5);
  const Vector center = direction_of(200, 40);
  const Summary summary = of_axes(random.cluster(40, center, 100));
  CHECK(summary.fabric == Fabric::cluster);
  CHECK_FALSE(summary.girdle);
  CHECK(between(summary.mean->axis, center) < 2);
  CHECK(summary.chance_of_evenness < 1e-6);
}

TEST_CASE("poles along a great circle have a fold axis, known as well as they say") {
  RandomAxes random(6);
  int held = 0;
  constexpr int folds = 60;
  for (int i = 0; i < folds; ++i) {
    const Vector axis = random.anywhere();
    const Summary summary = of_axes(random.girdle(25, axis, 150, 4));
    REQUIRE(summary.fabric == Fabric::girdle);
    REQUIRE(summary.girdle);
    REQUIRE(summary.girdle->cone95);
    CHECK(*summary.girdle->cone95 < 8);
    CHECK(summary.girdle->pole.down >= 0);
    held += between(summary.girdle->pole, axis) <= *summary.girdle->cone95 ? 1 : 0;
  }
  // 95 % of 60 are 57, less three standard deviations of 1.7; a bootstrap of few is a little tight.
  CHECK(held >= 50);
}

TEST_CASE("what lies evenly prefers no direction, and nothing is far off from it") {
  std::vector<Vector> axes;
  for (const double trend : {0.0, 60.0, 120.0, 180.0, 240.0, 300.0})
    axes.push_back(direction_of(trend, 35.26));  // where the three eigenvalues agree
  const Summary summary = of_axes(axes);
  CHECK(summary.fabric == Fabric::no_preference);
  CHECK(summary.chance_of_evenness > 0.99);
  CHECK_FALSE(summary.girdle);
  CHECK(summary.far_off.empty());
}

TEST_CASE("vertical joints of nearly one strike are a cluster, though their poles are all level") {
  std::vector<Vector> poles;
  for (const double strike : {24.0, 25.0, 27.0, 28.0, 31.0, 26.0, 29.0})
    poles.push_back(pole_of(strike, 90));
  const Summary joints = of_axes(poles);
  CHECK_FALSE(joints.girdle);
  CHECK(joints.fabric == Fabric::cluster);
  poles.push_back(pole_of(80, 90));  // on their great circle, but far from them
  const Summary with_stray = of_axes(poles);
  CHECK(with_stray.fabric == Fabric::cluster);
  CHECK(with_stray.far_off.size() == 1);
  // Limbs that dip by 10 degrees either way are folded.
  std::vector<Vector> limbs;
  for (const double dip : {10.0, 11.0, 9.0, 10.0, 8.0}) {
    limbs.push_back(pole_of(0, dip));
    limbs.push_back(pole_of(180, dip));
  }
  const Summary fold = of_axes(limbs);
  REQUIRE(fold.girdle);
  CHECK(between(fold.girdle->pole, direction_of(0, 0)) < 1e-6);
}

TEST_CASE("two at right angles have no mean, and no figure that is not a number") {
  const Summary summary = of_axes({direction_of(0, 0), direction_of(90, 0)});
  CHECK_FALSE(summary.mean);
  REQUIRE(summary.tensor);
  CHECK_FALSE(summary.tensor->shape());
  CHECK(std::isfinite(summary.chance_of_evenness));
}

TEST_CASE("eigenvalues add up to 1 and their axes stand at right angles, whatever the group") {
  RandomAxes random(9);
  for (std::size_t count = 1; count < 40; ++count) {
    const Summary summary =
        of_axes(count % 3 == 0   ? random.cluster(count, random.anywhere(), 20)
                : count % 3 == 1 ? random.girdle(count, random.anywhere(), 90, 5)
                                 : random.cluster(count, {0, 0, 1}, 1));
    REQUIRE(summary.tensor);
    const auto& [first, second, third] = summary.tensor->eigenvalues;
    CHECK(std::abs(first + second + third - 1) < 1e-12);
    CHECK(first >= second);
    CHECK(second >= third);
    CHECK(third >= 0);
    for (const auto& [a, b] : {std::pair(0U, 1U), std::pair(1U, 2U), std::pair(0U, 2U)})
      CHECK(std::abs(dot(summary.tensor->axes[a], summary.tensor->axes[b])) < 1e-9);
    CHECK(summary.chance_of_evenness >= 0);
    CHECK(summary.chance_of_evenness <= 1);
  }
}

TEST_CASE("strikes are averaged as axes, trends as arrows") {
  const Readings readings(std::vector<double>{170, 350, 10, 190, 5, 355});
  const Summary strikes = summary_of(readings.group(true));
  CHECK(strikes.azimuths.count == 6);
  REQUIRE(strikes.azimuths.azimuth);
  CHECK(std::min(*strikes.azimuths.azimuth, 180 - *strikes.azimuths.azimuth) < 1e-9);
  CHECK(strikes.azimuths.is_meaningful());
  const Summary trends = summary_of(readings.group(false));
  REQUIRE(trends.azimuths.azimuth);
  CHECK(trends.azimuths.resultant < 0.4);
  CHECK_FALSE(trends.azimuths.is_meaningful());
}

TEST_CASE("what has no direction counts in space, not round the horizon") {
  const auto attitudes = gathered(
      {{"day.txt", "set 0\ndeclination 0\nstation Q1\nbedding horizontal\nbedding 070/30 S\n"}});
  const auto summaries = summarise(attitudes, {}, {});
  REQUIRE(summaries.size() == 1);
  CHECK(summaries[0].group.members.size() == 2);
  CHECK(summaries[0].mean->count == 2);
  CHECK(summaries[0].azimuths.count == 1);
}

TEST_CASE("arrows have a mean by their sum, and no girdle") {
  std::vector<double> trends;
  for (int i = 0; i < 12; ++i)
    trends.push_back(20.0 + 10 * i);
  const Readings readings(trends);
  const Summary arrows = summary_of(readings.group(false, true));
  REQUIRE(arrows.mean);
  CHECK(between(arrows.mean->axis, direction_of(75, 0)) < 1e-9);
  CHECK(arrows.mean->axis.east > 0);
  CHECK_FALSE(arrows.girdle);
  const Summary axes = summary_of(readings.group(false, false));
  CHECK(axes.fabric == Fabric::girdle);
  REQUIRE(axes.girdle);
  CHECK(between(axes.girdle->pole, {0, 0, 1}) < 1e-6);
}

TEST_CASE("arrows that oppose each other cancel out") {
  const Readings readings(std::vector<double>{10, 190});
  CHECK_FALSE(summary_of(readings.group(false, true)).mean);
  CHECK(summary_of(readings.group(false, false)).mean);
}

TEST_CASE("a current read the wrong way round is far off, on the axis of the others or not") {
  const Readings readings(std::vector<double>{70, 73, 76, 68, 71, 252, 75, 72});
  const Summary arrows = summary_of(readings.group(false, true));
  REQUIRE(arrows.far_off.size() == 1);
  CHECK(arrows.far_off[0].attitude == readings.at(5));
  CHECK(arrows.far_off[0].degrees > 175);
  CHECK(summary_of(readings.group(false, false)).far_off.empty());
}

TEST_CASE("what is far off is named in log order and left out of nothing") {
  RandomAxes random(11);
  std::vector<Vector> axes = random.cluster(30, direction_of(40, 30), 500);
  axes[20] = direction_of(130, 10);
  axes[4] = direction_of(300, 50);
  const Readings readings(axes);
  const Summary summary = summary_of(readings.group());
  CHECK(summary.fabric == Fabric::cluster);
  REQUIRE(summary.far_off.size() == 2);
  CHECK(summary.far_off[0].attitude == readings.at(4));
  CHECK(summary.far_off[1].attitude == readings.at(20));
  CHECK_FALSE(summary.more_far_off);
  CHECK(summary.mean->count == 30);
}

TEST_CASE("more than are looked for are said to be more") {
  RandomAxes random(12);
  std::vector<Vector> axes = random.cluster(500, direction_of(40, 30), 5000);
  for (int i = 0; i < 25; ++i)
    axes.push_back(direction_of(14.0 * i, 5));
  CHECK(of_axes(axes).more_far_off);
}

TEST_CASE("a stray off a fold is held against the great circle, not the mean") {
  RandomAxes random(13);
  const Vector axis = direction_of(322, 15);
  std::vector<Vector> axes = random.girdle(30, axis, 140, 1.5);
  axes[7] = *unit(axes[7] + 0.5 * axis);  // 27 degrees off
  const Readings readings(axes);
  const Summary summary = summary_of(readings.group());
  REQUIRE(summary.girdle);
  REQUIRE(summary.far_off.size() == 1);
  CHECK(summary.far_off[0].attitude == readings.at(7));
  CHECK(std::abs(summary.far_off[0].degrees - 26.6) < 3);
}

TEST_CASE("of clean groups, clustered or folded, about one in a hundred names a reading") {
  // Of 1000 groups of each, 0 to 2.8 % (docs/mathematics.md); folds of under ten readings, which
  // may look like clusters with a stray, up to 8 %.
  constexpr int groups = 200;
  constexpr int most_named = 8;
  RandomAxes random(20260215);
  for (const double precision : {10.0, 50.0, 500.0}) {
    int named = 0;
    for (int i = 0; i < groups; ++i)
      named += of_axes(random.cluster(15, random.anywhere(), precision)).far_off.empty() ? 0 : 1;
    INFO("precision " << precision << ": " << named);
    CHECK(named <= most_named);
  }
  for (const double scatter : {1.0, 3.0, 6.0}) {
    int named = 0;
    for (int i = 0; i < groups; ++i)
      named += of_axes(random.girdle(15, random.anywhere(), 150, scatter)).far_off.empty() ? 0 : 1;
    INFO("scatter " << scatter << ": " << named);
    CHECK(named <= most_named);
  }
}

TEST_CASE("a summary turns with its readings") {
  const std::string heading = "set 0\nrule right\nstation Q1\n";
  std::string log;
  for (const char* reading : {"010 40", "050 35", "080 50", "100 44", "140 20", "160 61", "010 78"})
    log += std::string("bedding ") + reading + '\n';
  const auto plain = gathered({{"day.txt", "declination 0\n" + heading + log}});
  const auto turned = gathered({{"day.txt", "declination 25E\n" + heading + log}});
  const Summary first = summarise(plain, {}, {}).at(0);
  const Summary second = summarise(turned, {}, {}).at(0);
  const TrendAndPlunge before = line_of_axis(first.mean->axis);
  const TrendAndPlunge after = line_of_axis(second.mean->axis);
  CHECK(std::abs(std::remainder(after.trend - before.trend - 25, 360)) < 1e-6);
  CHECK(std::abs(after.plunge - before.plunge) < 1e-6);
  CHECK(std::abs(first.mean->resultant - second.mean->resultant) < 1e-9);
  CHECK(std::abs(first.azimuths.resultant - second.azimuths.resultant) < 1e-9);
  CHECK(first.fabric == second.fabric);
}

TEST_CASE("repeats of one surface count once, as their mean") {
  const std::string heading = "set 0\ndeclination 0\nrule right\nstation Q1\n";
  const auto often =
      gathered({{"day.txt",
                 heading + "joint 030 80, 034 82, 026 78, 030 80\njoint 050 70\njoint 040 60\n"}});
  const auto once = gathered({{"day.txt", heading + "joint 030 80\njoint 050 70\njoint 040 60\n"}});
  const Summary repeated = summarise(often, {}, {}).at(0);
  const Summary plain = summarise(once, {}, {}).at(0);
  CHECK(repeated.group.members.size() == 6);
  REQUIRE(repeated.surfaces.size() == 3);
  REQUIRE(repeated.mean);
  CHECK(repeated.mean->count == 3);
  CHECK(between(repeated.mean->axis, plain.mean->axis) < 0.1);
  REQUIRE(repeated.mean->cone95);
  CHECK(std::abs(*repeated.mean->cone95 / *plain.mean->cone95 - 1) < 0.01);
  CHECK(repeated.azimuths.count == 3);
  CHECK(std::abs(*repeated.azimuths.arc95 - *plain.azimuths.arc95) < 0.1);
  CHECK(repeated.fabric == Fabric::too_few);
}

TEST_CASE("repeats averaged beforehand add up to the same") {
  const std::string log =
      "set 0\ndeclination 3E\nrule right\nstation Q1\n"
      "bedding 030 40, 034 42\nbedding 050 35\nbedding 062 30, 060 33, 058 29\n"
      "lineation 120/30, 124/28\nlineation 118/35\nlineation 128/31\n"
      "current 010/05, 020/-03\ncurrent 355/00\ncurrent 002/02\n";
  reduction::Options means;
  means.repeats = reduction::Repeats::mean;
  const auto readings = gathered({{"day.txt", log}});
  const auto surfaces = gathered({{"day.txt", log}}, means);
  const auto one = summarise(readings, {}, {});
  const auto other = summarise(surfaces, {}, {});
  REQUIRE(one.size() == 3);
  REQUIRE(other.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(other[i].group.members.size() == 3);
    CHECK(one[i].surfaces.size() == 3);
    CHECK(angle_between_arrows(one[i].mean->axis, other[i].mean->axis).degrees() < 1e-6);
    CHECK(std::abs(*one[i].mean->cone95 - *other[i].mean->cone95) < 1e-6);
    CHECK(std::abs(*one[i].azimuths.azimuth - *other[i].azimuths.azimuth) < 1e-6);
    CHECK(std::abs(one[i].tensor->eigenvalues[1] - other[i].tensor->eigenvalues[1]) < 1e-9);
  }
}

TEST_CASE("a surface whose readings have no mean is left out, and nothing breaks") {
  const std::string heading = "set 0\ndeclination 0\nrule right\nstation Q1\n";
  const auto attitudes = gathered({{"day.txt", heading + "joint 000 90, 090 90\n"}});
  const Summary summary = summarise(attitudes, {}, {}).at(0);
  CHECK(summary.group.members.size() == 2);
  CHECK(summary.surfaces.empty());
  CHECK_FALSE(summary.mean);
  CHECK_FALSE(summary.tensor);
  CHECK(summary.no_mean == reduction::NoMean::none_better);
}

TEST_CASE("two sets have no single mean, and what does not fold no girdle") {
  RandomAxes random(14);
  std::vector<Vector> axes = random.cluster(14, direction_of(110, 2), 80);
  const std::vector<Vector> others = random.cluster(16, direction_of(20, 3), 80);
  axes.insert(axes.end(), others.begin(), others.end());
  const Readings readings(axes);
  Group joints = readings.group();
  joints.folds = false;
  const Summary jointed = summary_of(joints);
  CHECK(jointed.fabric == Fabric::two_sets);
  CHECK_FALSE(jointed.girdle);
  CHECK_FALSE(jointed.may_have_fold_axis());
  CHECK(jointed.no_mean == reduction::NoMean::two_sets);
  REQUIRE(jointed.sets);
  CHECK((*jointed.sets)[0].mean.count == 16);
  // Two limbs of a fold have no single mean either, but an axis.
  const Summary folded = summary_of(readings.group());
  CHECK(folded.fabric == Fabric::girdle);
  CHECK(folded.may_have_fold_axis());
  CHECK(folded.no_mean == reduction::NoMean::two_sets);
}

TEST_CASE("far off from two sets is what belongs to neither") {
  RandomAxes random(15);
  std::vector<Vector> axes = random.cluster(15, direction_of(110, 2), 200);
  const std::vector<Vector> others = random.cluster(15, direction_of(20, 3), 200);
  axes.insert(axes.end(), others.begin(), others.end());
  axes[4] = direction_of(60, 65);
  const Readings readings(axes);
  Group joints = readings.group();
  joints.folds = false;
  const Summary summary = summary_of(joints);
  CHECK(summary.fabric == Fabric::two_sets);
  REQUIRE(summary.far_off.size() == 1);
  CHECK(summary.far_off[0].attitude == readings.at(4));
  CHECK(summary.far_off[0].degrees > 50);
}

TEST_CASE("a girdle of joints has a pole, but no fold axis") {
  RandomAxes random(16);
  const Readings readings(random.girdle(30, {0, 0, 1}, 180, 4));
  Group joints = readings.group();
  joints.folds = false;
  const Summary columns = summary_of(joints);
  CHECK(columns.fabric == Fabric::girdle);
  CHECK(columns.girdle);
  CHECK_FALSE(columns.may_have_fold_axis());
  CHECK(summary_of(readings.group()).may_have_fold_axis());
}

TEST_CASE("kinds fold that bend with the rock, and no others") {
  const std::string heading = "set 0\ndeclination 0\nrule right\nkind parting plane\nstation Q1\n";
  const auto folds = [&](const std::string& kind, const std::string& attitude) {
    const auto attitudes = gathered({{"day.txt", heading + kind + ' ' + attitude + '\n'}});
    return summarise(attitudes, {}, {}).at(0).group.folds;
  };
  for (const char* kind :
       {"bedding", "foliation", "cleavage", "schistosity", "contact", "axial-plane"})
    CHECK(folds(kind, "030 40"));
  for (const char* kind : {"joint", "fault", "shear", "vein", "dike", "parting"})
    CHECK_FALSE(folds(kind, "030 40"));
  for (const char* kind : {"lineation", "fold-axis", "current"})
    CHECK_FALSE(folds(kind, "030/40"));
}

TEST_CASE("a mean not known to 25 degrees is no single one") {
  RandomAxes random(17);
  int wide = 0;
  int narrow = 0;
  for (int i = 0; i < 300; ++i) {
    const Summary summary = of_axes(random.cluster(5, random.anywhere(), 12));
    REQUIRE(summary.mean);
    if (summary.sets || !summary.mean->precision) continue;
    const bool is_wide = !summary.mean->cone95 || *summary.mean->cone95 > 25;
    CHECK((summary.no_mean == reduction::NoMean::scattered) == is_wide);
    ++(is_wide ? wide : narrow);
  }
  CHECK(wide > 20);
  CHECK(narrow > 20);
  CHECK_FALSE(of_axes({pole_of(90, 20), pole_of(90, 30)}).no_mean);
  CHECK_FALSE(of_axes(std::vector<Vector>(6, pole_of(90, 20))).no_mean);
}

TEST_CASE("azimuths of two sets, or scattered ones, have no single mean") {
  const Readings sets(std::vector<double>{20, 22, 18, 21, 19, 80, 82, 78, 81, 79});
  CHECK(summary_of(sets.group()).no_azimuth == reduction::NoMean::two_sets);
  const Readings wide(std::vector<double>{0, 40, 80, 110, 20, 60});
  CHECK(summary_of(wide.group()).no_azimuth == reduction::NoMean::scattered);
  const Readings close(std::vector<double>{20, 22, 18, 21, 19});
  CHECK_FALSE(summary_of(close.group()).no_azimuth);
  const Readings even(std::vector<double>{0, 90});
  CHECK(summary_of(even.group()).no_azimuth == reduction::NoMean::none_better);
}
