// SPDX-License-Identifier: MIT
// Names and the comparison of words, and a log as a whole: order, numbers and recovery.
#include "notebook/reading_one.hpp"

namespace lodebook::notebook {
namespace {

TEST_CASE("words are compared in the lower case of Latin, Greek and Cyrillic letters") {
  struct Row {
    const char* typed;
    const char* folded;
  };
  const Row rows[] = {
      {"Trig-Dome", "trig-dome"},
      {"ÅÄÖ", "åäö"},
      {"ÉÈÊ", "éèê"},
      {"ŁÓDŹ", "łódź"},
      {"ČŠŽ", "čšž"},
      {"ŸŃ", "ÿń"},
      {"ΑΒΓΩ", "αβγω"},
      {"ГОРА", "гора"},
      {"ЁЂ", "ёђ"},
      {"×÷", "×÷"},
      {"12°", "12°"},
      {"山", "山"},
      {"ß", "ß"},
      {"", ""},
      {"Ő", "ő"},
      {"Ĳ", "ĳ"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    CHECK(fold_case(row.typed) == row.folded);
    CHECK(fold_case(row.folded) == row.folded);
  }
}

TEST_CASE("bytes that are not UTF-8 pass unchanged") {
  CHECK(fold_case("A\xE9\xC3") == "a\xE9\xC3");
}

TEST_CASE("a name is one whatever its case, and shown as first written") {
  Names names;
  const NameId first = names.intern("Trig-Dome");
  CHECK(names.intern("TRIG-dome") == first);
  CHECK(names.find("trig-DOME") == first);
  CHECK(names.shown(first) == "Trig-Dome");
  CHECK(names.find("Cairn") == no_name);
  CHECK(names.intern("Cairn") != first);
  CHECK(names.size() == 2);
}

TEST_CASE("readings are numbered from 0, rejected ones too") {
  const auto book = test::read(
      "station Q1\nbedding N78E 41N, N98E 40N, N77E 40N\nsight\nleg S38E 5m\nlineation\n");
  const auto readings = test::all<Reading>(book);
  REQUIRE(readings.size() == 6);
  CHECK(book.reading_count == 6);
  for (std::uint32_t i = 0; i < 6; ++i)
    CHECK(readings[i].number == i);
  CHECK(readings[1].rejected);
  CHECK(readings[3].rejected);
  CHECK(readings[5].rejected);
}

TEST_CASE("the first pass counts the readings that the second finds, whatever a line looks like") {
  const std::string one = "bedding N78E 41N";
  const std::vector<std::string> lines = {"",
                                          one,
                                          "  " + one,
                                          "\t" + one,
                                          one + "\t",
                                          one + " ",
                                          "bedding",
                                          "bedding ",
                                          "Bedding N78E 41N",
                                          "bedding\tN78E 41N",
                                          "bedding\u00A0N78E 41N",
                                          "\u00A0" + one,
                                          "bedding; N78E 41N",
                                          "beddings N78E 41N",
                                          one + ", N77E 40N",
                                          one + ",",
                                          one + " ; twice, like the last",
                                          one + " ; like the last",
                                          one + " # a, b",
                                          one + " \xFF",
                                          one + "\x01",
                                          "foliation N78E 41N, N77E 40N",
                                          "lineation N78E 41",
                                          "sight Q2 N78E",
                                          one + std::string(70'000, ' '),
                                          one + std::string(70'000, 'x')};
  for (const std::string& line : lines) {
    INFO(line.substr(0, 40));
    const auto book = test::read("station Q1\n" + one + "\n" + line + "\n" + one + "\n");
    const auto readings = test::all<Reading>(book);
    CHECK(book.reading_count == readings.size());
    CHECK(readings.back().number + 1 == readings.size());
  }
}

TEST_CASE("a fault belongs to its reading, or to none") {
  const auto book = test::read("rule up\nstation Q1\nbedding N78E 41N, N98E 41N\nnonsense\n");
  REQUIRE(book.diagnostics.size() == 3);
  CHECK(book.diagnostics[0].reading == no_reading);
  CHECK(book.diagnostics[1].reading == 1);
  CHECK(book.diagnostics[2].reading == no_reading);
}

TEST_CASE("faults come in the order of their places") {
  const auto book = test::read(
      "station Q1 at 59S 342600 5049100\nnonsense\nbedding N98E 41N, N96E 41N\nlandmark C 44.65S "
      "169.03E\n");
  CHECK(test::places(book) ==
        "1:15-33 zone-south, 2:1-9 unknown-word, 3:9-13 quadrant-angle, 3:19-23 quadrant-angle");
}

TEST_CASE("recovery is at the next line") {
  const auto book =
      test::read("station Q1\nbedding (((\nbedding N78E 41N\n@@@\nbedding N77E 40N\n");
  CHECK(book.diagnostics.size() == 2);
  CHECK(book.reading_count == 3);
  CHECK(test::all<Unread>(book).size() == 1);
}

TEST_CASE("a fault found later is shown under its own word of the reading") {
  const Source source("a", "leg S38E 120m back\u00A0N37W Slope -14% to Q3 south-end");
  const Span reading{4, static_cast<std::uint32_t>(source.text().size()) - 4};
  const auto word = [&](std::string_view keyword) {
    return std::string(source.text(find_word(source, reading, keyword)));
  };
  CHECK(word("") == "S38E");
  CHECK(word("back") == "N37W");
  CHECK(word("slope") == "-14%");
  CHECK(word("to") == "Q3");
  const std::string whole(source.text(reading));
  CHECK(word("south-end") == whole);  // nothing stands behind it
  CHECK(word("vertical") == whole);
}

TEST_CASE("an entry knows its line, its column and its bytes") {
  const auto book = test::read("station Q1\n\n\t bedding N78E 41N ; x\n");
  REQUIRE(book.entries.size() == 2);
  const Entry& entry = book.entries[1];
  CHECK(entry.line == 3);
  CHECK(entry.column == 3);
  CHECK(test::text(book, entry.statement) == "bedding N78E 41N");
  CHECK(test::text(book, entry.remark) == "x");
}

}  // namespace
}  // namespace lodebook::notebook
