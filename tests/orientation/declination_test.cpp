// SPDX-License-Identifier: MIT
// The offsets between norths, and azimuths carried across them.
#include <lodebook/orientation/declination.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEMPLATE_TEST_CASE("an offset is built by side, east positive", "", Declination, Convergence) {
  CHECK(TestType::east(24.6)->degrees_east() == 24.6);
  CHECK(TestType::west(24.6)->degrees_east() == -24.6);
  CHECK(TestType::west(24.6)->eastward() == angle(-24.6));
  CHECK(TestType().degrees_east() == 0);
  CHECK(TestType::west(0) == TestType::east(0));
  CHECK_FALSE(std::signbit(TestType::west(0)->degrees_east()));
  CHECK(TestType::east(180));
  CHECK(TestType::west(180));
}

TEMPLATE_TEST_CASE("no offset is made of a sign, of over 180 or of no number", "", Declination,
                   Convergence) {
  for (const double degrees : {-1.0, 180.1, std::nan("")}) {
    CAPTURE(degrees);
    CHECK_FALSE(TestType::east(degrees));
    CHECK_FALSE(TestType::west(degrees));
  }
}

TEST_CASE("an easterly declination is added to a magnetic azimuth, a westerly taken off") {
  const auto magnetic = Magnetic::from_degrees(10).value();
  CHECK(to_geographic(magnetic, Declination::east(20).value()).degrees() == 30);
  CHECK(to_geographic(magnetic, Declination::west(20).value()).degrees() == 350);
}

TEST_CASE("what was set into the dial is taken off first") {
  const auto read = Dial::from_degrees(5).value();
  CHECK(to_magnetic(read, Declination()).degrees() == 5);
  CHECK(to_magnetic(read, Declination::east(20).value()).degrees() == 345);
  CHECK(to_magnetic(read, Declination::west(20).value()).degrees() == 25);
}

TEST_CASE("a dial set to the declination already reads true") {
  Seeded random(23);
  for (int i = 0; i < 1000; ++i) {
    const auto read = Dial::from_degrees(random.tenths()).value();
    const auto declination = Declination::west(random.between(0, 180)).value();
    CAPTURE(read.degrees(), declination.degrees_east());
    CHECK_THAT(to_geographic(to_magnetic(read, declination), declination).degrees(),
               points_to(read.degrees(), 1e-12));
  }
}

TEST_CASE("without any offset a reading stays exactly as it is") {
  for (int tenths = 0; tenths < 3600; ++tenths) {
    const auto read = Dial::from_degrees(tenths / 10.0).value();
    CAPTURE(tenths);
    const True azimuth = to_geographic(to_magnetic(read, Declination()), Declination());
    CHECK(azimuth.degrees() == read.degrees());
    CHECK(to_grid(azimuth, Convergence()).degrees() == read.degrees());
  }
}

TEST_CASE("true and magnetic are each other's way back") {
  Seeded random(24);
  for (int i = 0; i < 1000; ++i) {
    const True there = azimuth(random.between(0, 360));
    const auto declination = Declination::east(random.between(0, 180)).value();
    CAPTURE(there.degrees(), declination.degrees_east());
    CHECK_THAT(to_geographic(to_magnetic(there, declination), declination).degrees(),
               points_to(there.degrees(), 1e-12));
  }
}

TEST_CASE("a change of frame keeps the angle between two directions") {
  Seeded random(25);
  for (int i = 0; i < 1000; ++i) {
    const auto a = Magnetic::from_degrees(random.between(0, 360)).value();
    const auto b = Magnetic::from_degrees(random.between(0, 360)).value();
    const auto declination = Declination::west(random.between(0, 180)).value();
    CAPTURE(a.degrees(), b.degrees(), declination.degrees_east());
    CHECK_THAT((to_geographic(a, declination) - to_geographic(b, declination)).degrees(),
               points_to((a - b).degrees(), 1e-12));
  }
}

TEST_CASE("a grid azimuth is the true one less the easterly convergence") {
  CHECK(to_grid(azimuth(10), Convergence::east(2).value()).degrees() == 8);
  CHECK(to_grid(azimuth(359), Convergence::west(2).value()).degrees() == 1);
}
