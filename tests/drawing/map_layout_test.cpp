// SPDX-License-Identifier: MIT
// A map's paper: grid, scale, norths, crowding, what is cut and what is left out.
#include <lodebook/drawing/map.hpp>

#include <algorithm>
#include <drawing/mapped.hpp>
#include <lodebook/earth/grid.hpp>
#include <map>
#include <numbers>
#include <small_log.hpp>

namespace drawing = lodebook::drawing;
namespace earth = lodebook::earth;
namespace notebook = lodebook::notebook;
namespace reduction = lodebook::reduction;
using namespace lodebook::test;

namespace {

const std::string two_stations =
    "station Q1 at 44.6891S 169.0144E\nbedding 078/41\n"
    "station Q2 at 44.6991S 169.0344E\nbedding 120/40\n";

/// Eastings and northings by the figures along the frame: metres and where they stand.
struct Scale {
  std::map<double, double> metres;
  double metres_at(double place) const {
    const auto first = metres.begin();
    const auto last = std::prev(metres.end());
    return first->second +
           (place - first->first) / (last->first - first->first) * (last->second - first->second);
  }
};
std::pair<Scale, Scale> grid_of(const Picture& picture) {
  const Frame frame = frame_of(picture);
  Scale east;
  Scale north;
  for (const Words& words : words_of(picture, Role::figure)) {
    if (words.turn == -90) north.metres[words.at.y] = std::stod(words.text);
    if (words.turn == 0 && std::abs(words.at.y - frame.most.y - 3.4) < 0.2)
      east.metres[words.at.x] = std::stod(words.text);
  }
  REQUIRE(east.metres.size() >= 2);
  REQUIRE(north.metres.size() >= 2);
  return {east, north};
}

}  // namespace

TEST_CASE("stations stand where the figures of the grid say") {
  const Picture picture = mapped(two_stations).picture;
  const auto [east, north] = grid_of(picture);
  const std::vector<Point> found = dots(picture);
  REQUIRE(found.size() == 2);
  const std::vector<earth::Position> positions = {{-44.6891, 169.0144}, {-44.6991, 169.0344}};
  for (std::size_t i = 0; i < 2; ++i) {
    const earth::GridPosition expected = earth::grid_position(positions[i]);
    CHECK(std::abs(east.metres_at(found[i].x) - expected.easting_m) < 0.01);
    CHECK(std::abs(north.metres_at(found[i].y) - expected.northing_m) < 0.01);
  }
  CHECK(says(text_of(picture), "WGS 84 / UTM 59G"));
  // A line runs over the whole frame at each figure.
  const Frame frame = frame_of(picture);
  std::size_t lines = 0;
  for (const Shape& shape : shapes_of(picture, Role::grid)) {
    const auto& line = std::get<Path>(shape.form).parts.front();
    for (const auto& [x, metres] : east.metres) {
      if (line[0].x == x && line[1].x == x) {
        CHECK(line[0].y == frame.least.y);
        CHECK(line[1].y == frame.most.y);
        ++lines;
      }
    }
  }
  CHECK(lines == east.metres.size());
}

TEST_CASE("the scale bar is as long as its words say, at the scale in words") {
  const Picture picture = mapped(two_stations).picture;
  const auto [east, north] = grid_of(picture);
  const double scale = scale_of(picture);
  CHECK(std::abs(1000 * (east.metres_at(100) - east.metres_at(0)) / 100 - scale) < 1e-6);
  std::optional<Words> zero;
  std::optional<Words> end;
  for (const Words& words : words_of(picture, Role::figure)) {
    if (words.text == "0" && words.anchor == Words::Anchor::middle) zero = words;
    if (zero && words.at.y == zero->at.y && words.at.x > zero->at.x) end = words;
  }
  REQUIRE(end);
  const double metres = std::stod(end->text) * (end->text.ends_with("km") ? 1000 : 1);
  CHECK(std::abs((end->at.x - zero->at.x) * scale / 1000 - metres) < 1e-6);
}

TEST_CASE("a map that is fitted to a page has a bar and no ratio") {
  const drawing::Map map = map_of({on_the_map + two_stations});
  const Picture fitted = map.picture(drawing::MapSize::fitted);
  CHECK_FALSE(says(text_of(fitted), "1:"));
  CHECK_FALSE(says(fitted.description(), "1:"));
  CHECK(says(text_of(fitted), "Measure by the bar"));
  CHECK(says(fitted.description(), "Map, WGS 84 / UTM 59G: 2 symbols"));
  check_on_paper(fitted);
  const Picture own = map.picture();
  CHECK(says(text_of(own), "1:"));
  CHECK(says(own.description(), "Map 1:"));
}

TEST_CASE("places further apart than a map can show truly are named, with their distance") {
  const std::string here = on_the_map + "station Q1 at 44.6891S 169.0144E\nbedding 085/32\n";
  const auto away = [&](const std::string& position) {
    return map_of({here, on_the_map + "station Q2 at " + position + "\nbedding 085/32\n"});
  };
  // One degree of a meridian is 111.1 km here; 1900 km are 17.1 of them.
  CHECK_FALSE(away("27.7S 169.0144E").too_wide());
  CHECK(away("27.5S 169.0144E").too_wide());
  const auto far = away("44.6891N 169.0144E").too_wide();
  REQUIRE(far);
  CHECK(*far == "day.log and day.log lie 9901 km apart");
  const auto one =
      map_of({here + "station Far at 44.6891N 169.0144E\nbedding 085/32\n"}).too_wide();
  REQUIRE(one);
  CHECK(*one == "station Q1 and station Far of day.log lie 9901 km apart");
  CHECK_FALSE(map_of({here}).too_wide());
  CHECK_FALSE(map_of({on_the_map}).too_wide());
  CHECK(map_of({"landmark A 44.6891S 169.0144E\nlandmark B 44.6891N 169.0144E\n"}).too_wide() ==
        "landmark A and landmark B of day.log lie 9901 km apart");
}

TEST_CASE("stations fill the frame, and the sheet is 180 mm wide") {
  const Picture picture = mapped(two_stations).picture;
  CHECK(picture.width() == 180);
  CHECK(picture.height() <= 297);
  const std::vector<Point> found = dots(picture);
  // A round scale larger by up to 2.5 would not fit.
  const Frame frame = frame_of(picture);
  const double wide = std::abs(found[0].x - found[1].x) / (frame.most.x - frame.least.x - 24);
  const double high = std::abs(found[0].y - found[1].y) / (frame.most.y - frame.least.y - 24);
  CHECK(std::max(wide, high) > 0.39);
  CHECK(std::max(wide, high) <= 1);
}

TEST_CASE("sights and legs are cut at the frame") {
  const Picture picture = mapped(std::vector<std::string>{small_log}).picture;
  const Frame frame = frame_of(picture);
  int depth = 0;
  std::size_t rays = 0;
  for (const Picture::Item& item : picture.items()) {
    if (const auto* const clip = std::get_if<drawing::BeginClip>(&item)) {
      CHECK(std::get<Path>(clip->outline).parts.front().front() == frame.least);
      depth = 1;
    } else if (std::holds_alternative<drawing::BeginReading>(item) && depth > 0) {
      ++depth;
    } else if (std::holds_alternative<drawing::End>(item) && depth > 0) {
      --depth;
    }
    const auto* const shape = std::get_if<Shape>(&item);
    if (shape == nullptr || (shape->role != Role::ray && shape->role != Role::leg)) continue;
    if (depth == 0) {
      CHECK(std::get<Path>(shape->form).parts.front()[0].y > frame.most.y);  // of the legend
    } else {
      ++rays;
    }
  }
  CHECK(rays == 5);
}

TEST_CASE("landmarks beyond the frame are named where their direction leaves it") {
  const std::string text = text_of(
      mapped("landmark Far 44.6891S 169.2144E\nlandmark Near 44.6941S 169.0244E\n" + two_stations)
          .picture);
  // From the middle, 0.19 degrees of longitude: 15.1 km.
  CHECK(says(text, "Far 15.1 km\n"));
  CHECK(says(text, "Near\n"));
  CHECK(says(text, "landmark outside\n"));
}

TEST_CASE("error ellipses are drawn to scale and turned to the grid") {
  const std::string log = on_the_map +
                          "landmark A 44.65S 169.00E\nlandmark B 44.69S 169.10E\n"
                          "station Q1\nsight A 340\nsight B 080\nbedding 078/41\n"
                          "leg 100 500m to Q2\nstation Q2\n";
  const notebook::Notebook notebook = notebook::read_log(notebook::Source("day.log", log));
  reduction::Options options;
  options.all_places = true;
  const reduction::Fixes fixes = reduction::locate(notebook, options);
  const Picture picture = mapped(std::vector<std::string>{log}).picture;
  std::vector<Shape> ellipses = shapes_of(picture, Role::ellipse);
  REQUIRE(ellipses.size() == 3);  // the last is that of the legend
  const double metres_per_mm = scale_of(picture) / 1000;
  for (std::size_t i = 0; i < 2; ++i) {
    REQUIRE(fixes.stations[i].ellipse);
    const reduction::ErrorEllipse& expected = *fixes.stations[i].ellipse;
    const auto& ring = std::get<Path>(ellipses[i].form).parts.front();
    const Point center = 0.5 * (ring[0] + ring[ring.size() / 2]);
    double longest = 0;
    double shortest = 1e9;
    Point tip;
    for (const Point& point : ring) {
      const double away = distance(center, point);
      shortest = std::min(shortest, away);
      if (away > longest) {
        longest = away;
        tip = point;
      }
    }
    CHECK(std::abs(longest * metres_per_mm / expected.semi_major_m - 1) < 1e-6);
    CHECK(std::abs(shortest * metres_per_mm / expected.semi_minor_m - 1) < 1e-6);
    const double convergence =
        earth::grid_position(*fixes.stations[i].position).convergence.degrees_east();
    CHECK(std::abs(std::remainder(azimuth(center, tip) - (expected.major_azimuth - convergence),
                                  180.0)) < 0.01);
  }
}

TEST_CASE("three sights have their triangle of error, a loop its closure in words") {
  const Picture picture =
      mapped(
          "landmark A 44.65S 169.00E\nlandmark B 44.69S 169.10E\nlandmark C 44.73S 169.00E\n"
          "station Q1\nsight A 001\nsight B 090\nsight C 178\n"
          "leg 090 100m to Q2\nstation Q2\nleg 210 100m to Q3\nstation Q3\nleg 331 102m to Q1\n")
          .picture;
  CHECK(shapes_of(picture, Role::triangle).size() == 2);  // one in the legend
  CHECK(shapes_of(picture, Role::raw_leg).size() == 2);
  const std::string text = text_of(picture);
  CHECK(says(text, "Traverses: Q1 and back to it, 3 legs, 302.0 m: misclosure "));
}

TEST_CASE("sights of a fix are drawn as observed: two of them cross in each corner") {
  const Picture picture =
      mapped(
          "landmark A 44.685S 169.020E\nlandmark B 44.69S 169.04E\n"
          "landmark C 44.695S 169.025E\nstation Q1\nsight A 001\nsight B 107\nsight C 160\n"
          "bedding 078/41\n")
          .picture;
  const std::vector<Shape> triangles = shapes_of(picture, Role::triangle);
  REQUIRE(triangles.size() == 2);  // one in the legend
  const auto& triangle = std::get<Path>(triangles.front().form).parts.front();
  std::vector<std::vector<Point>> rays;
  for (const Drawn& one : drawn(picture)) {
    for (const auto& ray : one.paths(Role::ray))
      rays.push_back(ray);
  }
  REQUIRE(rays.size() == 3);
  for (const Point& corner : triangle) {
    CHECK(std::ranges::count_if(rays, [&](const auto& ray) {
            const double turned = azimuth(ray[1], corner) - azimuth(ray[1], ray[0]);
            return std::abs(std::sin(turned * std::numbers::pi / 180)) * distance(ray[1], corner) <
                   0.02;
          }) == 2);
  }
}

TEST_CASE("where there is no fix, sights are lines on which their observer stands") {
  // C was read off the wrong end of the needle.
  const Mapped map = mapped(
      "landmark A 44.685S 169.020E\nlandmark B 44.69S 169.04E\n"
      "landmark C 44.695S 169.025E\nstation Q1\nsight A 001\nsight B 107\nsight C 340\n"
      "bedding 078/41\n");
  REQUIRE(map.remarks.size() == 1);
  CHECK(map.remarks[0] == "1 reading without a position: Q1 (1)");
  const std::vector<Drawn> sights = drawn(map.picture);
  REQUIRE(sights.size() == 3);
  const std::vector<double> expected = {181, 287, 160};
  const double convergence = earth::grid_position({-44.69, 169.03}).convergence.degrees_east();
  for (std::size_t i = 0; i < 3; ++i) {
    const auto line = sights[i].paths(Role::ray).front();
    CHECK(apart(azimuth(line[0], line[1]), expected[i] - convergence) < 0.05);
  }
}

TEST_CASE("without a declination nothing is drawn as if it were true") {
  const Mapped map = mapped(std::vector<std::string>{
      "set 0\nrule right\nstation Q1 at 44.6891S 169.0144E\nbedding 078/41\nlineation 100/20\n"
      "bedding horizontal\nstation Q2\nbedding 078/41\n"});
  CHECK(drawn(map.picture).size() == 1);  // what is horizontal has no direction
  CHECK(dots(map.picture).size() == 1);
  REQUIRE(map.remarks.size() == 2);
  CHECK(map.remarks[0] == "1 reading without a position: Q2 (1)");
  CHECK(map.remarks[1] ==
        "2 readings without a declination, which may lie anyhow on the grid: Q1 (2)");
  const Mapped twice =
      mapped(std::vector<std::string>{"station Q1\n", "set 0\nstation Q2\nbedding horizontal\n"});
  REQUIRE(twice.remarks.size() == 1);
  CHECK(twice.remarks[0] == "1 reading without a position: Q2 of day.log (1)");
  const std::string text = text_of(map.picture);
  CHECK(says(text, "Magnetic north is not drawn"));
  CHECK(says(text, "without a declination"));
}

TEST_CASE("a later block of a station has the station's place") {
  const Mapped map = mapped(
      "station Q1 at 44.6891S 169.0144E\nbedding 078/41\n"
      "station Q2 at 44.6991S 169.0344E\nstation q1\nbedding 120/40\nsight Q2 125\n");
  CHECK(map.remarks.empty());
  CHECK(drawn(map.picture).size() == 3);
  CHECK(dots(map.picture).size() == 2);
  CHECK(says(text_of(map.picture), "day.log; 2 stations\n"));
  CHECK(says(map.picture.description(), ": 2 symbols; 2 stations."));
  // The first block too, where a later one says where the station is.
  CHECK(mapped("station Q1\nbedding 078/41\nstation Q1 at 44.6891S 169.0144E\n").remarks.empty());
}

TEST_CASE("stations without a position are counted as such") {
  const Mapped map = mapped(two_stations + "station Q3\nbedding 078/41\n");
  CHECK(says(text_of(map.picture), "day.log; 3 stations, 1 of them without a position\n"));
  CHECK(says(map.picture.description(), ": 2 symbols; 3 stations, 1 of them without a position."));
  CHECK(says(text_of(mapped("station Q3\n").picture), "day.log; 1 station without a position\n"));
}

TEST_CASE("a sheet without a map has margins too") {
  const Picture picture = mapped("station Q3\nbedding 078/41\n").picture;
  std::size_t words = 0;
  for (const Role role : {Role::title, Role::label, Role::figure}) {
    for (const Words& line : words_of(picture, role)) {
      CHECK(line.at.x == 3);
      CHECK(line.at.y < picture.height() - 3);
      ++words;
    }
  }
  CHECK(words > 5);
}

TEST_CASE("a station without a name is on the map, and named in remarks alone") {
  const Mapped map = mapped(
      "station\nat 44.6891S 169.0144E\nbedding 078/41\nstation\nat 44.6991S 169.0344E\n"
      "station\nbedding 120/40\n");
  CHECK(dots(map.picture).size() == 2);
  CHECK(drawn(map.picture).size() == 1);
  CHECK(says(text_of(map.picture), "3 stations, 1 of them without a position\n"));
  REQUIRE(map.remarks.size() == 1);
  CHECK(map.remarks[0] == "1 reading without a position: station without a name (1)");
  // No name stands in the frame.
  const Frame frame = frame_of(map.picture);
  for (const Words& words : words_of(map.picture, Role::label))
    CHECK_FALSE(frame.holds(words.at));
}

TEST_CASE("norths are told with their angles") {
  const std::string text = text_of(
      mapped(std::vector<std::string>{"set 0\ndeclination 24.6E\nrule right\n" + two_stations})
          .picture);
  CHECK(says(text, "Grid north lies 1.4° east of true north"));
  CHECK(says(text, "Magnetic north lies 24.6° east of true north and 23.2° east of grid north"));
  CHECK(says(text, "the declination at"));
}

TEST_CASE("a declination that changes over the stations is told with its sides") {
  const std::string text =
      text_of(mapped(std::vector<std::string>{
                         "set 0\ndeclination 1E\nrule right\nstation Q1 at 44.6891S "
                         "169.0144E\nbedding 078/41\n"
                         "declination 0.5W\nstation Q2 at 44.6991S 169.0344E\nbedding 120/40\n"})
                  .picture);
  CHECK(says(text, "Over the stations the declination runs from 0.5° west to 1.0° east; each"));
}
