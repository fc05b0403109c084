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
      {"N85E 32N", 265, 32},
      {"N85E/32 N", 265, 32},
      {"N85E/32N", 265, 32},
      {"N85E / 32 N", 265, 32},
      {"265 32 NW", 265, 32},
      {"E 32 N", 270, 32},
      {"E/32 N", 270, 32},
      {"S85W 32N", 265, 32},
      {"N85E 32S", 85, 32},
      {"085 32 S", 85, 32},
      {"85 32 N", 265, 32},
      {"085/32 N", 265, 32},
      {"085/32N", 265, 32},
      {"N 85 E 32 N", 265, 32},
      {"n85e 32n", 265, 32},
      {"N85E 32°N", 265, 32},
      {"N85°E 32° N", 265, 32},
      {"N85E 32deg N", 265, 32},
      {"N20W 45 NE", 340, 45},
      {"N20W 45 SW", 160, 45},
      {"N20W 45 ENE", 340, 45},
      {"N20W 45 E", 340, 45},
      {"N 45 E 30 SE", 45, 30},
      {"N45E/30 SE", 45, 30},
      {"due N 30 W", 180, 30},
      {"N/45 W", 180, 45},
      {"N / 45 W", 180, 45},
      {"NNE 45 E", 22.5, 45},
      {"W 30 N", 270, 30},
      {"E 45 NW", 270, 45},
      {"7.5 32 W", 187.5, 32},
      {"N20°30'W 45 E", 339.5, 45},
      {"N85E 32.5N", 265, 32.5},
      {"N85E 62% N", 265, degrees_from_percent(62)},
      {"N85E 62%N", 265, degrees_from_percent(62)},
      {"N85E 62 % N", 265, degrees_from_percent(62)},
      {"N85E 32°30' N", 265, 32.5},
      {"360 30 E", 0, 30},
      {"000/30 W", 180, 30},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("a percent grade with its sign is the angle whose tangent it is") {
  // atan 0.62 = 31.7989 degrees.
  const auto plane = good<PlaneAttitude>(read_line("bedding N85E 62% N")).plane();
  REQUIRE(plane);
  CHECK(std::abs(plane->dip().degrees() - 31.7989) < 5e-5);
  check({"100% > 355", 265, 45});
}

TEST_CASE("point, figure and point apart are strike, dip and side") {
  const Row rows[] = {
      {"E 32 N", 270, 32},  {"W 32 S", 90, 32}, {"e 32 n", 270, 32},
      {"N 45 NW", 180, 45}, {"S 45 SE", 0, 45}, {"N 45 ENE", 0, 45},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("point, figure and point are not taken where they could be a strike alone") {
  CHECK(fault("N45W") == "incomplete");
  CHECK(fault("S45E") == "incomplete");
  CHECK(fault("N 45 W") == "attitude-ambiguous");
  CHECK(fault("S 45 E") == "attitude-ambiguous");
  CHECK(fault("N 45 W overturned") == "attitude-ambiguous");
  // A rule does not help: the figure may still be the angle or the dip.
  CHECK(fault("N 45 W", "rule right") == "attitude-ambiguous");
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
  check({"N85E 32", 85, 32}, "rule right");
  check({"085/32", 85, 32}, "rule right");
  check({"S85W 32", 265, 32}, "rule right");
  check({"N85E 32", 265, 32}, "rule left");
  check({"085/32", 265, 32}, "rule left");
  check({"N85E/32", 265, 32}, "rule left");
  check({"N 85 E 32", 85, 32}, "rule right");
  check({"E 32", 90, 32}, "rule right");
  check({"NE/32", 45, 32}, "rule right");
  CHECK(good<PlaneAttitude>(read_line("bedding 085/32", "rule left")).form ==
        PlaneAttitude::Form::strike_by_rule);
}

TEST_CASE("a written side beats the rule") {
  check({"N85E 32S", 85, 32}, "rule left");
  check({"N85E 32N", 265, 32}, "rule right");
}

TEST_CASE("the rule of an option stands in where the log has none, and gives way to the log's") {
  const notebook::ReadOptions left{HandRule::left};
  const auto strike = [&](const char* text) {
    const auto plane = good<PlaneAttitude>(read(text, left)).plane();
    REQUIRE(plane);
    return plane->strike().degrees();
  };
  CHECK(strike("station Q1\nbedding 085/32\n") == 265);
  CHECK(strike("station Q1\nrule right\nbedding 085/32\n") == 85);
}

TEST_CASE("without a rule a strike and a dip have no side") {
  CHECK(fault("N85E 32") == "dip-side-missing");
  CHECK(fault("085/32") == "dip-side-missing");
  CHECK(fault("E 32") == "dip-side-missing");
}

TEST_CASE("dip towards a direction") {
  const Row rows[] = {
      {"32 > 355", 265, 32},
      {"32 to N5W", 265, 32},
      {"32>NW", 225, 32},
      {"32 >NW", 225, 32},
      {"32> N5W", 265, 32},
      {"32 TO 355", 265, 32},
      {"32 > 7", 277, 32},
      {"32 > due W", 180, 32},
      {"61 > N12W", 258, 61},
      {"32° > 355°", 265, 32},
      {"62% > 355", 265, degrees_from_percent(62)},
      {"5.5 > 90", 0, 5.5},
      {"90 > 090", 0, 90},
      {"0 > 090", 0, 0},
      {"32 > N 5 W", 265, 32},
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
  CHECK(fault("N85E 95N") == "dip-range");
  CHECK(fault("085/95 N") == "dip-range");
  CHECK(fault("95 > 355") == "dip-range");
  CHECK(fault("085/-5 N") == "dip-range");
  CHECK(fault("-5 > 355") == "dip-range");
  CHECK(fault("N85E 90.1 N") == "dip-range");
  CHECK(fault("N85E -62% N") == "dip-range");
  CHECK(codes(read_line("bedding N85E 500% N")) == "");
}

TEST_CASE("two bare figures of a plane are told apart by their digits") {
  check({"088/33", 88, 33}, "rule right");
  check({"088 33", 88, 33}, "rule right");
  check({"088/3", 88, 3}, "rule right");
  check({"088.5/33.5", 88.5, 33.5}, "rule right");
  check({"088/33°", 88, 33}, "rule right");
  CHECK(fault("33/088", "rule right") == "pair-order");
  CHECK(fault("88/33", "rule right") == "pair-order");
  CHECK(fault("088/033", "rule right") == "pair-order");
  CHECK(fault("7/33", "rule right") == "pair-order");
  CHECK(fault("355 > 32") == "pair-order");
  CHECK(fault("032 > 355") == "pair-order");
}

TEST_CASE("a side makes a pair strike, dip, side whatever its digits") {
  check({"85 32 N", 265, 32});
  check({"8 32 W", 188, 32});
  check({"85 32 N", 265, 32}, "order dip/direction");
  check({"085/032 N", 265, 32});
  check({"85/32 N", 265, 32}, "order direction/dip");
}

TEST_CASE("the heading says how pairs of figures are written") {
  check({"85/32", 85, 32}, "rule right\norder strike/dip");
  check({"085/32", 85, 32}, "rule right\norder strike/dip");
  check({"355/32", 265, 32}, "order direction/dip");
  check({"5/32", 275, 32}, "order direction/dip");
  check({"N5W 32", 265, 32}, "order direction/dip");
  check({"32/355", 265, 32}, "order dip/direction");
  check({"32/55", 325, 32}, "order dip/direction");
  check({"32 355", 265, 32}, "order dip/direction");
  check({"32/N5W", 265, 32}, "order dip/direction");
  check({"32 > 355", 265, 32}, "order strike/dip");
  check({"N85E 32N", 265, 32}, "order dip/direction");
}

TEST_CASE("digits that contradict the order are refused") {
  CHECK(fault("32/355", "rule right\norder strike/dip") == "pair-order");
  CHECK(fault("85/032", "rule right\norder strike/dip") == "pair-order");
  CHECK(fault("32/355", "order direction/dip") == "pair-order");
  CHECK(fault("355/032", "order direction/dip") == "pair-order");
  CHECK(fault("355/32", "order dip/direction") == "pair-order");
  CHECK(fault("032/355", "order dip/direction") == "pair-order");
  CHECK(fault("N5W 32", "order dip/direction") == "pair-order");
}

TEST_CASE("an order of pairs holds for its own sort and from its line on") {
  CHECK(fault("32/355", "rule right\norder plunge/trend") == "pair-order");
  CHECK(codes(read_line("bedding 32/355\norder dip/direction\nbedding 32/355")) == "pair-order");
}

TEST_CASE("facing and doubt stand behind the attitude, in any order") {
  struct Words {
    const char* typed;
    Facing facing;
    bool doubtful;
  };
  const Words rows[] = {
      {"N85E 32N", Facing::unstated, false},
      {"N85E 32N overturned", Facing::overturned, false},
      {"N85E 32N upright", Facing::upright, false},
      {"N85E 32N facing unknown", Facing::unknown, false},
      {"N85E 32N doubtful", Facing::unstated, true},
      {"N85E 32N doubtful overturned", Facing::overturned, true},
      {"N85E 32N overturned doubtful", Facing::overturned, true},
      {"N85E 32N DOUBTFUL Facing Unknown", Facing::unknown, true},
      {"horizontal overturned", Facing::overturned, false},
      {"vertical N20E doubtful", Facing::unstated, true},
      {"32 > 355 upright", Facing::upright, false},
  };
  for (const Words& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("bedding ") + row.typed);
    CHECK(codes(book) == (row.doubtful ? "doubtful" : ""));
    CHECK(good<PlaneAttitude>(book).facing == row.facing);
    CHECK(last<Reading>(book).doubtful == row.doubtful);
  }
  const auto book = read_line("bedding N85E 32N doubtful");
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
  const auto book = read_line("bedding   N82E 30N, N84E 31N,088/33 N     ; three times");
  CHECK(codes(book) == "");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK(book.reading_count == 3);
  CHECK(written(book, readings[0]) == "N82E 30N");
  CHECK(written(book, readings[1]) == "N84E 31N");
  CHECK(written(book, readings[2]) == "088/33 N");
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
  const auto book = read_line("bedding N82E 30N overturned, N84E 31N, N85E 32N doubtful");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK(std::get<PlaneAttitude>(readings[0].what).facing == Facing::overturned);
  CHECK(std::get<PlaneAttitude>(readings[1].what).facing == Facing::unstated);
  CHECK_FALSE(readings[1].doubtful);
  CHECK(readings[2].doubtful);
}

TEST_CASE("a bad repeat spoils only itself") {
  const auto book = read_line("bedding N82E 30N, N95E 31N, N84E 31N");
  CHECK(places(book) == "2:19-23 quadrant-angle");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK_FALSE(readings[0].rejected);
  CHECK(readings[1].rejected);
  CHECK_FALSE(readings[2].rejected);
  CHECK(book.diagnostics.at(0).reading == 1);
}

TEST_CASE("an empty repeat is a reading that lacks its attitude") {
  const auto book = read_line("bedding N82E 30N,");
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
    const auto book = read_line(kind + " N85E 32N");
    CHECK(codes(book) == "");
    CHECK(kind_of(book, last<Reading>(book)) == kind);
  }
  const auto book = read_line("Dyke N85E 32N");
  CHECK(codes(book) == "");
  CHECK(kind_of(book, last<Reading>(book)) == "dike");
}

}  // namespace
}  // namespace lodebook::test
