// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <cmath>

#include "margin.hpp"

namespace lodebook::drawing {
namespace {

struct Arrow {
  enum class Which : std::uint8_t { geographic, grid, magnetic } which = Which::geographic;
  std::string_view name;
  double azimuth = 0;
};

void draw_arrow(Picture& picture, Point foot, const Arrow& arrow, double length) {
  const Point tip = towards(foot, arrow.azimuth, length);
  picture.line(Role::symbol, {foot, tip});
  const Point left = towards(tip, arrow.azimuth + 160, 2.6);
  const Point right = towards(tip, arrow.azimuth - 160, 2.6);
  switch (arrow.which) {
    case Arrow::Which::geographic:
      picture.area(Role::solid, {tip, left, towards(tip, arrow.azimuth + 180, 1.7), right});
      break;
    case Arrow::Which::grid:
      picture.line(Role::symbol, {left, tip, right});
      break;
    case Arrow::Which::magnetic:
      picture.area(Role::solid, {tip, left, towards(tip, arrow.azimuth + 180, 2.4)});
      break;
  }
}

}  // namespace

double draw_norths(Picture& picture, Point foot, double convergence,
                   const std::optional<double>& declination) {
  constexpr double longest = 22;
  constexpr double shorter = 16;
  std::vector<Arrow> arrows = {{Arrow::Which::geographic, "true", -convergence},
                               {Arrow::Which::grid, "grid", 0}};
  if (declination)
    arrows.push_back({Arrow::Which::magnetic, "magnetic", *declination - convergence});
  for (Arrow& arrow : arrows)
    arrow.azimuth = std::remainder(arrow.azimuth, 360.0);
  std::ranges::stable_sort(arrows, {}, &Arrow::azimuth);
  // The one in the middle is the longest, so that the names of the others stand free beside it.
  const std::size_t middle = arrows.size() == 3 ? 1 : arrows.size();
  double end = foot.y;
  for (std::size_t i = 0; i < arrows.size(); ++i) {
    // Two that nearly coincide differ in length.
    const double length = i == middle || (i == 1 && arrows.size() == 2) ? longest : shorter;
    draw_arrow(picture, foot, arrows[i], length);
    const Point at = towards(foot, arrows[i].azimuth, length + 1);
    const auto anchor = i == middle ? Words::Anchor::middle
                        : i == 0    ? Words::Anchor::end
                                    : Words::Anchor::start;
    end = std::max(end, at.y + 1);
    const double aside = i == middle ? 0 : i == 0 ? -0.8 : 0.8;
    picture.words(Role::figure, at + Point{aside, 0}, std::string(arrows[i].name), anchor);
  }
  return end;
}

}  // namespace lodebook::drawing
