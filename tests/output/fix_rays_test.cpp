// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/output/fix_rays.hpp>
#include <nlohmann/json.hpp>

#include "fixes_by_hand.hpp"

namespace lodebook {
namespace {

using Json = nlohmann::ordered_json;

std::vector<Json> rays(const std::vector<reduction::Fixes>& logs, std::string_view what = "") {
  std::vector<Json> wanted;
  const Json document = Json::parse(test::fix_text(output::FixRays(), logs));
  CHECK(document["type"] == "FeatureCollection");
  for (const Json& feature : document["features"]) {
    if (what.empty() || feature["properties"]["what"] == what) wanted.push_back(feature);
  }
  return wanted;
}

Json point(const earth::Position& position) {
  return Json::array({position.longitude, position.latitude});
}

/// Twice the area that a ring encloses in degrees: positive if it runs counterclockwise.
double doubled_area(const Json& ring) {
  double area = 0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    const auto from_first = [&](std::size_t corner, std::size_t axis) {
      return ring[corner][axis].get<double>() - ring[0][axis].get<double>();
    };
    area += from_first(i, 0) * from_first(i + 1, 1) - from_first(i + 1, 0) * from_first(i, 1);
  }
  return area;
}

/// One station with that position and ellipse, and nothing else.
reduction::Fixes one_ellipse(const earth::Position& at, const reduction::ErrorEllipse& ellipse) {
  reduction::Fixes fixes;
  fixes.stations = {test::a_station("Q1", 20)};
  fixes.stations[0].position = at;
  fixes.stations[0].ellipse = ellipse;
  return fixes;
}

/// One station at `at` that has sighted `target`.
reduction::Fixes one_sight(const earth::Position& at, const earth::Position& target) {
  reduction::Fixes fixes;
  fixes.stations = {test::a_station("Q1", 20)};
  reduction::SightFix fix;
  fix.name = "Q1";
  fix.position = at;
  fix.sights = {test::a_sight("Peak", 21, target, 90)};
  fixes.sight_fixes = {fix};
  fixes.stations[0].position = at;
  fixes.stations[0].from = reduction::PositionFrom::sights;
  return fixes;
}

TEST_CASE("sight lines run from the observer to the target") {
  const auto sights = rays({test::some_fixes()}, "sight");
  REQUIRE(sights.size() == 5);
  CHECK(sights[0]["geometry"]["type"] == "LineString");
  CHECK(sights[0]["geometry"]["coordinates"] == Json::array({point(test::q2), point(test::cairn)}));
  const Json& to_known = sights[0]["properties"];
  CHECK(to_known["name"] == "Q2");
  CHECK(to_known["from"] == "Q2");
  CHECK(to_known["to"] == "Cairn");
  CHECK(to_known["bearing"] == 17.26);
  CHECK(to_known["residual"] == -0.26);
  CHECK(to_known["distance_m"] == 2140.06);
  CHECK(to_known["source"] == "day3.txt:31");
  // A landmark is sighted from known stations.
  const Json& from_known = sights[4];
  CHECK(from_known["properties"]["name"] == "Peak");
  CHECK(from_known["properties"]["from"] == "Q2");
  CHECK(from_known["properties"]["to"] == "Peak");
  CHECK(from_known["properties"]["residual"].is_null());
  CHECK(from_known["geometry"]["coordinates"] ==
        Json::array({point(test::q2), point({-44.66, 169.05})}));
}

TEST_CASE("a sight without a fix has no line") {
  for (const Json& sight : rays({test::some_fixes()}, "sight"))
    CHECK(sight["properties"]["name"] != "Q4");
  CHECK(rays({{}}).empty());
  CHECK(rays({}).empty());
}

TEST_CASE("a long line keeps to the shortest way") {
  const earth::Position from{-45, 169};
  const earth::Position to{-45, 169.5};
  const auto sights = rays({one_sight(from, to)}, "sight");
  REQUIRE(sights.size() == 1);
  const Json& path = sights[0]["geometry"]["coordinates"];
  CHECK(path.size() == 9);  // 39.4 km in steps of up to 5 km
  CHECK(path.front() == point(from));
  CHECK(path.back() == point(to));
  const earth::GeodesicLine line = earth::geodesic(from, to);
  const auto middle = earth::travelled(from, line.azimuth, line.distance_m / 2);
  CHECK(std::abs(path[4][1].get<double>() - middle.latitude) < 1e-7);
  CHECK(middle.latitude < -45.0002);
}

TEST_CASE("ellipses are closed rings, counterclockwise, in their place and of their size") {
  const auto ellipses = rays({test::some_fixes()}, "ellipse");
  REQUIRE(ellipses.size() == 3);
  const Json& found = ellipses[1];
  CHECK(found["properties"]["name"] == "Q2");
  CHECK(found["properties"]["semi_major_m"] == 12.04);
  CHECK(found["properties"]["major_azimuth"] == 40.4);
  CHECK(ellipses[2]["properties"]["name"] == "Peak");
  CHECK(ellipses[2]["properties"]["major_azimuth"] == 0);
  CHECK(found["geometry"]["type"] == "Polygon");
  REQUIRE(found["geometry"]["coordinates"].size() == 1);
  const Json& ring = found["geometry"]["coordinates"][0];
  REQUIRE(ring.size() == 73);
  CHECK(ring.front() == ring.back());
  CHECK(doubled_area(ring) > 0);
  double furthest = 0;
  double nearest = 1e9;
  double azimuth = 0;
  for (const Json& corner : ring) {
    const auto out = earth::geodesic(test::q2, {corner[1].get<double>(), corner[0].get<double>()});
    if (out.distance_m > furthest) azimuth = out.azimuth;
    furthest = std::max(furthest, out.distance_m);
    nearest = std::min(nearest, out.distance_m);
  }
  CHECK(std::abs(furthest - 12.04) < 0.02);
  CHECK(std::abs(nearest - 8) < 0.02);
  CHECK(std::abs(std::remainder(azimuth - 40.4, 180)) < 0.2);
}

TEST_CASE("an ellipse of no size still encloses its point") {
  const auto ellipses = rays({one_ellipse(test::q2, {0, 0, 0})}, "ellipse");
  REQUIRE(ellipses.size() == 1);
  CHECK(doubled_area(ellipses[0]["geometry"]["coordinates"][0]) > 0);
}

TEST_CASE("legs join their stations, once each") {
  const auto legs = rays({test::some_fixes()}, "leg");
  REQUIRE(legs.size() == 2);
  CHECK(legs[1]["geometry"]["coordinates"] ==
        Json::array({point({-44.6892, 169.0152}), point(test::q2)}));
  CHECK(legs[1]["properties"]["from"] == "Q3");
  CHECK(legs[1]["properties"]["to"] == "Q2");
  CHECK(legs[1]["properties"]["bearing"] == 279);
  CHECK(legs[1]["properties"]["source"] == "day3.txt:35");
  reduction::Fixes fixes = test::some_fixes();
  fixes.stations[2].position.reset();
  CHECK(rays({fixes}, "leg").size() == 1);
}

TEST_CASE("a leg that places nothing has no line") {
  reduction::Fixes fixes = test::some_fixes();
  fixes.legs[0].left_out = reduction::LeftOut::doubtful;
  CHECK(rays({fixes}, "leg").size() == 1);
}

TEST_CASE("all features have the same keys") {
  const auto all = rays({test::some_fixes(), test::awkward_fixes()});
  REQUIRE(all.size() == 13);
  for (const Json& feature : all) {
    REQUIRE(feature["properties"].size() == all.front()["properties"].size());
    auto key = feature["properties"].begin();
    for (const auto& item : all.front()["properties"].items())
      CHECK((key++).key() == item.key());
  }
}

TEST_CASE("a line is cut where it crosses the antimeridian, either way") {
  const earth::Position west{-17, 179.99};
  const earth::Position east{-17, -179.99};
  const auto eastward = rays({one_sight(west, east)}, "sight")[0]["geometry"];
  CHECK(eastward["type"] == "MultiLineString");
  REQUIRE(eastward["coordinates"].size() == 2);
  CHECK(eastward["coordinates"][0][0] == point(west));
  CHECK(eastward["coordinates"][0][1] == point({-17, 180}));
  CHECK(eastward["coordinates"][1][0] == point({-17, -180}));
  CHECK(eastward["coordinates"][1][1] == point(east));
  const auto westward = rays({one_sight(east, west)}, "sight")[0]["geometry"];
  CHECK(westward["type"] == "MultiLineString");
  REQUIRE(westward["coordinates"].size() == 2);
  for (const auto& part : westward["coordinates"]) {
    REQUIRE(part.size() == 2);
    CHECK(part[0][0].get<double>() * part[1][0].get<double>() > 0);
  }
}

TEST_CASE("a line that only touches the antimeridian stays whole") {
  const earth::Position on{-17, -180};
  for (const double longitude : {179.99, -179.99}) {
    CAPTURE(longitude);
    const earth::Position beside{-17, longitude};
    const Json sides = longitude > 0 ? Json(180.0) : Json(-180.0);
    const auto away = rays({one_sight(on, beside)}, "sight")[0]["geometry"];
    CHECK(away["type"] == "LineString");
    CHECK(away["coordinates"][0][0] == sides);
    const auto towards = rays({one_sight(beside, on)}, "sight")[0]["geometry"];
    CHECK(towards["type"] == "LineString");
    CHECK(towards["coordinates"][1][0] == sides);
  }
}

TEST_CASE("an ellipse is cut where it crosses the antimeridian") {
  for (const double longitude : {179.99999, -179.99999}) {
    CAPTURE(longitude);
    const auto whole = rays({one_ellipse({-17, 10}, {6, 4, 30})}, "ellipse")[0]["geometry"];
    const auto cut = rays({one_ellipse({-17, longitude}, {6, 4, 30})}, "ellipse")[0]["geometry"];
    CHECK(cut["type"] == "MultiPolygon");
    REQUIRE(cut["coordinates"].size() == 2);
    double area = 0;
    for (const auto& part : cut["coordinates"]) {
      REQUIRE(part.size() == 1);
      CHECK(part[0].front() == part[0].back());
      CHECK(doubled_area(part[0]) > 0);
      area += doubled_area(part[0]);
      for (const auto& corner : part[0]) {
        CHECK(std::abs(corner[0].get<double>()) <= 180);
        CHECK(corner[0].get<double>() * part[0][0][0].get<double>() > 0);
      }
    }
    const double wanted = doubled_area(whole["coordinates"][0]);
    CHECK(std::abs(area - wanted) < 0.02 * wanted);
  }
}

TEST_CASE("an ellipse around a pole has no ring") {
  const auto ellipses = rays({one_ellipse({90, 0}, {6, 4, 30})}, "ellipse");
  REQUIRE(ellipses.size() == 1);
  CHECK(ellipses[0]["geometry"].is_null());
}

}  // namespace
}  // namespace lodebook
