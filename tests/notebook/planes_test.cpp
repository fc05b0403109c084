// SPDX-License-Identifier: MIT
// Planes as they are typed: every form, sides, rules, orders and the words behind.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Facing;
using notebook::PlaneAttitude;
using notebook::Reading;
using notebook::Sense;

struct Row {
  const char* typed;
  double strike;  ///< with the dip to its right
  double dip;
};

void check(const Row& row, std::string_view heading = "") {
  CAPTURE(row.typed, heading);
  const auto book = read_line(std::string("bedding ") + row.typed, heading);
  REQUIRE(codes(book) == "");
  const auto plane = good<PlaneAttitude>(book).plane();
  REQUIRE(plane);
  CHECK(std::abs(plane->dip().degrees() - row.dip) < 1e-9);
  if (row.dip > 0) CHECK(same_direction(plane->strike().degrees(), row.strike));
}

/// The code of the one fault of a plane.
std::string fault(std::string_view typed, std::string_view heading = "") {
  const auto book = read_line(std::string("bedding ").append(typed), heading);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

TEST_CASE("strike, dip and side") {
  const Row rows[] = {
      {"N78E 41N", 258, 41},
      {"N78E/41 N", 258, 41},
      {"N78E/41N", 258, 41},
      {"N78E / 41 N", 258, 41},
      {"258 41 NW", 258, 41},
      {"E 41 N", 270, 41},
      {"E/41 N", 270, 41},
      {"S78W 41N", 258, 41},
      {"N78E 41S", 78, 41},
      {"078 41 S", 78, 41},
      {"78 41 N", 258, 41},
      {"078/41 N", 258, 41},
      {"078/41N", 258, 41},
      {"N 78 E 41 N", 258, 41},
      {"n78e 41n", 258, 41},
      {"N78E 41°N", 258, 41},
      {"N78°E 41° N", 258, 41},
      {"N78E 41deg N", 258, 41},
      {"N49W 45 NE", 311, 45},
      {"N49W 45 SW", 131, 45},
      {"N49W 45 ENE", 311, 45},
      {"N49W 45 E", 311, 45},
      {"N 38 E 30 SE", 38, 30},
      {"N45E/30 SE", 45, 30},
      {"due N 30 W", 180, 30},
      {"N/45 W", 180, 45},
      {"N / 45 W", 180, 45},
      {"NNE 45 E", 22.5, 45},
      {"W 30 N", 270, 30},
      {"E 45 NW", 270, 45},
      {"7.5 41 W", 187.5, 41},
      {"N50°30'W 45 E", 309.5, 45},
      {"N78E 41.5N", 258, 41.5},
      {"N78E 62% N", 258, degrees_from_percent(62)},
      {"N78E 62%N", 258, degrees_from_percent(62)},
      {"N78E 62 % N", 258, degrees_from_percent(62)},
      {"N78E 41°30' N", 258, 41.5},
      {"360 30 E", 0, 30},
      {"000/30 W", 180, 30},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("a percent grade with its sign is the angle whose tangent it is") {
  // atan 0.62 = 31.7989 degrees.
  const auto plane = good<PlaneAttitude>(read_line("bedding N78E 62% N")).plane();
  REQUIRE(plane);
  CHECK(std::abs(plane->dip().degrees() - 31.7989) < 5e-5);
  check({"100% > 348", 258, 45});
}

TEST_CASE("point, figure and point apart are strike, dip and side") {
  const Row rows[] = {
      {"E 41 N", 270, 41},  {"W 41 S", 90, 41}, {"e 41 n", 270, 41},
      {"N 45 NW", 180, 45}, {"S 45 SE", 0, 45}, {"N 45 ENE", 0, 45},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("point, figure and point are not taken where they could be a strike alone") {
  CHECK(fault("N38W") == "incomplete");
  CHECK(fault("S38E") == "incomplete");
  CHECK(fault("N 38 W") == "attitude-ambiguous");
  CHECK(fault("S 38 E") == "attitude-ambiguous");
  CHECK(fault("N 38 W overturned") == "attitude-ambiguous");
  // A rule does not help: the figure may still be the angle or the dip.
  CHECK(fault("N 38 W", "rule right") == "attitude-ambiguous");
  CHECK(fault("E20N") == "quadrant-letters");
}

TEST_CASE("the side may be any point within 67.5 degrees of a dip direction") {
  const char* const points[] = {"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};
  for (int strike = 0; strike < 360; ++strike) {
    for (int point = 0; point < 16; ++point) {
      const std::string typed = std::to_string(strike) + "/40 " + points[point];
      const auto book = read_line("bedding " + typed);
      const double off =
          std::abs(std::remainder(22.5 * point - (strike + 90.0), 360.0));  // from the right side
      CAPTURE(typed, off);
      if (off <= 67.5 || off >= 112.5) {
        REQUIRE(codes(book) == "");
        const auto plane = good<PlaneAttitude>(book).plane();
        REQUIRE(plane);
        REQUIRE(same_direction(plane->strike().degrees(), strike + (off <= 67.5 ? 0 : 180)));
      } else {
        REQUIRE(codes(book) == "dip-side-impossible");
      }
    }
  }
}

TEST_CASE("strike and dip take their side from the rule") {
  check({"N78E 41", 78, 41}, "rule right");
  check({"078/41", 78, 41}, "rule right");
  check({"S78W 41", 258, 41}, "rule right");
  check({"N78E 41", 258, 41}, "rule left");
  check({"078/41", 258, 41}, "rule left");
  check({"N78E/41", 258, 41}, "rule left");
  check({"N 78 E 41", 78, 41}, "rule right");
  check({"E 41", 90, 41}, "rule right");
  check({"NE/41", 45, 41}, "rule right");
  CHECK(good<PlaneAttitude>(read_line("bedding 078/41", "rule left")).form ==
        PlaneAttitude::Form::strike_by_rule);
}

TEST_CASE("a written side beats the rule") {
  check({"N78E 41S", 78, 41}, "rule left");
  check({"N78E 41N", 258, 41}, "rule right");
}

TEST_CASE("the rule of an option stands in where the log has none, and gives way to the log's") {
  const notebook::ReadOptions left{HandRule::left};
  const auto strike = [&](const char* text) {
    const auto plane = good<PlaneAttitude>(read(text, left)).plane();
    REQUIRE(plane);
    return plane->strike().degrees();
  };
  CHECK(strike("station Q1\nbedding 078/41\n") == 258);
  CHECK(strike("station Q1\nrule right\nbedding 078/41\n") == 78);
}

TEST_CASE("without a rule a strike and a dip have no side") {
  CHECK(fault("N78E 41") == "dip-side-missing");
  CHECK(fault("078/41") == "dip-side-missing");
  CHECK(fault("E 41") == "dip-side-missing");
}

TEST_CASE("dip towards a direction") {
  const Row rows[] = {
      {"41 > 348", 258, 41},
      {"41 to N12W", 258, 41},
      {"41>NW", 225, 41},
      {"41 >NW", 225, 41},
      {"41> N12W", 258, 41},
      {"41 TO 348", 258, 41},
      {"41 > 7", 277, 41},
      {"41 > due W", 180, 41},
      {"61 > N12W", 258, 61},
      {"41° > 348°", 258, 41},
      {"62% > 348", 258, degrees_from_percent(62)},
      {"5.5 > 90", 0, 5.5},
      {"90 > 090", 0, 90},
      {"0 > 090", 0, 0},
      {"41 > N 12 W", 258, 41},
  };
  for (const Row& row : rows) {
    check(row);
    check(row, "rule left");  // beats the rule
  }
}

TEST_CASE("horizontal and vertical planes") {
  check({"horizontal", 0, 0});
  check({"HORIZONTAL", 0, 0});
  check({"vertical N20E", 20, 90});
  check({"vertical 020", 20, 90});
  check({"vertical NE", 45, 90});
  const auto level = good<PlaneAttitude>(read_line("joint horizontal"));
  CHECK(level.form == PlaneAttitude::Form::horizontal);
  CHECK_FALSE(level.has_side());
  CHECK_FALSE(good<PlaneAttitude>(read_line("joint vertical N20E")).has_side());
}

TEST_CASE("a dip of 0 or 90 in figures needs no side") {
  check({"N20E 90", 20, 90});
  check({"020/90", 20, 90});
  check({"N20E 0", 0, 0});
  check({"020/0", 0, 0});
  check({"020/00", 0, 0});
  CHECK_FALSE(good<PlaneAttitude>(read_line("joint 020/90")).has_side());
  // With one it keeps it.
  check({"N20E 90 W", 200, 90});
  CHECK(good<PlaneAttitude>(read_line("joint N20E 90 W")).has_side());
  CHECK(fault("N20E 89.9") == "dip-side-missing");
}

TEST_CASE("a dip lies between 0 and 90 degrees") {
  CHECK(fault("N78E 95N") == "dip-range");
  CHECK(fault("078/95 N") == "dip-range");
  CHECK(fault("95 > 348") == "dip-range");
  CHECK(fault("078/-5 N") == "dip-range");
  CHECK(fault("-5 > 348") == "dip-range");
  CHECK(fault("N78E 90.1 N") == "dip-range");
  CHECK(fault("N78E -62% N") == "dip-range");
  CHECK(codes(read_line("bedding N78E 500% N")) == "");
}

TEST_CASE("two bare figures of a plane are told apart by their digits") {
  check({"081/42", 81, 42}, "rule right");
  check({"088 33", 88, 33}, "rule right");
  check({"088/3", 88, 3}, "rule right");
  check({"088.5/33.5", 88.5, 33.5}, "rule right");
  check({"081/42°", 81, 42}, "rule right");
  CHECK(fault("33/088", "rule right") == "pair-order");
  CHECK(fault("81/42", "rule right") == "pair-order");
  CHECK(fault("088/033", "rule right") == "pair-order");
  CHECK(fault("7/33", "rule right") == "pair-order");
  CHECK(fault("348 > 41") == "pair-order");
  CHECK(fault("041 > 348") == "pair-order");
}

TEST_CASE("a side makes a pair strike, dip, side whatever its digits") {
  check({"78 41 N", 258, 41});
  check({"8 41 W", 188, 41});
  check({"78 41 N", 258, 41}, "order dip/direction");
  check({"078/041 N", 258, 41});
  check({"78/41 N", 258, 41}, "order direction/dip");
}

TEST_CASE("the heading says how pairs of figures are written") {
  check({"78/41", 78, 41}, "rule right\norder strike/dip");
  check({"078/41", 78, 41}, "rule right\norder strike/dip");
  check({"348/41", 258, 41}, "order direction/dip");
  check({"5/41", 275, 41}, "order direction/dip");
  check({"41/348", 258, 41}, "order dip/direction");
  check({"41/55", 325, 41}, "order dip/direction");
  check({"41 348", 258, 41}, "order dip/direction");
  check({"41/N12W", 258, 41}, "order dip/direction");
  check({"41 > 348", 258, 41}, "order strike/dip");
  check({"N78E 41N", 258, 41}, "order dip/direction");
}

TEST_CASE("with the dip before the strike, the side is typed or comes from the rule") {
  const std::string order = "order dip/strike";
  check({"41/078", 78, 41}, "rule right\n" + order);
  check({"41 78", 258, 41}, "rule left\n" + order);
  check({"41/078 N", 258, 41}, "rule right\n" + order);
  check({"078/41 N", 258, 41}, order);
  check({"41 N78E", 78, 41}, "rule right\n" + order);
  check({"41 N78E N", 258, 41}, order);
  check({"N78E 41", 78, 41}, "rule right\n" + order);
  check({"41 > 348", 258, 41}, order);
  check({"90/078", 78, 90}, order);
  CHECK(fault("41/078", order) == "dip-side-missing");
  check({"78/041", 41, 78}, "rule right\n" + order);
  CHECK(fault("078/41", "rule right\n" + order) == "pair-order");
  CHECK(fault("78 41 N", order) == "pair-order");
  CHECK(fault("41/078 E", order) == "dip-side-impossible");
  CHECK(fault("41 NW", "rule right\n" + order) == "incomplete");
}

TEST_CASE("digits that contradict the order are refused") {
  CHECK(fault("41/348", "rule right\norder strike/dip") == "pair-order");
  CHECK(fault("78/041", "rule right\norder strike/dip") == "pair-order");
  CHECK(fault("41/348", "order direction/dip") == "pair-order");
  CHECK(fault("348/041", "order direction/dip") == "pair-order");
  CHECK(fault("348/41", "order dip/direction") == "pair-order");
  CHECK(fault("041/348", "order dip/direction") == "pair-order");
}

TEST_CASE("an order of pairs holds for its own sort and from its line on") {
  CHECK(fault("41/348", "rule right\norder plunge/trend") == "pair-order");
  CHECK(codes(read_line("bedding 41/348\norder dip/direction\nbedding 41/348")) == "pair-order");
}

TEST_CASE("facing and doubt stand behind the attitude, in any order") {
  struct Words {
    const char* typed;
    Facing facing;
    bool doubtful;
  };
  const Words rows[] = {
      {"N78E 41N", Facing::unstated, false},
      {"N78E 41N overturned", Facing::overturned, false},
      {"N78E 41N upright", Facing::upright, false},
      {"N78E 41N facing unknown", Facing::unknown, false},
      {"N78E 41N doubtful", Facing::unstated, true},
      {"N78E 41N doubtful overturned", Facing::overturned, true},
      {"N78E 41N overturned doubtful", Facing::overturned, true},
      {"N78E 41N DOUBTFUL Facing Unknown", Facing::unknown, true},
      {"horizontal overturned", Facing::overturned, false},
      {"vertical N20E doubtful", Facing::unstated, true},
      {"41 > 348 upright", Facing::upright, false},
  };
  for (const Words& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("bedding ") + row.typed);
    CHECK(codes(book) == (row.doubtful ? "doubtful" : ""));
    CHECK(good<PlaneAttitude>(book).facing == row.facing);
    CHECK(last<Reading>(book).doubtful == row.doubtful);
  }
  const auto book = read_line("bedding N78E 41N doubtful");
  CHECK(book.diagnostics.at(0).severity == notebook::Severity::warning);
}

TEST_CASE("faults and shears take a sense word") {
  struct Word {
    const char* typed;
    Sense sense;
  };
  const Word rows[] = {{"normal", Sense::normal},
                       {"reverse", Sense::reverse},
                       {"dextral", Sense::dextral},
                       {"Sinistral", Sense::sinistral}};
  for (const Word& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("fault 020/60 E ") + row.typed + " doubtful");
    CHECK(codes(book) == "doubtful");
    CHECK(good<PlaneAttitude>(book).sense == row.sense);
  }
  CHECK(codes(read_line("shear 020/60 E dextral")) == "");
  CHECK(codes(read_line("bedding 020/60 E dextral")) == "trailing-text");
}

TEST_CASE("repeats are readings of one surface, each with its own bytes") {
  const auto book = read_line("bedding   N75E 39N, N77E 40N,081/42 N     ; three times");
  CHECK(codes(book) == "");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK(book.reading_count == 3);
  CHECK(written(book, readings[0]) == "N75E 39N");
  CHECK(written(book, readings[1]) == "N77E 40N");
  CHECK(written(book, readings[2]) == "081/42 N");
  CHECK(readings[0].first);
  CHECK_FALSE(readings[1].first);
  CHECK_FALSE(readings[2].first);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(readings[i].number == i);
    CHECK(text(book, book.entries.at(i + 1).remark) == "three times");
  }
  CHECK(book.entries.at(1).column == 1);
  CHECK(book.entries.at(2).column == 21);
  CHECK(book.entries.at(3).column == 30);
}

TEST_CASE("words behind a repeat are that repeat's own") {
  const auto book = read_line("bedding N75E 39N overturned, N77E 40N, N78E 41N doubtful");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK(std::get<PlaneAttitude>(readings[0].what).facing == Facing::overturned);
  CHECK(std::get<PlaneAttitude>(readings[1].what).facing == Facing::unstated);
  CHECK_FALSE(readings[1].doubtful);
  CHECK(readings[2].doubtful);
}

TEST_CASE("a bad repeat spoils only itself") {
  const auto book = read_line("bedding N75E 39N, N98E 40N, N77E 40N");
  CHECK(places(book) == "2:19-23 quadrant-angle");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK_FALSE(readings[0].rejected);
  CHECK(readings[1].rejected);
  CHECK_FALSE(readings[2].rejected);
  CHECK(book.diagnostics.at(0).reading == 1);
}

TEST_CASE("an empty repeat is a reading that lacks its attitude") {
  const auto book = read_line("bedding N75E 39N,");
  CHECK(codes(book) == "incomplete");
  CHECK(book.reading_count == 2);
  const auto none = read_line("bedding");
  CHECK(codes(none) == "incomplete");
  CHECK(none.reading_count == 1);
}

TEST_CASE("all kinds of planes are known") {
  for (const std::string kind : {"bedding", "foliation", "cleavage", "schistosity", "joint",
                                 "fault", "shear", "vein", "dike", "contact", "axial-plane"}) {
    CAPTURE(kind);
    const auto book = read_line(kind + " N78E 41N");
    CHECK(codes(book) == "");
    CHECK(kind_of(book, last<Reading>(book)) == kind);
  }
  const auto book = read_line("Dyke N78E 41N");
  CHECK(codes(book) == "");
  CHECK(kind_of(book, last<Reading>(book)) == "dike");
}

}  // namespace
}  // namespace lodebook::test
