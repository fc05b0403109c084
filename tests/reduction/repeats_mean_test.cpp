// SPDX-License-Identifier: MIT
// `--repeats mean`: repeat readings of one surface as one row.
#include "reduced.hpp"

#include "references/rows.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("repeats become one row, the mean of their poles, as published") {
  for (const ReferenceRow& row : reference_rows("orientation_statistics.txt")) {
    if (row.check != "mean plane by poles") continue;
    INFO(row.at << " (" << row.source << ")");
    std::string repeats;
    for (const std::string& word : split(row.input, ' '))
      repeats += (repeats.empty() ? "" : ", ") + word;
    const Reduced log("set 0\ndeclination 30W\nrule right\naccuracy dip 3\nstation Q1\nbedding " +
                          repeats + " ; face\n",
                      means());
    REQUIRE(log.row_count() == 1);
    const auto expected = split(row.expected, '/');
    CHECK(off(log.row().as_read, number(expected.at(0))) <= row.tolerance);
    CHECK(off(log.row().strike, number(expected.at(0)) - 30) <= row.tolerance);
    CHECK(miss(log.row().dip, number(expected.at(1))) <= row.tolerance);
    CHECK(miss(log.row().correction, -30) < exact);
    CHECK(log.row().repeats == 4);
    CHECK(log.row().surface == 1);
    CHECK(log.row().written == repeats);
    CHECK(log.row().remark == "face");
    CHECK(log.counts().readings == 4);
    CHECK(log.counts().ok == 4);
    return;
  }
  FAIL("no such row");
}

TEST_CASE("lines have the mean of lines, across north too") {
  const Reduced log(
      on_true_dial("lineation 350/20, 010/20\nlineation horizontal N, horizontal S\n"), means());
  REQUIRE(log.row_count() == 2);
  CHECK(off(log.row(0).trend, 0) < exact);
  // Not 20: the mean of two directions 20 degrees of trend apart lies a little deeper.
  CHECK(miss(log.row(0).plunge,
             std::atan(std::tan(std::acos(-1.0) / 9) / std::cos(std::acos(-1.0) / 18)) * 180 /
                 std::acos(-1.0)) < exact);
  CHECK(off(log.row(1).trend, 0) < exact);
  CHECK(miss(log.row(1).plunge, 0) < exact);
}

TEST_CASE("reading errors average out, the declination's does not") {
  const Reduced log(
      "set 0\ndeclination 10E ±0.4\nstation Q1\nbedding 000/30 E, 000/30 E, 000/30 E, 000/30 E\n"
      "lineation 000/60, 000/60\n",
      means());
  CHECK(miss(log.row(0).uncertainty, std::sqrt((0.25 + 4) / 4 + 0.16)) < 1e-6);
  CHECK(miss(log.row(1).uncertainty, std::sqrt(1.0 / 2 + 0.16)) < 1e-6);
}

TEST_CASE("single readings, sights and legs stay as they are") {
  const std::string text =
      on_true_dial("bedding N78E 41N\nsight Peak N\nleg N 20m\nlineation N50W 20\n");
  const Reduced each(text);
  const Reduced mean(text, means());
  REQUIRE(mean.row_count() == 4);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(mean.row(i).repeats == 1);
    CHECK(mean.row(i).as_read == each.row(i).as_read);
    CHECK(mean.row(i).uncertainty == each.row(i).uncertainty);
  }
}

TEST_CASE("rejected repeats stay rows of their own and do not spoil the mean") {
  const Reduced log(
      on_true_dial("bedding N98E 41N, N78E 41N overturned, N78E 91N, N78E 41N overturned, N99E 3N\n"
                   "joint vertical N\n"),
      means());
  INFO(log.codes());
  REQUIRE(log.row_count() == 5);
  CHECK(log.row(0).status == Status::rejected);
  CHECK(log.row(1).status == Status::ok);
  CHECK(log.row(1).repeats == 2);
  CHECK(log.row(1).codes.empty());
  CHECK(off(log.row(1).strike, 258) < 1e-6);
  CHECK(log.row(1).facing == notebook::Facing::overturned);
  CHECK(log.row(2).status == Status::rejected);
  CHECK(log.row(2).codes == std::vector{Code::dip_range});
  CHECK(log.row(3).status == Status::rejected);
  CHECK(log.counts().readings == 6);
  CHECK(log.counts().ok == 3);
  CHECK(log.counts().rejected == 3);

  // One good repeat is no mean.
  const Reduced one(on_true_dial("bedding N98E 41N, N78E 41N\n"), means());
  REQUIRE(one.row_count() == 2);
  CHECK(one.row(1).repeats == 1);
  CHECK(one.row(1).written == "N78E 41N");
}

TEST_CASE("a mean has the codes of all its repeats, and is suspect if one of them is") {
  const Reduced log(
      on_true_dial("bedding N78E 2N, N78E 41N, N77E 40N doubtful, N76E 42N doubtful\n"), means());
  INFO(log.codes());
  REQUIRE(log.row_count() == 1);
  CHECK(log.row().status == Status::suspect);
  CHECK(log.row().codes ==
        std::vector{Code::repeat_spread, Code::strike_uncertain, Code::doubtful});
  CHECK(log.row().repeats == 4);
  // Readings typed are counted, not rows.
  CHECK(log.counts().readings == 4);
  CHECK(log.counts().suspect == 3);
  CHECK(log.counts().ok == 1);
}

TEST_CASE("facing said of one repeat holds for all, said differently it is unknown") {
  using notebook::Facing;
  const Reduced log(
      on_true_dial("bedding N78E 41N, N77E 40N overturned, N78E 40N\n"
                   "bedding N78E 41N overturned, N77E 40N overturned\n"
                   "bedding N78E 41N overturned, N77E 40N upright, N77E 41N overturned\n"
                   "bedding N78E 41N, N77E 40N\n"),
      means());
  CHECK(log.row(0).facing == Facing::overturned);
  CHECK(log.row(1).facing == Facing::overturned);
  CHECK(log.row(2).facing == Facing::unknown);
  CHECK(log.row(3).facing == Facing::unstated);
}

TEST_CASE("sense stays where all repeats say the same") {
  using notebook::Sense;
  const Reduced log(on_true_dial("fault N20E 60E normal, N21E 60E normal\n"
                                 "slickenline N30E 10 dextral, N31E 11 sinistral\n"),
                    means());
  CHECK(log.row(0).sense == Sense::normal);
  CHECK(log.row(1).sense == Sense::unstated);
}

TEST_CASE("a vertical mean is an axis unless a side was written") {
  const Reduced log(on_true_dial("joint vertical 200, vertical 202\njoint 200/90 W, 202/90 W\n"),
                    means());
  CHECK(off(log.row(0).strike, 21) < 1e-6);
  CHECK(log.row(0).strike_is_axis);
  CHECK(off(log.row(1).strike, 201) < 1e-6);
  CHECK_FALSE(log.row(1).strike_is_axis);
}

TEST_CASE("horizontal planes have a horizontal mean") {
  const Reduced log(on_true_dial("bedding horizontal, 020/0\nlineation vertical, 020/90\n"),
                    means());
  REQUIRE(log.row_count() == 2);
  CHECK(miss(log.row(0).dip, 0) < exact);
  CHECK_FALSE(log.row(0).strike);
  CHECK(miss(log.row(1).plunge, 90) < exact);
  CHECK_FALSE(log.row(1).trend);
}

TEST_CASE("repeats without a mean stay rows of their own, all suspect") {
  const Reduced log(on_true_dial("joint vertical N, vertical E\n"), means());
  REQUIRE(log.row_count() == 2);
  CHECK(log.row(0).status == Status::suspect);
  CHECK(log.row(1).status == Status::suspect);
}

TEST_CASE("what is uncertain is said of the repeats, not again of their mean") {
  const Reduced log(on_true_dial("bedding N78E 2N, N78E 2N\n"), means());
  CHECK(log.count(Code::strike_uncertain) == 2);
  CHECK(log.row().codes == std::vector{Code::strike_uncertain});
}

TEST_CASE("rakes join the mean as the lines that they are") {
  const Reduced log(
      on_true_dial("fault N20E 60E\nslickenline rake 90 from N20E, rake 90 from N20E\n"), means());
  REQUIRE(log.row_count() == 2);
  CHECK(off(log.row(1).trend, 110) < 1e-6);
  CHECK(miss(log.row(1).plunge, 60) < 1e-6);
  CHECK_FALSE(log.row(1).rake);
}

TEST_CASE(
    "repeats of a current are arrows: one read against the flow is found, and turns no mean") {
  const Reduced log(on_true_dial("current 270/0, 088/0, 092/0\n"));
  CHECK_FALSE(log.check().passed);
  CHECK(off(log.check().mean_azimuth, 90) < exact);
  REQUIRE(log.diagnostics().size() == 1);
  CHECK(log.diagnostics()[0]->help == "read against the flow? then 0.0 degrees off");
  CHECK(log.row(0).status == Status::suspect);
  CHECK(log.row(1).status == Status::ok);
  // The same readings of an axis agree.
  CHECK(Reduced(on_true_dial("lineation 270/0, 088/0, 092/0\n")).check().passed);
}

TEST_CASE("the mean of currents that rise is shown by the end that goes down, in row and check") {
  const Reduced each(on_true_dial("current 350/-2, 352/-3, 351/-2\n"));
  CHECK(each.check().passed);
  CHECK(off(each.check().mean_azimuth, 171) < 0.1);
  CHECK(miss(each.check().mean_slope, 2.3) < 0.1);
  const Reduced log(on_true_dial("current 350/-2, 352/-3, 351/-2\n"), means());
  REQUIRE(log.row_count() == 1);
  CHECK(log.row().rises);
  CHECK(off(log.row().trend, 171) < 0.1);
  CHECK(log.row().plunge.value() > 0);
  const Reduced level(on_true_dial("current 350/-2, 352/2, 351/1\n"), means());
  CHECK_FALSE(level.row().rises);
  const Reduced nearly(on_true_dial("current 350/-0.1, 352/0.04\n"), means());
  CHECK(off(nearly.row().trend, 351) < 0.1);
  CHECK(miss(nearly.row().plunge, 0) < exact);
  CHECK(off(level.row().trend, 351) < 0.1);
}
