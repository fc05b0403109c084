// SPDX-License-Identifier: MIT
// Nets: every shape where the projection says.
#include <lodebook/drawing/net.hpp>

#include <lodebook/orientation/density.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/net.hpp>

#include <sstream>

#include "drawn.hpp"
#include "random_axes.hpp"
#include "summed_up.hpp"

namespace lodebook::drawing {

using namespace lodebook::test;

namespace {

const std::string heading_lines = "set 0\ndeclination 0\nrule right\nstation Q1\n";

Picture net_of(const std::string& readings, const NetStyle& style = {}) {
  const SummedUp sum(heading_lines + readings);
  return net_picture(sum.document(), style);
}

/// The net's rim, of the only net or of one of several.
Circle rim_of(const Picture& picture, std::size_t net = 0) {
  return drawn<Circle>(picture, Role::frame).at(net);
}

/// By the formula alone: a line that plunges by p lies sqrt 2 sin(45 - p/2) from the centre.
Point expected(const Circle& rim, double trend, double plunge) {
  const double radians = std::numbers::pi / 180;
  const double share = std::sqrt(2.0) * std::sin((45 - plunge / 2) * radians);
  return {rim.center.x + rim.radius * share * std::sin(trend * radians),
          rim.center.y - rim.radius * share * std::cos(trend * radians)};
}

/// The direction that is drawn at a point.
Vector direction_on(const Circle& rim, Point point) {
  return direction_at(
      {(point.x - rim.center.x) / rim.radius, (rim.center.y - point.y) / rim.radius});
}

double between(Vector a, Vector b) {
  return angle_between_axes(a, b).degrees();
}

}  // namespace

TEST_CASE("lines lie where they plunge, planes at their poles") {
  const Picture picture =
      net_of("lineation 030/20\nlineation 200/75\nbedding 090 30\nbedding 170 90\n");
  const Circle rim = rim_of(picture);
  const auto marks = drawn<Path>(picture, Role::mark);
  REQUIRE(marks.size() == 6);  // with two of the legend
  const std::array<Point, 4> places = {expected(rim, 30, 20), expected(rim, 200, 75),
                                       expected(rim, 0, 60), expected(rim, 80, 0)};
  for (std::size_t i = 0; i < places.size(); ++i)
    CHECK(distance(middle_of(marks[i].parts[0]), places[i]) < 1e-9);
}

TEST_CASE("an arrow that rises lies at its lower end") {
  const Picture picture = net_of("current 210/-20\n");
  const Circle rim = rim_of(picture);
  CHECK(distance(middle_of(drawn<Path>(picture, Role::mark)[0].parts[0]), expected(rim, 30, 20)) <
        1e-9);
}

TEST_CASE("a trend without its plunge is counted below the net, and not drawn") {
  const Picture alone = net_of("current 118\ncurrent 120\n");
  CHECK(drawn<Path>(alone, Role::mark).size() == 1);  // the legend's
  CHECK(contains(words_of(alone), "current: 0 readings; 2 more without a plunge"));
}

TEST_CASE("a horizontal plane's pole and a vertical line are the centre") {
  const Picture picture = net_of("bedding horizontal\nlineation vertical\n");
  const auto marks = drawn<Path>(picture, Role::mark);
  REQUIRE(marks.size() == 4);
  for (std::size_t i = 0; i < 2; ++i)
    CHECK(distance(middle_of(marks[i].parts[0]), rim_of(picture).center) < 1e-9);
}

TEST_CASE("great circles lie at right angles to their poles and end on the rim") {
  NetStyle style;
  style.circles = true;
  const Picture picture =
      net_of("bedding 090 30\nbedding 217 71\nbedding 170 90\nbedding 045 2\n", style);
  const Circle rim = rim_of(picture);
  const auto curves = drawn<Path>(picture, Role::curve);
  REQUIRE(curves.size() == 5);
  CHECK(drawn<Path>(picture, Role::mark).empty());
  const std::array<std::pair<double, double>, 4> planes = {
      {{90, 30}, {217, 71}, {170, 90}, {45, 2}}};
  for (std::size_t i = 0; i < planes.size(); ++i) {
    const auto [strike, dip] = planes[i];
    const auto& points = curves[i].parts.at(0);
    CHECK(points.size() > 80);
    for (const Point& point : points) {
      CHECK(std::abs(between(direction_on(rim, point), pole_of(strike, dip)) - 90) < 1e-5);
      CHECK(distance(point, rim.center) < rim.radius + 1e-9);
    }
    CHECK(distance(points.front(), expected(rim, strike, 0)) < 1e-6);
    CHECK(distance(points.back(), expected(rim, strike + 180, 0)) < 1e-6);
    // In the middle it dips to the right of its strike.
    CHECK(distance(points[points.size() / 2], expected(rim, strike + 90, dip)) < 1e-6);
  }
}

TEST_CASE("a horizontal plane's circle is the rim") {
  NetStyle style;
  style.circles = true;
  const Picture picture = net_of("bedding horizontal\n", style);
  const Circle rim = rim_of(picture);
  const Path curve = drawn<Path>(picture, Role::curve).at(0);
  for (const Point& point : curve.parts.at(0))
    CHECK(std::abs(distance(point, rim.center) - rim.radius) < 1e-9);
}

TEST_CASE("poles and circles are drawn together on request, lines always as points") {
  const std::string readings = "bedding 090 30\nlineation 030/20\n";
  const auto counts = [&](bool poles, bool circles) {
    NetStyle style;
    style.poles = poles;
    style.circles = circles;
    const Picture picture = net_of(readings, style);
    return std::pair(drawn<Path>(picture, Role::mark).size(),
                     drawn<Path>(picture, Role::curve).size());
  };
  // Each twice, on the net and in the legend.
  CHECK(counts(false, false) == std::pair<std::size_t, std::size_t>(4, 0));
  CHECK(counts(true, false) == std::pair<std::size_t, std::size_t>(4, 0));
  CHECK(counts(false, true) == std::pair<std::size_t, std::size_t>(2, 2));
  CHECK(counts(true, true) == std::pair<std::size_t, std::size_t>(4, 2));
}

TEST_CASE("a cone lies at its angle from the mean, on the other side of the net too") {
  for (const char* readings : {"lineation 030/40\nlineation 036/44\nlineation 040/37\n",
                               "lineation 030/3\nlineation 036/1\nlineation 215/2\n"}) {
    const SummedUp sum(heading_lines + readings);
    const Picture picture = net_picture(sum.document(), {});
    const auto& mean = *sum.summaries.at(0).mean;
    const Circle rim = rim_of(picture);
    const auto cones = drawn<Path>(picture, Role::cone);
    REQUIRE_FALSE(cones.empty());
    std::size_t points = 0;
    for (const Path& cone : cones) {
      for (const Point& point : cone.parts.at(0)) {
        // Cut off at the rim between two points of the line, it may be off by its sagitta.
        CHECK(std::abs(between(direction_on(rim, point), mean.axis) - *mean.cone95) < 0.02);
        CHECK(distance(point, rim.center) < rim.radius + 1e-6);
        ++points;
      }
      if (cones.size() > 1) {
        for (const Point& end : {cone.parts[0].front(), cone.parts[0].back()}) {
          const bool is_start = distance(end, cones.front().parts[0].front()) < 1e-9 ||
                                distance(end, cones.back().parts[0].back()) < 1e-9;
          if (!is_start) CHECK(std::abs(distance(end, rim.center) - rim.radius) < 1e-6);
        }
      }
    }
    CHECK(points > 180);
    const auto means = drawn<Path>(picture, Role::mean);
    REQUIRE(means.size() == 1);
    CHECK(between(direction_on(rim, middle_of(means[0].parts[0])), mean.axis) < 1e-6);
  }
}

TEST_CASE("no mean is drawn of two readings, nor of what lies evenly") {
  CHECK(drawn<Path>(net_of("lineation 030/40\nlineation 036/44\n"), Role::mean).empty());
  const Picture even = net_of(
      "bedding 000 55\nbedding 060 55\nbedding 120 55\nbedding 180 55\nbedding 240 55\n"
      "bedding 300 55\n");
  CHECK(drawn<Path>(even, Role::mean).empty());
  CHECK(drawn<Path>(even, Role::cone).empty());
}

TEST_CASE("a girdle is drawn with its pole and a cone around that") {
  std::string readings;
  for (const char* plane :
       {"190 64", "200 47", "220 30", "250 21", "290 21", "320 29", "340 47", "350 65"})
    readings += std::string("bedding ") + plane + '\n';
  const SummedUp sum(heading_lines + readings);
  REQUIRE(sum.summaries.at(0).girdle);
  const auto& girdle = *sum.summaries[0].girdle;
  const Picture picture = net_picture(sum.document(), {});
  const Circle rim = rim_of(picture);
  const auto circles = drawn<Path>(picture, Role::girdle);
  REQUIRE(circles.size() == 1);
  for (const Point& point : circles[0].parts.at(0))
    CHECK(std::abs(between(direction_on(rim, point), girdle.pole) - 90) < 1e-5);
  const auto strokes = drawn<Path>(picture, Role::mean);
  REQUIRE(strokes.size() == 2);  // a cross
  for (const Path& stroke : strokes)
    CHECK(between(direction_on(rim, middle_of(stroke.parts.at(0))), girdle.pole) < 1e-6);
  const auto cones = drawn<Path>(picture, Role::cone);
  REQUIRE_FALSE(cones.empty());
  for (const Path& cone : cones) {
    for (const Point& point : cone.parts.at(0))
      CHECK(std::abs(between(direction_on(rim, point), girdle.pole) - *girdle.cone95) < 0.02);
  }
}

TEST_CASE("a girdle whose pole may lie anywhere is not drawn, and said so") {
  const SummedUp sum(heading_lines +
                     "bedding 355 22\nbedding 358 24\nbedding 280 25\nbedding 260 19\n"
                     "bedding 005 21\n");
  REQUIRE(sum.summaries.at(0).girdle);
  CHECK_FALSE(sum.summaries[0].girdle->is_known());
  const Picture picture = net_picture(sum.document(), {});
  CHECK(drawn<Path>(picture, Role::girdle).empty());
  CHECK(drawn<Path>(picture, Role::cone).empty());
  CHECK(contains(words_of(picture), "its pole not known"));
  CHECK_FALSE(contains(words_of(picture), "best great circle"));
}

TEST_CASE("the graticule is of great circles through north and small circles about it") {
  const Picture picture = net_of("bedding 090 30\n");
  const Circle rim = rim_of(picture);
  const auto lines = drawn<Path>(picture, Role::grid);
  REQUIRE(lines.size() == 34);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto& points = lines[i].parts.at(0);
    const bool is_meridian = i % 2 == 0;
    const double angle = 10 + 10 * static_cast<double>(i / 2);
    const Vector axis = is_meridian ? direction_of(270, 90 - angle) : Vector{1, 0, 0};
    for (const Point& point : points) {
      const Vector direction = direction_on(rim, point);
      CHECK(distance(point, rim.center) < rim.radius + 1e-9);
      if (is_meridian) {
        CHECK(std::abs(between(direction, axis) - 90) < 1e-5);
      } else {
        CHECK(std::abs(std::acos(direction.north) * 180 / std::numbers::pi - angle) < 1e-5);
      }
    }
    for (const Point& end : {points.front(), points.back()})
      CHECK(std::abs(distance(end, rim.center) - rim.radius) < 1e-6);
  }
}

TEST_CASE("contours go around all that is dense enough, and stay within the rim") {
  RandomAxes random(8);
  std::string readings;
  for (int i = 0; i < 40; ++i) {
    const TrendAndPlunge line = line_of_axis(random.about(direction_of(60, 15), 12));
    const auto [trend, plunge] =
        std::pair(static_cast<int>(line.trend), static_cast<int>(line.plunge));
    readings += "lineation ";
    for (const int place : {100, 10, 1})
      readings += static_cast<char>('0' + trend / place % 10);
    readings += '/' + std::to_string(plunge) + '\n';
  }
  const SummedUp sum(heading_lines + readings);
  NetStyle style;
  style.contours = true;
  const Picture picture = net_picture(sum.document(), style);
  const Circle rim = rim_of(picture);
  const auto contours = drawn<Path>(picture, Role::contour);
  REQUIRE(contours.size() > 2);
  std::vector<Vector> axes;
  for (const auto* const member : sum.summaries.at(0).group.members)
    axes.push_back(member->axis);
  REQUIRE(axes.size() == 40);
  const KambDensity density(axes);
  std::string words = words_of(picture);
  std::ranges::replace(words, '\n', ' ');
  const std::size_t stated = words.find("lines at ");
  REQUIRE(stated != words.npos);
  std::istringstream figures(words.substr(stated + 9));
  std::vector<double> levels;
  char comma = 0;
  for (double level = 0; figures >> level; figures >> comma)
    levels.push_back(level);
  REQUIRE(levels.size() == contours.size());
  CHECK(levels[0] >= 2);
  CHECK(levels[1] == 2 * levels[0]);
  std::size_t asked = 0;
  for (double x = -0.95; x < 1; x += 0.0671) {
    for (double y = -0.95; y < 1; y += 0.0713) {
      if (std::hypot(x, y) > 0.98) continue;
      const double here = density.at(direction_at({x, y}));
      // Only where the count is the same all round: between two points of the grid a line lies
      // where they say in proportion, and counts go in steps.
      bool is_even = true;
      for (const auto& [dx, dy] : {std::pair(0.02, 0.0), {-0.02, 0.0}, {0.0, 0.02}, {0.0, -0.02}})
        is_even = is_even && density.at(direction_at({x + dx, y + dy})) == here;
      if (!is_even) continue;
      for (std::size_t level = 0; level < contours.size(); ++level) {
        const Point at = {rim.center.x + rim.radius * x, rim.center.y - rim.radius * y};
        INFO(x << ' ' << y << ", level " << level << ", density " << here);
        CHECK(is_inside(contours[level].parts, at) == (here >= levels[level]));
        ++asked;
      }
    }
  }
  CHECK(asked > 300);
  CHECK(is_balanced(picture));
}

TEST_CASE("few surfaces are contoured with a warning, under ten not at all") {
  NetStyle style;
  style.contours = true;
  const auto contours_of = [&](const Picture& picture) {
    return drawn<Path>(picture, Role::contour).size();
  };
  std::string readings;
  for (int i = 0; i < 9; ++i)
    readings += "bedding 0" + std::to_string(30 + i) + " 30\n";
  const SummedUp nine(heading_lines + readings + "joint 400 30\n");
  const Picture none = net_picture(nine.document(), style);
  CHECK(contours_of(none) == 0);
  CHECK(contains(words_of(none), "no contours: N 9, and of under 10"));
  CHECK(groups_too_small_to_contour(nine.document()) == 1);
  const SummedUp ten(heading_lines + readings + "bedding 040 30\n");
  const Picture few = net_picture(ten.document(), style);
  CHECK(contours_of(few) > 0);
  CHECK(contains(words_of(few), "with N under 20, contours say little"));
  CHECK(groups_too_small_to_contour(ten.document()) == 1);
  // Thirty readings of one surface are one.
  std::string repeats = "bedding 030 30";
  for (int i = 0; i < 29; ++i)
    repeats += ", 031 30";
  const SummedUp one(heading_lines + repeats + '\n');
  CHECK(contours_of(net_picture(one.document(), style)) == 0);
  CHECK(contains(words_of(net_picture(one.document(), style)), "no contours: N 1, "));
  std::string many;
  for (int i = 0; i < 20; ++i)
    many += "bedding 0" + std::to_string(30 + i) + " 30\n";
  const SummedUp enough(heading_lines + many);
  CHECK_FALSE(contains(words_of(net_picture(enough.document(), style)), "under 20"));
  CHECK(groups_too_small_to_contour(enough.document()) == 0);
}

TEST_CASE("units have a net each, named by the unit and not by the first of its kinds") {
  const SummedUp sum({{"day.txt", heading_lines + "unit marl\nbedding 090 30\njoint 010 80\n"
                                                  "station Q2\nunit chalk\nbedding 090 30\n"}},
                     {true, false});
  const Picture picture = net_picture(sum.document(), {});
  CHECK(drawn<Circle>(picture, Role::frame).size() == 2);
  const auto labels = drawn<Words>(picture, Role::label);
  const auto has = [&](std::string_view text) {
    return std::ranges::any_of(labels, [&](const Words& words) { return words.text == text; });
  };
  CHECK(has("marl"));
  CHECK(has("chalk"));
  NetStyle style;
  style.contours = true;
  const Picture contoured = net_picture(sum.document(), style);
  CHECK(drawn<Circle>(contoured, Role::frame).size() == 3);
  CHECK(contains(words_of(contoured), "joint, marl\n"));
}

TEST_CASE("readings of two norths are never on one net, and both nets say theirs") {
  const SummedUp sum(std::vector<NamedLog>{
      {"one.txt", "set 0\ndeclination 5E\nrule right\nstation Q1\nbedding 090 30\n"},
      {"two.txt", "set 0\nrule right\nstation Q1\nbedding 090 30\n"}});
  const Picture picture = net_picture(sum.document(), {});
  CHECK(drawn<Circle>(picture, Role::frame).size() == 2);
  const std::string words = words_of(picture);
  CHECK(contains(words, "Net of 2 logs\n"));
  CHECK(contains(words, "from true north\n"));
  CHECK(contains(words, "from magnetic north\n"));
  CHECK(contains(words, "declination 5E in 1 log; declination unknown in 1 log"));
}

TEST_CASE("what is far off has a ring and its station's name, on paper however long") {
  std::string readings;
  for (int i = 0; i < 12; ++i)
    readings += "lineation 0" + std::to_string(80 + i) + "/02\n";
  const std::string name(300, 'W');
  const SummedUp sum("set 0\ndeclination 0\nstation " + name + '\n' + readings +
                     "lineation 170/20\nlineation 320/40\n");
  REQUIRE(sum.summaries.at(0).far_off.size() == 2);
  const Picture picture = net_picture(sum.document(), {});
  CHECK(drawn<Circle>(picture, Role::leader).size() == 2);
  CHECK(contains(words_of(picture), "WWW"));
  CHECK(is_on_paper(picture));
}

TEST_CASE("the ring of what is far off is round something, on a net of circles too") {
  std::string readings;
  for (int i = 0; i < 12; ++i)
    readings += "bedding 0" + std::to_string(80 + i) + " 42\n";
  const SummedUp sum(heading_lines + readings + "bedding 170 60\n");
  REQUIRE(sum.summaries.at(0).far_off.size() == 1);
  NetStyle style;
  style.circles = true;
  const Picture circles = net_picture(sum.document(), style);
  const auto rings = drawn<Circle>(circles, Role::leader);
  REQUIRE(rings.size() == 1);
  CHECK(distance(rings[0].center, expected(rim_of(circles), 260, 60)) < 1e-6);
  const auto curves = drawn<Path>(circles, Role::curve);
  double nearest = 100;
  for (const Point& point : curves.at(12).parts.at(0))
    nearest = std::min(nearest, distance(point, rings[0].center));
  CHECK(nearest < rings[0].radius);
  const Picture poles = net_picture(sum.document(), {});
  CHECK(distance(drawn<Circle>(poles, Role::leader).at(0).center, expected(rim_of(poles), 80, 30)) <
        1e-6);
}

TEST_CASE("two joint sets have neither a mean nor a girdle, and the legend says so") {
  std::string readings;
  for (const char* plane : {"012 85", "016 88", "193 84", "020 83", "014 86", "104 85", "101 88",
                            "284 84", "108 83", "103 86"})
    readings += std::string("joint ") + plane + '\n';
  const Picture picture = net_of(readings);
  CHECK(drawn<Path>(picture, Role::mean).empty());
  CHECK(drawn<Path>(picture, Role::girdle).empty());
  CHECK(drawn<Path>(picture, Role::cone).empty());
  CHECK(contains(words_of(picture), "joint: 10 readings; no single mean: two clear sets\n"));
}

TEST_CASE("a mean with a cone over 25 degrees is not drawn, and the legend says so") {
  const Picture wide = net_of("fault 030 40\nfault 060 70\nfault 080 50\n");
  CHECK(drawn<Path>(wide, Role::mean).empty());
  CHECK(contains(words_of(wide), "fault: 3 readings; no single mean: too scattered\n"));
  const Picture close = net_of("fault 030 40\nfault 036 44\nfault 040 42\n");
  CHECK(drawn<Path>(close, Role::mean).size() == 1);
}

TEST_CASE("without readings there is a paper that says so") {
  for (const std::string& log : {std::string(), heading_lines, std::string("what is this\n")}) {
    const SummedUp sum(log);
    for (const bool contours : {false, true}) {
      NetStyle style;
      style.contours = contours;
      const Picture picture = net_picture(sum.document(), style);
      CHECK(is_on_paper(picture));
      CHECK(contains(words_of(picture), "No planes and no lines."));
    }
  }
}

TEST_CASE("rejected readings are not drawn, but counted") {
  const Picture picture = net_of("bedding 400 30\nbedding 090 30\n");
  CHECK(drawn<Path>(picture, Role::mark).size() == 2);
  CHECK(contains(words_of(picture), "bedding: 1 reading; left out: 1 rejected\n"));
  CHECK(contains(words_of(picture), "Left out: 1 rejected.\n"));
}

TEST_CASE("every reading is a group that names its place, and all groups end") {
  const Picture picture = net_of("bedding 090 30, 091 31\n");
  std::vector<std::string> sources;
  for (const Picture::Item& item : picture.items()) {
    if (const auto* const reading = std::get_if<BeginReading>(&item)) {
      sources.push_back(reading->source);
      CHECK(contains(reading->title, "Q1, bedding: 09"));
      CHECK(contains(reading->title, "from true north"));
    }
  }
  CHECK(sources == std::vector<std::string>{"day.txt:5:1", "day.txt:5:17"});
  CHECK(is_balanced(picture));
}

}  // namespace lodebook::drawing
