// SPDX-License-Identifier: MIT
// Lines as they are typed: trend and plunge, plunge towards, rakes, and the plane they lie in.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::LineAttitude;
using notebook::Reading;
using notebook::Sense;

struct Row {
  const char* typed;
  double trend;
  double plunge;
};

void check(const Row& row, std::string_view heading = "", std::string_view expected_codes = "") {
  CAPTURE(row.typed, heading);
  const auto book = read_line(std::string("lineation ") + row.typed, heading);
  REQUIRE(codes(book) == expected_codes);
  const auto line = good<LineAttitude>(book).line();
  REQUIRE(line);
  CHECK(std::abs(line->plunge().degrees() - row.plunge) < 1e-9);
  if (row.plunge < 90) CHECK(same_direction(line->trend().degrees(), row.trend));
}

/// The code of the one fault of a line.
std::string fault(std::string_view typed, std::string_view heading = "") {
  const auto book = read_line(std::string("lineation ").append(typed), heading);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

TEST_CASE("trend and plunge") {
  const Row rows[] = {
      {"N50W 35", 310, 35},
      {"310/35", 310, 35},
      {"310 35", 310, 35},
      {"N50W/35", 310, 35},
      {"N 50 W 35", 310, 35},
      {"n50w 35°", 310, 35},
      {"NW 15", 315, 15},
      {"due N 15", 0, 15},
      {"N/15", 0, 15},
      {"E 15", 90, 15},
      {"310°30'/15.5", 310.5, 15.5},
      {"N50W 0", 310, 0},
      {"N50W 90", 310, 90},
      {"310/62%", 310, degrees_from_percent(62)},
      {"007/5", 7, 5},
      {"360/15", 0, 15},
  };
  for (const Row& row : rows)
    check(row);
  // The second letter may be missing.
  CHECK(fault("N 15") == "quadrant-letters");
}

TEST_CASE("a negative plunge is the other end, with a note") {
  check({"310/-35", 130, 35}, "", "other-end");
  check({"310 -35", 130, 35}, "", "other-end");
  check({"N50W -35", 130, 35}, "", "other-end");
  check({"310/−35", 130, 35}, "", "other-end");
  check({"310/–35", 130, 35}, "", "other-end");
  check({"310/ -35", 130, 35}, "", "other-end");
  check({"-35 > N50W", 130, 35}, "", "other-end");
  check({"310/-62%", 130, degrees_from_percent(62)}, "", "other-end");
  check({"310/+35", 310, 35});
  check({"310/-0", 310, 0});
  CHECK(read_line("lineation 310/-35").diagnostics.at(0).severity == notebook::Severity::note);
}

TEST_CASE("a dash that touches the word before it is no sign") {
  CHECK(fault("N50W-35") == "number");
  CHECK(fault("N50W–35") == "number");
  CHECK(fault("N50W−35") == "number");
  CHECK(fault("310-35") == "number");
  CHECK(fault("N50W - 35") == "number");
}

TEST_CASE("plunge towards a trend") {
  const Row rows[] = {
      {"35 > N50W", 310, 35},  {"35 to 310", 310, 35},
      {"15>NW", 315, 15},      {"5 > 7", 7, 5},
      {"35° > 310°", 310, 35}, {"62% > N50W", 310, degrees_from_percent(62)},
      {"90 > 010", 0, 90},     {"15 > due W", 270, 15},
  };
  for (const Row& row : rows)
    check(row);
}

TEST_CASE("horizontal and vertical lines") {
  check({"horizontal N50W", 310, 0});
  check({"horizontal 310", 310, 0});
  check({"vertical", 0, 90});
  CHECK(fault("horizontal") == "incomplete");
  CHECK(fault("vertical N50W") == "trailing-text");
}

TEST_CASE("a rake keeps its figure, and the bearing that names the end of the strike") {
  struct Rake {
    const char* typed;
    double rake;
    double bearing;
  };
  const Rake rows[] = {{"rake 40 from N78E", 40, 78}, {"RAKE 40 FROM 258", 40, 258},
                       {"rake 0 from E", 0, 90},      {"rake 90 from N 78 E", 90, 78},
                       {"rake 40° from 078", 40, 78}, {"rake 12.5 from 078", 12.5, 78}};
  for (const Rake& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("slickenline ") + row.typed);
    CHECK(codes(book) == "");
    const auto line = good<LineAttitude>(book);
    CHECK(line.form == LineAttitude::Form::rake);
    CHECK(line.slope.degrees() == row.rake);
    CHECK(line.bearing.azimuth().degrees() == row.bearing);
    CHECK_FALSE(line.line());  // it needs its plane
  }
}

TEST_CASE("a rake lies between 0 and 90") {
  CHECK(fault("rake 91 from N78E") == "rake-range");
  CHECK(fault("rake 140 from N78E") == "rake-range");
  CHECK(fault("rake -5 from N78E") == "rake-range");
  CHECK(fault("rake 40") == "incomplete");
  CHECK(fault("rake 40 N78E") == "incomplete");
  CHECK(fault("rake 40 from") == "incomplete");
  CHECK(fault("rake") == "incomplete");
}

TEST_CASE("a plunge is at most 90") {
  CHECK(fault("310/95") == "plunge-range");
  CHECK(fault("N50W 95") == "plunge-range");
  CHECK(fault("95 > 310") == "plunge-range");
  CHECK(fault("310/-95") == "plunge-range");
}

TEST_CASE("two bare figures of a line are told apart by their digits") {
  CHECK(fault("35/310") == "pair-order");
  CHECK(fault("15/40") == "pair-order");
  CHECK(fault("310/035") == "pair-order");
  CHECK(fault("35 310") == "pair-order");
  CHECK(fault("310 > 35") == "pair-order");
  CHECK(fault("35 N50W") == "pair-order");
  CHECK(fault("15") == "incomplete");
}

TEST_CASE("the heading says how pairs of a line are written") {
  check({"35/310", 310, 35}, "order plunge/trend");
  check({"15/40", 40, 15}, "order plunge/trend");
  check({"35 N50W", 310, 35}, "order plunge/trend");
  check({"40/15", 40, 15}, "order trend/plunge");
  check({"-35/310", 130, 35}, "order plunge/trend", "other-end");
  CHECK(fault("35/310", "order trend/plunge") == "pair-order");
  CHECK(fault("310/35", "order plunge/trend") == "pair-order");
  CHECK(fault("035/310", "order plunge/trend") == "pair-order");
  CHECK(fault("40/015", "order trend/plunge") == "pair-order");
  CHECK(fault("35/310", "order dip/direction") == "pair-order");  // for planes only
}

TEST_CASE("one order line may speak of planes and of lines") {
  check({"35/310", 310, 35}, "order dip/direction plunge/trend");
  check({"35/310", 310, 35}, "order dip/direction\norder plunge/trend");
}

TEST_CASE("a line may name the plane it lies in") {
  const auto plane_of = [](const test::Book& book) {
    CHECK(codes(book) == "");
    return book.kinds.at(good<LineAttitude>(book).on).name;
  };
  CHECK(plane_of(read_line("lineation N50W 35 on bedding")) == "bedding");
  CHECK(plane_of(read_line("lineation N50W 35 ON Dyke")) == "dike");
  CHECK(plane_of(read_line("lineation 35 > N50W on axial-plane")) == "axial-plane");
  CHECK(plane_of(read_line("slickenline rake 40 from N20E on shear")) == "shear");
  CHECK(plane_of(read_line("lineation N50W 35 on b", "short b bedding")) == "bedding");
  CHECK(plane_of(read_line("lineation N50W 35 on vein", "kind slab plane")) == "vein");
  CHECK(plane_of(read_line("lineation N50W 35 on S2", "kind S2 plane")) == "S2");
  CHECK(plane_of(read_line("lineation N50W 35 on klüftung", "kind Klüftung plane")) == "Klüftung");
  CHECK(plane_of(read_line("lineation N50W 35 on s_2", "kind s_2 plane")) == "s_2");
  CHECK(good<LineAttitude>(read_line("lineation N50W 35")).on == notebook::no_kind);
}

TEST_CASE("on takes a kind of plane") {
  CHECK(fault("N50W 35 on") == "incomplete");
  CHECK(fault("N50W 35 on lineation") == "unknown-word");
  CHECK(fault("N50W 35 on sight") == "unknown-word");
  CHECK(fault("N50W 35 on beding") == "unknown-word");
}

TEST_CASE("words behind a line stand in any order") {
  for (const std::string typed :
       {"N50W 35 on fault dextral doubtful", "N50W 35 doubtful dextral on fault",
        "N50W 35 dextral doubtful on fault"}) {
    CAPTURE(typed);
    const auto book = read_line("slickenline " + typed);
    CHECK(codes(book) == "doubtful");
    CHECK(good<LineAttitude>(book).sense == Sense::dextral);
    CHECK(last<Reading>(book).doubtful);
    CHECK(book.kinds.at(good<LineAttitude>(book).on).name == "fault");
  }
}

TEST_CASE("only slickenlines among the lines have a sense") {
  CHECK(fault("N50W 35 dextral") == "trailing-text");
  CHECK(fault("N50W 35 overturned") == "trailing-text");
}

TEST_CASE("all kinds of lines are known") {
  for (const std::string kind : {"lineation", "slickenline", "fold-axis", "intersection",
                                 "stretching", "flute", "current"}) {
    CAPTURE(kind);
    const auto book = read_line(kind + " N50W 35, 35 > 310");
    CHECK(codes(book) == "");
    CHECK(book.reading_count == 2);
    CHECK(kind_of(book, last<Reading>(book)) == kind);
  }
}

}  // namespace
}  // namespace lodebook::test
