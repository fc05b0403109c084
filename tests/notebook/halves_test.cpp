// SPDX-License-Identifier: MIT
// Readings of which one half was taken, and those whose two ends are alike.
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

TEST_CASE("two-ended lines need no plunge, and may be given by both ends") {
  for (const std::string kind : {"striation", "groove", "crest", "alignment", "wall"}) {
    CAPTURE(kind);
    const std::string heading = "kind wall axis";
    for (const std::string typed : {"125", "S55E", "125/305", "S55E/N55W", "S55E N55W"}) {
      const Trend trend = trend_of(kind + ' ' + typed, heading);
      CHECK(trend.codes == "");
      CHECK(same_direction(trend.degrees, 125));
    }
    CHECK(trend_of(kind + " 35", heading).degrees == 35);
    CHECK(trend_of(kind + " N/S", heading).degrees == 0);
    CHECK(trend_of(kind + " 180/000", heading).degrees == 180);
    CHECK(good<LineAttitude>(read_line(kind + " 122/27", heading)).line());
    CHECK(good<LineAttitude>(read_line(kind + " 180/0", heading)).line());
    CHECK(fault(kind + " 125/306", heading) == "pair-order");
    CHECK(fault(kind + " 30/210", heading) == "pair-order");
  }
  CHECK(fault("lineation 125/305") == "pair-order");
}

TEST_CASE("a log's own word beats one newer than the first edition") {
  const auto own = read(
      "kind groove plane\nshort crest bedding\nstation Q1\n"
      "groove 242/37 NW\ncrest 242/37 NW\nstriation 125\n");
  CHECK(codes(own) == "");
  CHECK(last<Reading>(own).kind != all<Reading>(own)[0].kind);
  CHECK(std::holds_alternative<PlaneAttitude>(all<Reading>(own)[0].what));
  CHECK(kind_of(own, all<Reading>(own)[1]) == "bedding");
  CHECK(codes(read("kind lineation axis\n")) == "word-taken");
}

namespace {

PlaneAttitude plane_of(std::string_view typed, std::string_view heading = "") {
  CAPTURE(typed);
  return good<PlaneAttitude>(read_line(std::string("bedding ").append(typed), heading));
}

}  // namespace

TEST_CASE("strike and dip may stand before their figures") {
  for (const char* typed :
       {"strike N62E dip 37 NW", "strike N62E 37NW", "N62E dip 37 NW", "strike 242/37 NW",
        "242 dip 37 NW", "strike N 62 E dip 37 NW", "dip 37 NW strike N62E", "strike N62E/dip 37NW",
        "STRIKE 062 DIP 37 N"}) {
    const auto plane = plane_of(typed).plane();
    REQUIRE(plane);
    CHECK(same_direction(plane->strike().degrees(), 242));
    CHECK(plane->dip().degrees() == 37);
  }
  CHECK(same_direction(plane_of("dip 37 > 332").plane()->strike().degrees(), 242));
  CHECK(same_direction(plane_of("dip 37 to N28W").plane()->strike().degrees(), 242));
  CHECK(
      same_direction(plane_of("dip 37 strike 242", "rule right").plane()->strike().degrees(), 242));
  CHECK(same_direction(plane_of("dip 37/332", "order dip/direction").plane()->strike().degrees(),
                       242));
  // The word says that it is the strike, whatever the order.
  CHECK(plane_of("strike 242/37 NW", "order direction/dip").plane());
  CHECK(fault("bedding strike 242/37", "order direction/dip") == "dip-side-missing");
}

TEST_CASE("alone, strike or dip is one half of a plane") {
  for (const char* typed : {"strike N66W", "strike N 66 W", "strike 294", "strike 114"}) {
    CHECK(codes(read_line(std::string("joint ") + typed)) == "partial");
    const auto plane = plane_of(typed);
    CHECK(plane.part() == Part::azimuth);
    CHECK_FALSE(plane.plane());
    CHECK(std::fmod(plane.bearing.azimuth().degrees(), 180) == 114);
  }
  CHECK(codes(read_line("bedding dip 13")) == "partial");
  CHECK(plane_of("dip 13 overturned").part() == Part::slope);
  CHECK(plane_of("dip 13").dip.degrees() == 13);
  CHECK(codes(read_line("bedding dip 0")) == "");
  CHECK(plane_of("dip 0").plane()->is_horizontal());
  CHECK(codes(read_line("joint strike N66W, strike N64W")) == "partial partial");
}

TEST_CASE("what is neither half nor whole is refused") {
  for (const char* typed : {"strike", "dip", "strike N66W dip", "strike N66W/", "dip 13 NW", "N66W",
                            "13", "strike N66W, dip 30 NE", "dip NW"}) {
    CAPTURE(typed);
    const auto book = read_line(std::string("joint ") + typed);
    CHECK(last<Reading>(book).rejected);
    CHECK(book.diagnostics.size() == 1);
  }
  CHECK(fault("joint strike N66W dip 95 NE") == "dip-range");
  CHECK(fault("joint strike N66W dip 30 NW") == "dip-side-impossible");
  CHECK(fault("joint dip 30 NW strike N66W") == "dip-side-impossible");
}

TEST_CASE("youngs says the facing, in the frame of the strike") {
  CHECK(plane_of("N62E 37NW youngs NW").facing == Facing::upright);
  CHECK(plane_of("N62E 37NW youngs N").facing == Facing::upright);
  CHECK(plane_of("N62E 37NW youngs SE").facing == Facing::overturned);
  CHECK(plane_of("37 > 332 youngs 152").facing == Facing::overturned);
  CHECK(plane_of("242/37 youngs N40W", "rule right").facing == Facing::upright);
  for (const char* typed : {"N62E 37NW youngs NE", "horizontal youngs N", "N62E/0 youngs N",
                            "strike N62E youngs NW", "dip 13 youngs NW"})
    CHECK(fault(std::string("bedding ") + typed) == "facing-impossible");
  CHECK(fault("bedding N62E 37NW overturned youngs NW") == "trailing-text");
  CHECK(fault("bedding N62E 37NW youngs") == "incomplete");
}

TEST_CASE("on a vertical plane youngs names the side") {
  for (const char* typed : {"vertical N14E youngs W", "N14E 90 youngs W", "194/90 youngs NW"}) {
    const auto plane = plane_of(typed);
    CHECK(plane.facing == Facing::upright);
    CHECK(plane.side == lodebook::Point::W);
    CHECK(same_direction(plane.plane()->strike().degrees(), 194));
  }
  const auto said = plane_of("N14E 90W youngs E");
  CHECK(said.facing == Facing::overturned);
  CHECK(same_direction(said.plane()->strike().degrees(), 194));
}

TEST_CASE("a facing may be in doubt alone") {
  const auto book = read_line("bedding N62E 37NW overturned facing doubtful");
  CHECK(codes(book) == "facing-doubtful");
  CHECK_FALSE(last<Reading>(book).doubtful);
  CHECK(good<PlaneAttitude>(book).facing == Facing::overturned);
  CHECK(good<PlaneAttitude>(book).facing_doubtful);
  CHECK(codes(read_line("bedding N62E 37NW facing doubtful doubtful")) ==
        "facing-doubtful doubtful");
}
