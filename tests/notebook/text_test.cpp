// SPDX-License-Identifier: MIT
// What a log's text may hold: line ends, white space, marks, bytes, comments, remarks, free text.
#include "notebook/reading_one.hpp"
#include "small_log.hpp"

namespace lodebook::test {
namespace {

using notebook::Bare;
using notebook::Entry;
using notebook::Note;
using notebook::Photo;
using notebook::Reading;
using notebook::Unit;
using notebook::Unread;

using namespace std::string_literals;

TEST_CASE("line ends, a byte-order mark and a missing last newline are accepted as plain") {
  const std::string plain = "set 0\nstation Q1\n  bedding N98E 41N\n  note end\n";
  const auto replaced = [&](const std::string& end) {
    std::string out;
    for (const char c : plain)
      out += c == '\n' ? end : std::string(1, c);
    return out;
  };
  for (const std::string& text :
       {plain, replaced("\r\n"), replaced("\r"), "\xEF\xBB\xBF" + plain,
        "\xEF\xBB\xBF" + replaced("\r\n"), plain.substr(0, plain.size() - 1),
        replaced("\r\n").substr(0, plain.size() + 3)}) {
    CAPTURE(text);
    const auto book = read(text);
    CHECK(places(book) == "3:11-15 quadrant-angle");
    CHECK(book.entries.size() == 4);
    CHECK(test::text(book, last<Note>(book).text) == "end");
  }
}

TEST_CASE("nothing at all is a log without entries") {
  for (const std::string text : {"", "\n", "\r\n\r\n", "\xEF\xBB\xBF", "  \t\n\u00A0\n"}) {
    const auto book = read(text);
    CHECK(codes(book) == "");
    CHECK(book.entries.empty());
  }
}

TEST_CASE("tabs and no-break spaces are white space") {
  for (const std::string space : {" ", "\t", "\u00A0", " \t \u00A0 ", "\u202F"}) {
    const std::string line = space + "bedding" + space + "N78E" + space + "41N" + space + "," +
                             space + "N77E 40N" + space + ";" + space + "remark" + space;
    CAPTURE(line);
    const auto book = read_line(line);
    CHECK(codes(book) == "");
    const auto readings = all<Reading>(book);
    REQUIRE(readings.size() == 2);
    CHECK(written(book, readings[1]) == "N77E 40N");
    CHECK(text(book, book.entries.back().remark) == "remark");
  }
}

TEST_CASE("keywords, kinds and names ignore case, and indentation is free") {
  const auto book =
      read("\t STATION q1\nBEDDING N78E 41N\n\t\t  Sight CAIRN n66w\nLandMark Cairn\n");
  CHECK(codes(book) == "");
  CHECK(book.reading_count == 2);
}

TEST_CASE("a byte that is not UTF-8 is an error at its line and column") {
  struct Row {
    std::string line;
    const char* expected;
  };
  const Row rows[] = {
      {"note caf\xE9 here", "2:9-10 encoding"},
      {"\xFF", "2:1-2 encoding"},
      {"bedding N78E 41N ; \xB1", "2:20-21 encoding"},
      {"note \xC2\xB0 then \xB0", "2:13-14 encoding"},  // the good one before it is one column
      {"note \xED\xA0\x80", "2:6-7 encoding"},          // a surrogate
      {"note \xC0\xAF", "2:6-7 encoding"},              // overlong
      {"note \xF4\x90\x80\x80", "2:6-7 encoding"},      // over U+10FFFF
      {"note \xE2\x82", "2:6-7 encoding"},              // cut off
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read_line(row.line);
    CHECK(places(book) == row.expected);
    CHECK(book.diagnostics.at(0).help == "save as UTF-8, or pass --encoding windows-1252");
  }
  CHECK(codes(read_line("note caf\xC3\xA9 \xE2\x82\xAC \xF0\x9F\xA7\xAD")) == "");
}

TEST_CASE("a line with a bad byte in a reading is a rejected reading, and the next line is read") {
  const auto book = read_line(
      "bedding N78\xB0"
      "E 41N\nbedding N78E 41N");
  CHECK(places(book) == "2:12-13 encoding");
  REQUIRE(book.reading_count == 2);
  CHECK(all<Reading>(book)[0].rejected);
  CHECK_FALSE(all<Reading>(book)[1].rejected);
  CHECK(book.diagnostics[0].reading == 0);
}

TEST_CASE("a UTF-16 file is recognised and named") {
  const std::string ascii = "set 0\nstation Q1\n";
  std::string little, big;
  for (const char c : ascii) {
    little += c;
    little += '\0';
    big += '\0';
    big += c;
  }
  for (const std::string& text : {"\xFF\xFE" + little, "\xFE\xFF" + big, little, big}) {
    const auto book = read(text);
    CHECK(places(book) == "1:1-2 encoding");
    CHECK(book.diagnostics.at(0).message.find("UTF-16") != std::string::npos);
    CHECK(book.entries.empty());
  }
}

TEST_CASE("NUL and other control characters are errors") {
  struct Row {
    std::string line;
    const char* expected;
  };
  const Row rows[] = {
      {"note a\0b"s, "2:7-8 control-character"},     {"note a\x1F", "2:7-8 control-character"},
      {"note a\x7F", "2:7-8 control-character"},     {"note a\x0B", "2:7-8 control-character"},
      {"note a\x0C", "2:7-8 control-character"},     {"note a\xC2\x85", "2:7-8 control-character"},
      {"\x1A", "2:1-2 control-character"},           {"# \x1B[31m", "2:3-4 control-character"},
      {"note a\x01\x02", "2:7-8 control-character"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    CHECK(places(read_line(row.line)) == row.expected);
  }
  CHECK(codes(read_line("note a\tb")) == "");
}

TEST_CASE("a line is at most 64 KiB") {
  const std::string note = "note ";
  const std::string most = note + std::string(64 * 1024 - note.size(), 'x');
  const auto good = read_line(most);
  CHECK(codes(good) == "");
  CHECK(last<Note>(good).text.length == 64 * 1024 - note.size());
  CHECK(codes(read_line(most + "\r")) == "");  // the line's end does not count
  const auto bad = read_line(most + "x\nbedding N78E 41N");
  CHECK(codes(bad) == "line-length");
  CHECK(bad.diagnostics.at(0).place.line == 2);
  CHECK(bad.diagnostics.at(0).place.column == 1);
  CHECK_FALSE(last<Reading>(bad).rejected);
}

TEST_CASE("a long line of readings is read whole") {
  std::string line = "bedding N78E 41N";
  while (line.size() < 60 * 1024)
    line += ", N78E 41N";
  const auto book = read_line(line);
  CHECK(codes(book) == "");
  CHECK(book.reading_count == (line.size() - 6) / 10);
}

TEST_CASE("a statement of very many words is one fault") {
  std::string line = "bedding N78E 41N";
  for (int i = 0; i < 1000; ++i)
    line += " overturned";
  CHECK(read_line(line).diagnostics.size() <= 1);
  line += " what";
  CHECK(codes(read_line(line)) == "trailing-text");
}

TEST_CASE("a comment starts the line, or stands behind white space with white space behind it") {
  struct Row {
    const char* line;
    const char* comment;
  };
  const Row rows[] = {
      {"# a comment", "# a comment"},
      {"   # a comment  ", "# a comment"},
      {"#a comment", "#a comment"},
      {"#", "#"},
      {"##", "##"},
      {"bedding N78E 41N # a comment", "# a comment"},
      {"bedding N78E 41N #", "#"},
      {"bedding N78E 41N\t#\ta comment", "#\ta comment"},
      {"bedding N78E 41N\u00A0#\u00A0x", "#\u00A0x"},
      {"bedding N78E 41N # one # two; three", "# one # two; three"},
      {"set 0              # nothing turned into the dial", "# nothing turned into the dial"},
      {"sight Cairn#2 N66W # x", "# x"},
      {"bedding N78E 41N ; remark # comment", "# comment"},
      {"; remark # comment", "# comment"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read_line(row.line);
    CHECK(codes(book) == "");
    CHECK(text(book, book.entries.back().comment) == row.comment);
  }
}

TEST_CASE("a # that touches a word is no comment") {
  CHECK(codes(read_line("bedding N78E 41N #comment")) == "trailing-text");
  CHECK(codes(read_line("bedding N78E 41N# comment")) == "trailing-text");
}

TEST_CASE("a remark goes from the semicolon to the end or the comment") {
  struct Row {
    const char* line;
    const char* remark;
  };
  const Row rows[] = {
      {"bedding N78E 41N ; another face, three times", "another face, three times"},
      {"bedding N78E 41N;x", "x"},
      {"bedding N78E 41N ;", ""},
      {"bedding N78E 41N ; one ; two", "one ; two"},
      {"bedding N78E 41N ; photo #12", "photo #12"},
      {"bedding N78E 41N ; remark # comment", "remark"},
      {"; only a remark", "only a remark"},
      {"bedding N78E 41N # comment ; no remark", ""},
      {"sight Cairn N66W ; hazy", "hazy"},
      {"leg S38E 120m to Q3;paced", "paced"},
      {"bedding N78E 41N ;  = a formula \t", "= a formula"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read_line(row.line);
    CHECK(codes(book) == "");
    CHECK(text(book, book.entries.back().remark) == row.remark);
  }
}

TEST_CASE("a line of only a comment or remark is kept as such") {
  const auto book = read("# a comment\n; a remark\n");
  REQUIRE(book.entries.size() == 2);
  CHECK(std::holds_alternative<Bare>(book.entries[0].what));
  CHECK(std::holds_alternative<Bare>(book.entries[1].what));
  CHECK(book.entries[0].statement.empty());
}

TEST_CASE("free text comes out byte for byte") {
  for (const std::string typed :
       {"contact is 3 m upslope; float below", "# not a comment # at all", "; not a remark",
        "1,5 and 1e3 and N98E", "two  spaces\tand a tab", "= 1 + 2", "\"quoted\"",
        "ﬂute – “marks” ° º ˚ ′ ″ − ±", "é e\u0301 \U0001F9ED \u200B x"}) {
    CAPTURE(typed);
    const auto note = read_line("note " + typed);
    CHECK(codes(note) == "");
    CHECK(text(note, last<Note>(note).text) == typed);
    CHECK(note.entries.back().remark.empty());
    CHECK(note.entries.back().comment.empty());
    const auto unit = read_line("  unit\t" + typed + "  ");
    CHECK(text(unit, last<Unit>(unit).text) == typed);
    const auto photo = read_line("PHOTO " + typed);
    CHECK(text(photo, last<Photo>(photo).text) == typed);
  }
  CHECK(last<Note>(read_line("note")).text.empty());
}

TEST_CASE("names come out byte for byte") {
  for (const std::string name : {"N50°W", "−5", "5′", "Ångström–2"}) {
    const auto book = read("station " + name);
    CHECK(codes(book) == "");
    CHECK(book.names.shown(0) == name);
  }
}

TEST_CASE("a comma with a digit on both sides is never guessed at") {
  for (const char* const line :
       {"bedding N78,5E 41N", "bedding N78E 41,5N", "bedding 078/41,081/42", "sight Cairn 310,5",
        "leg S38E 120,5m", "lineation 310/35,5", "elevation 812,5", "pace 0,76m", "set 24,6E",
        "declination 24,6E", "accuracy bearing 0,5", "tally 1,000 readings",
        "at 44,6891S 169.0144E", "landmark C elevation 812,5", "cleavage 61,5 > N12W"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    CHECK(codes(book) == "decimal-comma");
    CHECK_FALSE(book.diagnostics.at(0).help.empty());
  }
}

TEST_CASE("numbers are plain decimals") {
  for (const char* const line : {"bedding N78E 1e3 N",  "bedding N78E nan N", "bedding N78E 0x10 N",
                                 "sight A 1e2",         "sight A nan",        "sight A inf",
                                 "sight A 3.4.0",       "leg S38E 1e2m",      "elevation 1e3",
                                 "elevation nan",       "bedding 1e2/41 N",   "bedding N1e1E 41N",
                                 "lineation 310/1e1",   "pace 1e0m",          "set 1e1E",
                                 "bedding N78E 3..2 N", "bedding N78E . N",   "sight A 0x10",
                                 "elevation 0x10",      "leg S38E 0x10 m",    "accuracy dip 1e0",
                                 "declination nanE"}) {
    CAPTURE(line);
    CHECK(codes(read_line(line)) == "number");
  }
  // Minutes and seconds are below 60 and need degrees before them.
  for (const char* const line : {"sight A N20°60'W", "sight A 20°30'60\"", "sight A 20.5°30'",
                                 "sight A 20'", "elevation 20'"}) {
    CAPTURE(line);
    CHECK(codes(read_line(line)) == "number");
  }
  CHECK(codes(read_line("elevation 007.50")) == "");
  CHECK(codes(read_line("elevation 5.")) == "");
  CHECK(codes(read_line("elevation .5")) == "");
}

TEST_CASE("an unknown first word offers the nearest known one") {
  struct Row {
    const char* line;
    const char* help;
  };
  const Row rows[] = {
      {"beding N78E 41N", "bedding?"},
      {"BEDDNIG N78E 41N", "bedding?"},
      {"lineaton N50W 35", "lineation?"},
      {"elevaton 812", "elevation?"},
      {"slickenlines N50W 35", "slickenline?"},
      {"sights Cairn N66W", "sight?"},
      {"bedding: N78E 41N", "bedding?"},
      {"bdg N62E 37NW", "bedding?"},
      {"elev. 812", "elevation?"},
      {"jnt N62E 37NW", "joint?"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read_line(row.line);
    REQUIRE(codes(book) == "unknown-word");
    CHECK(book.diagnostics[0].help == row.help);
    CHECK(book.reading_count == 0);
    CHECK(all<Unread>(book).size() == 1);
  }
  // Words of the log's own count.
  CHECK(read_line("gneisosity N78E 41N", "kind gneissosity plane").diagnostics.at(0).help ==
        "gneissosity?");
  const auto far = read_line("gneissosity N78E 41N");
  CHECK(codes(far) == "unknown-word");
  CHECK(far.diagnostics.at(0).help.find("kind gneissosity plane") != std::string::npos);
}

TEST_CASE("a line that holds a reading is never offered a note") {
  struct Row {
    const char* line;
    const char* help;
  };
  const Row lines[] = {
      {"zebra N62E 37NW", "'kind zebra plane' above for a kind of your own; 'short zebra bedding'"},
      {"zebra N50W 35", "'kind zebra line' above for a kind of your own; 'short zebra lineation'"},
      {"seen here: bedding N62E 37NW", "starts with its kind: 'bedding N62E 37NW'"},
      {"overturned N62E 37NW", "starts with its kind: 'bedding N62E 37NW'"},
      {"zebra crossing by the hut", "'note' before free text"},
  };
  for (const Row& row : lines) {
    CAPTURE(row.line);
    const auto book = read_line(row.line);
    REQUIRE(codes(book) == "unknown-word");
    CHECK(book.diagnostics[0].help.find(row.help) != std::string::npos);
  }
  // Where it stands before more than one, it is probably a short word.
  const auto book = read_line("zebra N62E 37NW\nzebra N60E 35NW");
  CHECK(book.diagnostics.at(0).help.starts_with("2 lines begin so: 'short zebra bedding'"));
}

TEST_CASE("what is no remark is never offered to be one") {
  for (const std::string line :
       {"joint N62E 37NW 12", "joint N62E 37NW NE", "joint N62E 37NW ?", "joint N62E 37NW below N",
        "joint N62E 37NW overturned upright", "joint N62E 37NW upright upright",
        "lineation N50W 35 overturned", "sight A N66W 12", "leg N62E 120m 12", "set 0 5",
        "declination 24.6E 2", "dial quadrant 2"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    REQUIRE(codes(book) == "trailing-text");
    CHECK(book.diagnostics[0].help.find("remark") == std::string::npos);
    CHECK_FALSE(book.diagnostics[0].help.empty());
  }
  CHECK(read_line("joint N62E 37NW overturned upright").diagnostics.at(0).message ==
        "'upright' contradicts the facing before it");
  CHECK(read_line("joint N62E 37NW weathered").diagnostics.at(0).help == "'; ' before a remark");
}

TEST_CASE("a remark that is an attitude from end to end is warned of, and the row is kept") {
  const auto book = read_line("joint 240 85 NW ; 238 87 NW");
  REQUIRE(places(book) == "2:19-28 remark-reading");
  const auto& warned = book.diagnostics[0];
  CHECK(warned.severity == notebook::Severity::warning);
  REQUIRE(warned.fixes.size() == 1);
  std::string mended = "joint 240 85 NW ; 238 87 NW";
  const auto at = warned.fixes[0].span.offset - std::string("station Q1\n").size();
  mended.replace(at, warned.fixes[0].span.length, warned.fixes[0].text);
  CHECK(mended == "joint 240 85 NW, 238 87 NW");
  CHECK(codes(read_line(mended)) == "");
  CHECK(codes(read_line("lineation N50W 35 ; 310/36, N50W 34")) == "remark-reading");
  for (const std::string remark : {"weathered", "horizontal", "38", "238 87 NW, weathered",
                                   "another 238 87 NW", "N50W 35", "12 m upslope", "photo 3"}) {
    CAPTURE(remark);
    CHECK(codes(read_line("joint 240 85 NW ; " + remark)) == "");
  }
}

TEST_CASE("a line that looks like an attitude is offered the kind above it") {
  for (const std::string line : {"N77E 40N", "077/40 N", "41 > 348", "E 41 N", "N77E/40 N"}) {
    CAPTURE(line);
    const auto book = read_line("cleavage N78E 41N\n" + line);
    REQUIRE(codes(book) == "unknown-word");
    CHECK(book.diagnostics[0].help == "cleavage " + line + "?");
    CHECK(book.diagnostics[0].place.line == 3);
    CHECK(read_line(line).diagnostics.at(0).help == "bedding " + line + "?");
  }
}

TEST_CASE("no text is skipped silently") {
  for (const char* const line : {"bedding N78E 41N weathered",
                                 "bedding N78E 41N 5",
                                 "bedding N78E 41N N",
                                 "bedding N78E 41N .",
                                 "bedding N78E 41N !",
                                 "bedding N78E 41N ?",
                                 "bedding (N78E 41N)",
                                 "bedding 41 > 348 N",
                                 "bedding horizontal N20E",
                                 "bedding vertical N20E E",
                                 "lineation vertical 5",
                                 "bedding N78E 41N overturned upright",
                                 "fault N78E 41N normal reverse",
                                 "lineation N50W 35 on bedding on joint",
                                 "sight A N66W vertical 4 vertical 5",
                                 "sight A N66W N67W",
                                 "leg S38E 5m slope 3 slope 4",
                                 "leg S38E 5m to B to C",
                                 "leg S38E 5m back N37W back N38W",
                                 "set 0 x",
                                 "rule right left",
                                 "dial quadrant azimuth",
                                 "elevation 5 m m",
                                 "time 09:40 10",
                                 "date 2026-02-14 x",
                                 "attraction correct now",
                                 "accuracy dip 1 dip 2",
                                 "order strike/dip dip/direction",
                                 "pace 0.76m 2",
                                 "declination as-set 5E",
                                 "landmark C elevation 5 6",
                                 "bedding N78E//41 N",
                                 "bedding 41 >> 348",
                                 "bedding N78E 41N/",
                                 "lineation 310/35/",
                                 "bedding 078/41/N"}) {
    CAPTURE(line);
    const auto book = read_line(line);
    CHECK(book.diagnostics.size() == 1);
    for (const notebook::Diagnostic& diagnostic : book.diagnostics)
      CHECK(diagnostic.severity == notebook::Severity::error);
  }
}

TEST_CASE("a small complete log reports clean") {
  const auto book = read(test::small_log);
  // A note is not a fault: one reading is an azimuth on a quadrant dial.
  CHECK(places(book) == "19:35-44 notation-mixed");
  CHECK(book.reading_count == 12);
  CHECK(book.entries.size() == 30);
}

}  // namespace
}  // namespace lodebook::test
