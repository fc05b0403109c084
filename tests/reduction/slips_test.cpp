// SPDX-License-Identifier: MIT
// The slips of the field, named as help where one explains a reading that does not fit.
#include "reduced.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

/// The help of the fault that `readings` provoke.
std::string help_of(const std::string& readings, Code code) {
  const Reduced log(on_true_dial(readings + "\n"));
  INFO(readings << ": " << log.codes());
  return log.only(code).help;
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

void check_repeat_slip(const std::string& readings, const std::string& words) {
  const std::string help = help_of(readings, Code::repeat_spread);
  INFO(readings << ": " << help);
  CHECK(has(help, words));
}

}  // namespace

TEST_CASE("east for west and north for south") {
  check_repeat_slip("bedding N40E 50NW, N41E 51NW, N40W 50W", "west for east");
  check_repeat_slip("bedding N40W 50W, N41W 51W, N40E 50W", "east for west");
  check_repeat_slip("lineation N40W 20, N41W 21, N40E 20", "east for west");
  check_repeat_slip("lineation N40W 20, N41W 21, S40W 20", "S for N");
  check_repeat_slip("lineation S40W 20, S41W 21, N40W 20", "N for S");
  check_repeat_slip("rule right\nbedding N40E 50, N41E 51, S40E 50", "S for N");
  check_repeat_slip("cleavage 61 > N12W, 60 > N13W, 61 > N12E", "east for west");
}

TEST_CASE("strike for dip direction") {
  check_repeat_slip("bedding 50 > 310, 51 > 312, 50 > 040", "the strike for the dip direction");
  check_repeat_slip("bedding 040/50 W, 041/51 W, 310/50 S", "the dip direction for the strike");
  check_repeat_slip("rule right\nbedding 040/50, 041/51, 130/50",
                    "the dip direction for the strike");
}

TEST_CASE("the other hand rule and the other side") {
  check_repeat_slip("rule right\nbedding 040/50, 041/51, 220/50", "the other hand rule");
  check_repeat_slip("bedding N40E 50NW, N41E 51NW, N40E 50SE", "the other side");
}

TEST_CASE("percent for degrees") {
  // 58 % is 30.1 degrees.
  check_repeat_slip("bedding N40E 30NW, N41E 31NW, N40E 58NW", "percent for degrees");
  check_repeat_slip("bedding N40E 58NW, N41E 57NW, N40E 58% NW", "degrees, not percent");
  check_repeat_slip("lineation N40W 30, N41W 31, N40W 58", "percent for degrees");
}

TEST_CASE("digits swapped") {
  check_repeat_slip("bedding N27E 50NW, N28E 51NW, N72E 50NW", "digits swapped, 72 for 27");
  check_repeat_slip("bedding N27E 14NW, N28E 15NW, N27E 41NW", "digits swapped, 41 for 14");
  check_repeat_slip("lineation 132/20, 133/21, 312/20", "digits swapped, 312 for 132");
  check_repeat_slip("lineation 032/20, 033/21, 302/20", "digits swapped, 302 for 032");
  // A leading zero is a digit in either notation.
  check_repeat_slip("bedding N50E 50NW, N51E 51NW, N05E 50NW", "digits swapped, 05 for 50");
  check_repeat_slip("lineation 050/20, 051/21, 005/20", "digits swapped, 005 for 050");
  // Decimals stay where they are.
  check_repeat_slip("lineation 132.5/20, 132.5/20, 312.5/20",
                    "digits swapped, 312 for 132? then 0.0 degrees off");
}

TEST_CASE("the other end is named and never applied") {
  const std::string readings = "lineation N40W 30, N41W 31, S40E 30\n";
  const Reduced log(on_true_dial(readings));
  CHECK(has(log.only(Code::repeat_spread).help, "the other end"));
  CHECK(off(log.row(2).trend, 140) < exact);
  CHECK(miss(log.row(2).plunge, 30) < exact);
  CHECK(log.row(2).status == Status::suspect);
}

TEST_CASE("slips of a line out of its plane") {
  const std::string plane = "bedding N78E 41N\n";
  CHECK(has(help_of(plane + "lineation S12E 41 on bedding", Code::line_off_plane), "S for N"));
  CHECK(
      has(help_of(plane + "lineation S12E 41 on bedding", Code::line_off_plane), "the other end"));
  CHECK(has(help_of(plane + "lineation N12W 87 on bedding", Code::line_off_plane),
            "percent for degrees"));
  CHECK(has(help_of("bedding N78E 14N\nlineation N12W 41 on bedding", Code::line_off_plane),
            "digits swapped, 41 for 14"));
  CHECK(help_of("fault N20E 60E\nslickenline N66W 10", Code::line_off_plane).empty());
}

TEST_CASE("slips of fore and back bearings, in either of them") {
  const auto help = [](const std::string& leg) {
    return help_of("leg " + leg, Code::back_bearing);
  };
  CHECK(has(help("S38E 120m back S38E"), "the other end of the needle"));
  CHECK(has(help("S38E 120m back N38E"), "east for west in the back bearing"));
  CHECK(has(help("S38W 120m back N38W"), "west for east in the fore bearing"));
  CHECK(has(help("S38E 120m back S38W"), "in the"));
  CHECK(has(help("S27E 120m back N72W"), "digits swapped, 72 for 27 in the back bearing"));
  CHECK(has(help("132 120m back 132"), "digits swapped, 132 for 312 in the back bearing"));
}

TEST_CASE("two that disagree are explained by a slip that makes them agree") {
  const Reduced log(on_true_dial("bedding N14E 50W, N14W 50W\n"));
  const auto said = log.all(Code::repeat_spread);
  REQUIRE(said.size() == 2);
  CHECK(has(said[0]->help, "east for west? then 0.0 degrees off"));
  CHECK(has(said[1]->help, "west for east? then 0.0 degrees off"));
}

TEST_CASE("what no single slip explains has no help") {
  CHECK(help_of("lineation N40W 20, N41W 21, N10W 66", Code::repeat_spread).empty());
  CHECK(help_of("leg 090 120m back 255", Code::back_bearing).empty());
}

TEST_CASE("the best three at most are offered, best first") {
  // Errors so large that four slips would do; the fourth, 08 for 80, leaves 113 degrees.
  const std::string help =
      help_of("accuracy bearing 30\nleg N80E 9m back N75E", Code::back_bearing);
  INFO(help);
  const std::size_t first = help.find("the other end of the needle? then 5.0 degrees off");
  const std::size_t second = help.find("in the back bearing? then 25.0 degrees off");
  const std::size_t third = help.find("in the fore bearing? then 25.0 degrees off");
  CHECK(first < second);
  CHECK(second < third);
  CHECK(third != std::string::npos);
  CHECK_FALSE(has(help, "swapped"));
}

TEST_CASE("no figure is changed by a slip that explains it") {
  const Reduced log(
      on_true_dial("bedding N40E 50NW, N41E 51NW, N40W 50W\nleg S38E 120m back N38E\n"
                   "bedding N78E 41N\nlineation S12E 41 on bedding\n"));
  CHECK(off(log.row(2).strike, 140) < exact);
  CHECK(off(log.row(3).bearing, 142) < exact);
  CHECK(off(log.row(3).back_bearing, 38) < exact);
  CHECK(off(log.row(5).trend, 168) < exact);
}

TEST_CASE("clean readings are told of no slip") {
  const Reduced log(on_true_dial(
      "bedding N78E 41N, N75E 39N, N77E 40N\nlineation N50W 35 on bedding\nrule right\n"
      "cleavage 61 > N12W, 60 > N13W\nleg S38E 120m back N37W\nfault N20E 60E\n"
      "slickenline rake 40 from N20E\nbedding vertical N, vertical S\nlineation horizontal N, "
      "horizontal S\n"));
  INFO(log.codes());
  CHECK(log.diagnostics().empty());
  CHECK(log.counts().ok == log.counts().readings);
}
