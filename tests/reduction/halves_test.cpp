// SPDX-License-Identifier: MIT
// Readings of which one half was taken, that are rough, or have their own error: what their rows,
// checks, means and groups have of them.
#include <lodebook/reduction/summary.hpp>

#include "gathered.hpp"
#include "reduced.hpp"

using namespace lodebook;
using namespace lodebook::test;
using notebook::Part;

namespace {

reduction::Summary summed(const std::string& readings) {
  static reduction::Attitudes attitudes;  // which the summary points into
  attitudes = gathered(std::vector<NamedLog>{{"day.txt", on_true_dial(readings)}});
  const auto summaries = reduction::summarise(attitudes, {}, {});
  REQUIRE(summaries.size() == 1);
  return summaries.front();
}

}  // namespace

TEST_CASE("a trend alone is corrected and has no plunge") {
  const Reduced log("set 0\ndeclination 24.6E\nstation Q1\ncurrent 118\ncurrent from S60W\n");
  for (std::size_t i = 0; i < 2; ++i) {
    const Row& row = log.row(i);
    CHECK(row.status == Status::ok);
    CHECK(row.codes.empty());
    CHECK(row.part == Part::azimuth);
    CHECK_FALSE(row.plunge);
    CHECK(miss(row.uncertainty, 0.5) < exact);
  }
  CHECK(off(log.row(0).trend, 142.6) < exact);
  CHECK(off(log.row(0).as_read, 118) < exact);
  CHECK(off(log.row(1).trend, 84.6) < exact);
  CHECK(off(log.row(1).as_read, 60) < exact);
}

TEST_CASE("a missing plunge makes a line suspect") {
  const Reduced log(on_true_dial("bedding N62E 37NW\nslickenline 035\nlineation 035 on bedding\n"));
  CHECK(log.row(1).status == Status::suspect);
  CHECK(log.row(2).status == Status::suspect);
  CHECK(log.count(Code::plunge_missing) == 2);
  CHECK(log.check_count() == 0);  // a line out of its plane has a plunge
}

TEST_CASE("repeated trends are held against each other as arrows") {
  const Reduced near(on_true_dial("current 118, 120, 119\n"));
  CHECK(near.check().passed);
  CHECK(off(near.check().mean_azimuth, 119) < 1e-6);
  CHECK_FALSE(near.check().mean_slope);
  const Reduced against(on_true_dial("current 118, 120, 299\n"));
  CHECK_FALSE(against.check().passed);
  CHECK(against.row(2).status == Status::suspect);
}

TEST_CASE("beside whole repeats a half is not compared, and keeps its row") {
  const std::string mixed = on_true_dial("current 310, 120/5, 122/7\n");
  const Reduced each(mixed);
  CHECK(each.check().count == 2);
  CHECK(each.check().passed);
  const Reduced mean(mixed, means());
  REQUIRE(mean.row_count() == 2);
  CHECK(mean.row(0).part == Part::azimuth);
  CHECK(mean.row(1).repeats == 2);
  CHECK(miss(mean.row(1).plunge, 6) < 0.01);
}

TEST_CASE("the mean of trends is a trend") {
  const Reduced mean(on_true_dial("current 118, 120, 122\n"), means());
  REQUIRE(mean.row_count() == 1);
  CHECK(mean.row().repeats == 3);
  CHECK(off(mean.row().trend, 120) < 1e-6);
  CHECK_FALSE(mean.row().plunge);
}

TEST_CASE("a trend alone counts among azimuths only") {
  const auto summary = summed("current 118\ncurrent 120\ncurrent 122/10\ncurrent 350/vertical\n");
  CHECK(summary.group.members.size() == 1);
  CHECK(summary.group.halves.size() == 2);
  CHECK(summary.group.rejected == 1);
  CHECK(summary.surfaces.size() == 1);
  CHECK(summary.azimuths.count == 3);
  CHECK(off(summary.azimuths.azimuth, 120) < 1e-6);
  CHECK(summary.undirected == 0);
}

TEST_CASE("repeats of a trend count once, and not beside a whole reading of the same line") {
  const auto once = summed("current 118, 120, 122\ncurrent 10\n");
  CHECK(once.directions.size() == 2);
  CHECK(off(once.directions.front(), 120) < 1e-6);
  CHECK_FALSE(once.no_mean);
  CHECK_FALSE(once.mean);
  const auto known = summed("current 118, 120/4\n");
  REQUIRE(known.directions.size() == 1);
  CHECK(off(known.directions.front(), 120) < exact);
}

TEST_CASE("a two-ended line without a plunge lies in [0, 180), and so does what was read") {
  const Reduced log(
      "set 0\ndeclination 24.6E\nstation Q1\ngroove 290\ngroove 170\ngroove 290/10\n");
  CHECK(off(log.row(0).trend, 134.6) < exact);
  CHECK(off(log.row(0).as_read, 110) < exact);
  CHECK(off(log.row(1).trend, 14.6) < exact);
  CHECK(off(log.row(1).as_read, 350) < exact);
  CHECK(off(log.row(2).trend, 314.6) < exact);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(log.row(i).status == Status::ok);
}

TEST_CASE("two-ended lines are averaged as axes") {
  const Reduced log(on_true_dial("groove 002, 359, 181\n"));
  CHECK(log.check().passed);
  CHECK(log.check().figure < 2);
  const auto summary = summed("groove 002\ngroove 359\ngroove 181\ngroove 178/10\n");
  CHECK(summary.group.is_axial());
  CHECK(summary.azimuths.count == 4);
  CHECK(off(wrap_degrees(2 * summary.azimuths.azimuth.value_or(45)), 0) < 1);
}

TEST_CASE("a strike alone has two ends and no dip") {
  const Reduced log("set 0\ndeclination 24.6E\nstation Q1\njoint strike N66W\njoint strike NE\n");
  const Row& row = log.row(0);
  CHECK(off(row.strike, 138.6) < exact);
  CHECK(off(row.as_read, 114) < exact);
  CHECK_FALSE(row.dip);
  CHECK(row.strike_is_axis);
  CHECK(row.status == Status::ok);
  CHECK(miss(row.uncertainty, 0.5) < exact);
  CHECK(log.count(Code::partial) == 2);
  CHECK(log.count(Code::strike_uncertain) == 1);  // by its point
}

TEST_CASE("a dip alone has no strike") {
  const Reduced log(on_true_dial("bedding dip 13\n"));
  CHECK(miss(log.row().dip, 13) < exact);
  CHECK_FALSE(log.row().strike);
  CHECK_FALSE(log.row().as_read);
  CHECK_FALSE(log.row().uncertainty);
  CHECK(log.row().status == Status::ok);
}

TEST_CASE("half a plane is no plane for a line") {
  const Reduced log(
      on_true_dial("joint strike N66W\nlineation rake 40 from N66W\n"
                   "fault strike N66W\nslickenline N66W 10\nlineation N66W 10 on joint\n"));
  CHECK(log.count(Code::rake_no_plane) == 1);
  CHECK(log.count(Code::plane_unknown) == 1);
  CHECK(log.check_count() == 0);
}

TEST_CASE("repeated strikes are held against each other as axes") {
  const Reduced near(on_true_dial("joint strike 001, strike 179, strike 180\n"));
  CHECK(near.check().passed);
  CHECK_FALSE(near.check().mean_slope);
  const Reduced apart(on_true_dial("joint strike 010, strike 012, strike 050\n"));
  CHECK(apart.row(2).status == Status::suspect);
  const Reduced mean(on_true_dial("joint strike 010, strike 012, strike 191\n"), means());
  REQUIRE(mean.row_count() == 1);
  CHECK(off(mean.row().strike, 11) < 1e-6);
  CHECK(mean.row().strike_is_axis);
}

TEST_CASE("a strike counts among azimuths, a dip nowhere, and neither in means of planes") {
  const auto summary = summed("joint strike 010\njoint strike 012\njoint 014 80 E\njoint dip 13\n");
  CHECK(summary.group.members.size() == 1);
  CHECK(summary.group.halves.size() == 3);
  CHECK(summary.surfaces.size() == 1);
  CHECK(summary.azimuths.count == 3);
  CHECK(summary.undirected == 1);
}

TEST_CASE("what is rough is known to 5 degrees at best, its own error comes before the accuracy") {
  const auto sigma = [](const std::string& reading) {
    return Reduced(on_true_dial(reading + '\n')).row().uncertainty;
  };
  CHECK(miss(sigma("joint vertical ~N14E"), std::hypot(5, 1)) < 0.01);
  CHECK(miss(sigma("current ~118"), 5) < exact);
  CHECK(miss(sigma("current 118 about"), 5) < exact);
  CHECK(miss(sigma("current 118±3"), 3) < exact);
  CHECK(miss(sigma("current ~NW"), std::hypot(45 / std::sqrt(12.0), 0.5)) < 1e-6);
  CHECK(miss(sigma("current NW±4"), 4) < exact);
  CHECK(miss(sigma("bedding N62E±3 30±2 NW"), 5) < 1e-9);
  CHECK(miss(sigma("bedding N62E ~30 NW"), std::hypot(0.5, 10)) < 1e-9);
  CHECK(miss(sigma("sight Peak ~N17W"), 5) < exact);
  // 2 of 100 percent is half a degree and more: 2/100 / 2 in radians.
  const double own = 0.01 * 180 / 3.14159265358979;
  CHECK(miss(sigma("bedding N62E±3 100%±2 NW"), std::hypot(3, own / std::sqrt(0.5))) < 1e-6);
}

TEST_CASE("a reading has its own observer") {
  const Reduced log("observer AM\n" + on_true_dial("joint N37W 85SW by JT, N36W 84SW\n"));
  CHECK(log.row(0).observer == "JT");
  CHECK(log.row(1).observer == "AM");
}

TEST_CASE("one had three times is three rows of one surface") {
  const Reduced log(on_true_dial("joint N37W 85SW x3\njoint N30W 80SW\n"));
  REQUIRE(log.row_count() == 4);
  CHECK(log.row(2).surface == log.row(0).surface);
  CHECK(log.row(2).written == "N37W 85SW x3");
  CHECK(log.row(3).surface == 2);
  const Reduced rejected(on_true_dial("joint N37W 95SW x3\ntally 3 readings\n"));
  CHECK(rejected.counts().rejected == 3);
  CHECK(rejected.row(2).codes == std::vector{Code::dip_range});
  CHECK(rejected.count(Code::tally) == 0);
  const Reduced mean(on_true_dial("joint N37W 85SW x3\n"), means());
  REQUIRE(mean.row_count() == 1);
  CHECK(mean.row().repeats == 3);
}
