// SPDX-License-Identifier: MIT
// Differences of directions, wrapping, and trigonometry exact at quarter turns.
#include <lodebook/orientation/angle.hpp>

#include <cmath>
#include <limits>
#include <numbers>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("degrees wrap into [0, 360), never to 360 or minus zero") {
  CHECK(wrap_degrees(0) == 0);
  CHECK(wrap_degrees(360) == 0);
  CHECK(wrap_degrees(-360) == 0);
  CHECK(wrap_degrees(725) == 5);
  CHECK(wrap_degrees(-1) == 359);
  CHECK(wrap_degrees(-721) == 359);
  CHECK(wrap_degrees(-1e-17) == 0);
  for (const double zero : {-0.0, -360.0, 360.0, -720.0, -1e-17}) {
    CAPTURE(zero);
    CHECK_FALSE(std::signbit(wrap_degrees(zero)));
  }
}

TEST_CASE("any number of degrees wraps into [0, 360) and keeps its direction") {
  Seeded random(20260214);
  for (int i = 0; i < 2000; ++i) {
    const double degrees = random.between(-5000, 5000);
    CAPTURE(degrees);
    const double wrapped = wrap_degrees(degrees);
    CHECK(wrapped >= 0);
    CHECK(wrapped < 360);
    CHECK_THAT(wrapped, points_to(degrees));
    CHECK(wrap_degrees(wrapped) == wrapped);
  }
}

TEST_CASE("an angle is finite") {
  CHECK_FALSE(Angle::from_degrees(std::nan("")));
  CHECK_FALSE(Angle::from_degrees(std::numeric_limits<double>::infinity()));
  CHECK_FALSE(Angle::from_degrees(-std::numeric_limits<double>::infinity()));
  CHECK(angle(-1234.5).degrees() == -1234.5);
  CHECK(Angle().degrees() == 0);
}

TEST_CASE("angles add, subtract, negate and compare") {
  CHECK((angle(350) + angle(20)).degrees() == 370);
  CHECK((angle(10) - angle(20)).degrees() == -10);
  CHECK((-angle(10)).degrees() == -10);
  CHECK_FALSE(std::signbit((-Angle()).degrees()));
  CHECK_FALSE(std::signbit(angle(-0.0).degrees()));
  CHECK(angle(10) < angle(20));
  CHECK(angle(10) == angle(10));
}

TEST_CASE("sine and cosine are exact at quarter turns, of either sign and any count") {
  const double sines[] = {0, 1, 0, -1};
  for (int quarter = -9; quarter <= 9; ++quarter) {
    const Angle turned = angle(90.0 * quarter);
    const int place = ((quarter % 4) + 4) % 4;
    CAPTURE(quarter);
    CHECK(sin(turned) == sines[place]);
    CHECK(cos(turned) == sines[(place + 1) % 4]);
    if (sin(turned) == 0) CHECK_FALSE(std::signbit(sin(turned)));
    if (cos(turned) == 0) CHECK_FALSE(std::signbit(cos(turned)));
  }
}

TEST_CASE("the handbook's exact values are exact") {
  CHECK(sin(angle(30)) == 0.5);
  CHECK(sin(angle(150)) == 0.5);
  CHECK(sin(angle(-30)) == -0.5);
  CHECK(cos(angle(60)) == 0.5);
  CHECK(cos(angle(240)) == -0.5);
  CHECK(tan(angle(45)) == 1);
  CHECK(tan(angle(-45)) == -1);
  CHECK(tan(angle(225)) == 1);
}

TEST_CASE("the tangent is zero at half turns, and at quarter turns large but finite") {
  CHECK(tan(angle(0)) == 0);
  CHECK(tan(angle(180)) == 0);
  CHECK_FALSE(std::signbit(tan(angle(180))));
  CHECK(tan(angle(90)) > 1e30);
  CHECK(tan(angle(-90)) < -1e30);
  CHECK(std::isfinite(tan(angle(90))));
}

TEST_CASE("elsewhere the functions agree with the C library") {
  Seeded random(17);
  for (int i = 0; i < 2000; ++i) {
    const double degrees = random.between(-360, 360);
    const double radians = degrees * std::numbers::pi / 180;
    CAPTURE(degrees);
    CHECK(std::abs(sin(angle(degrees)) - std::sin(radians)) < 2e-15);
    CHECK(std::abs(cos(angle(degrees)) - std::cos(radians)) < 2e-15);
    CHECK(tan(angle(degrees)) == sin(angle(degrees)) / cos(angle(degrees)));
  }
}

TEST_CASE("within an eighth of a turn they keep the accuracy that they promise") {
  Seeded random(40);
  constexpr double ulp = std::numeric_limits<double>::epsilon();
  for (int i = 0; i < 2000; ++i) {
    const double degrees = random.between(-45, 45);
    const long double radians = degrees * std::numbers::pi_v<long double> / 180;
    const auto off = [](double found, long double exact) {
      return std::abs(static_cast<double>((found - exact) / exact));
    };
    CAPTURE(degrees);
    CHECK(off(sin(angle(degrees)), std::sin(radians)) <= 2 * ulp);
    CHECK(off(cos(angle(degrees)), std::cos(radians)) <= 2 * ulp);
    CHECK(off(tan(angle(degrees)), std::tan(radians)) <= 4 * ulp);
  }
}

TEST_CASE("the arc tangent is exact at eighth turns and lies in (-180, 180]") {
  CHECK(Angle::atan2(0, 1).degrees() == 0);
  CHECK(Angle::atan2(1, 1).degrees() == 45);
  CHECK(Angle::atan2(1, 0).degrees() == 90);
  CHECK(Angle::atan2(1, -1).degrees() == 135);
  CHECK(Angle::atan2(0, -1).degrees() == 180);
  CHECK(Angle::atan2(-0.0, -1).degrees() == 180);
  CHECK(Angle::atan2(-1e-300, -1).degrees() == 180);
  CHECK(Angle::atan2(-1, -1).degrees() == -135);
  CHECK(Angle::atan2(-1, 0).degrees() == -90);
  CHECK(Angle::atan2(-1, 1).degrees() == -45);
  CHECK_FALSE(std::signbit(Angle::atan2(-0.0, 1).degrees()));
}

TEST_CASE("what has no direction has the angle zero") {
  const double nan = std::nan("");
  CHECK(Angle::atan2(0, 0).degrees() == 0);
  CHECK(Angle::atan2(0, -0.0).degrees() == 0);
  CHECK(Angle::atan2(nan, 1).degrees() == 0);
  CHECK(Angle::atan2(1, nan).degrees() == 0);
}

TEST_CASE("the arc tangent undoes sine and cosine") {
  Seeded random(18);
  for (int i = 0; i < 2000; ++i) {
    const double degrees = random.between(-180, 180);
    CAPTURE(degrees);
    const Angle there = angle(degrees);
    CHECK_THAT(Angle::atan2(sin(there), cos(there)).degrees(), points_to(degrees, 1e-12));
  }
}
