// SPDX-License-Identifier: MIT
// Dips, plunges, rakes and percent grades.
#include <lodebook/orientation/dip.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEMPLATE_TEST_CASE("an angle of a quarter turn lies in [0, 90]", "", Dip, Plunge, Rake) {
  CHECK(TestType::from_degrees(0)->degrees() == 0);
  CHECK(TestType::from_degrees(90)->degrees() == 90);
  CHECK(TestType::from_degrees(32.5)->degrees() == 32.5);
  CHECK(TestType::from_degrees(32.5)->angle() == angle(32.5));
  CHECK_FALSE(std::signbit(TestType::from_degrees(-0.0)->degrees()));
  CHECK_FALSE(TestType::from_degrees(-0.1));
  CHECK_FALSE(TestType::from_degrees(90.1));
  CHECK_FALSE(TestType::from_degrees(std::nan("")));
  CHECK(TestType() == TestType::from_degrees(0));
  CHECK(TestType() < TestType::from_degrees(1));
}

TEST_CASE("a percent grade is exact on the level and at one in one, of either sign") {
  CHECK(degrees_from_percent(0) == 0);
  CHECK(degrees_from_percent(100) == 45);
  CHECK(degrees_from_percent(-100) == -45);
  CHECK_FALSE(std::signbit(degrees_from_percent(-0.0)));
}

TEST_CASE("a percent grade is the tangent of its slope") {
  Seeded random(26);
  for (int i = 0; i < 500; ++i) {
    const double percent = random.between(-1000, 1000);
    CAPTURE(percent);
    const double degrees = degrees_from_percent(percent);
    CHECK(std::abs(100 * std::tan(degrees * std::numbers::pi / 180) - percent) < 1e-9);
  }
}
