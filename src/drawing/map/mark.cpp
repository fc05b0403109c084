// SPDX-License-Identifier: MIT
#include "mark.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace lodebook::drawing {

std::vector<Point> Turned::points(const std::vector<Place>& places) const {
  std::vector<Point> points;
  points.reserve(places.size());
  for (const Place& place : places)
    points.push_back(point(place));
  return points;
}

void Turned::line(const std::vector<Place>& places) const {
  picture_.line(Role::symbol, points(places));
}

void Turned::solid(const std::vector<Place>& places) const {
  picture_.area(Role::solid, points(places));
}

void Turned::hollow(const std::vector<Place>& places) const {
  picture_.area(Role::hollow, points(places));
}

void Turned::disc(Place center, double radius) const {
  picture_.circle(Role::solid, point(center), radius);
}

void Turned::ring(Place center, double radius) const {
  picture_.circle(Role::hollow, point(center), radius);
}

void Turned::hook() const {
  constexpr double down = 1.6;
  constexpr double up = 0.7;
  constexpr double bow = 0.7;
  constexpr int corners = 8;
  std::vector<Place> places = {{0, down}};
  for (int i = 0; i <= corners; ++i) {
    const double turned = std::numbers::pi * i / corners;
    places.push_back({bow - bow * std::cos(turned), -up - bow * std::sin(turned)});
  }
  places.push_back({2 * bow, 0});
  line(places);
}

Turned Turned::mirrored() const {
  Turned other = *this;
  other.right_ = -1 * right_;
  return other;
}

Turned Turned::reversed() const {
  Turned other = mirrored();
  other.ahead_ = -1 * ahead_;
  return other;
}

Turned Turned::ahead(double distance) const {
  Turned other = *this;
  other.at_ = point({distance, 0});
  return other;
}

PlaneMark mark_of_plane(std::string_view kind) {
  constexpr std::array<std::pair<std::string_view, PlaneMark>, 11> marks = {
      {{"bedding", PlaneMark::tick},
       {"foliation", PlaneMark::triangle},
       {"schistosity", PlaneMark::barred_triangle},
       {"cleavage", PlaneMark::open_box},
       {"joint", PlaneMark::box},
       {"fault", PlaneMark::arrow},
       {"shear", PlaneMark::double_line},
       {"vein", PlaneMark::diamond},
       {"dike", PlaneMark::thick_line},
       {"contact", PlaneMark::capped_line},
       {"axial-plane", PlaneMark::chevron}}};
  const auto* const found =
      std::ranges::find(marks, kind, [](const auto& row) { return row.first; });
  return found == marks.end() ? PlaneMark::ring : found->second;
}

LineMark mark_of_line(std::string_view kind) {
  constexpr std::array<std::pair<std::string_view, LineMark>, 11> marks = {
      {{"lineation", LineMark::plain},
       {"stretching", LineMark::solid_head},
       {"fold-axis", LineMark::double_shaft},
       {"intersection", LineMark::crossed},
       {"slickenline", LineMark::half_head},
       {"flute", LineMark::open_head},
       {"current", LineMark::feathered},
       {"striation", LineMark::barred},
       {"groove", LineMark::twice_barred},
       {"crest", LineMark::peaked},
       {"alignment", LineMark::dotted}}};
  const auto* const found =
      std::ranges::find(marks, kind, [](const auto& row) { return row.first; });
  return found == marks.end() ? LineMark::ring_tail : found->second;
}

void draw_bar(const Turned& on, PlaneMark mark) {
  switch (mark) {
    case PlaneMark::double_line:
      on.line({{-3, -0.8}, {3, -0.8}});
      break;
    case PlaneMark::thick_line:
      on.solid({{-2.4, -0.4}, {2.4, -0.4}, {2.4, 0.4}, {-2.4, 0.4}});
      break;
    case PlaneMark::capped_line:
      on.line({{-3, -0.8}, {-3, 0.8}});
      on.line({{3, -0.8}, {3, 0.8}});
      break;
    default:
      break;
  }
}

void draw_mark(const Turned& on, PlaneMark mark) {
  switch (mark) {
    case PlaneMark::triangle:
      on.solid({{-0.9, 0}, {0.9, 0}, {0, 1.5}});
      break;
    case PlaneMark::barred_triangle:
      on.solid({{-0.9, 0}, {0.9, 0}, {0, 1.4}});
      on.line({{-0.9, 1.5}, {0.9, 1.5}});
      break;
    case PlaneMark::open_box:
      on.hollow({{-1, 0}, {1, 0}, {1, 1.1}, {-1, 1.1}});
      break;
    case PlaneMark::box:
      on.solid({{-0.6, 0}, {0.6, 0}, {0.6, 1.1}, {-0.6, 1.1}});
      break;
    case PlaneMark::arrow:
      on.line({{0, 0}, {0, 1.7}});
      on.line({{-0.5, 1}, {0, 1.7}, {0.5, 1}});
      break;
    case PlaneMark::diamond:
      on.hollow({{0, 0}, {0.65, 0.8}, {0, 1.6}, {-0.65, 0.8}});
      break;
    case PlaneMark::chevron:
      on.line({{-1, 0}, {0, 1.4}, {1, 0}});
      break;
    case PlaneMark::ring:
      on.ring({0, 0.75}, 0.75);
      break;
    case PlaneMark::tick:
    case PlaneMark::double_line:
    case PlaneMark::thick_line:
    case PlaneMark::capped_line:
      on.line({{0, 0}, {0, 1.5}});
      break;
  }
}

void draw_head(const Turned& on, LineMark mark) {
  switch (mark) {
    case LineMark::solid_head:
      on.solid({{0.4, 0}, {-1.1, 0.7}, {-1.1, -0.7}});
      break;
    case LineMark::open_head:
      on.hollow({{0.4, 0}, {-1.1, 0.8}, {-1.1, -0.8}});
      break;
    case LineMark::half_head:
      on.solid({{0.2, 0}, {-1.2, 0}, {-1.2, 0.8}});
      break;
    default:
      on.line({{-1, 0.7}, {0, 0}, {-1, -0.7}});
  }
}

void draw_tail(const Turned& on, LineMark mark) {
  switch (mark) {
    case LineMark::double_shaft:
      on.line({{-3, 0.6}, {0.2, 0.6}});
      break;
    case LineMark::crossed:
      on.line({{-1.6, -0.7}, {-0.2, 0.7}});
      on.line({{-1.6, 0.7}, {-0.2, -0.7}});
      break;
    case LineMark::feathered:
      on.line({{-3, 0.8}, {-2.2, 0}, {-3, -0.8}});
      on.line({{-2.2, 0.8}, {-1.4, 0}, {-2.2, -0.8}});
      break;
    case LineMark::barred:
      on.line({{-0.8, -0.7}, {-0.8, 0.7}});
      break;
    case LineMark::twice_barred:
      on.line({{-1.2, -0.7}, {-1.2, 0.7}});
      on.line({{-0.4, -0.7}, {-0.4, 0.7}});
      break;
    case LineMark::peaked:
      on.line({{-1.6, 0}, {-0.8, -0.9}, {0, 0}});
      break;
    case LineMark::dotted:
      on.disc({-0.8, 0}, 0.45);
      break;
    case LineMark::ring_tail:
      on.ring({-1.2, 0}, 0.6);
      break;
    default:
      break;
  }
}

bool is_standard(PlaneMark mark, Form form, notebook::Facing facing) {
  switch (mark) {
    case PlaneMark::tick:
      return form != Form::horizontal || facing != notebook::Facing::overturned;
    case PlaneMark::triangle:
    case PlaneMark::box:
      return form == Form::inclined || form == Form::vertical;
    default:
      return false;
  }
}

bool is_standard(LineMark mark, Form form) {
  return mark == LineMark::plain && form != Form::vertical && form != Form::unmeasured;
}

}  // namespace lodebook::drawing
