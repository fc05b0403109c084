// SPDX-License-Identifier: MIT
#include "grid.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <lodebook/output/text.hpp>

namespace lodebook::drawing {
namespace {

/// Scales are not larger: 1:100, and 1:1000 where there is only one place to show.
constexpr double largest_scale = 100;
constexpr double largest_scale_of_one_place = 1000;
constexpr double one_place_m = 1;
/// Grid lines are at least so far apart.
constexpr double least_grid_mm = 25;
constexpr double least_bar_mm = 25;

/// Both norths of a plane: `turn` as LocalPlane has it.
double convergence_from(double turn) {
  return std::remainder(-turn, 360.0);
}

std::string metres_text(double metres) {
  return output::figure_text(metres, metres == std::floor(metres) ? 0 : 1);
}

}  // namespace

MapGrid::MapGrid(std::span<const earth::Position> places) : plane_(places.front()) {
  earth::ZoneGrid zone(places.front());
  if (std::ranges::all_of(places, [&](const auto& place) { return zone.reaches(place); }))
    zone_ = zone;
}

GridPlace MapGrid::place(const earth::Position& position) const {
  if (!zone_) {
    return {plane_.to_plane(position), convergence_from(plane_.meridian_turn(position))};
  }
  if (!zone_->reaches(position)) {
    constexpr double far_m = 100'000;
    const double azimuth = earth::geodesic(plane_.origin(), position).azimuth;
    return place(earth::travelled(plane_.origin(), azimuth, far_m));
  }
  const earth::GridPosition found = zone_->grid_position(position);
  return {{found.easting_m, found.northing_m}, found.convergence.degrees_east()};
}

earth::Position MapGrid::position(const earth::PlanePoint& point) const {
  return zone_ ? zone_->position(point.east_m, point.north_m) : plane_.to_position(point);
}

std::string MapGrid::name() const {
  if (!zone_) return "WGS 84, plane around the first station";
  const std::string designation = zone_->grid_position(plane_.origin()).designation();
  return (designation.size() == 1 ? "WGS 84 / UPS " : "WGS 84 / UTM ") + designation;
}

double round_step(double least, bool with_quarters) {
  const double power = std::pow(10, std::floor(std::log10(least) + 1e-9));
  for (const double step : {1.0, 2.0, 2.5, 5.0}) {
    if (step == 2.5 && !with_quarters) continue;
    if (step * power >= least * (1 - 1e-9)) return step * power;
  }
  return 10 * power;
}

Point View::paper(const earth::PlanePoint& point) const {
  const Point center = frame.center();
  return {center.x + (point.east_m - middle.east_m) / metres_per_mm(),
          center.y - (point.north_m - middle.north_m) / metres_per_mm()};
}

earth::PlanePoint View::grid(Point point) const {
  const Point center = frame.center();
  return {middle.east_m + (point.x - center.x) * metres_per_mm(),
          middle.north_m - (point.y - center.y) * metres_per_mm()};
}

earth::PlanePoint Extent::middle() const {
  return {(least.east_m + most.east_m) / 2, (least.north_m + most.north_m) / 2};
}

void Extent::include(const earth::PlanePoint& point) {
  least = {std::min(least.east_m, point.east_m), std::min(least.north_m, point.north_m)};
  most = {std::max(most.east_m, point.east_m), std::max(most.north_m, point.north_m)};
}

double scale_for(const Extent& extent, double width, double height) {
  const double needed = 1000 * std::max(extent.east_m() / (width - 2 * view_margin_mm),
                                        extent.north_m() / (height - 2 * view_margin_mm));
  const bool one_place = std::max(extent.east_m(), extent.north_m()) < one_place_m;
  return round_step(std::max(needed, one_place ? largest_scale_of_one_place : largest_scale), true);
}

void draw_grid(Picture& picture, const View& view) {
  const double step = round_step(least_grid_mm * view.metres_per_mm(), false);
  const Box& frame = view.frame;
  const earth::PlanePoint least = view.grid({frame.least.x, frame.most.y});
  const earth::PlanePoint most = view.grid({frame.most.x, frame.least.y});
  constexpr double tick = 1.2;
  // A figure at a corner would leave the sheet or meet that of the other side: its line has it at
  // no other place, but its neighbour's tells the distance.
  const auto label = [&](Point at, double metres, std::string_view unit, double turn,
                         double from_corner) {
    std::string text = metres_text(metres);
    text += unit;
    if (width_of(Role::figure, text) / 2 > from_corner + 1.5) return;
    picture.words(Role::figure, at, std::move(text), Words::Anchor::middle, turn);
  };
  bool first = true;
  for (double i = std::ceil(least.east_m / step); i * step <= most.east_m; ++i) {
    const double x = view.paper({i * step, 0}).x;
    picture.line(Role::grid, {{x, frame.least.y}, {x, frame.most.y}});
    picture.line(Role::tick, {{x, frame.most.y}, {x, frame.most.y + tick}});
    label({x, frame.most.y + tick + 2.2}, i * step, first ? " mE" : "", 0,
          std::min(x - frame.least.x, frame.most.x - x));
    first = false;
  }
  first = true;
  for (double i = std::ceil(least.north_m / step); i * step <= most.north_m; ++i) {
    const double y = view.paper({0, i * step}).y;
    picture.line(Role::grid, {{frame.least.x, y}, {frame.most.x, y}});
    picture.line(Role::tick, {{frame.least.x - tick, y}, {frame.least.x, y}});
    label({frame.least.x - tick - 0.8, y}, i * step, first ? " mN" : "", -90,
          std::min(y - frame.least.y, frame.most.y - y));
    first = false;
  }
}

std::string scale_words(double scale) {
  return "1:" + output::figure_text(scale, 0);
}

std::string length_words(double metres) {
  if (metres < 1000)
    return output::figure_text(metres, metres < 10 && metres != std::floor(metres) ? 1 : 0) + " m";
  const double km = metres / 1000;
  return output::figure_text(km, km < 100 && km != std::floor(km) ? 1 : 0) + " km";
}

void draw_scale_bar(Picture& picture, Point left, double scale) {
  const double length_m = round_step(least_bar_mm * scale / 1000, false);
  const double half = length_m / scale * 1000 / 2;
  constexpr double height = 1.2;
  picture.area(Role::solid,
               {left, left + Point{half, 0}, left + Point{half, height}, left + Point{0, height}});
  picture.area(Role::hollow, {left + Point{half, 0}, left + Point{2 * half, 0},
                              left + Point{2 * half, height}, left + Point{half, height}});
  const double above = -0.8;
  picture.words(Role::figure, left + Point{0, above}, "0", Words::Anchor::middle);
  picture.words(Role::figure, left + Point{half, above}, length_words(length_m / 2),
                Words::Anchor::middle);
  picture.words(Role::figure, left + Point{2 * half, above}, length_words(length_m),
                Words::Anchor::middle);
}

}  // namespace lodebook::drawing
