// SPDX-License-Identifier: MIT
// Attitudes as values: the plane or line on the dial, or nothing where there is none.
#include "notebook/reading_one.hpp"

namespace lodebook::notebook {
namespace {

Bearing azimuth(double degrees) {
  Bearing bearing;
  bearing.angle = degrees;
  return bearing;
}
Slope slope(double degrees) {
  Slope slope;
  slope.value = degrees;
  return slope;
}

PlaneAttitude plane(PlaneAttitude::Form form, double bearing, double dip) {
  PlaneAttitude attitude;
  attitude.form = form;
  attitude.bearing = azimuth(bearing);
  attitude.dip = slope(dip);
  return attitude;
}

using Form = PlaneAttitude::Form;

TEST_CASE("strike and side take the end of the strike with the dip to its right") {
  PlaneAttitude attitude = plane(Form::strike_and_side, 78, 41);
  attitude.side = Point::N;
  REQUIRE(attitude.plane());
  CHECK(attitude.plane()->strike().degrees() == 258);
  CHECK(attitude.plane()->dip_direction().degrees() == 348);
  attitude.side = Point::S;
  CHECK(attitude.plane()->strike().degrees() == 78);
  attitude.side = Point::E;
  CHECK_FALSE(attitude.plane());
  CHECK(attitude.has_side());
}

TEST_CASE("strike by rule dips to the right or the left") {
  PlaneAttitude attitude = plane(Form::strike_by_rule, 78, 41);
  CHECK(attitude.plane()->dip_direction().degrees() == 168);
  attitude.rule = HandRule::left;
  CHECK(attitude.plane()->dip_direction().degrees() == 348);
  CHECK_FALSE(attitude.has_side());
}

TEST_CASE("dip direction, horizontal and vertical") {
  CHECK(plane(Form::dip_direction, 348, 41).plane()->strike().degrees() == 258);
  CHECK(plane(Form::dip_direction, 348, 41).has_side());
  CHECK(plane(Form::horizontal, 0, 0).plane()->is_horizontal());
  CHECK(plane(Form::vertical, 20, 90).plane()->is_vertical());
  CHECK(plane(Form::vertical, 20, 90).plane()->strike().degrees() == 20);
}

TEST_CASE("a dip out of range has no plane") {
  CHECK_FALSE(plane(Form::dip_direction, 348, 91).plane());
  CHECK_FALSE(plane(Form::dip_direction, 348, -1).plane());
}

TEST_CASE("a dip of 0 or 90 needs no side") {
  CHECK(plane(Form::strike_and_side, 20, 0).plane()->is_horizontal());
  CHECK(plane(Form::strike_and_side, 20, 90).plane()->strike().degrees() == 20);
  PlaneAttitude sided = plane(Form::strike_and_side, 20, 90);
  sided.side = Point::W;
  CHECK(sided.plane()->strike().degrees() == 200);
  // Flat, it dips to no side, so that none is impossible.
  PlaneAttitude flat = plane(Form::strike_and_side, 90, 0);
  flat.side = Point::E;
  REQUIRE(flat.plane());
  CHECK(flat.plane()->is_horizontal());
}

TEST_CASE("trend and plunge, the other end for a negative one") {
  LineAttitude line;
  line.bearing = azimuth(310);
  line.slope = slope(15);
  REQUIRE(line.line());
  CHECK(line.line()->trend().degrees() == 310);
  CHECK(line.line()->plunge().degrees() == 15);
  line.slope = slope(-15);
  CHECK(line.line()->trend().degrees() == 130);
  CHECK(line.line()->plunge().degrees() == 15);
  line.form = LineAttitude::Form::plunge_towards;
  CHECK(line.line()->trend().degrees() == 130);
  line.slope = slope(91);
  CHECK_FALSE(line.line());
  line.slope = slope(-91);
  CHECK_FALSE(line.line());
}

TEST_CASE("level and upright lines, and a rake that waits for its plane") {
  LineAttitude line;
  line.bearing = azimuth(310);
  line.form = LineAttitude::Form::horizontal;
  CHECK(line.line()->plunge().degrees() == 0);
  CHECK(line.line()->trend().degrees() == 310);
  line.form = LineAttitude::Form::vertical;
  line.slope = slope(90);
  CHECK(line.line()->is_vertical());
  line.form = LineAttitude::Form::rake;
  line.slope = slope(40);
  CHECK_FALSE(line.line());
}

TEST_CASE("a south-end reading is turned round") {
  Sight sight;
  sight.bearing = azimuth(114);
  CHECK(sight.azimuth().degrees() == 114);
  sight.south_end = true;
  CHECK(sight.azimuth().degrees() == 294);
  Leg leg;
  leg.bearing = azimuth(300);
  CHECK(leg.azimuth().degrees() == 300);
  leg.south_end = true;
  CHECK(leg.azimuth().degrees() == 120);
}

}  // namespace
}  // namespace lodebook::notebook
