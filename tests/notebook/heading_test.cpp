// SPDX-License-Identifier: MIT
// `heading FILE`: its lines stand before the log's, as line 0, and hold no readings.
#include <map>

#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::Code;
using notebook::HeadingFile;
using notebook::HeadingUse;
using notebook::Reading;
using notebook::ReadOptions;
using notebook::Unread;

/// A folder of files.
ReadOptions folder(std::map<std::string, std::string> files) {
  ReadOptions options;
  options.open_heading = [files = std::move(files)](std::string_view name) {
    const auto found = files.find(std::string(name));
    if (found == files.end()) return HeadingFile{std::string(name), {}, "no such file"};
    return HeadingFile{found->first, found->second, {}};
  };
  return options;
}

TEST_CASE("the lines of a heading stand before the log's") {
  const Book book =
      read("# first\nheading dial.txt\nheading \"our words.txt\" ; ours\nstation Q1\n  b N62E 37\n",
           folder({{"dial.txt", "rule right\nlandmark Mast 44.7S 169E\n"},
                   {"our words.txt", "\xEF\xBB\xBFshort b bedding\r\n# only a comment"}}));
  CHECK(codes(book) == "");
  CHECK(all<HeadingUse>(book).size() == 2);
  const auto bedding = good<notebook::PlaneAttitude>(book);
  CHECK(bedding.rule == HandRule::right);
  CHECK(all<notebook::Landmark>(book).size() == 1);
  std::size_t before = 0;
  for (const notebook::Entry& entry : book.entries)
    before += entry.line == 0 ? 1U : 0U;
  CHECK(before == 4);
}

TEST_CASE("a fault in a heading is at its place in that file") {
  const Book book = read("heading dial.txt\nstation Q1\n",
                         folder({{"dial.txt", "\nset 0\n  declination 24.6\nrule up\n"}}));
  REQUIRE(codes(book) == "declination-side unknown-word");
  const auto& fault = book.diagnostics[0];
  CHECK(fault.place.line == 0);
  CHECK(fault.place.heading == 1);
  CHECK(fault.place.heading_line == 3);
  CHECK(fault.place.column == 15);
  CHECK(fault.place.shown_line() == 3);
  CHECK(book.source.name_of(fault.place) == "dial.txt");
  CHECK(text(book, book.source.line_of(fault.place)) == "  declination 24.6");
  REQUIRE(fault.fixes.size() == 2);
  CHECK(book.source.extent(fault.fixes[0].span).line == 3);
}

TEST_CASE("a void statement in a heading is the cause of what waits for it") {
  const Book book = read("heading dial.txt\nstation Q1\nbedding N62E 37\njoint N14E 60\n",
                         folder({{"dial.txt", "set 0\nrule left hand\n"}}));
  REQUIRE(codes(book) == "trailing-text");
  CHECK(book.diagnostics[0].message.ends_with("; 2 readings wait for this rule"));
}

TEST_CASE("a heading holds no station, reading, question or further heading") {
  for (const char* line :
       {"station Q9", "bedding N62E 37NW", "sight Mast N17W", "leg N 3m", "at 44S 169E",
        "elevation 8", "time 09:40", "unit schist", "sample A", "photo 1", "note x",
        "tally 1 stations", "ask rule right", "heading dial.txt"}) {
    CAPTURE(line);
    const Book book = read("heading dial.txt\nset 0\n", folder({{"dial.txt", line}}));
    CHECK(codes(book) == "heading");
    CHECK(book.diagnostics[0].place.heading_line == 1);
    CHECK(all<Reading>(book).empty());
    CHECK(all<notebook::StationHeading>(book).empty());
  }
  CHECK(codes(read("heading dial.txt\n", folder({{"dial.txt", "staton Q9\nbedding \x01 x\n"}}))) ==
        "unknown-word control-character");
}

TEST_CASE("a heading stands at the head of the log and names a file that is there") {
  const ReadOptions options = folder({{"dial.txt", "set 0\n"}});
  CHECK(places(read("set 0\nheading dial.txt\n", options)) == "2:1-8 heading");
  CHECK(places(read("heading other.txt\n", options)) == "1:9-18 heading");
  CHECK(read("heading other.txt\n", options).diagnostics[0].message ==
        "the heading cannot be read: no such file");
  CHECK(codes(read("heading\n", options)) == "name");
  CHECK(codes(read("heading dial txt\n", options)) == "trailing-text");
  CHECK(codes(read("heading \"dial.txt\n", options)) == "name");
  CHECK(codes(read("heading dial.txt\n")) == "heading");
  // A fault before it takes nothing from the next.
  CHECK(codes(read("heading\nheading dial.txt\nheading other.txt\n", options)) == "name heading");
}

TEST_CASE("a log's own word beats heading, and no file is opened for it") {
  bool opened = false;
  ReadOptions options;
  options.open_heading = [&opened](std::string_view) {
    opened = true;
    return HeadingFile();
  };
  const Book book = read("kind heading line\nstation Q1\nheading N50W 35\n", options);
  CHECK(codes(book) == "");
  CHECK(all<Reading>(book).size() == 1);
  CHECK_FALSE(opened);
}

TEST_CASE("headings of the command line come first") {
  ReadOptions options = folder({{"dial.txt", "rule left\n"}});
  options.headings.push_back({"season.txt", "rule right\nset 3E\n", {}});
  const Book book = read("heading dial.txt\nstation Q1\nbedding N62E 37\n", options);
  CHECK(codes(book) == "");
  CHECK(good<notebook::PlaneAttitude>(book).rule == HandRule::left);
}

}  // namespace
}  // namespace lodebook::test
