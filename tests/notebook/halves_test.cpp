// SPDX-License-Identifier: MIT
// Readings of which one half was taken: a trend without its plunge.
#include "reading_one.hpp"

using namespace lodebook::notebook;
using namespace lodebook::test;

namespace {

/// The codes of a line that is read as a trend alone, and where it points.
struct Trend {
  std::string codes;
  double degrees;
};
Trend trend_of(std::string_view line, std::string_view heading = "") {
  CAPTURE(line);
  const auto book = read_line(line, heading);
  const auto attitude = good<LineAttitude>(book);
  CHECK(attitude.part() == Part::azimuth);
  CHECK_FALSE(attitude.line());
  return {codes(book), attitude.trend().degrees()};
}

std::string fault(std::string_view line, std::string_view heading = "") {
  CAPTURE(line);
  const auto book = read_line(line, heading);
  CHECK(last<Reading>(book).rejected);
  return codes(book);
}

}  // namespace

TEST_CASE("currents and flutes need no plunge, other lines are asked for it") {
  for (const std::string kind : {"current", "flute"}) {
    for (const std::string bearing : {"118", "S62E", "118.0"}) {
      const Trend trend = trend_of(kind + ' ' + bearing);
      CHECK(trend.codes == "");
      CHECK(same_direction(trend.degrees, 118));
    }
    CHECK(trend_of(kind + " 35").degrees == 35);
    CHECK(trend_of(kind + " NE").degrees == 45);
  }
  for (const std::string kind : {"lineation", "fold-axis", "striae"}) {
    for (const std::string bearing : {"N35E", "035", "035.0"}) {
      const Trend trend = trend_of(kind + ' ' + bearing, "kind striae line");
      CHECK(trend.codes == "plunge-missing");
      CHECK(same_direction(trend.degrees, 35));
    }
    CHECK(trend_of(kind + " due E", "kind striae line").degrees == 90);
    CHECK(fault(kind + " 35", "kind striae line") == "incomplete");
  }
}

TEST_CASE("a trend alone takes the words of a line") {
  const auto book = read_line("slickenline 035 on fault dextral doubtful");
  CHECK(codes(book) == "plunge-missing doubtful");
  const auto line = good<LineAttitude>(book);
  CHECK(line.sense == Sense::dextral);
  CHECK(book.kinds.at(line.on).name == "fault");
}

TEST_CASE("a mark of what should follow is not the end of a reading") {
  CHECK(fault("current 118/") == "incomplete");
  CHECK(fault("lineation N50W horizontal") == "incomplete");
  CHECK(fault("current 118, 35") == "incomplete");
}

TEST_CASE("from names where a current comes from") {
  CHECK(trend_of("current from S60W").degrees == 60);
  CHECK(trend_of("flute FROM 300").degrees == 120);
  CHECK(trend_of("current from SW").degrees == 45);
  CHECK(good<LineAttitude>(read_line("current from S60W")).bearing.azimuth().degrees() == 240);
  CHECK(fault("current from") == "incomplete");
  CHECK(fault("current from S60W 5") == "trailing-text");
  CHECK(fault("lineation from S60W") == "unknown-word");
}

TEST_CASE("a remark of one half is a remark") {
  CHECK(codes(read_line("current 118 ; 35")) == "");
  CHECK(codes(read_line("current 118 ; 118/35")) == "remark-reading");
}
