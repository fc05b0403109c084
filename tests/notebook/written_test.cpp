// SPDX-License-Identifier: MIT
// Figures kept as they were typed, and what they are worth.
#include "notebook/reading_one.hpp"

namespace lodebook::notebook {
namespace {

using Pole = QuadrantBearing::Pole;
using Side = QuadrantBearing::Side;

Bearing quadrant(Pole pole, double angle, Side side) {
  Bearing bearing;
  bearing.notation = Notation::quadrant;
  bearing.pole = pole;
  bearing.angle = angle;
  bearing.side = side;
  return bearing;
}

TEST_CASE("a bearing has one azimuth in each notation") {
  CHECK(quadrant(Pole::north, 50, Side::west).azimuth().degrees() == 310);
  CHECK(quadrant(Pole::north, 0, Side::west).azimuth().degrees() == 0);
  CHECK(quadrant(Pole::south, 43, Side::east).azimuth().degrees() == 137);
  CHECK(quadrant(Pole::south, 90, Side::west).azimuth().degrees() == 270);
  Bearing azimuth;
  azimuth.angle = 310.5;
  CHECK(azimuth.azimuth().degrees() == 310.5);
  azimuth.angle = 360;
  CHECK(azimuth.azimuth().degrees() == 0);
  Bearing point;
  point.notation = Notation::point;
  point.point = Point::NNW;
  CHECK(point.azimuth().degrees() == 337.5);
}

TEST_CASE("a slope is degrees, or a percent grade") {
  Slope slope;
  slope.value = 32;
  CHECK(slope.degrees() == 32);
  slope.percent = true;
  slope.value = 100;
  CHECK(slope.degrees() == 45);
  slope.value = -100;
  CHECK(slope.degrees() == -45);
  slope.value = 62;
  CHECK(std::abs(slope.degrees() - 31.7989) < 5e-5);  // atan 0.62
}

TEST_CASE("lengths are metres, international feet or paces") {
  CHECK(Length{120, LengthUnit::metres}.metres(0.76) == 120);
  CHECK(Length{100, LengthUnit::feet}.metres(0.76) == Approx(30.48));
  CHECK(Length{100, LengthUnit::paces}.metres(0.76) == Approx(76));
}

TEST_CASE("dates are ordered") {
  CHECK(Date{2026, 2, 14} > Date{2026, 2, 13});
  CHECK(Date{2026, 2, 14} < Date{2026, 3, 1});
  CHECK(Date{2025, 12, 31} < Date{2026, 1, 1});
  CHECK(Date{2026, 2, 14} == Date{2026, 2, 14});
}

TEST_CASE("the digits typed are kept beside the value") {
  const auto book = test::read_line("bedding 007.50/05.0 W");
  const auto plane = test::good<PlaneAttitude>(book);
  CHECK(int{plane.bearing.digits} == 3);
  CHECK(int{plane.bearing.decimals} == 2);
  CHECK(int{plane.dip.digits} == 2);
  CHECK(int{plane.dip.decimals} == 1);
}

}  // namespace
}  // namespace lodebook::notebook
