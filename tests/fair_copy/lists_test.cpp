// SPDX-License-Identifier: MIT
// Several readings on a line, and the words between them.
#include "made.hpp"

namespace lodebook::test {
namespace {

const std::string by_rule =
    "dial azimuth\nset 0\ndeclination 0\norder strike/dip\norder trend/plunge\nrule right\nstation "
    "1\n";
const std::string in_quadrants = "dial quadrant\nset 0\ndeclination 0\nstation 1\n";

TEST_CASE("words that say where a reading was taken are no kinds") {
  for (const std::string where :
       {"by the stream", "10 m upstream", "in the floor", "along a blue band", "below the falls",
        "near camp", "next one", "another", "once more", "checked:", "older set"}) {
    CAPTURE(where);
    CHECK(made_of(by_rule + "bedding 034/22, " + where + " 029/25\n") ==
          Made{"bedding 034/22", "bedding 029/25"});
    CHECK(made_of(by_rule + "bedding 034/22\n" + where + " 029/25\n") == Made{"bedding 029/25"});
  }
  check_all(by_rule,
            {{"bedding W of it 041/30, E of it 038/17", {"bedding 041/30", "bedding 038/17"}}});
}

TEST_CASE("a word that may be a kind is asked, with the rest of its list") {
  check_all(by_rule + "joint 034/82\n",
            {
                {"xw 029/85, 031/84", {"ask joint 029/85 SE", "ask joint 031/84 SE"}},
                {"xw in the wall 029/85", {"ask joint 029/85 SE"}},
                {"joint 029/85, FW 030/84", {"joint 029/85", "ask joint 030/84 SE"}},
            });
}

TEST_CASE("a kind behind a preposition is a place, or the plane of a line") {
  check_all(by_rule,
            {
                {"bedding off the hinge: 030/25", {"bedding 030/25"}},
                {"bedding 034/22, near the fault 036/24", {"bedding 034/22", "bedding 036/24"}},
                {"joints in the dike 005/88", {"joint 005/88"}},
            });
  check_all(by_rule + "foliation 122/32\n",
            {{"lineation on foliation 140/10", {"lineation 140/10 on foliation"}},
             {"fold axis in the foliation 18 -> 140", {"fold-axis 18 > 140 on foliation"}}});
}

TEST_CASE("a kind in brackets belongs to what stands before it") {
  const std::string dips = "dial azimuth\nset 0\ndeclination 0\norder dip/direction\nstation 1\n";
  check_all(dips, {
                      {"left wall: 74/170, 71/166 (both joints), 42/051 (foln)",
                       {"joint 74 > 170", "joint 71 > 166", "foliation 42 > 051"}},
                      {"74/170 (vein), 42/051 (fault)", {"vein 74 > 170", "fault 42 > 051"}},
                  });
}

TEST_CASE("two halves of one plane are joined where they agree") {
  check_all(in_quadrants,
            {
                {"fault, dips 64 to S30W, i.e. strike N60W", {"fault 64 > S30W"}},
                {"joint dips 84 to the E, strike N6W", {"joint N6W 84 E"}},
                {"jt dip 60 to SE; strike N50E", {"joint N50E 60 SE"}},
                {"fault, dips 64 to S30W, strike N20W", {"ask fault 64 > S30W"}},
                {"joint dips 84 to the E, strike N85E", {"ask joint 84 > E"}},
                {"joint dips 84 to the E, strike N5E dip 70 W", {"joint 84 > E", "joint N5E 70 W"}},
            });
}

const std::string by_strike = "dial azimuth\norder strike/dip\nset 0\ndeclination 0\nstation 4\n";

TEST_CASE("a kind that begins a sentence is no place") {
  check_all(by_strike,
            {{"beds 5-30 cm. bdg 068/52 SE, upright from the grading. Cleavage is steeper, "
              "062/78 SE.",
              {"bedding 068/52 SE upright", "cleavage 062/78 SE"}}});
}

TEST_CASE("what is not there is no correction") {
  check_all(by_strike,
            {{"fault 092/60 S, no striae", {"fault 092/60 S"}},
             {"fault 092/60 S, no 093/60 S", {"ask fault 092/60 S", "ask fault 093/60 S"}}});
}

TEST_CASE("vertical before its kind, and a list of strikes") {
  check_all(azimuths, {{"vertical joints strike 040, 044 and 038",
                        {"joint vertical 040", "joint vertical 044", "joint vertical 038"}}});
}

TEST_CASE("a point behind a line names the end that goes down") {
  check_all(azimuths, {
                          {"lin N38E 5NE", {"lineation N38E 5"}},
                          {"lin N38E 5SW", {"lineation 5 > S38W"}},
                          {"lin 038/5 SW", {"lineation 5 > 218"}},
                          {"lin 038/5 SE", {"ask lineation 038/5"}},
                      });
  CHECK(made_of(azimuths + "lin 038/5 SW\nlin 036/6\n") == Made{"ask lineation 036/6"});
}

TEST_CASE("lines with two ends, and lists of directions") {
  check_all(by_rule, {
                         {"groove 138/318, no sense", {"groove 138/318"}},
                         {"ripple crest E-W", {"crest E"}},
                         {"striae 038-042, say 040", {"ask striation 040"}},
                         {"striae 225 to 240", {"ask striation 232.5"}},
                         {"flow SSW, another due S", {"current SSW", "current S"}},
                         {"flow to 097, to 103", {"current 097", "current 103"}},
                         {"currents 155 160 148", {"current 155", "current 160", "current 148"}},
                     });
}

TEST_CASE("a vertical plane's figure is what the page's order says, or is asked") {
  const std::string dips = "dial azimuth\nset 0\ndeclination 0\norder dip/direction\nstation 1\n";
  check_all(dips, {
                      {"jts 88 twd 035, 033 vertical, 80 twd 210",
                       {"joint 88 > 035", "ask joint 90 > 033", "joint 80 > 210"}},
                      {"jt vertical, strike 033", {"joint vertical 033"}},
                  });
  check_all(by_rule,
            {{"jt 118/vert", {"joint vertical 118"}}, {"jt 118 vert", {"joint vertical 118"}}});
}

TEST_CASE("a list has the kind of its heading's last clause") {
  check_all(by_rule + "bedding 034/22\ntill, pit A, 5 m above the creek, a-axes of 8 stones:\n",
            {{"048/12  052/21", {"kind clast line", "clast 048/12", "clast 052/21"}}});
}

TEST_CASE("a bed named behind a current is where it was read") {
  check_all(by_rule, {{"pc bottom bed: 155 160", {"current 155", "current 160"}},
                      {"pc bed 155/60", {"ask current 155/60"}}});
}

TEST_CASE("striae lie on the plane above") {
  const std::string fault = in_quadrants + "fault N40E/60SE\n";
  check_all(fault, {
                       {"striae pure dip slip", {"ask slickenline rake 90 from NE on fault"}},
                       {"striae strike slip", {"ask slickenline rake 0 from NE on fault"}},
                       {"pitch of striae 35 N", {"ask slickenline rake 35 from N on fault"}},
                       {"slicks rake 75 from the SE", {"slickenline rake 75 from SE"}},
                       {"striae on this one 18 > N51E", {"slickenline 18 > N51E on fault"}},
                   });
}

TEST_CASE("what a missing figure leaves behind is asked") {
  check_all(in_quadrants, {
                              {"foliation N56½E  ½SE", {"ask foliation N56.5E 0.5 SE"}},
                              {"/53 to the S, joint", {"ask joint 53 > S"}},
                              {"joint ° dipping 39° NE", {"ask joint 39 > NE"}},
                          });
}

TEST_CASE("a size is no leg") {
  check_all(in_quadrants, {{"fault N57W/28, 1.2 m thick", {"fault N57W 28"}}});
  check_all(in_quadrants + "faults:\n", {{"- N57W/28 NE, 1.2 m thick", {"fault N57W 28 NE"}}});
}

TEST_CASE("a figure with a unit is no direction, and one with an unknown word is asked") {
  for (const std::string what : {"3.2 l/s by bucket", "11.4 degC", "11.4 °C", "5 pc"}) {
    CAPTURE(what);
    CHECK(made_of(by_rule + "flow " + what + "\n") == Made{"note flow " + what});
  }
  CHECK(made_of(by_rule + "flow EC 82 uS/cm, pH 6.8\n") == Made{"note flow EC 82 uS/cm, pH 6.8"});
  CHECK(made_of(by_rule + "flow 32 buckets\n") == Made{"ask current 032"});
}

TEST_CASE("two short figures are asked where their neighbour has other ones") {
  check_all(by_rule + "joint 041/82\njoint 043/79\n",
            {{"jt 42/80", {"joint 042/80"}}, {"jt 80/42", {"ask joint 080/42 S"}}});
}

TEST_CASE("a letter typed for a digit is asked with the digit") {
  check_all(by_rule, {{"bedding 034/4O", {"ask bedding 034/40 SE"}},
                      {"bedding 0l4/42", {"ask bedding 014/42 E"}}});
}

TEST_CASE("a bearing without its second letter is asked") {
  check_all(in_quadrants, {{"fault N20/75E", {"ask fault N20E 75 E"}}});
}

}  // namespace
}  // namespace lodebook::test
