// SPDX-License-Identifier: MIT
// Every refusal of the language: its code, the words under the caret, and what it advises.
#include <cctype>

#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Diagnostic;
using notebook::Reading;
using notebook::Severity;

/// `carets` stand under the columns at fault of `line`, which is read at a station.
struct Row {
  const char* line;
  const char* carets;
  const char* code;
  const char* help;  ///< a part of it
  const char* heading = "";
};

// The carets stand under the line above them.
// clang-format off
const Row rows[] = {
    // bearings
    {"bedding N98E 41N",
     "        ^^^^", "quadrant-angle", "S82E is 98 degrees clockwise from north"},
    {"sight A S100W",
     "        ^^^^^", "quadrant-angle", "N80W is 100 degrees clockwise from south"},
    {"sight A N 95 E",
     "        ^^^^^^", "quadrant-angle", "S85E"},
    {"sight A N95W",
     "        ^^^^", "quadrant-angle", "S85W is 95 degrees counterclockwise from north"},
    {"sight A N200E",
     "        ^^^^^", "quadrant-angle", "90 at most"},
    {"sight A E20N",
     "        ^^^^", "quadrant-letters", "N70E?"},
    {"sight A W30S",
     "        ^^^^", "quadrant-letters", "S60W?"},
    {"sight A N50",
     "        ^^^", "quadrant-letters", "N50E or N50W?"},
    {"sight A N50S",
     "        ^^^^", "quadrant-letters", "N50E or N50W?"},
    {"sight A N50 30W",
     "        ^^^^^^^", "quadrant-letters", "N50°30'W"},
    {"sight A 50W",
     "        ^^^", "quadrant-letters", "N50W or S50W?"},
    {"bedding N50 41 E",
     "        ^^^^^^^^", "quadrant-letters", "'N50E 41 E' or 'N50W 41 E'?"},
    {"bedding N50 41",
     "        ^^^", "quadrant-letters", "'N50E 41 SE', 'N50E 41 NW', 'N50W 41 NE' or 'N50W 41 SW'?"},
    {"bedding E20N 41N",
     "        ^^^^", "quadrant-letters", "N70E?"},
    {"sight A 412",
     "        ^^^", "azimuth-range", "052?"},
    {"leg N14E 99999999999m",
     "         ^^^^^^^^^^^", "number", ""},
    {"bedding 28SW 55SW",
     "        ^^^^^^^^^", "pair-order", ""},
    {"sight A 360.1",
     "        ^^^^^", "azimuth-range", ""},
    {"sight A -20",
     "        ^^^", "azimuth-range", "340?"},
    {"bedding 412/41 N",
     "        ^^^", "azimuth-range", "052?"},
    {"leg 412 100m",
     "    ^^^", "azimuth-range", "052?"},
    {"lineation 412/15",
     "          ^^^", "azimuth-range", "052? type '052/15'"},
    {"cleavage 61 > 412",
     "              ^^^", "azimuth-range", "052? type '61 > 052'"},
    // planes
    {"bedding N78E 95N",
     "             ^^", "dip-range", "if overturned, type 'N78E 85S overturned'"},
    {"bedding 95 > 348",
     "        ^^", "dip-range", "if overturned, type '85 > 168 overturned'"},
    {"bedding 078/-5 N",
     "            ^^", "dip-range", "a dip has no sign: '078/5 N'"},
    {"bedding N78E 41",
     "        ^^^^^^^", "dip-side-missing", "'N78E 41 S' or 'N78E 41 N'; or a line above: 'rule right' or 'rule left'"},
    {"bedding 078/41",
     "        ^^^^^^", "dip-side-missing", "rule right"},
    {"bedding N78E 41E",
     "               ^", "dip-side-impossible", "'N78E 41S' or 'N78E 41N'"},
    {"bedding N47E 41 NE",
     "                ^^", "dip-side-impossible", "'N47E 41 SE', 'N47E 41 NW' or 'N47W 41 NE'"},
    {"bedding N 38 W",
     "        ^^^^^^", "attitude-ambiguous", "N/38 W"},
    {"bedding N38W",
     "            ^", "incomplete", "type the dip behind it, and the side that goes down"},
    {"bedding 41/348",
     "        ^^^^^^", "pair-order", "41 > 348", "rule right"},
    {"bedding 78/41",
     "        ^^^^^", "pair-order", "078/41", "rule right"},
    {"bedding 348 > 41",
     "        ^^^^^^^^", "pair-order", "'41 > 348', '348/41 E' or '348/41 W'"},
    {"bedding 348/41",
     "        ^^^^^^", "pair-order", "'41 > 348'", "order dip/direction"},
    {"bedding 41N 3",
     "        ^^^^^", "pair-order", "'41 > N3E' or '41 > N3W'"},
    {"bedding N78E",
     "            ^", "incomplete", "type the dip behind it, and the side that goes down"},
    {"bedding",
     "       ^", "incomplete", "N62E 37NW"},
    {"bedding 17",
     "        ^^", "incomplete", "type the strike before it, or > and the dip direction behind it"},
    {"bedding 41 >",
     "            ^", "incomplete", ""},
    {"bedding vertical",
     "                ^", "incomplete", "type the strike behind it"},
    {"bedding N75E 39N, ",
     "                 ^", "incomplete", "N62E 37NW"},
    // lines
    {"lineation N50W 95",
     "               ^^", "plunge-range", "0 to 90"},
    {"lineation N50W -35",
     "               ^^^", "other-end", ""},
    {"lineation rake 95 from N78E",
     "               ^^", "rake-range", "nearer end"},
    {"lineation 35/310",
     "          ^^^^^^", "pair-order", "35 > 310"},
    {"lineation N50W/",
     "               ^", "incomplete", "type the plunge behind it"},
    {"lineation 035 on bedding",
     "          ^^^", "plunge-missing", "type the plunge behind it, if it was read"},
    {"lineation N50W 35 on lineation",
     "                     ^^^^^^^^^", "unknown-word", "on bedding"},
    // sights and legs
    {"sight Trig Dome N66W",
     "           ^^^^", "name", "\"Trig Dome\" in quotes, or Trig-Dome?"},
    {"sight N17W Cairn",
     "           ^^^^^", "name", "the name comes first: 'Cairn N17W'"},
    {"station Q2: below crag",
     "            ^^^^^", "name", "'Q2  ; below crag'"},
    {"station Q2: crag 44.7S 169E",
     "            ^^^^", "name", "Q2-crag?"},
    {"leg 040 1,250m",
     "        ^^^^^", "decimal-comma", "'040 1.250m' or '040 1250m'"},
    {"sight A N66W vertical 91",
     "                      ^^", "slope-range", "%"},
    {"leg S38E 120",
     "         ^^^", "distance-unit", "'120m' or '120ft'"},
    {"leg S38E 120' to B",
     "         ^^^^", "distance-unit", "ft"},
    {"leg S38E 50 paces",
     "         ^^", "pace-missing", "pace 0.76m"},
    {"leg S38E",
     "        ^", "incomplete", "120m"},
    // numbers
    {"bedding N78,5E 41N",
     "         ^^^^", "decimal-comma", "'N78.5E 41N'"},
    {"sight A 12,5",
     "        ^^^^", "decimal-comma", "'A 12.5'"},
    {"sight A 1e3",
     "        ^^^", "number", ""},
    {"sight A nan",
     "        ^^^", "number", ""},
    {"lineation N50W-35",
     "              ^", "number", "35, or minus 35?"},
    {"sight A 3.4.0",
     "        ^^^^^", "number", "'A 34.0' or 'A 3.40'?"},
    {"sight A 20°60'",
     "        ^^^^^^", "number", ""},
    {"elevation 0x10",
     "          ^^^^", "number", ""},
    {"bedding N5OW 30W",
     "        ^^^^", "quadrant-letters", "N50W or N5W? type 'N50W 30W' or 'N5W 30W'"},
    {"bedding N50oW 30E",
     "        ^^^^^", "quadrant-letters", "N50W? type 'N50W 30E'"},
    {"lineation N50W 3o",
     "                ^", "trailing-text", "'N50W 30'?"},
    {"bedding 2O0 30 N",
     "        ^^^", "number", "'200 30 W' or '200 30 E'"},
    // words
    {"beding N78E 41N",
     "^^^^^^", "unknown-word", "bedding?"},
    {"N78E 41N",
     "^^^^", "unknown-word", "bedding N78E 41N?"},
    {"bedding N78E 41N weathered",
     "                 ^^^^^^^^^", "trailing-text", "remark"},
    {"bedding N78E 41N overturnd",
     "                 ^^^^^^^^^", "trailing-text", "overturned?"},
    {"bedding N78E 41N dextral",
     "                 ^^^^^^^", "trailing-text", "remark"},
    {"bedding N78E 41N doubtful",
     "                 ^^^^^^^^", "doubtful", ""},
    {"sight A N66W\u00A0°°",
     "             ^^", "trailing-text", ""},
    // stations and settings
    {"landmark Trig Dome",
     "              ^^^^", "name", "\"Trig Dome\" in quotes, or Trig-Dome?"},
    {"datum NAD27",
     "      ^^^^^", "datum", "convert"},
    {"declination 24.6",
     "            ^^^^", "declination-side", "24.6E or 24.6W?"},
    {"set -24.6",
     "    ^^^^^", "declination-side", "24.6W?"},
    {"declination 65E",
     "            ^^^", "declination-large", "magnetic pole"},
    {"declination model 24.6E",
     "                  ^^^^^", "trailing-text", "leave it out"},
    {"date 2026-02-30",
     "     ^^^^^^^^^^", "date", "2026-02-14"},
    {"date 14.2.2026",
     "     ^^^^^^^^^", "date", "2026-02-14?"},
    {"time 9.40",
     "     ^^^^", "time", "09:40"},
    {"time 9:40pm",
     "     ^^^^^^", "time", "21:40?"},
    {"time 0940",
     "     ^^^^", "time", "09:40?"},
    {"rule right-hand",
     "     ^^^^^^^^^^", "unknown-word", "right?"},
    {"order direction dip",
     "      ^^^^^^^^^^^^^", "unknown-word", "direction/dip?"},
    {"pace 76cm",
     "     ^^", "distance-unit", ""},
    {"pace 2.5'",
     "     ^^^^", "distance-unit", "'2.5ft'"},
    {"set E24.6",
     "    ^^^^^", "number", "24.6E?"},
    {"declination modle",
     "            ^^^^^", "number", "model?"},
    {"accuracy bearing ±0.5",
     "                 ^", "number", "leave the ± out"},
    {"kind vug",
     "        ^", "incomplete", "'kind vug plane', 'kind vug line' or 'kind vug axis'"},
    {"landmark Cairn, 44.65S 169.03E",
     "              ^", "name", "'Cairn 44.65S 169.03E'"},
    {"landmark Peak 44.65S 169.03E 1412m",
     "                             ^^^^^", "position", "'elevation 1412m'"},
    {"landmark Col 44.65S 169.03E elev 1412",
     "                            ^^^^", "position", "elevation?"},
    {"at 345210 5052310",
     "   ^^^^^^", "position", "59G 345210 5052310"},
    {"elevation 812 metres",
     "              ^^^^^^", "trailing-text", "m?"},
    {"sight A N66W vert 4",
     "             ^^^^^^", "trailing-text", "vertical?"},
    {"leg 120m S38E",
     "    ^^^", "incomplete", "leg S38E 120m"},
    {"leg S38E 120m N37W",
     "              ^^^^", "trailing-text", "'back N37W'"},
    {"leg S38E 120m, back N37W",
     "             ^^^^^^^^^^^", "trailing-text", "'S38E 120m back N37W'"},
    {"short rake bedding",
     "      ^^^^", "word-taken", ""},
    {"rule up",
     "     ^^", "unknown-word", "right or left"},
    {"at 94.6891S 169.0144E",
     "   ^^^^^^^^", "position", ""},
    {"station Q1",
     "        ^^", "station-repeated", "another name"},
    // text
    {"note caf\xE9",
     "        ^", "encoding", "--encoding windows-1252"},
    {"note a\x1F",
     "      ^", "control-character", "delete"},
    // typed at night
    {"sight A N 50",
     "        ^^^^", "quadrant-letters", "N50E or N50W?"},
    {"sight A N 50 30 W",
     "        ^^^^^^^^^", "quadrant-letters", "N50°30'W"},
    {"leg S 38 120m",
     "    ^^^^", "quadrant-letters", "S38E or S38W?"},
    {"cleavage 61 > N 12",
     "              ^^^^", "quadrant-letters", "N12E or N12W?"},
    {"joint N14E vertical",
     "           ^^^^^^^^", "incomplete", "vertical N14E"},
    {"lineation N50W horizontal",
     "               ^^^^^^^^^^", "incomplete", "horizontal N50W"},
    {"set 24.6 degrees E",
     "    ^^^^", "declination-side", "24.6E or 24.6W?"},
    {"station Q9 elevation 400",
     "           ^^^^^^^^^^^^^", "trailing-text", "a line of its own"},
    {"station Q9 at 44.6S 169E elevation 812",
     "                         ^^^^^^^^^^^^^", "trailing-text", "a line of its own"},
    {"landmark C at",
     "             ^", "incomplete", "44.6891S 169.0144E"},
};
// clang-format on

TEST_CASE("every refusal has its code, its place and its advice") {
  for (const Row& row : rows) {
    CAPTURE(row.line, row.carets);
    const auto book = read_line(row.line, row.heading);
    CHECK(codes(book) == row.code);
    if (book.diagnostics.size() != 1) continue;
    const Diagnostic& fault = book.diagnostics[0];
    const std::string carets(row.carets);
    CHECK(fault.place.column == carets.find('^') + 1);
    CHECK(fault.place.end_column == carets.size() + 1);
    CAPTURE(fault.help);
    CHECK(fault.help.find(row.help) != std::string::npos);
  }
}

TEST_CASE("messages state the fact in lower case without a full stop") {
  for (const Row& row : rows) {
    for (const Diagnostic& fault : read_line(row.line, row.heading).diagnostics) {
      CAPTURE(fault.message, fault.help);
      CHECK_FALSE(fault.message.empty());
      CHECK_FALSE(std::isupper(static_cast<unsigned char>(fault.message[0])));
      CHECK(fault.message.back() != '.');
      CHECK(fault.message.back() != '!');
      CHECK(fault.message.find('\n') == std::string::npos);
      if (!fault.help.empty()) CHECK(fault.help.back() != '.');
    }
  }
}

TEST_CASE("an error rejects its reading, a warning or note does not") {
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read_line(row.line, row.heading);
    const bool error = book.diagnostics.at(0).severity == Severity::error;
    const auto readings = all<Reading>(book);
    if (readings.empty()) continue;
    CHECK(readings.back().rejected == error);
    CHECK(book.diagnostics[0].reading == readings.back().number);
  }
}

TEST_CASE("one bad reading among good ones costs only itself") {
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read(std::string(row.heading) + "\nstation Q1\nbedding N78E 41N\n" +
                           row.line + "\nbedding N77E 40N\nstation Q2\nlineation N50W 35\n");
    CHECK(codes(book) == row.code);
    const auto readings = all<Reading>(book);
    REQUIRE(readings.size() >= 3);
    CHECK_FALSE(readings.front().rejected);
    CHECK_FALSE(readings[readings.size() - 2].rejected);
    CHECK_FALSE(readings.back().rejected);
  }
}

TEST_CASE("a page of slips: each has its code and place, and the rest still comes out") {
  const auto book = read(
      "station Q1\n"
      "  bedding N98E 41N\n"
      "  sight A E20N\n"
      "  sight A 412\n"
      "  bedding N78E 41E\n"
      "  bedding 17\n"
      "  bedding N78E 12,5N\n"
      "  lineation 310/1e3\n"
      "  lineation nan 15\n"
      "  bedding N78E 95N\n"
      "  bedding N78E 41N\n");
  CHECK(places(book) ==
        "2:11-15 quadrant-angle, 3:11-15 quadrant-letters, 4:11-14 azimuth-range, "
        "5:18-19 dip-side-impossible, 6:11-13 incomplete, 7:16-20 decimal-comma, "
        "8:17-20 number, 9:13-16 number, 10:16-18 dip-range");
  CHECK(book.reading_count == 10);
  CHECK_FALSE(last<Reading>(book).rejected);
}

TEST_CASE("a thousand faulty lines give a thousand faults, one a line") {
  std::string text = "station Q1\n";
  const char* const lines[] = {"bedding N98E 41N", "sight A 412", "beding N78E 41N", "leg S38E 120",
                               "rule up"};
  for (int i = 0; i < 1000; ++i)
    text.append(lines[i % 5]).append("\n");
  const auto book = read(text);
  REQUIRE(book.diagnostics.size() == 1000);
  for (std::uint32_t i = 0; i < 1000; ++i)
    REQUIRE(book.diagnostics[i].place.line == i + 2);
  CHECK(book.reading_count == 600);
}

TEST_CASE("a thousand bad repeats on one line are a thousand faults") {
  std::string line = "bedding N98E 41N";
  for (int i = 1; i < 1000; ++i)
    line += ", N98E 41N";
  const auto book = read_line(line);
  CHECK(book.diagnostics.size() == 1000);
  CHECK(book.reading_count == 1000);
}

TEST_CASE("the user's text is quoted") {
  CHECK(read_line("bedding N78E 41N weathered").diagnostics.at(0).message.find("'weathered'") !=
        std::string::npos);
  CHECK(read_line("declination 24.6").diagnostics.at(0).message.find("'24.6'") !=
        std::string::npos);
  CHECK(read_line("beding N78E 41N").diagnostics.at(0).message.find("'beding'") !=
        std::string::npos);
}

}  // namespace
}  // namespace lodebook::test
