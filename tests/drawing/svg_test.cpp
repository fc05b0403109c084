// SPDX-License-Identifier: MIT
// A picture as SVG: every item once, in millimetres.
#include <lodebook/drawing/svg.hpp>

#include <catch.hpp>
#include <set>

using namespace lodebook::drawing;

namespace {

std::string element_of(const Picture& picture) {
  std::string out;
  append_svg_element(out, picture);
  return out;
}

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != text.npos;
}

}  // namespace

TEST_CASE("azimuths on paper run clockwise from the top") {
  CHECK(towards({10, 10}, 0, 5) == Point{10, 5});
  CHECK(towards({10, 10}, 90, 5) == Point{15, 10});
  CHECK(towards({10, 10}, 180, 5) == Point{10, 15});
}

TEST_CASE("a picture has its size in millimetres and is told to those who do not see it") {
  const std::string svg = element_of(Picture("net", "A <net>", "Two poles.", 120, 90.5));
  CHECK(contains(svg, "width=\"120mm\" height=\"90.5mm\" viewBox=\"0 0 120 90.5\""));
  CHECK(contains(svg, "aria-labelledby=\"net-title net-description\""));
  CHECK(contains(svg, "<title id=\"net-title\">A &lt;net&gt;</title>"));
  CHECK(contains(svg, "<desc id=\"net-description\">Two poles.</desc>"));
}

TEST_CASE("shapes keep their order, their parts and three decimals") {
  Picture picture("p", "", "", 10, 10);
  picture.line(Role::curve, {{0, 0}, {1.23456, 2}}, 3);
  picture.area(Role::petal, {{{0, 0}, {1, 0}, {1, 1}}, {{5, 5}, {6, 5}, {6, 6}}});
  picture.contour(2, {{{1, 1}, {2, 1}, {2, 2}}});
  picture.circle(Role::frame, {5, 5}, 4);
  picture.words(Role::figure, {1, 2}, "32", Words::Anchor::middle, 45);
  const std::string svg = element_of(picture);
  const auto curve = svg.find("<path class=\"curve s3 p3\" d=\"M0 0L1.235 2\"/>");
  const auto petal = svg.find("<path class=\"petal\" d=\"M0 0L1 0L1 1ZM5 5L6 5L6 6Z\"/>");
  REQUIRE(curve != svg.npos);
  REQUIRE(petal != svg.npos);
  CHECK(curve < petal);
  CHECK(contains(svg, "<path class=\"contour c2\""));
  CHECK(contains(svg, "<circle class=\"frame\" cx=\"5\" cy=\"5\" r=\"4\"/>"));
  CHECK(contains(svg,
                 "<text class=\"figure\" x=\"1\" y=\"2\" text-anchor=\"middle\" "
                 "transform=\"rotate(45 1 2)\">32</text>"));
}

TEST_CASE("curves of each series differ in colour or in pattern") {
  Picture picture("p", "", "", 10, 10);
  for (Series series = 0; series < 25; ++series)
    picture.line(Role::curve, {{0, 0}, {1, 1}}, series);
  const std::string svg = element_of(picture);
  std::set<std::string> classes;
  for (std::size_t at = svg.find("curve "); at != svg.npos; at = svg.find("curve ", at + 1))
    classes.insert(svg.substr(at, svg.find('"', at) - at));
  CHECK(classes.size() == 25);
}

TEST_CASE("a reading is a group that names its place in the log") {
  Picture picture("p", "", "", 10, 10);
  picture.begin_reading("day.log:3:5", "H1 <bedding>");
  picture.circle(Role::mark, {1, 1}, 1);
  picture.end();
  CHECK(contains(element_of(picture),
                 "<g class=\"reading\" data-source=\"day.log:3:5\">"
                 "<title>H1 &lt;bedding&gt;</title>"));
}

TEST_CASE("a placed picture is moved, its clips too") {
  Picture inner("inner", "", "", 10, 10);
  inner.begin_clip(Circle{{5, 5}, 5});
  inner.line(Role::grid, {{0, 0}, {1, 1}});
  inner.end();
  Picture outer("outer", "", "", 30, 30);
  outer.place(inner, {10, 20});
  const std::string svg = element_of(outer);
  CHECK(
      contains(svg, "<clipPath id=\"outer-clip-1\"><circle class=\"outline\" cx=\"15\" cy=\"25\""));
  CHECK(contains(svg, "clip-path=\"url(#outer-clip-1)\""));
  CHECK(contains(svg, "d=\"M10 20L11 21\""));
}

TEST_CASE("a file of its own brings its style sheet, an element of a page does not") {
  const Picture picture("p", "", "", 10, 10);
  std::string file;
  append_svg_file(file, picture);
  CHECK(file.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg "));
  CHECK(contains(file, "svg.drawn .frame{fill:none;stroke:#20242a"));
  CHECK_FALSE(contains(element_of(picture), "<style>"));
}
