// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/fix_report.hpp>

#include "fixes_by_hand.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

std::string report(const std::vector<reduction::Fixes>& logs, bool color = false) {
  return test::fix_text(output::FixReport(color), logs);
}

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// Some fixes with another fix of Q2.
std::string with(const reduction::SightFix& fix) {
  reduction::Fixes fixes = test::some_fixes();
  fixes.sight_fixes[0] = fix;
  return report({fixes});
}

TEST_CASE("each station says where it is, and how that is known") {
  const std::string text = report({test::some_fixes()});
  CHECK(text.starts_with("day3.txt\n\nQ1: 44.69000S 169.02000E, 59G 343"));
  CHECK(contains(text,
                 "\n  stated in the log, ±8 m; 95 % within 19.6 m\n"
                 "  elevation 812 m stated\n"));
  CHECK(contains(text, "\nQ2: 44.68910S 169.01440E, 59G 342"));
  CHECK(contains(text,
                 "\n  from 3 sights, ±4.1 m; 95 % ellipse: semi-axes 12 and 8 m, long axis 040\n"
                 "  elevation 815.3 ±2.1 m from 2 vertical angles\n"));
  CHECK(contains(text, "\n  from legs, ±3.5 m\n"));
  CHECK(contains(text, "\nQ4: no position\n"));
  CHECK(contains(text, "\nlandmark Peak: 44.66000S 169.05000E, 59G "));
  CHECK(contains(text, "95 % ellipse: semi-axes 30 and 20 m, long axis 000\n"));
  CHECK_FALSE(contains(text, "landmark Cairn"));
}

TEST_CASE("sights stand in a table, with their cuts and how they agree") {
  const std::string text = report({test::some_fixes()});
  CHECK(contains(text,
                 "  sight      bearing  residual  offset m  distance m\n"
                 "  Cairn        017.3     -0.3°     -11.2      2140.1\n"
                 "  Trig-Dome    318.3     -0.3°     -11.2      2140.1\n"
                 "  Saddle       121.6     -0.3°     -11.2      2140.1\n"
                 "  the lines cross, at best: Cairn and Saddle 75.6°; also Cairn and Trig-Dome "
                 "58.9°, Trig-Dome and Saddle 16.7°\n"
                 "  chi-square 1.3 with 1 redundant sight, chance 24.7 %: the sights agree\n"
                 "  triangle of error: area 312.0 m², longest side 24.2 m; it holds the true point "
                 "about one time in four\n"
                 "  its corners: 44.65020S 169.03140E; 44.67110S 168.99200E; 44.70330S 169.04670E\n"
                 "  the sights imply a declination of 24.1E ±0.8, which fits the one in "
                 "use\n"));
}

TEST_CASE("two sights are no check, and narrow cuts get a caution") {
  const std::string text = report({test::some_fixes()});
  CHECK(contains(text,
                 "  the lines cross: Q1 and Q2 5.5°\n"
                 "  caution: under 30° small errors become large; add a sight well to the "
                 "side\n"
                 "  no check: two sights always meet\n"));
  reduction::SightFix fix = test::good_fix();
  fix.cuts = {{0, 1, 30}, {0, 2, 10}};
  const std::string fair = with(fix);
  CHECK(contains(fair, "at best: Cairn and Trig-Dome 30.0°; also Cairn and Saddle 10.0°\n  chi"));
}

TEST_CASE("many cuts are not listed one by one") {
  reduction::SightFix fix = test::good_fix();
  fix.cuts.assign(10, {0, 1, 40});
  fix.cuts[4] = {1, 2, 88};
  CHECK(contains(with(fix), "at best: Trig-Dome and Saddle 88.0°; 9 more\n"));
}

TEST_CASE("sights that disagree are loud, and slips are advice") {
  const std::string text = with(test::bad_fix());
  CHECK(contains(text, "2140.1  suspect: the other end of the needle\n"));
  CHECK(contains(text,
                 "  chi-square 310.4 with 1 redundant sight, chance under 0.1 %: THE SIGHTS "
                 "DISAGREE; the ellipse is enlarged accordingly\n"
                 "  Cairn: the other end of the needle? then chi-square 1.2 instead of 310.4\n"
                 "  set taken twice? then chi-square 2.0 instead of 310.4\n"));
}

TEST_CASE("a declination that the sights contradict, and a circle that hides it") {
  reduction::SightFix fix = test::good_fix();
  fix.implied->verdict = reduction::ImpliedDeclination::Verdict::differs;
  fix.danger_circle = true;
  const std::string text = with(fix);
  CHECK(contains(text, "24.1E ±0.8, which is not the one in use: check it\n"));
  CHECK(contains(text,
                 "near the circle through its landmarks, where sights cannot check the "
                 "declination\n"));
}

TEST_CASE("faults are told in words") {
  reduction::Fixes fixes = test::some_fixes();
  using reduction::SightFault;
  for (const SightFault fault :
       {SightFault::too_few, SightFault::parallel, SightFault::behind, SightFault::at_known_point,
        SightFault::too_far, SightFault::undetermined}) {
    fixes.sight_fixes[1].fault = fault;
    CHECK(contains(report({fixes}), "Q4: no position\n  no fix: " +
                                        std::string(reduction::words_for(fault)) + "\n"));
  }
  CHECK(contains(report({fixes}), "  Cairn    000.0         -         -           -\n"));
  fixes.sight_fixes[1].fault.reset();
  fixes.sight_fixes[1].without_declination = true;
  fixes.sight_fixes[1].implied = reduction::ImpliedDeclination{
      24.1, 0.3, reduction::ImpliedDeclination::Verdict::none_in_force};
  CHECK(contains(report({fixes}), "no fix: no declination is known"));
  CHECK(contains(report({fixes}), "declination of 24.1E ±0.3; none is in use\n"));
}

TEST_CASE("traverses are tables with their misclosure") {
  reduction::Fixes fixes = test::some_fixes();
  CHECK(contains(report({fixes}),
                 "\nloop: Q1, Q2, Q1; 910.1 m\n"
                 "  misclosure 1.1 m: departure -1.0, latitude +0.5; 1 in 812\n"
                 "  leg       line  measured m  slope  horizontal m  departure m  latitude m  add "
                 "to departure  "
                 "add "
                 "to latitude\n"
                 "  Q1 to Q2    23       457.5   5.9°         455.1       -444.0        99.5       "
                 "       +0.5     "
                 "        -0.3\n"
                 "  Q2 to Q1    23       457.5   5.9°         455.1        443.1       -99.0       "
                 "       +0.5     "
                 "        -0.2\n"
                 "\nopen traverse: Q2, Q3; 64.2 m\n"
                 "  no check: it does not close\n"
                 "  leg       line  measured m  slope  horizontal m  departure m  latitude m\n"
                 "  Q2 to Q3    35        64.2      -          64.2         63.4       -10.1\n"));
  fixes.traverses[0].kind = reduction::Traverse::Kind::between;
  fixes.traverses[0].contradicts = true;
  fixes.traverses[0].precision.reset();
  CHECK(contains(report({fixes}),
                 "\ntraverse between known stations: Q1, Q2, Q1; 910.1 m\n"
                 "  misclosure 1.1 m: departure -1.0, latitude +0.5\n"
                 "  MORE THAN ITS ERRORS ALLOW: a leg or a known end is probably wrong\n"));
}

TEST_CASE("legs that place nothing are told with the reason") {
  reduction::Fixes fixes = test::some_fixes();
  CHECK_FALSE(contains(report({fixes}), "place nothing"));
  fixes.legs[0].left_out = reduction::LeftOut::doubtful;
  fixes.legs[1].left_out = reduction::LeftOut::own_station;
  const std::string text = report({fixes});
  CHECK(contains(text, "\nlegs that place nothing\n  leg"));
  CHECK(contains(text, "  marked doubtful\n"));
  CHECK(contains(text, "  leads to its own station\n"));
}

TEST_CASE("fore and back bearings show their disagreement, and stations free of attraction") {
  reduction::Fixes fixes = test::some_fixes();
  CHECK(contains(report({fixes}),
                 "\nfore and back bearings, and the same corrected for local attraction\n"
                 "  leg       line   fore   back  apart  corrected fore  corrected back\n"
                 "  Q1 to Q2    23  282.6  102.0   0.6°           282.6           102.6\n"
                 "  correction for local attraction at each station, not applied:\n"
                 "  Q1   free\n"
                 "  Q2  +0.6°\n"));
  fixes.attraction_applied = true;
  CHECK(contains(report({fixes}),
                 "  correction for local attraction, added to the legs read at each station:"));
  fixes.attraction.reset();
  fixes.legs[0].corrected.reset();
  CHECK(contains(report({fixes}),
                 "282.6  102.0   0.6°               -               -\n  no leg has two"));
  fixes.legs[0].back.reset();
  CHECK_FALSE(contains(report({fixes}), "attraction"));
}

TEST_CASE("diagnostics come before the caution at the end") {
  const std::string text = report({test::some_fixes()});
  const std::size_t fault = text.find("\nday3.txt:23:3: warning: fore and back disagree");
  const std::size_t caution = text.find("\n± is one sigma\na fix is as good as its sights");
  REQUIRE(caution != std::string::npos);
  CHECK(fault < caution);
  CHECK(text.ends_with("one time in four\n"));
}

TEST_CASE("a log without stations says so") {
  CHECK(report({{}}).starts_with("day3.txt: no stations\n"));
  const std::string both = report({{}, test::some_fixes()});
  CHECK(contains(both, "day3.txt: no stations\n\nday3.txt\n\nQ1: "));
  CHECK(both.find("± is one sigma") == both.rfind("± is one sigma"));
}

TEST_CASE("no control character reaches the terminal but for colour") {
  const std::string text = report({test::awkward_fixes()});
  CHECK(text.find_first_of("\x1b\x07\xFF") == std::string::npos);
  CHECK(contains(text, "Q \"two\", \uFFFD[31m\uFFFD: no position\n"));
  CHECK(contains(text, "  @Peak\"\uFFFD"));
  CHECK(contains(report({test::some_fixes()}, true), "\x1b[1mQ1\x1b[0m: 44.69000S"));
}

}  // namespace
}  // namespace lodebook
