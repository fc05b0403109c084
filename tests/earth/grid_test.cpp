// SPDX-License-Identifier: MIT
// Eastings, northings, zones and convergence.
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/grid.hpp>

#include <GeographicLib/TransverseMercator.hpp>
#include <algorithm>
#include <catch.hpp>
#include <cmath>
#include <random>
#include <references/rows.hpp>
#include <set>

namespace {

using namespace lodebook;
using earth::grid_position;
using earth::GridPosition;
using earth::Position;
using test::number;

Position position_of(const std::string& text) {
  const std::vector<std::string> words = test::split(text, ' ');
  REQUIRE(words.size() == 2);
  return {number(words[0]), number(words[1])};
}

/// How far a convergence is from what it should be, degrees.
double off(Convergence found, double expected) {
  return std::abs(std::remainder(found.degrees_east() - expected, 360.0));
}

}  // namespace

TEST_CASE("the grid agrees with every published value") {
  std::set<std::string> checks;
  for (const test::ReferenceRow& row : test::reference_rows("grid.txt")) {
    INFO(row.at << ": " << row.input << " (" << row.source << ")");
    const Position position = position_of(row.input);
    const std::vector<std::string> expected = test::split(row.expected, ' ');
    checks.insert(row.check);
    if (row.check == "grid") {
      const GridPosition found = grid_position(position);
      REQUIRE(expected.size() == 3);
      CHECK(found.designation() == expected[0]);
      CHECK(std::abs(found.easting_m - number(expected[1])) <= row.tolerance);
      CHECK(std::abs(found.northing_m - number(expected[2])) <= row.tolerance);
    } else if (row.check == "convergence") {
      CHECK(std::abs(grid_position(position).convergence.degrees_east() - number(row.expected)) <=
            row.tolerance);
    } else {
      REQUIRE(row.check == "transverse mercator, Airy 1830, 49N 2W, 0.9996012717, 400000 -100000");
      const GeographicLib::TransverseMercator projection(6377563.396, 1 / 299.3249646,
                                                         0.9996012717);
      double x = 0;
      double y = 0;
      double origin_x = 0;
      double origin_y = 0;
      projection.Forward(-2, 49, -2, origin_x, origin_y);
      projection.Forward(-2, position.latitude, position.longitude, x, y);
      CHECK(std::abs(x + 400000 - number(expected[0])) <= row.tolerance);
      CHECK(std::abs(y - origin_y - 100000 - number(expected[1])) <= row.tolerance);
    }
  }
  CHECK(checks.size() == 3);
}

TEST_CASE("a designation with easting and northing reads back as the position") {
  constexpr unsigned seed = 59;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> latitudes(-80, 84);
  std::uniform_real_distribution<double> longitudes(-180, 180);
  for (int i = 0; i < 1000; ++i) {
    const Position position{latitudes(random), longitudes(random)};
    const GridPosition found = grid_position(position);
    const std::string text = found.designation() + " " + std::to_string(found.easting_m) + " " +
                             std::to_string(found.northing_m);
    INFO(text);
    const auto read = earth::read_position(text);
    REQUIRE(std::holds_alternative<earth::WrittenPosition>(read));
    const auto& written = std::get<earth::WrittenPosition>(read);
    REQUIRE(written.position);
    CHECK(earth::distance_m(*written.position, position) < 1e-4);
  }
}

TEST_CASE("the exceptions of the standard zones are kept") {
  CHECK(grid_position({60.4, 5.3}).designation() == "32V");   // west Norway, not 31
  CHECK(grid_position({78.2, 15.6}).designation() == "33X");  // Svalbard
  CHECK(grid_position({0, -180}).designation() == "01N");
  CHECK(grid_position({-0.001, 179.999}).designation() == "60M");
  CHECK(grid_position({83.9, 0.1}).designation() == "31X");
}

TEST_CASE("beyond the bands there are the polar grids, whose north is the meridian of Greenwich") {
  CHECK(grid_position({84.5, 10}).designation() == "Z");
  CHECK(grid_position({84.5, -10}).designation() == "Y");
  CHECK(grid_position({-80.5, 10}).designation() == "B");
  CHECK(grid_position({-80.5, -10}).designation() == "A");
  CHECK(off(grid_position({85, 10}).convergence, 10) < 1e-9);
  CHECK(off(grid_position({-85, 10}).convergence, -10) < 1e-9);
  // On the meridian of 180 degrees the letter is that of the east.
  CHECK(grid_position({85, -180}).designation() == "Z");
  CHECK(grid_position({-85, -180}).designation() == "B");
  CHECK(std::isfinite(grid_position({90, 0}).convergence.degrees_east()));
}

TEST_CASE("grid north leans towards the pole's side of the central meridian") {
  // West of 171 E in the south, grid north lies east of true north; the mirror image elsewhere.
  CHECK(grid_position({-44.7, 169}).convergence.degrees_east() > 1.3);
  CHECK(grid_position({-44.7, 173}).convergence.degrees_east() < -1.3);
  CHECK(grid_position({44.7, 169}).convergence.degrees_east() < -1.3);
  CHECK(off(grid_position({-44.7, 171}).convergence, 0) < 1e-9);
}

TEST_CASE("a zone's grid agrees with the standard one at home and reads back anywhere") {
  constexpr unsigned seed = 60;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> latitudes(-90, 90);
  std::uniform_real_distribution<double> longitudes(-180, 180);
  std::uniform_real_distribution<double> beside(-3, 3);
  for (int i = 0; i < 1000; ++i) {
    const Position home{latitudes(random), longitudes(random)};
    INFO(home.latitude << ' ' << home.longitude);
    const earth::ZoneGrid grid(home);
    const GridPosition standard = grid_position(home);
    const GridPosition found = grid.grid_position(home);
    CHECK(found.designation() == standard.designation());
    CHECK(std::hypot(found.easting_m - standard.easting_m, found.northing_m - standard.northing_m) <
          1e-6);
    CHECK(off(found.convergence, standard.convergence.degrees_east()) < 1e-9);
    CHECK(grid.reaches(home));
    const Position other{std::clamp(home.latitude + beside(random), -89.9, 89.9),
                         std::remainder(home.longitude + beside(random), 360.0)};
    const GridPosition carried = grid.grid_position(other);
    CHECK(earth::distance_m(grid.position(carried.easting_m, carried.northing_m), other) < 1e-4);
  }
}

TEST_CASE("a zone's grid is carried on across the antimeridian and the equator") {
  const earth::ZoneGrid grid(Position{-0.01, 179.99});
  const GridPosition west = grid.grid_position({-0.01, 179.99});
  const GridPosition east = grid.grid_position({0.01, -179.99});
  // 0.02 degrees of a great circle of 40,075 km are 2.2 km.
  CHECK(std::abs(east.easting_m - west.easting_m - 2227) < 5);
  CHECK(std::abs(east.northing_m - west.northing_m - 2212) < 5);
  CHECK(east.northing_m > 10'000'000);
  CHECK(east.zone == 60);
}

TEST_CASE("a zone's grid says how far it is of use") {
  const earth::ZoneGrid grid(Position{0, 9});
  CHECK(grid.reaches({0, 17}));
  CHECK_FALSE(grid.reaches({0, 20}));
  CHECK_FALSE(grid.reaches({0, 99}));
  // 90 degrees from its meridian on the equator a zone's grid has no north.
  CHECK(grid.grid_position({0, 99}).convergence == Convergence());
  CHECK(grid.grid_position({0, -81}).convergence == Convergence());
  CHECK_FALSE(grid.reaches({0, -171}));
  const earth::ZoneGrid pole(Position{88, 9});
  CHECK(pole.reaches({75, 100}));
  CHECK_FALSE(pole.reaches({60, 100}));
  CHECK_FALSE(pole.reaches({-90, 0}));
}
