// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/notation.hpp>

namespace lodebook {
namespace {

using notebook::Notation;
using notebook::ReadAs;

/// Reads one reading and writes it again as it was typed.
std::string typed(const std::string& text, ReadAs as = ReadAs::own_form,
                  std::optional<HandRule> rule = {}) {
  const notebook::Notebook kinds = notebook::read_log(notebook::Source("", ""));
  const auto read = notebook::read_single(notebook::Source("", text), as, {rule});
  std::string out;
  if (const auto* bearing = std::get_if<notebook::Bearing>(&read.what))
    output::append_bearing(out, *bearing);
  if (const auto* plane = std::get_if<notebook::PlaneAttitude>(&read.what))
    output::append_plane(out, *plane);
  if (const auto* line = std::get_if<notebook::LineAttitude>(&read.what))
    output::append_line(out, *line, kinds.kinds);
  return out;
}

TEST_CASE("bearings keep their notation and get canonical spelling") {
  CHECK(typed("n 50.50 w") == "N50.5W");
  CHECK(typed("N50°30'W") == "N50.5W");
  CHECK(typed("7.5") == "007.5");
  CHECK(typed("45") == "045");
  CHECK(typed("310°") == "310");
  CHECK(typed("360") == "360");
  CHECK(typed("due n") == "N");
  CHECK(typed("ssw") == "SSW");
  // Minutes that no decimal holds come back to the same value.
  CHECK(typed("N68°32'E") == "N68.53333333333333E");
}

TEST_CASE("planes keep their form") {
  CHECK(typed("n78e/41 n") == "N78E 41N");
  CHECK(typed("258 41 nw") == "258/41 NW");
  CHECK(typed("E 41 N") == "E/41 N");
  CHECK(typed("N/45 W", ReadAs::plane) == "N/45 W");
  CHECK(typed("N78E 62% N") == "N78E 62% N");
  CHECK(typed("41 to 348", ReadAs::plane) == "41 > 348");
  CHECK(typed("41>NW", ReadAs::plane) == "41 > NW");
  CHECK(typed("bedding horizontal") == "horizontal");
  CHECK(typed("bedding vertical n20e overturned") == "vertical N20E overturned");
  CHECK(typed("N78E 41", ReadAs::plane, HandRule::left) == "N78E 41");
  CHECK(typed("085 5", ReadAs::plane, HandRule::right) == "085/5");
  CHECK(typed("N20E 90", ReadAs::plane) == "N20E 90");
  CHECK(typed("fault 020/60 E facing unknown reverse") == "020/60 E facing unknown reverse");
}

TEST_CASE("lines keep their form") {
  CHECK(typed("N50W 35") == "N50W 35");
  CHECK(typed("310 35") == "310/35");
  CHECK(typed("lineation N -15") == "N/-15");
  CHECK(typed("lineation N/15") == "N/15");
  CHECK(typed("35 to n50w", ReadAs::line) == "35 > N50W");
  CHECK(typed("lineation horizontal n50w") == "horizontal N50W");
  CHECK(typed("lineation vertical") == "vertical");
  CHECK(typed("slickenline 310/35 on fault dextral") == "310/35 on fault dextral");
}

TEST_CASE("lengths keep their unit") {
  const auto length = [](double value, notebook::LengthUnit unit) {
    std::string out;
    output::append_length(out, {value, unit});
    return out;
  };
  CHECK(length(120, notebook::LengthUnit::metres) == "120m");
  CHECK(length(400.5, notebook::LengthUnit::feet) == "400.5ft");
  CHECK(length(85, notebook::LengthUnit::paces) == "85 paces");
}

std::string bearing(double degrees, int decimals, Notation to) {
  std::string out;
  output::append_converted_bearing(out, degrees, decimals, to);
  return out;
}

TEST_CASE("converted bearings have exactly their decimals and wrap after rounding") {
  CHECK(bearing(68.5, 1, Notation::azimuth) == "068.5");
  CHECK(bearing(310, 0, Notation::azimuth) == "310");
  CHECK(bearing(68 + 32.0 / 60, 2, Notation::azimuth) == "068.53");
  CHECK(bearing(7, 2, Notation::azimuth) == "007.00");
  CHECK(bearing(359.96, 1, Notation::azimuth) == "000.0");
  CHECK(bearing(359.96, 1, Notation::quadrant) == "N");
  CHECK(bearing(310, 0, Notation::quadrant) == "N50W");
  CHECK(bearing(309.5, 1, Notation::quadrant) == "N50.5W");
  CHECK(bearing(151 + 19.0 / 60, 2, Notation::quadrant) == "S28.68E");
  CHECK(bearing(232.5, 1, Notation::quadrant) == "S52.5W");
  CHECK(bearing(90, 1, Notation::quadrant) == "E");
  CHECK(bearing(180, 0, Notation::quadrant) == "S");
  CHECK(bearing(269.6, 0, Notation::quadrant) == "W");
  CHECK(bearing(12.3456789012, 12, Notation::azimuth) == "012.3456789");
}

std::string plane(std::optional<double> strike, double dip, bool has_side, Notation to,
                  int strike_decimals = 0, int dip_decimals = 0) {
  std::string out;
  output::append_converted_plane(out, strike, dip, has_side, strike_decimals, dip_decimals, to);
  return out;
}

TEST_CASE("converted planes name their side") {
  CHECK(plane(258, 41, true, Notation::azimuth) == "258/41 N");
  CHECK(plane(258, 41, true, Notation::quadrant) == "N78E 41N");
  CHECK(plane(258, 41, false, Notation::azimuth) == "258/41 N");
  CHECK(plane(45, 32.25, true, Notation::azimuth, 1, 2) == "045.0/32.25 SE");
  CHECK(plane(225, 30, true, Notation::quadrant) == "N45E 30NW");
  CHECK(plane(112.5, 30, true, Notation::azimuth, 1) == "112.5/30 S");
  CHECK(plane(180, 45, true, Notation::quadrant) == "N/45 W");
  CHECK(plane(0, 45, true, Notation::quadrant) == "N/45 E");
  CHECK(plane(270, 41, true, Notation::quadrant) == "E/41 N");
  CHECK(plane(90, 32, true, Notation::quadrant) == "E/32 S");
  CHECK(plane(359.96, 32, true, Notation::azimuth, 1) == "000.0/32 E");
}

TEST_CASE("a converted vertical plane has a side only if one was typed") {
  CHECK(plane(20, 90, false, Notation::azimuth) == "020/90");
  CHECK(plane(20, 90, false, Notation::quadrant) == "N20E 90");
  CHECK(plane(179.96, 90, false, Notation::azimuth, 1) == "000.0/90");
  CHECK(plane(0, 90, false, Notation::quadrant) == "N/90");
  CHECK(plane(200, 90, true, Notation::azimuth) == "200/90 W");
  CHECK(plane(200, 90, true, Notation::quadrant) == "N20E 90W");
  CHECK(plane({}, 0, false, Notation::azimuth) == "horizontal");
  // As it shows.
  CHECK(plane(242, 89.96, false, Notation::azimuth, 1, 1) == "062.0/90.0");
  CHECK(plane(242, 89.94, false, Notation::azimuth, 1, 1) == "242.0/89.9 NW");
}

TEST_CASE("converted planes by their direction") {
  const auto shown = [](std::optional<double> strike, double dip, bool has_side, Notation to) {
    std::string out;
    output::append_converted_plane(out, strike, dip, has_side, 0, 0,
                                   {to, output::PlanesAs::direction});
    return out;
  };
  CHECK(shown(242, 37, true, Notation::azimuth) == "37 > 332");
  CHECK(shown(242, 37, true, Notation::quadrant) == "37 > N28W");
  CHECK(shown(269.6, 37, true, Notation::azimuth) == "37 > 000");
  CHECK(shown(270, 37, true, Notation::quadrant) == "37 > N");
  CHECK(shown(242, 90, true, Notation::azimuth) == "90 > 332");
  CHECK(shown(14, 90, false, Notation::azimuth) == "vertical 014");
  CHECK(shown(194, 90, false, Notation::quadrant) == "vertical N14E");
  CHECK(shown(std::nullopt, 0, false, Notation::azimuth) == "horizontal");
}

TEST_CASE("converted lines") {
  const auto line = [](std::optional<double> trend, double plunge, Notation to) {
    std::string out;
    output::append_converted_line(out, trend, plunge, 0, 0, to);
    return out;
  };
  CHECK(line(310, 35, Notation::azimuth) == "310/35");
  CHECK(line(310, 35, Notation::quadrant) == "N50W 35");
  CHECK(line(0, 15, Notation::quadrant) == "N/15");
  CHECK(line(180, 0, Notation::azimuth) == "180/0");
  CHECK(line({}, 90, Notation::quadrant) == "vertical");
}

TEST_CASE("what is converted reads back to the same plane") {
  for (int strike = 0; strike < 360; strike += 7) {
    for (const int dip : {1, 32, 89}) {
      for (const Notation to : {Notation::azimuth, Notation::quadrant}) {
        const std::string text = plane(strike, dip, true, to);
        CAPTURE(text);
        const auto read = notebook::read_single(notebook::Source("", text), ReadAs::plane);
        const auto* attitude = std::get_if<notebook::PlaneAttitude>(&read.what);
        REQUIRE(attitude);
        REQUIRE(attitude->plane());
        CHECK(attitude->plane()->strike().degrees() == strike);
        CHECK(attitude->plane()->dip().degrees() == dip);
      }
    }
  }
}

}  // namespace
}  // namespace lodebook
