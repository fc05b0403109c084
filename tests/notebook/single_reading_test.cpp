// SPDX-License-Identifier: MIT
// One reading on its own, as `convert` takes it: its own form decides what it is.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Bearing;
using notebook::LineAttitude;
using notebook::PlaneAttitude;
using notebook::ReadAs;
using notebook::ReadOptions;
using notebook::SingleReading;

SingleReading single(std::string_view typed, ReadAs as = ReadAs::own_form,
                     const ReadOptions& options = {}) {
  return notebook::read_single(notebook::Source("reading", std::string(typed)), as, options);
}

const ReadOptions right{HandRule::right};

TEST_CASE("one bearing") {
  struct Row {
    const char* typed;
    double azimuth;
  };
  const Row rows[] = {{"N50W", 310}, {"N 50 W", 310}, {"310", 310},        {"007", 7},
                      {"7.5", 7.5},  {"NW", 315},     {"due N", 0},        {"360", 0},
                      {"N", 0},      {" N50W ", 310}, {"S43°15'E", 136.75}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    for (const ReadAs as : {ReadAs::own_form, ReadAs::bearing}) {
      const auto read = single(row.typed, as);
      CHECK(codes(read.diagnostics) == "");
      REQUIRE(std::holds_alternative<Bearing>(read.what));
      CHECK(same_direction(std::get<Bearing>(read.what).azimuth().degrees(), row.azimuth));
    }
    // A rule says nothing about a lone bearing.
    CHECK(std::holds_alternative<Bearing>(single(row.typed, ReadAs::own_form, right).what));
  }
}

TEST_CASE("a pair with a side is a plane") {
  for (const char* const typed : {"N78E 41N", "N78E/41 N", "258 41 NW", "E 41 N", "258/41 N",
                                  "78 41 N", "N78E 41N overturned"}) {
    CAPTURE(typed);
    const auto read = single(typed);
    CHECK(codes(read.diagnostics) == "");
    REQUIRE(std::holds_alternative<PlaneAttitude>(read.what));
    CHECK(std::get<PlaneAttitude>(read.what).plane());
  }
}

TEST_CASE("a pair whose first is a bearing is a line, or with a rule a plane") {
  for (const char* const typed : {"N50W 35", "310/35", "310 35", "NW 15", "007/5"}) {
    CAPTURE(typed);
    const auto line = single(typed);
    CHECK(codes(line.diagnostics) == "");
    CHECK(std::holds_alternative<LineAttitude>(line.what));
    const auto plane = single(typed, ReadAs::own_form, right);
    CHECK(codes(plane.diagnostics) == "");
    CHECK(std::holds_alternative<PlaneAttitude>(plane.what));
  }
}

TEST_CASE("A > B needs to be told which it is") {
  for (const std::string typed : {"41 > 348", "41 to N12W", "41>NW"}) {
    CAPTURE(typed);
    const auto open = single(typed);
    CHECK(std::holds_alternative<std::monostate>(open.what));
    CHECK(codes(open.diagnostics) == "attitude-ambiguous");
    CHECK(open.diagnostics.at(0).help.find("--as") != std::string::npos);
    CHECK(std::holds_alternative<PlaneAttitude>(single(typed, ReadAs::plane).what));
    CHECK(std::holds_alternative<LineAttitude>(single(typed, ReadAs::line).what));
    CHECK(std::holds_alternative<PlaneAttitude>(single("bedding " + typed).what));
    CHECK(std::holds_alternative<LineAttitude>(single("lineation " + typed).what));
  }
}

TEST_CASE("a kind may stand first and decides") {
  CHECK(std::holds_alternative<PlaneAttitude>(single("bedding 41 > 348").what));
  CHECK(std::holds_alternative<LineAttitude>(single("Lineation 310/35").what));
  CHECK(std::holds_alternative<LineAttitude>(
      single("lineation 310/35", ReadAs::own_form, right).what));
  CHECK(std::holds_alternative<PlaneAttitude>(single("dyke vertical N20E").what));
  CHECK(codes(single("bedding 078/41").diagnostics) == "dip-side-missing");
  CHECK(std::holds_alternative<PlaneAttitude>(
      single("bedding 078/41", ReadAs::own_form, right).what));
  CHECK(codes(single("sight Cairn N66W").diagnostics) == "unknown-word");
  CHECK(codes(single("bedding").diagnostics) == "incomplete");
}

TEST_CASE("horizontal and vertical have one meaning each way") {
  CHECK(std::holds_alternative<PlaneAttitude>(single("horizontal").what));
  CHECK(std::holds_alternative<LineAttitude>(single("horizontal N50W").what));
  CHECK(std::holds_alternative<LineAttitude>(single("vertical").what));
  CHECK(std::holds_alternative<PlaneAttitude>(single("vertical N20E").what));
}

TEST_CASE("as plane, line or bearing holds a reading to it") {
  CHECK(codes(single("N78E 41", ReadAs::plane).diagnostics) == "dip-side-missing");
  CHECK(std::holds_alternative<PlaneAttitude>(single("N78E 41", ReadAs::plane, right).what));
  CHECK(codes(single("N78E", ReadAs::plane).diagnostics) == "incomplete");
  CHECK(codes(single("N50W", ReadAs::line).diagnostics) == "plunge-missing");
  CHECK(codes(single("N50W 35", ReadAs::bearing).diagnostics) == "trailing-text");
}

TEST_CASE("faults of one reading leave nothing and say why") {
  struct Row {
    const char* typed;
    const char* places;
  };
  const Row rows[] = {
      {"N98E", "1:1-5 quadrant-angle"},
      {"E20N", "1:1-5 quadrant-letters"},
      {"N20", "1:1-4 quadrant-letters"},
      {"412", "1:1-4 azimuth-range"},
      {"-20", "1:1-4 azimuth-range"},
      {"N98E 41N", "1:1-5 quadrant-angle"},
      {"N78E 95N", "1:6-8 dip-range"},
      {"N78E 41E", "1:8-9 dip-side-impossible"},
      {"12,5", "1:1-5 decimal-comma"},
      {"1e3", "1:1-4 number"},
      {"nan", "1:1-4 number"},
      {"N50W ; remark", "1:8-14 trailing-text"},
      {"N50W # x", "1:6-9 trailing-text"},
      {"N50W\nrubbish", "2:1-8 trailing-text"},
      {"N50W\rrubbish", "2:1-8 trailing-text"},
      {"hello", "1:1-6 unknown-word"},
      {"35/310", "1:1-7 pair-order"},
      {"310/95", "1:5-7 plunge-range"},
      {"N50W-35", "1:5-6 number"},
      {"310\xB0", "1:4-5 encoding"},
      {"rake 40 from N78E", "1:1-18 rake-no-plane"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto read = single(row.typed);
    CHECK(places(read.diagnostics) == row.places);
    CHECK(std::holds_alternative<std::monostate>(read.what));
  }
}

TEST_CASE("a reading on its own is told that nothing may follow it") {
  for (const char* const typed : {"N50W 35 dubious", "N78E 41N flat", "N50W 35 ; flat"}) {
    const auto read = single(typed);
    REQUIRE(read.diagnostics.size() == 1);
    CHECK(read.diagnostics[0].help == "the reading alone");
  }
}

TEST_CASE("an empty reading is one that lacks everything") {
  for (const char* const typed : {"", "  ", "# nothing", "; nothing"}) {
    CAPTURE(typed);
    const auto read = single(typed);
    CHECK(codes(read.diagnostics) == "incomplete");
    CHECK(std::holds_alternative<std::monostate>(read.what));
  }
}

TEST_CASE("doubt is kept beside the reading") {
  const auto read = single("N78E 41N doubtful");
  CHECK(read.doubtful);
  CHECK(codes(read.diagnostics) == "doubtful");
  CHECK(std::holds_alternative<PlaneAttitude>(read.what));
}

TEST_CASE("two readings are not one") {
  CHECK(std::holds_alternative<std::monostate>(single("N78E 41N, N77E 40N").what));
  CHECK_FALSE(single("N78E 41N, N77E 40N").diagnostics.empty());
}

/// Reads a position on its own; `faults` are its codes.
std::optional<earth::Position> position(std::string_view typed, std::string& faults) {
  std::vector<notebook::Diagnostic> diagnostics;
  const auto read =
      notebook::read_position(notebook::Source("argument", std::string(typed)), diagnostics);
  faults = codes(diagnostics);
  return read;
}

TEST_CASE("a position on its own") {
  std::string faults;
  for (const char* const typed : {"44.5S 169.25E", " -44.5, 169.25 ", "44 30 S 169 15 E"}) {
    CAPTURE(typed);
    CHECK(position(typed, faults) == earth::Position{-44.5, 169.25});
    CHECK(faults == "");
  }
}

TEST_CASE("a position on its own that cannot be read has one fault, at its place") {
  struct Row {
    const char* typed;
    const char* code;
  };
  const Row rows[] = {
      {"", "position"},
      {"   ", "position"},
      {"94.5S 169.25E", "position"},
      {"44,5 169,25", "decimal-comma"},
      {"44.5S 169.25E ±8", "position"},
      {"44.5S 169.25E # hut", "position"},
      {"38S 345210 4052310", "position"},
      {"59S 342600 5049100", "position"},
      {"44.5S 169.25E\n44.5S", "trailing-text"},
      {"44.5S\x01 169.25E", "control-character"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    std::string faults;
    CHECK(!position(row.typed, faults));
    CHECK(faults == row.code);
  }
  std::vector<notebook::Diagnostic> diagnostics;
  CHECK(!notebook::read_position(notebook::Source("argument", "  44.5S 269.25E"), diagnostics));
  REQUIRE(diagnostics.size() == 1);
  CHECK(diagnostics.front().place.column == 9);
  CHECK(diagnostics.front().place.end_column == 16);
}

TEST_CASE("a height on its own is in metres, or in feet") {
  struct Row {
    const char* typed;
    double metres;
  };
  const Row rows[] = {{"812", 812},        {"812 m", 812},    {"812m", 812}, {"-430", -430},
                      {"-.5", -0.5},       {"1000ft", 304.8}, {"0", 0},      {" 7.5 ", 7.5},
                      {"\u2212430", -430}, {"10 FT", 3.048}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    std::vector<notebook::Diagnostic> diagnostics;
    const auto height = notebook::read_height(notebook::Source("height", row.typed), diagnostics);
    CHECK(codes(diagnostics) == "");
    REQUIRE(height);
    CHECK(std::abs(height->metres(1) - row.metres) < 1e-9);
  }
  for (const char* const typed : {"", " ", "high", "8x", "8 m m", "1,200", "8%", "8°", "8 9", "nan",
                                  "8 # hut", "8\n9", "1e3"}) {
    CAPTURE(typed);
    std::vector<notebook::Diagnostic> diagnostics;
    CHECK(!notebook::read_height(notebook::Source("height", typed), diagnostics));
    CHECK(diagnostics.size() == 1);
  }
}

}  // namespace
}  // namespace lodebook::test
