// SPDX-License-Identifier: MIT
// What is held against something else at a station: repeats, lines in planes, fore and back.
#include "reduced.hpp"

#include "references/rows.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

const std::vector<Code> none;
const std::vector<Code> spread = {Code::repeat_spread};

/// Status of each row: `o`, `s` or `r`.
std::string statuses(const Reduced& log) {
  std::string letters;
  for (std::size_t i = 0; i < log.row_count(); ++i)
    letters += reduction::name_of(log.row(i).status).front();
  return letters;
}

/// `200/70 195/68` as repeats.
std::string repeats_of(const std::string& words) {
  std::string repeats;
  for (const std::string& word : split(words, ' '))
    repeats += (repeats.empty() ? " " : ", ") + word;
  return repeats + "\n";
}

}  // namespace

TEST_CASE("repeats that agree are checked and say how well") {
  const Reduced log(on_true_dial("bedding N78E 41N, N75E 39N, N77E 40N\n"));
  CHECK(log.diagnostics().empty());
  REQUIRE(log.check_count() == 1);
  const Check& check = log.check();
  CHECK(check.what == Check::What::repeats);
  CHECK(check.passed);
  CHECK(check.count == 3);
  CHECK(check.line == 5);
  CHECK(check.kind->name == "bedding");
  CHECK(check.surface == 1);
  CHECK(check.figure > 0);
  CHECK(check.figure < 2);
  CHECK(miss(check.limit, 5) < exact);
  CHECK(off(check.mean_azimuth, 256.7) < 0.2);
  CHECK(miss(check.mean_slope, 40) < 0.1);
}

TEST_CASE("one reading is not held against itself") {
  CHECK(Reduced(on_true_dial("bedding N78E 41N\nbedding N20E 80E\n")).check_count() == 0);
  CHECK(Reduced(on_true_dial("bedding N78E 41N, N98E 41N\n")).check_count() == 0);
}

TEST_CASE("the mean of poles is the published one, in the north of the rows") {
  for (const ReferenceRow& row : reference_rows("orientation_statistics.txt")) {
    if (row.check != "mean plane by poles") continue;
    INFO(row.at << " (" << row.source << ")");
    const auto expected = split(row.expected, '/');
    // Errors so large that all four agree.
    const std::string readings =
        "rule right\naccuracy dip 3\nstation Q1\nbedding" + repeats_of(row.input);
    const Reduced log("set 0\ndeclination 0\n" + readings);
    CHECK(off(log.check().mean_azimuth, number(expected.at(0))) <= row.tolerance);
    CHECK(miss(log.check().mean_slope, number(expected.at(1))) <= row.tolerance);
    const Reduced turned("set 0\ndeclination 30W\n" + readings);
    CHECK(off(turned.check().mean_azimuth, number(expected.at(0)) - 30) <= row.tolerance);
    return;
  }
  FAIL("no such row");
}

TEST_CASE("Fisher's precision and cone are the published ones") {
  std::size_t used = 0;
  for (const ReferenceRow& row : reference_rows("orientation_statistics.txt")) {
    const bool precision = row.check == "precision";
    if (!precision && row.check != "cone of 95 percent") continue;
    ++used;
    INFO(row.at << " (" << row.source << ")");
    // Errors so large that all nine agree.
    const Reduced log(on_true_dial("accuracy bearing 15 dip 15\norder trend/plunge\nlineation" +
                                   repeats_of(row.input)));
    const Check& check = log.check();
    CHECK(check.passed);
    CHECK(miss(precision ? check.precision : check.cone95, number(row.expected)) <= row.tolerance);
  }
  CHECK(used == 2);
}

TEST_CASE("a cone needs three repeats that agree, and a precision of 4") {
  const Reduced two(on_true_dial("bedding N78E 41N, N75E 39N\n"));
  CHECK_FALSE(two.check().precision);
  CHECK_FALSE(two.check().cone95);
  const Reduced three(on_true_dial("bedding N78E 41N, N75E 39N, N77E 40N\n"));
  CHECK(three.check().precision);
  CHECK(three.check().cone95);
  const Reduced loose(on_true_dial(
      "accuracy bearing 40 dip 40\nlineation 000/10, 050/40, 270/35, 120/85, 330/60\n"));
  REQUIRE(loose.check().precision);
  CHECK(*loose.check().precision < 4);
  CHECK_FALSE(loose.check().cone95);
  // The third is set aside, so that two are left.
  const Reduced apart(on_true_dial("bedding N78E 41N, N75E 39N, N85W 60N\n"));
  CHECK_FALSE(apart.check().passed);
  CHECK_FALSE(apart.check().cone95);
}

TEST_CASE("a repeat that lies apart is suspect and does not condemn the others") {
  for (const char* readings :
       {"bedding N50W 41E, N78E 41N, N77E 40N", "bedding N78E 41N, N50W 32E, N77E 40N, N75E 39N",
        "lineation 310/35, 020/15, 312/36", "lineation 130/35, 020/15, 310/-35"}) {
    const Reduced log(on_true_dial(std::string(readings) + "\n"));
    INFO(readings);
    const Diagnostic& said = log.only(Code::repeat_spread);
    CHECK(said.severity == Severity::warning);
    std::string expected(log.row_count(), 'o');
    expected[said.reading] = 's';
    CHECK(statuses(log) == expected);
    CHECK(log.counts().suspect == 1);
    CHECK_FALSE(log.check().passed);
    CHECK(log.check().figure > log.check().limit);
  }
  const Reduced log(on_true_dial("bedding N50W 41E, N78E 41N, N77E 40N\n"));
  CHECK(log.row(0).codes == spread);
  CHECK(log.row(1).codes == none);
  // The mean is that of the two that agree.
  CHECK(off(log.check().mean_azimuth, 257.5) < 0.1);
}

TEST_CASE("several bad repeats are set aside one by one") {
  const Reduced log(on_true_dial("lineation 310/35, 311/36, 309/34, 350/35, 070/60, 310/36\n"));
  CHECK(statuses(log) == "ooosso");
}

TEST_CASE("of two that disagree nothing tells which is wrong") {
  const Reduced log(on_true_dial("bedding N78E 41N, N55E 32N\n"));
  CHECK(statuses(log) == "ss");
  CHECK(log.counts().suspect == 2);
  CHECK(log.count(Code::repeat_spread) == 2);
}

TEST_CASE("repeats at right angles have no mean and disagree the more") {
  for (const char* readings : {"joint vertical N, vertical E", "bedding horizontal, vertical N20E",
                               "lineation horizontal N, vertical"}) {
    const Reduced log(on_true_dial(std::string(readings) + "\n"));
    INFO(readings);
    CHECK(statuses(log) == "ss");
    REQUIRE(log.check_count() == 1);
    CHECK_FALSE(log.check().passed);
    CHECK(miss(log.check().figure, 45) < 1e-6);
    CHECK_FALSE(log.check().mean_azimuth);
    CHECK_FALSE(log.check().mean_slope);
  }
  CHECK(statuses(Reduced(on_true_dial("joint vertical N, vertical E, horizontal\n"))) == "sss");
  // Two against two: neither pair is the bad one.
  CHECK(statuses(Reduced(on_true_dial("joint vertical N, vertical E, vertical N, vertical E\n"))) ==
        "ssss");
}

TEST_CASE("the limit of repeats is 5 degrees or three sigma") {
  // Two lines in one vertical plane: the mean is halfway.
  CHECK(statuses(Reduced(on_true_dial("lineation 000/20, 000/29.9\n"))) == "oo");
  CHECK(statuses(Reduced(on_true_dial("lineation 000/20, 000/30.1\n"))) == "ss");
  // sqrt(4 + 1.5^2) = 2.5, so 7.5 degrees.
  const std::string loose = "accuracy bearing 1.5 dip 2\n";
  CHECK(statuses(Reduced(on_true_dial(loose + "lineation 000/20, 000/34.9\n"))) == "oo");
  CHECK(statuses(Reduced(on_true_dial(loose + "lineation 000/20, 000/35.1\n"))) == "ss");
  CHECK(miss(Reduced(on_true_dial(loose + "lineation 000/20, 000/35.1\n")).check().limit, 7.5) <
        exact);
  // Of a pole the bearing's error counts by sin dip: sqrt(4 + (3 / 2)^2) at 30.
  const Reduced planes(on_true_dial("accuracy bearing 3 dip 2\nbedding 000/30 E, 000/30 E\n"));
  CHECK(miss(planes.check().limit, 7.5) < 1e-6);
  CHECK(miss(planes.check().figure, 0) < 1e-6);
}

TEST_CASE("a failed check shows a figure over its limit, also where limits differ") {
  // The limit is 3 sqrt(1 + 100 sin^2 dip): 5 at dip 2, which lies 8 off, and 10.7 at dip 20, which
  // lies 10 off.
  const Reduced log(
      on_true_dial("accuracy bearing 10 dip 1\n"
                   "bedding 000/2 E, 000/20 E, 000/7.5 E, 000/7.5 E, 000/7.5 E, 000/7.5 E\n"));
  CHECK(statuses(log) == "sooooo");
  CHECK_FALSE(log.check().passed);
  CHECK(miss(log.check().figure, 8) < 0.05);  // the mean is of poles, not of dips
  CHECK(miss(log.check().limit, 5) < exact);
}

TEST_CASE("errors beyond all reason leave a limit that is a figure") {
  const Reduced log(on_true_dial(
      "accuracy bearing 999999999 dip 1\nbedding 000/30 E, 000/80 W\nleg N 9m back N\n"));
  INFO(log.codes());
  REQUIRE(log.check_count() == 2);
  for (std::size_t i = 0; i < log.check_count(); ++i)
    CHECK(log.check(i).limit <= 180);
}

TEST_CASE("a shallow plane's strike may swing, its pole tells") {
  const Reduced log(on_true_dial("bedding N78E 2N, N50W 3E, N40W 2W\n"));
  CHECK(log.count(Code::repeat_spread) == 0);
  CHECK(log.counts().ok == 3);
}

TEST_CASE("a vertical mean of planes without a side is an axis") {
  const Reduced log(on_true_dial("joint vertical 200, vertical 022, vertical 201\n"));
  CHECK(off(log.check().mean_azimuth, 21) < 1e-6);
  const Reduced side(on_true_dial("joint 200/90 W, 202/90 W\n"));
  CHECK(off(side.check().mean_azimuth, 201) < 1e-6);
}

TEST_CASE("horizontal planes and vertical lines agree without an azimuth") {
  const Reduced planes(on_true_dial("bedding horizontal, 020/0, horizontal\n"));
  CHECK(planes.check().passed);
  CHECK_FALSE(planes.check().mean_azimuth);
  CHECK(miss(planes.check().mean_slope, 0) < exact);
  const Reduced lines(on_true_dial("lineation vertical, N50W 90\n"));
  CHECK(lines.check().passed);
  CHECK_FALSE(lines.check().mean_azimuth);
  CHECK(miss(lines.check().mean_slope, 90) < exact);
}

TEST_CASE("a line is held against the plane it is said to lie in") {
  // 41 down to 348, so a line to 348 plunges 41 in it.
  const Reduced good(on_true_dial("bedding N78E 41N\nlineation N12W 43 on bedding\n"));
  INFO(good.codes());
  CHECK(good.diagnostics().empty());
  REQUIRE(good.check_count() == 1);
  CHECK(good.check().what == Check::What::line_in_plane);
  CHECK(good.check().kind->name == "lineation");
  CHECK(good.check().plane_kind->name == "bedding");
  CHECK(miss(good.check().figure, 2) < 1e-6);
  CHECK(miss(good.check().limit, 5) < exact);
  CHECK(good.check().passed);

  const Reduced bad(on_true_dial("bedding N78E 41N\nlineation N12W 50 on bedding\n"));
  CHECK(statuses(bad) == "os");
  CHECK(bad.row(1).codes == std::vector{Code::line_off_plane});
  CHECK(miss(bad.check().figure, 9) < 1e-6);
  CHECK_FALSE(bad.check().passed);
}

TEST_CASE("the limit of a line in a plane joins the errors of both") {
  // line: sqrt(3^2 + 4^2) = 5; pole at dip 30: sqrt(4^2 + (3/2)^2)
  const Reduced log(
      on_true_dial("accuracy bearing 3 dip 4\nbedding 000/30 E\nlineation 090/40 on bedding\n"));
  CHECK(miss(log.check().limit, 3 * std::sqrt(25 + 16 + 2.25)) < 1e-6);
  CHECK(miss(log.check().figure, 10) < 1e-6);
  CHECK(log.check().passed);
}

TEST_CASE("without a plane named only a slickenline is held against one") {
  const std::string planes = "bedding N78E 41N\nfault N20E 60E\nbedding N20E 10E\n";
  CHECK(Reduced(on_true_dial(planes + "lineation N12W 80\n")).check_count() == 0);
  const Reduced log(on_true_dial(planes + "slickenline S70E 58\nslickenline S70E 70\n"));
  REQUIRE(log.check_count() == 2);
  CHECK(log.check(0).plane_kind->name == "fault");
  CHECK(miss(log.check(0).figure, 2) < 1e-6);
  CHECK(statuses(log) == "oooos");
  const Reduced shear(on_true_dial("fault N20E 60E\nshear N78E 41N\nslickenline N12W 41\n"));
  CHECK(shear.check().plane_kind->name == "shear");
  CHECK(shear.check().passed);
  CHECK(Reduced(on_true_dial("bedding N78E 41N\nslickenline N12W 80\n")).check_count() == 0);
}

TEST_CASE("the plane is the last one of its kind at the station") {
  const Reduced log(on_true_dial(
      "bedding N20E 60E\nbedding N78E 41N\ncleavage N20E 60E\nlineation N12W 41 on bedding\n"));
  CHECK(log.check().passed);
  const Reduced next(on_true_dial("bedding N78E 41N\nstation Q2\nlineation N12W 41 on bedding\n"));
  CHECK(next.check_count() == 0);
  CHECK(next.only(Code::plane_unknown).severity == Severity::warning);
  CHECK(next.row(1).status == Status::suspect);
  CHECK(off(next.row(1).trend, 348) < exact);
}

TEST_CASE("a line on a plane that was not read, or not understood, is suspect") {
  for (const char* before : {"", "cleavage N78E 41N\n", "bedding N98E 41N\n"}) {
    const Reduced log(on_true_dial(std::string(before) + "lineation N12W 41 on bedding\n"));
    INFO(before);
    CHECK(log.count(Code::plane_unknown) == 1);
    CHECK(log.row(log.row_count() - 1).status == Status::suspect);
    CHECK(log.check_count() == 0);
  }
}

TEST_CASE("of repeats, the plane is the last one that agrees") {
  const std::string line = "lineation N12W 41 on bedding\n";
  const auto last = [&](const std::string& planes) {
    const Reduced log(on_true_dial("bedding N20E 80E\nbedding " + planes + "\n" + line));
    INFO(planes << ": " << log.codes());
    const Check& check = log.check(log.check_count() - 1);
    REQUIRE(check.what == Check::What::line_in_plane);
    CHECK(log.count(Code::line_off_plane) == (check.passed ? 0u : 1u));
    return check.figure;
  };
  CHECK(last("N77E 39N, N78E 41N") < 1e-6);
  CHECK(last("N77E 41N, N78E 41N, N85W 60S") < 1e-6);  // the last one lies apart
  CHECK(last("N77E 41N, N78E 41N, N98E 60S") < 1e-6);  // the last one is rejected
  CHECK(last("N77E 41N, N78E 41N, N85W 60S, N98E 60S") < 1e-6);
  CHECK(last("N20E 60E, N78E 41N") < 1e-6);  // none agrees: the last
  CHECK(last("N78E 41N, N20E 60E") > 20);
}

TEST_CASE("a rake takes the last of repeats that agrees") {
  const Reduced log(on_true_dial(
      "fault N20E 60E, N22E 61E, N50W 20E, N98E 60E\nslickenline rake 90 from N20E\n"));
  INFO(log.codes());
  CHECK(off(log.row(4).trend, 112) < exact);
  CHECK(miss(log.row(4).plunge, 61) < exact);
}

TEST_CASE("a line's plane stays where it is when the set changes between the two") {
  const Reduced log(
      "declination 10E\nset 0\nstation Q1\nfault N20E 90 E\nset 30E\nslickenline N50E 40\n");
  CHECK(miss(log.check().figure, 0) < 1e-6);
  CHECK(log.check().passed);
}

TEST_CASE("fore and back bearings are held against each other") {
  const Reduced good(on_true_dial("leg S38E 120m back N37W\n"));
  REQUIRE(good.check_count() == 1);
  CHECK(good.check().what == Check::What::fore_and_back);
  CHECK(miss(good.check().figure, 1) < exact);
  CHECK(good.check().passed);
  CHECK(good.diagnostics().empty());

  const Reduced bad(on_true_dial("leg S38E 120m back N33W\n"));
  CHECK(miss(bad.check().figure, 5) < exact);
  CHECK_FALSE(bad.check().passed);
  CHECK(bad.row().status == Status::suspect);
  CHECK(bad.row().codes == std::vector{Code::back_bearing});
  // Kept: a warning.
  CHECK(off(bad.row().bearing, 142) < exact);
  CHECK(off(bad.row().back_bearing, 327) < exact);

  CHECK(Reduced(on_true_dial("leg S38E 120m\n")).check_count() == 0);
  // Across north.
  CHECK(miss(Reduced(on_true_dial("leg 180 9m back 359\n")).check().figure, 1) < exact);
  CHECK(miss(Reduced(on_true_dial("leg 359 9m back 180\n")).check().figure, 1) < exact);
}

TEST_CASE("the limit of fore and back is 2 degrees, or 3 root 2 sigma") {
  CHECK(miss(Reduced(on_true_dial("accuracy bearing 0.3\nleg 090 9m back 271\n")).check().limit,
             2) < exact);
  const double limit = 3 * std::sqrt(2.0) * 2;
  const auto leg = [](const std::string& back) {
    return Reduced(on_true_dial("accuracy bearing 2\nleg 090 9m back " + back + "\n"));
  };
  CHECK(miss(leg("270").check().limit, limit) < exact);
  CHECK(leg("278.4").check().passed);
  CHECK_FALSE(leg("278.5").check().passed);
  CHECK(Reduced(on_true_dial("leg 090 9m back 272.1\n")).check().passed);
  CHECK_FALSE(Reduced(on_true_dial("leg 090 9m back 272.2\n")).check().passed);
}

TEST_CASE("a back bearing is compared on the dial, whatever the declination") {
  const Reduced log("set 3W\ndeclination 24.6E\nstation Q1\nleg S38E 120m back N37W\n");
  CHECK(miss(log.check().figure, 1) < exact);
}

TEST_CASE("a slope in degrees that nobody walks may be from the percent scale") {
  const Reduced log(on_true_dial(
      "leg N 20m slope 50\nleg N 20m slope -46\nleg N 20m slope 45\nleg N 20m slope 50%\n"
      "sight Peak N vertical 60\nsight Peak N vertical 44\n"));
  CHECK(statuses(log) == "ssooso");
  CHECK(log.count(Code::percent_or_degrees) == 3);
  CHECK(miss(log.row().vertical_angle, 50) < exact);
  CHECK(log.all(Code::percent_or_degrees).front()->help.find("26.6") != std::string::npos);
}

TEST_CASE("a reading marked doubtful is suspect and kept") {
  const Reduced log(on_true_dial(
      "bedding N78E 41N doubtful\nlineation N50W 35 doubtful\nsight Peak N50W doubtful\n"
      "bedding N98E 41N doubtful\n"));
  INFO(log.codes());
  CHECK(statuses(log) == "sssr");
  CHECK(off(log.row().strike, 258) < exact);
}

TEST_CASE("repeats are held against each other on the dial, so that a correction changes nothing") {
  const std::string readings = "station Q1\nbedding N78E 41N, N50W 32E, N77E 40N\n";
  const Reduced dial("set 0\ndeclination 0\n" + readings);
  const Reduced turned("set 3W\ndeclination 24.6E\n" + readings);
  CHECK(miss(turned.check().figure, dial.check().figure) < exact);
  CHECK(statuses(turned) == statuses(dial));
}
