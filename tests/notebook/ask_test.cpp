// SPDX-License-Identifier: MIT
// `ask` before a statement: not taken until the word is deleted, one error a line, rows counted.
#include "notebook/reading_one.hpp"
#include "notebook/whole.hpp"

namespace lodebook::test {
namespace {

using notebook::Code;
using notebook::Reading;
using notebook::StationHeading;
using notebook::Unread;
using notebook::VoidSetting;

/// The readings of a log, all of which an open question rejects.
std::size_t open_readings(const Book& book) {
  for (const Reading& reading : all<Reading>(book)) {
    CHECK(reading.rejected);
    CHECK(reading.waits_for == Code::unanswered);
  }
  return all<Reading>(book).size();
}

TEST_CASE("a reading behind ask is rejected, with one error and the question in it") {
  const Book book = read_line("  ask bedding 37 > 160 ; 160 or 016?");
  CHECK(places(book) == "2:7-23 unanswered");
  CHECK(book.diagnostics[0].message == "an open question: 160 or 016?");
  CHECK(book.diagnostics[0].reading == 0);
  CHECK(book.diagnostics[0].fixes.empty());
  REQUIRE(open_readings(book) == 1);
  CHECK(written(book, all<Reading>(book)[0]) == "37 > 160");
  CHECK(kind_of(book, all<Reading>(book)[0]) == "bedding");
}

TEST_CASE("as many rows are rejected as the statement would have had") {
  for (const auto& [line, rows] :
       {std::pair("ask bedding N62E 37NW, N60E 35NW, N98E 3N", 3U), std::pair("ask bedding", 1U),
        std::pair("ask bedding 62 37", 1U), std::pair("ask lineation rake 40 from N62E", 1U),
        std::pair("ask sight Mast N17W vertical", 1U), std::pair("ask leg S38E 40 paces", 1U),
        std::pair("ask ask joint N14E 60NE doubtful", 1U)}) {
    CAPTURE(line);
    const Book book = read_line(line);
    CHECK(codes(book) == "unanswered");
    CHECK(open_readings(book) == rows);
    CHECK(diagnostic_fault(book).empty());
    CHECK(entry_fault(book).empty());
  }
}

TEST_CASE("what stands behind ask has no effect on its neighbours") {
  const Book book = read(
      "dial azimuth\nstation Q1\nask bedding N62E 37NW\nbedding 242/37 NW\n"
      "ask joint 62 37\njoint 62 37\n");
  CHECK(places(book) == "3:5-22 unanswered, 5:5-16 unanswered, 6:7-12 pair-order");
}

TEST_CASE("pairs of lines do not wait for an order of planes") {
  const std::string asked =
      "dial azimuth\nrule right\norder trend/plunge\nask order direction/dip\n";
  const Book lines = read(asked + "station Q1\nlineation 055/9\nlineation 12/34\n");
  CHECK(codes(lines) == "unanswered");
  const Book planes = read(asked + "station Q1\nbedding 155/19\nlineation 055/9\n");
  REQUIRE(codes(planes) == "unanswered");
  CHECK(planes.diagnostics[0].message == "an open question; 1 reading waits for this order");
}

TEST_CASE("a station behind ask begins its block, without a position") {
  const Book book = read(
      "station Q1 at 44.6891S 169.0144E\nask station Q2 at 44.69S 169.02E\n"
      "  bedding N62E 37NW\nask station\n  at 44.70S 169.03E\n");
  CHECK(codes(book) == "unanswered unanswered");
  const auto headings = all<StationHeading>(book);
  REQUIRE(headings.size() == 3);
  CHECK(book.names.shown(headings[1].name) == "Q2");
  CHECK_FALSE(headings[1].position);
  CHECK(headings[2].name == notebook::no_name);
}

TEST_CASE("a setting behind ask is void, and says itself how many readings wait") {
  const Book book =
      read("rule right\nask rule left\nstation Q1\nbedding N62E 37\njoint N60E 35, N61E 36NW\n");
  REQUIRE(places(book) == "2:5-14 unanswered");
  CHECK(book.diagnostics[0].message == "an open question; 2 readings wait for this rule");
  CHECK(all<Reading>(book)[0].waits_for == Code::dip_side_missing);
  CHECK_FALSE(all<Reading>(book)[2].rejected);
  for (const auto& [word, setting] :
       {std::pair("set 3E", VoidSetting::set),
        std::pair("declination 3E", VoidSetting::declination),
        std::pair("order strike/dip", VoidSetting::order), std::pair("pace 1m", VoidSetting::pace),
        std::pair("date 2026-02-14", VoidSetting::date),
        std::pair("observer JT", VoidSetting::observer), std::pair("area X", VoidSetting::none)}) {
    CAPTURE(word);
    const Book one = read_line(std::string("ask ") + word);
    CHECK(codes(one) == "unanswered");
    CHECK(last<Unread>(one).setting == setting);
  }
}

TEST_CASE("what begins with a word behind ask waits for it, and has rows all the same") {
  const Book book = read(
      "station Q1\nask kind wall plane ; or a line?\nwall N62E 37NW, N60E 36NW\n"
      "wall N98E 37NW x3\nask short j joint\nj N14E 60NE # above the ford\njoint N14E 60NE\n");
  REQUIRE(places(book) == "2:5-20 unanswered, 5:5-18 unanswered");
  CHECK(book.diagnostics[0].message ==
        "an open question: or a line?; 5 readings wait for this kind");
  CHECK(book.diagnostics[1].message == "an open question; 1 reading waits for this short word");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 7);
  for (std::size_t i = 0; i + 1 < readings.size(); ++i) {
    CHECK(readings[i].rejected);
    CHECK(readings[i].waits_for == Code::unanswered);
    CHECK(kind_of(book, readings[i]) == (i < 5 ? "wall" : "joint"));
  }
  CHECK_FALSE(readings[6].rejected);
}

TEST_CASE("a word behind ask may mean any statement, which is then in question as well") {
  const Book book = read(
      "rule right\nask short st station\nask short r rule\nask short nt note\nst Q1 at 44.7S 169E\n"
      "bedding N62E 37\nr left\nbedding N62E 37\nnt wet # all day\nnt wetter\n");
  CHECK(codes(book) == "unanswered unanswered unanswered");
  CHECK(book.diagnostics[0].message == "an open question; 1 line waits for this short word");
  CHECK(book.diagnostics[1].message == "an open question; 2 lines wait for this short word");
  CHECK(book.diagnostics[2].message == "an open question; 2 lines wait for this short word");
  CHECK_FALSE(last<StationHeading>(book).position);
  CHECK(all<Unread>(book).size() == 6);
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 2);
  CHECK_FALSE(readings[0].rejected);
  CHECK(readings[1].waits_for == Code::dip_side_missing);
}

TEST_CASE("a word is no longer in question once it is stated") {
  const Book book = read(
      "station Q1\nask kind wall line\nwall N62E 37NW\nkind wall plane\nwall N62E 37NW\n"
      "ask short b joint\nshort b bedding\nb N62E 37NW\n");
  REQUIRE(places(book) == "2:5-19 unanswered, 6:5-18 unanswered");
  CHECK(book.diagnostics[0].message == "an open question; 1 reading waits for this kind");
  CHECK(book.diagnostics[1].message == "an open question");
  const auto readings = all<Reading>(book);
  REQUIRE(readings.size() == 3);
  CHECK(readings[0].rejected);
  CHECK_FALSE(readings[1].rejected);
  CHECK(kind_of(book, readings[2]) == "bedding");
  // A question that could not be answered with yes gives no word.
  CHECK(codes(read("station Q1\nask kind bedding line\nbedding N62E 37NW\nask kind wall\n"
                   "wall N62E 37NW\n")) == "unanswered unanswered unknown-word");
  CHECK(codes(read("station Q1\nask kind wall plane\nlineation N50W 35 on wall\n")) ==
        "unanswered unknown-word");
}

TEST_CASE("any other statement behind ask is not taken either") {
  for (const char* line :
       {"ask at 44.7S 169E", "ask elevation 812", "ask time 09:40", "ask note a b c",
        "ask sample Q1-a garnet", "ask tally 3 stations", "ask short b bedding",
        "ask kind wall line", "ask what is this", "ask 37 > 332"}) {
    CAPTURE(line);
    const Book book = read_line(line);
    CHECK(codes(book) == "unanswered");
    CHECK(all<Unread>(book).size() == 1);
  }
}

TEST_CASE("a landmark behind ask is known by its name alone") {
  const Book book = read_line("ask landmark Mast 44.7S 169E elevation 900");
  CHECK(codes(book) == "unanswered");
  const auto mast = last<notebook::Landmark>(book);
  CHECK(book.names.shown(mast.name) == "Mast");
  CHECK_FALSE(mast.position);
  CHECK_FALSE(mast.elevation);
}

TEST_CASE("ask needs a statement, and sound bytes") {
  CHECK(codes(read_line("ask")) == "incomplete");
  CHECK(codes(read_line("ask ; what?")) == "incomplete");
  const Book book = read_line("ask joint N14E \xFF");
  CHECK(codes(book) == "encoding");
  CHECK(all<Reading>(book).size() == 1);
}

TEST_CASE("a log's own word beats ask") {
  const Book book = read_line("ASK N14E 60NE", "kind Ask plane");
  CHECK(codes(book).empty());
  CHECK(kind_of(book, all<Reading>(book)[0]) == "Ask");
  CHECK(codes(read_line("ask N14E 60NE", "short ask joint")).empty());
  CHECK(codes(read_line("kind sight plane")) == "word-taken");
}

}  // namespace
}  // namespace lodebook::test
