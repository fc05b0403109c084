// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/report_words.hpp>

#include "logs.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::string totals(reduction::Counts counts) {
  std::string out;
  output::append_totals(out, counts);
  return out;
}

TEST_CASE("totals have one shape, with singular forms") {
  reduction::Counts counts;
  counts.readings = 63;
  counts.ok = 60;
  counts.suspect = 2;
  counts.rejected = 1;
  counts.stations = 14;
  counts.not_understood = 2;
  CHECK(totals(counts) ==
        "63 readings: 60 ok, 2 suspect, 1 rejected; 14 stations; 2 lines not understood");
  CHECK(totals({1, 1, 0, 0, 1, 1}) ==
        "1 reading: 1 ok, 0 suspect, 0 rejected; 1 station; 1 line not understood");
}

TEST_CASE("a report on a page ends with the command that makes a log of it") {
  const std::string page =
      "Stop 4, wet\nS0 N62E 37NW\nS0 N60E 36NW o/t\nand N61E 36NW\nbedding N62E 37NW\n"
      "jts N14E 80E\n";
  const auto last = [](const std::string& report) { return test::lines_of(report).back(); };
  CHECK(last(test::report(page)) ==
        "5 of 6 lines not understood; this makes a log of a page as people write it: lodebook "
        "fair-copy day.txt");
  CHECK(last(test::report("bedding N62E 37NW\nquux\n")) ==
        "1 reading: 1 ok, 0 suspect, 0 rejected; 0 stations; 1 line not understood");

  reduction::Counts counts;
  counts.not_understood = 5;
  const auto command = [&](const std::string& name, notebook::Encoding encoding) {
    const auto advice = output::advice_on_page(notebook::Source(name, "", encoding), counts);
    return advice.substr(advice.rfind("lodebook"));
  };
  CHECK(command("my day.txt", notebook::Encoding::utf_8) == "lodebook fair-copy 'my day.txt'");
  CHECK(command("/home/rh/day.txt", notebook::Encoding::utf_8) == "lodebook fair-copy day.txt");
  CHECK(command("<stdin>", notebook::Encoding::windows_1252) ==
        "lodebook fair-copy --encoding windows-1252 -");
}

TEST_CASE("the heading says what is added before any reading is shown") {
  const auto lines = test::lines_of(test::report(test::small_log));
  REQUIRE(lines.size() > 5);
  CHECK(lines[0] == "day.txt: Quern Ridge, 2026-02-14, AM");
  CHECK(lines[1] ==
        "  dial set to 0 (log), declination 24.6E ±0.4 (log), so 24.6 is added to "
        "every bearing");
  CHECK(lines[2] == "  right-hand rule (log); output refers to true north");
}

TEST_CASE("the heading names what an option said, and a subtraction") {
  reduction::Options options;
  options.declination = notebook::DeclinationSetting{};
  options.declination->declination = *Declination::west(12.5);
  options.set = *Declination::east(2);
  const auto lines = test::lines_of(test::report("station Q1\n bedding N78E 41N\n", options));
  CHECK(lines[0] == "day.txt");
  CHECK(lines[1] ==
        "  dial set to 2E (option), declination 12.5W (option), so 14.5 is "
        "subtracted from every bearing");
  CHECK(lines[2] ==
        "  no right-hand or left-hand rule, so every strike and dip needs its side; output refers "
        "to true north");
}

TEST_CASE("without a declination the report is loud") {
  const std::string report = test::report("station Q1\n bedding N78E 41N\n");
  CHECK(contains(report, "declination unknown, so nothing is added to the bearings"));
  CHECK(contains(report, "NO DECLINATION IS KNOWN AT THE FIRST READING: BEARINGS STAY MAGNETIC"));
  reduction::Options options;
  options.north = reduction::North::magnetic;
  const std::string asked = test::report("declination 5E\nset 0\nstation Q1\n", options);
  CHECK(contains(asked, "output refers to magnetic north, as asked"));
  CHECK_FALSE(contains(asked, "NO DECLINATION"));
}

TEST_CASE("without a reading nothing is missed") {
  CHECK_FALSE(contains(test::report(""), "NO DECLINATION"));
  CHECK_FALSE(contains(test::report("area Quern Ridge\n"), "NO DECLINATION"));
}

TEST_CASE("a station says which of its readings wait") {
  const std::string report = test::report(
      "set 0\ndeclination 0\nstation A\njoint 242/37, 240 35\n"
      "station B\njoint 100/20\n");
  CHECK(contains(report,
                 "A: no position; 2 rejected\n  1 reading waits [dip-side-missing]: line 4\n"));
  CHECK(contains(report,
                 "B: no position; 1 rejected\n  1 reading waits [dip-side-missing]: line 6\n"));
  CHECK(contains(report, "3 planes wait for 'order direction/dip'"));
}

TEST_CASE("a clean station takes one line") {
  const std::string report = test::report(test::small_log);
  std::size_t found = 0;
  for (const std::string& line : test::lines_of(report)) {
    if (!line.starts_with("Q1: ")) continue;
    ++found;
    CHECK(
        line.starts_with("Q1: 44.68910S 169.01440E given ±8 m, elevation 812 m; 7 ok; bedding ±"));
    CHECK(contains(line, "; 3 bedding within "));
    CHECK(contains(line, ", mean N"));
    CHECK(contains(line, "; lineation 0.1° out of bedding"));
  }
  CHECK(found == 1);
  CHECK(contains(report,
                 " from sights ±46.1 m; 4 ok; sight ±0.6 0.6 0.6, leg ±0.6; fore and back bearings "
                 "1.0° apart"));
  CHECK(contains(report, "nothing stands out for a second look\n"));
  CHECK(contains(report, "no substitute for local knowledge or licensed survey practice\n"));
  CHECK(test::lines_of(report).back() ==
        "12 readings: 12 ok, 0 suspect, 0 rejected; 3 stations; 0 lines not understood");
}

TEST_CASE("notes alone take one more line") {
  const std::string report =
      test::report("declination 0\nset 0\nstation Q1\n bedding 5 > 348\n lineation 310/-35\n");
  CHECK(contains(report, "\n  notes: line 4 strike-uncertain, line 5 other-end\n"));
  CHECK_FALSE(contains(report, "[other-end]"));
}

TEST_CASE("faults follow their station, and the worst come again at the end") {
  const std::string report = test::report(
      "declination 0\nset 0\nstation Q1\n bedding N98E 41N\nstation Q2\n bedding N78E 30N "
      "doubtful\n");
  const std::size_t first = report.find("Q1: no position; 1 rejected\n");
  const std::size_t fault = report.find("day.txt:4:10: error: ");
  const std::size_t second = report.find("Q2: no position; 1 suspect");
  const std::size_t worst = report.find("worth a second look:\n  day.txt:4:10: station Q1: ");
  REQUIRE(worst != std::string::npos);
  CHECK(first < fault);
  CHECK(fault < second);
  CHECK(second < worst);
  CHECK(contains(report.substr(worst), "\n  day.txt:6:19: station Q2: "));
  CHECK(test::lines_of(report).back() ==
        "2 readings: 0 ok, 1 suspect, 1 rejected; 2 stations; 0 lines not understood");
  // No position, leg or slope: nobody walks by this.
  CHECK_FALSE(contains(report, "no substitute"));
}

TEST_CASE("a setting that changes later is said where it first counts") {
  const std::string report = test::report(
      "declination 10E\nset 0\nstation Q1\n joint vertical N\nstation Q2\ndeclination 11E\n"
      " joint vertical N\n joint vertical N14E\n");
  CHECK(contains(report,
                 "Q2: no position; 2 ok; joint ±1.1 1.1\n"
                 "  from line 7 on, 11 is added to every bearing; output refers to true north\n"));
  CHECK_FALSE(contains(report, "from line 8 on"));
}

TEST_CASE("the report shows means of planes by their direction where asked") {
  const std::string log =
      "set 0\ndeclination 0\nstation Q1\nbedding N62E 37NW, N62E 37NW\n"
      "joint vertical N14E, vertical N14E\n";
  const auto shown = [](const std::string& text) {
    return test::written(output::StationReport(false, output::PlanesAs::direction),
                         {{"day.txt", text}});
  };
  CHECK(contains(shown(log), "2 bedding within 0.0°, mean 37 > 332"));
  CHECK(contains(shown(log), "2 joint within 0.0°, mean vertical 014"));
  CHECK(contains(shown("dial quadrant\n" + log), "mean 37 > N28W"));
  CHECK(contains(test::report(log), "mean 242/37 NW"));
}

TEST_CASE("several logs are totalled one by one and together") {
  const std::string report = test::written(
      output::StationReport(false),
      {{"a.txt", "station A\n joint vertical N\n"}, {"b.txt", "station B\n joint vertical N\n"}});
  CHECK(
      contains(report,
               "\na.txt: 1 reading: 1 ok, 0 suspect, 0 rejected; 1 station; 0 lines not "
               "understood\nb.txt: 1 reading: 1 ok, 0 suspect, 0 rejected; 1 station; 0 lines not "
               "understood\n2 readings: 2 ok, 0 suspect, 0 rejected; 2 stations; 0 lines not "
               "understood\n"));
}

}  // namespace
}  // namespace lodebook
