// SPDX-License-Identifier: MIT
// Summaries for a person.
#include <catch.hpp>
#include <lodebook/output/summary.hpp>

#include "summed_up.hpp"

namespace lodebook {
namespace {

using test::NamedLog;
using test::SummedUp;

const std::string heading = "set 0\ndeclination 0\nrule right\nstation Q1\n";

std::string text_of(const SummedUp& sum, bool color = false) {
  std::string out;
  output::append_summary_text(out, sum.document(), color);
  return out;
}
std::string text_of(const std::string& readings) {
  return text_of(SummedUp(heading + readings));
}
bool contains(const std::string& text, std::string_view part) {
  INFO(text);
  return text.find(part) != text.npos;
}

TEST_CASE("one reading has a mean and nothing more") {
  CHECK(text_of("bedding 070 30\n") ==
        "day.txt: declination 0\n"
        "repeats of one surface count once, as their mean; planes are averaged by their poles, "
        "poles and lines as axes\n"
        "\n"
        "bedding: 1 reading; from true north\n"
        "  mean of poles   340.0/60.0, plane 070.0/30.0 S\n");
}

TEST_CASE("three readings have Fisher's figures and the tensor") {
  // Poles 10 degrees on either side of the middle one: R 2.970, k 65.8, cone 15.3 (see the
  // tests of summaries); eigenvalues (1 + 2 cos^2 10) / 3 and 2 sin^2 10 / 3.
  const std::string text = text_of("bedding 090 20\nbedding 090 30\nbedding 090 40\n");
  CHECK(
      contains(text,
               "  mean of poles   000.0/60.0, plane 090.0/30.0 S; R 2.970 of 3, k 65.8, 95 % cone "
               "15.3°\n"));
  CHECK(contains(text,
                 "  eigenvalues     0.9799 0.0201 0.0000; K undefined, C undefined: too few for a "
                 "fabric\n"));
  CHECK(contains(text, "  strikes         axial mean 090.0 ±0.0° (95 %), resultant 1.000\n"));
}

TEST_CASE("a mean of strikes is wrapped after it is rounded") {
  CHECK(contains(text_of("joint 179.97 90\njoint 179.97 90\njoint 179.97 90\n"),
                 "axial mean 000.0 "));
  const std::string quadrant = "dial quadrant\n" + heading;
  CHECK(contains(text_of(SummedUp(quadrant + "joint 090.02 80\njoint 090.02 80\n")),
                 "axial mean E, "));
}

TEST_CASE("a pole that is known badly is no fold axis") {
  CHECK(contains(text_of("bedding 355 22\nbedding 358 24\nbedding 280 25\nbedding 260 19\n"
                         "bedding 005 21\n"),
                 "(bootstrap): it may point almost anywhere\n"));
}

TEST_CASE("what is not defined is called so, and why") {
  CHECK(contains(text_of("lineation 030/20\nlineation 032/20\n"),
                 " of 2, k and cone undefined (under three)"));
  CHECK(contains(text_of("lineation 030/20\nlineation 030/20\nlineation 030/20\n"),
                 "k undefined (all coincide), 95 % cone 0.0°"));
  CHECK(contains(text_of("lineation 030/20\nlineation 120/20\nlineation 240/50\n"),
                 "95 % cone undefined (k under 4)"));
  CHECK(contains(text_of("joint 000 90\njoint 090 90\n"),
                 "mean of poles   no single mean: no direction stands out\n"));
  CHECK(contains(text_of("current 010/00\ncurrent 190/00\n"),
                 "trends          no single mean: no direction stands out, resultant 0.000\n"));
}

TEST_CASE("a fold axis is named of planes, and only the pole of lines") {
  std::string planes;
  for (const char* plane : {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47"})
    planes += std::string("bedding ") + plane + '\n';
  const std::string text = text_of(planes);
  CHECK(contains(text, ": a girdle\n"));
  CHECK(contains(text, "(bootstrap); the fold axis, if these are folded\n"));
  std::string lines;
  for (const char* line : {"000/10", "020/11", "050/09", "080/10", "110/11", "150/09"})
    lines += std::string("lineation ") + line + "\nlineation " + line + '\n';
  CHECK(contains(text_of(lines), ": a girdle\n"));
  CHECK(contains(text_of(lines), "(bootstrap)\n"));
  // What does not fold has none, whatever its girdle.
  for (const char* kind : {"joint", "fault", "vein"}) {
    std::string others;
    for (const char* plane : {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47"})
      others += std::string(kind) + ' ' + plane + '\n';
    CHECK(contains(text_of(others), ": a girdle\n"));
    CHECK(contains(text_of(others), "(bootstrap)\n"));
    CHECK_FALSE(contains(text_of(others), "fold"));
  }
}

TEST_CASE("repeats of one surface are one of N") {
  const std::string text = text_of("joint 070 30, 072 31, 068 29\njoint 080 35\njoint 075 33\n");
  CHECK(contains(text, "joint: 5 readings of 3 surfaces; "));
  CHECK(contains(text, " of 3, k "));
}

TEST_CASE("two sets have a mean each, and no single one") {
  std::string joints;
  for (const char* plane : {"012 85", "016 88", "193 84", "020 83", "014 86", "018 84", "104 85",
                            "101 88", "284 84", "108 83"})
    joints += std::string("joint ") + plane + '\n';
  const std::string text = text_of(joints);
  CHECK(contains(text, "  mean of poles   no single mean: two clear sets; R "));
  CHECK(contains(text, "  first set       "));
  CHECK(contains(text, " of 6, k "));
  CHECK(contains(text, "  second set      "));
  CHECK(contains(text, " of 4, k "));
  CHECK(contains(text, ": two sets\n"));
  CHECK(contains(text, "  strikes         no single mean: two clear sets, resultant 0."));
  CHECK_FALSE(contains(text, "girdle"));
}

TEST_CASE("what is scattered too widely has no single mean") {
  const std::string text = text_of("fault 030 40\nfault 060 70\nfault 080 50\n");
  CHECK(contains(text, "  mean of poles   no single mean: too scattered; R 2."));
}

TEST_CASE("means of lines, poles and arrows are called what they are") {
  const std::string text = text_of("bedding 070 30\nlineation 030/20\ncurrent 030/20\n");
  CHECK(contains(text, "  mean of poles   "));
  CHECK(contains(text, "  mean of lines   030.0/20.0\n"));
  CHECK(contains(text, "  mean of arrows  030.0/20.0\n"));
}

TEST_CASE("what has no direction is counted, and vertical and horizontal are words") {
  const std::string text = text_of("bedding horizontal\nbedding horizontal\nlineation vertical\n");
  CHECK(contains(text, "  mean of poles   vertical, plane horizontal;"));
  CHECK(contains(text, "  strikes         2 without a direction\n"));
  CHECK(contains(text, "  mean of lines   vertical\n"));
}

TEST_CASE("suspect and rejected readings are counted as what becomes of them") {
  const std::string log = heading + "bedding 070 30\nbedding 071 30 doubtful\nbedding 470 30\n";
  CHECK(contains(text_of(SummedUp(log)),
                 "bedding: 2 readings, 1 suspect; left out: 1 rejected; from true north\n"));
  CHECK(contains(text_of(SummedUp({{"day.txt", log}}, {}, {{}, true})),
                 "bedding: 1 reading; left out: 1 suspect, 1 rejected; from true north\n"));
  CHECK(contains(text_of(SummedUp(heading + "bedding 470 30\n")),
                 "bedding: 0 readings; left out: 1 rejected; from true north\n"));
}

TEST_CASE("what is far off stands with its place, its station and its words") {
  std::string readings;
  for (int i = 0; i < 10; ++i)
    readings += "lineation 03" + std::to_string(i) + "/20\n";
  const std::string text = text_of(readings + "lineation 130/20 # odd\n");
  CHECK(contains(text, ": a cluster, apart from the outliers below\n"));
  CHECK(contains(text, "  outlier         day.txt:15:1, station Q1: 130/20, "));
  CHECK(contains(text, "° from the mean of the others\n"));
}

TEST_CASE("groups are named by unit and station, and by log where there are several") {
  const std::string log = heading + "unit marl\nbedding 070 30\nstation Q2\nbedding 070 30\n";
  const std::string one = text_of(SummedUp({{"day.txt", log}}, {true, true}));
  CHECK(contains(one, "\nbedding, marl, station Q1: 1 reading;"));
  CHECK(contains(one, "\nbedding, no unit, station Q2: 1 reading;"));
  const std::string two = text_of(
      SummedUp(std::vector<NamedLog>{{"day.txt", log}, {"/far/two.txt", log}}, {false, true}));
  CHECK(contains(two, "\nbedding, station Q1 of day.txt: 1 reading;"));
  CHECK(contains(two, "\nbedding, station Q1 of two.txt: 1 reading;"));
  CHECK_FALSE(contains(two, "/far/"));
}

TEST_CASE("every log says its declination") {
  const std::string text = text_of(SummedUp(
      std::vector<NamedLog>{{"one.txt",
                             "set 0\nrule right\ndeclination 5E\nstation A\nbedding 070 30\n"
                             "declination 2.5W\nstation B\nbedding 070 30\n"},
                            {"two.txt", "set 0\nrule right\nstation A\nbedding 070 30\n"}}));
  CHECK(contains(text, "one.txt: declination 2.5W to 5E\ntwo.txt: declination unknown\n"));
  CHECK(contains(text, "from true north\n"));
  CHECK(contains(text, "from magnetic north\n"));
}

TEST_CASE("directions are in quadrants where every dial is one") {
  const std::string log =
      "dial quadrant\nset 0\ndeclination 0\nstation A\nbedding N70E 30S\n"
      "lineation S20E 10\n";
  const std::string text = text_of(SummedUp(log));
  CHECK(contains(text, "plane N70.0E 30.0S"));
  CHECK(contains(text, "mean of lines   S20.0E 10.0"));
  CHECK(contains(text_of(SummedUp(std::vector<NamedLog>{
                     {"one.txt", log}, {"two.txt", heading + "bedding 070 30\n"}})),
                 "mean of lines   160.0/10.0"));
}

TEST_CASE("planes are shown by their direction where asked") {
  const SummedUp sum(heading + "bedding 242 37 NW\nbedding 244 37 NW\nbedding 240 37 NW\n");
  output::SummaryDocument document = sum.document();
  document.planes = output::PlanesAs::direction;
  std::string out;
  output::append_summary_text(out, document, false);
  CHECK(contains(out, ", plane 37.0 > 332.0"));
  CHECK(contains(out, "mean of poles   152.0/53.0"));
  CHECK(contains(out, "axial mean 062.0"));
}

TEST_CASE("nothing to sum up is said") {
  CHECK(contains(text_of(SummedUp("landmark Peak\nset 0\nstation A\nsight Peak 020\n")),
                 "\nno planes and no lines\n\n1 sight or leg is not summed up\n"));
  CHECK(contains(text_of(SummedUp("")), "\nno planes and no lines\n"));
}

TEST_CASE("colour is for headings, and only where asked; names cannot bring their own") {
  const SummedUp sum({{"day\x1b[31m.txt", heading + "unit \x1b[31mred\nbedding 070 30\n"}},
                     {true, false});
  CHECK_FALSE(contains(text_of(sum), "\x1b"));
  const std::string colored = text_of(sum, true);
  CHECK(contains(colored, "\x1b[1mbedding"));
  CHECK_FALSE(contains(colored, "\x1b[31m"));
}

TEST_CASE("repeats as their mean are said to count once") {
  reduction::Options options;
  options.repeats = reduction::Repeats::mean;
  const std::string text =
      text_of(SummedUp({{"day.txt", heading + "bedding 070 30, 072 30\n"}}, {}, {}, options));
  CHECK(contains(text, "\nrepeats of one surface count once, as their mean; planes "));
  CHECK(contains(text, "bedding: 1 reading; from true north\n"));
}

}  // namespace
}  // namespace lodebook
