// SPDX-License-Identifier: MIT
// Directions clockwise from a north.
#include <lodebook/orientation/azimuth.hpp>

#include <cmath>
#include <limits>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

TEST_CASE("an azimuth is read from 0 to 360, and 360 is stored as 0") {
  CHECK(azimuth(0).degrees() == 0);
  CHECK(azimuth(340.5).degrees() == 340.5);
  CHECK(azimuth(360).degrees() == 0);
  CHECK_FALSE(std::signbit(azimuth(-0.0).degrees()));
  CHECK(True().degrees() == 0);
}

TEST_CASE("no azimuth is made of what is out of range or no number") {
  for (const double degrees :
       {-0.1, 360.1, -20.0, 1e300, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(degrees);
    CHECK_FALSE(True::from_degrees(degrees));
  }
}

TEST_CASE("an angle clockwise of north is wrapped") {
  CHECK(True::clockwise(angle(-20)).degrees() == 340);
  CHECK(True::clockwise(angle(740)).degrees() == 20);
}

TEST_CASE("an azimuth plus or minus an angle is a wrapped azimuth") {
  CHECK((azimuth(350) + angle(20)).degrees() == 10);
  CHECK((azimuth(10) - angle(20)).degrees() == 350);
  CHECK((azimuth(10) - angle(10)).degrees() == 0);
}

TEST_CASE("azimuths subtract to the short way round, half a turn being positive") {
  CHECK((azimuth(10) - azimuth(350)).degrees() == 20);
  CHECK((azimuth(350) - azimuth(10)).degrees() == -20);
  CHECK((azimuth(180) - azimuth(0)).degrees() == 180);
  CHECK((azimuth(0) - azimuth(180)).degrees() == 180);
  CHECK((azimuth(181) - azimuth(0)).degrees() == -179);
}

TEST_CASE("the separation has no sign") {
  CHECK(separation(azimuth(10), azimuth(350)).degrees() == 20);
  CHECK(separation(azimuth(350), azimuth(10)).degrees() == 20);
  CHECK(separation(azimuth(90), azimuth(270)).degrees() == 180);
  CHECK(separation(azimuth(77), azimuth(77)).degrees() == 0);
}

TEST_CASE("the opposite of the opposite is the azimuth itself") {
  CHECK(azimuth(20).opposite().degrees() == 200);
  CHECK(azimuth(200).opposite().degrees() == 20);
  CHECK(azimuth(180).opposite().degrees() == 0);
  CHECK(azimuth(0).opposite().degrees() == 180);
  Seeded random(19);
  for (int i = 0; i < 1000; ++i) {
    const True there = azimuth(random.tenths());
    CAPTURE(there.degrees());
    CHECK_THAT(there.opposite().opposite().degrees(), points_to(there.degrees(), 1e-12));
    CHECK_THAT(separation(there, there.opposite()).degrees(), points_to(180, 1e-12));
  }
}

TEST_CASE("the opposite stays under 360 where the sum rounds up to it") {
  CHECK(azimuth(std::nextafter(180.0, 0.0)).opposite().degrees() < 360);
}

TEST_CASE("a difference added back gives the other azimuth") {
  Seeded random(20);
  for (int i = 0; i < 1000; ++i) {
    const True a = azimuth(random.between(0, 360));
    const True b = azimuth(random.between(0, 360));
    CAPTURE(a.degrees(), b.degrees());
    const Angle difference = a - b;
    CHECK(difference.degrees() > -180);
    CHECK(difference.degrees() <= 180);
    CHECK_THAT((b + difference).degrees(), points_to(a.degrees(), 1e-12));
  }
}
