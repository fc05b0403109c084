// SPDX-License-Identifier: MIT
// Counts: tallies, dates, stations, lines not understood, and the counts of pages and log.
#include "reduced.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("rows out are readings in, and each is ok, suspect or rejected") {
  const Reduced log(on_true_dial(
      "bedding N78E 41N, N98E 40N, N77E 40N\nsight Peak N66W\nsight Peek N66W\nleg S38E 120\n"
      "bedding\nstation Q2\njoint vertical N14E doubtful\n"));
  INFO(log.codes());
  const auto& counts = log.counts();
  CHECK(log.row_count() == 8);
  CHECK(counts.readings == 8);
  CHECK(counts.ok == 3);
  CHECK(counts.suspect == 2);
  CHECK(counts.rejected == 3);
  CHECK(counts.stations == 2);
  CHECK(counts.not_understood == 0);
  CHECK(counts.errors == 3);
  CHECK(counts.warnings == 2);
}

TEST_CASE("a reading with several faults is one suspect reading") {
  const Reduced log(on_true_dial("sight Peek N66W vertical 60 doubtful\n"));
  CHECK(log.counts().suspect == 1);
  CHECK(log.counts().warnings == 3);
  CHECK(log.row().codes.size() == 3);
}

TEST_CASE("notes leave a reading ok") {
  const Reduced log("dial quadrant\n" + on_true_dial("bedding 085/2 N\nlineation N50W -35\n"));
  INFO(log.codes());
  CHECK(log.counts().notes == 3);
  CHECK(log.counts().ok == 2);
  CHECK(log.row(0).codes == std::vector{Code::notation_mixed, Code::strike_uncertain});
}

TEST_CASE("lines that are not understood are counted once each, and apart from readings") {
  const Reduced log(on_true_dial(
      "quux\nelevation x\nelevation y\ndate 31-02-2026\nbedding N98E 41N\nshort b quux extra\n"));
  INFO(log.codes());
  CHECK(log.counts().not_understood == 5);
  CHECK(log.counts().rejected == 1);
}

TEST_CASE("a log is rough where a fifth of its lines is not understood, beyond a few slips") {
  const auto is_rough = [](std::size_t readings, std::size_t others) {
    std::string log;
    for (std::size_t i = 0; i < readings; ++i)
      log += "joint N14E 80E, N15E 81E\n";
    for (std::size_t i = 0; i < others; ++i)
      log += "quux N14E 80E\n";
    return reduction::is_rough(Reduced(on_true_dial(log + "note a wet day\n")).counts());
  };
  CHECK(is_rough(20, 5));
  CHECK_FALSE(is_rough(21, 5));
  CHECK(is_rough(40, 10));
  CHECK_FALSE(is_rough(41, 10));
  CHECK(is_rough(0, 5));
  CHECK_FALSE(is_rough(0, 4));
  CHECK_FALSE(is_rough(0, 0));

  // A question is understood, and so is a reading that is refused.
  CHECK_FALSE(reduction::is_rough(Reduced(on_true_dial("ask unit banded schist\nask time 9:40\n"
                                                       "ask elevation 812\nask note a\n"
                                                       "ask area Quern Ridge\njoint N98E 80E\n"
                                                       "joint N98E 81E\njoint N98E 82E\n"))
                                      .counts()));
}

TEST_CASE("a tally is counted since the start or the last one") {
  const std::string day =
      "station Q1\njoint vertical N, vertical N7E\nstation Q2\njoint N98E 41N\n";
  const std::string heading = "set 0\ndeclination 0\n";
  CHECK(Reduced(heading + day + "tally 2 stations 3 readings\n").counts().warnings == 0);
  CHECK(Reduced(heading + day + "tally 3 readings\n").count(Code::tally) == 0);
  CHECK(Reduced(heading + day + "tally 2 stations\n").count(Code::tally) == 0);
  CHECK(Reduced(heading + day + "tally 2 stations 3 readings\nstation Q3\njoint vertical N\n" +
                "tally 1 stations 1 readings\ntally 0 stations 0 readings\n")
            .count(Code::tally) == 0);

  const Reduced wrong(heading + day + "tally 3 stations 2 readings\n");
  const auto said = wrong.all(Code::tally);
  REQUIRE(said.size() == 2);
  CHECK(said[0]->severity == Severity::warning);
  CHECK(said[0]->place.line == 7);
  CHECK(said[0]->message.find("3 stations") != std::string::npos);
  CHECK(said[1]->message.find("has 3") != std::string::npos);
  CHECK(wrong.counts().suspect == 0);

  // Readings before the first station count, and a station whose heading is faulty.
  CHECK(Reduced(heading + "joint vertical N\nstation Q1 Q2\ntally 1 stations 1 readings\n")
            .count(Code::tally) == 0);
}

TEST_CASE("a tally counts readings typed, also where they become one mean") {
  const Reduced log(on_true_dial("joint vertical N, vertical N2E\ntally 1 stations 2 readings\n"),
                    means());
  CHECK(log.row_count() == 1);
  CHECK(log.count(Code::tally) == 0);
}

TEST_CASE("a date before the one above it is doubted") {
  const Reduced log(
      "date 2026-02-14\ndate 2026-02-14\ndate 2026-02-15\ndate 2025-02-16\ndate 2025-03-01\n");
  const Diagnostic& said = log.only(Code::date_order);
  CHECK(said.severity == Severity::warning);
  CHECK(said.place.line == 4);
  CHECK(said.message.find("2025-02-16") != std::string::npos);
  CHECK(said.message.find("2026-02-15") != std::string::npos);
}

TEST_CASE("two blocks of one station are both kept, with a warning") {
  const Reduced log(on_true_dial("joint vertical N\nstation q1\njoint vertical N\n"));
  const Diagnostic& said = log.only(Code::station_repeated);
  CHECK(said.severity == Severity::warning);
  REQUIRE(said.related.size() == 1);
  CHECK(said.related.front().place.line == 4);
  CHECK(log.counts().stations == 2);
  CHECK(log.counts().ok == 2);
  CHECK(log.pages().at(2).station == "Q1");
  CHECK(log.row(1).surface == 1);
}

TEST_CASE("readings before the first station are kept, and said once") {
  const Reduced log("set 0\ndeclination 0\njoint vertical N\njoint vertical E\nstation Q1\n");
  CHECK(log.count(Code::reading_outside_station) == 1);
  CHECK(log.pages().front().rows.size() == 2);
  CHECK_FALSE(log.pages().front().is_station);
  CHECK(log.counts().ok == 2);
  CHECK(log.counts().stations == 1);
}

TEST_CASE("local attraction is not corrected, and that is said") {
  const Reduced log(on_true_dial("attraction correct\nleg S38E 120m\n"));
  CHECK(log.only(Code::attraction_unapplied).severity == Severity::warning);
  CHECK(log.counts().ok == 1);
}

TEST_CASE("a log has a page before its first station, and one a station") {
  for (const char* text : {"", "\n\n", "# only a comment\n"}) {
    const Reduced log(text);
    REQUIRE(log.pages().size() == 1);
    CHECK(log.row_count() == 0);
    CHECK(log.counts().readings == 0);
    CHECK(log.diagnostics().empty());
  }
  const Reduced log("station Q1\n\nstation Q2\njoint vertical N\n\n");
  REQUIRE(log.pages().size() == 3);
  CHECK_FALSE(log.pages()[0].is_station);
  CHECK(log.pages()[1].first_line == 1);
  CHECK(log.pages()[1].last_line == 2);
  CHECK(log.pages()[2].first_line == 3);
  CHECK(log.pages()[2].last_line == 5);
  CHECK(log.pages()[2].station == "Q2");
}

TEST_CASE("a station whose heading is not understood does not give its readings to the one above") {
  const Reduced log(on_true_dial("joint vertical N\nstation\njoint vertical N\n"));
  REQUIRE(log.pages().size() == 3);
  CHECK(log.pages()[2].station.empty());
  CHECK(log.pages()[2].is_station);
  CHECK(log.pages()[2].rows.size() == 1);
}

TEST_CASE("faults stand on the page of their line, in order") {
  const Reduced log(on_true_dial(
      "quux\nbedding N78E 41N, N78E 92N, N50W 40E, N77E 40N\nstation Q2\nleg S38E 9m back N20E\n"));
  for (const Page& page : log.pages()) {
    const notebook::Place* before = nullptr;
    for (const Diagnostic& diagnostic : page.diagnostics) {
      CHECK(diagnostic.place.line >= page.first_line);
      CHECK(diagnostic.place.line <= page.last_line);
      if (before) {
        CHECK(std::pair(before->line, before->column) <=
              std::pair(diagnostic.place.line, diagnostic.place.column));
      }
      before = &diagnostic.place;
    }
  }
  CHECK(log.pages().at(2).diagnostics.size() == 1);
}

TEST_CASE("counts of logs add up") {
  reduction::Counts sum = Reduced(on_true_dial("joint vertical N\nquux\n")).counts();
  sum += Reduced(on_true_dial("joint vertical N doubtful\njoint N98E 3N\n")).counts();
  CHECK(sum.readings == 3);
  CHECK(sum.ok == 1);
  CHECK(sum.suspect == 1);
  CHECK(sum.rejected == 1);
  CHECK(sum.stations == 2);
  CHECK(sum.not_understood == 1);
  CHECK(sum.errors == 2);
  CHECK(sum.warnings == 1);
  CHECK(sum.lines() == 4);
}
