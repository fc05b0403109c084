// SPDX-License-Identifier: MIT
// Readings of which one half was taken: what their rows, checks, means and groups have of them.
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
