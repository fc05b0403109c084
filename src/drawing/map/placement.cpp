// SPDX-License-Identifier: MIT
#include "placement.hpp"

#include <algorithm>
#include <cmath>

namespace lodebook::drawing {
namespace {

/// Of the cells that things are looked up in; about a symbol's size.
constexpr double cell_mm = 9;
/// Of the tiles that are searched, and of the lattice of places that are tried in them.
constexpr double tile_mm = 18;
constexpr unsigned tries_a_side = 8;

double squared(double value) {
  return value * value;
}

double squared_distance(Point a, Point b) {
  return squared(a.x - b.x) + squared(a.y - b.y);
}

double squared_distance(Point point, const Box& box) {
  const Point nearest = {std::clamp(point.x, box.least.x, box.most.x),
                         std::clamp(point.y, box.least.y, box.most.y)};
  return squared_distance(point, nearest);
}

bool meet(const Circle& a, const Circle& b) {
  return squared_distance(a.center, b.center) < squared(a.radius + b.radius);
}
bool meet(const Circle& disc, const Box& box) {
  return squared_distance(disc.center, box) < squared(disc.radius);
}
bool meet(const Box& a, const Box& b) {
  return a.least.x < b.most.x && b.least.x < a.most.x && a.least.y < b.most.y &&
         b.least.y < a.most.y;
}

Box bounds_of(const Circle& disc) {
  return box_around(disc.center, 2 * disc.radius, 2 * disc.radius);
}

}  // namespace

Box box_around(Point center, double width, double height) {
  const Point half = {width / 2, height / 2};
  return {center - half, center + half};
}

Placement::Placement(Box frame)
    : frame_(frame),
      columns_(static_cast<std::size_t>(frame.width() / cell_mm) + 1),
      rows_(static_cast<std::size_t>(frame.height() / cell_mm) + 1),
      cells_(columns_ * rows_),
      tile_columns_(static_cast<std::size_t>(frame.width() / tile_mm) + 1),
      tile_rows_(static_cast<std::size_t>(frame.height() / tile_mm) + 1) {}

std::size_t Placement::column_of(double x) const {
  const double column = std::floor((x - frame_.least.x) / cell_mm);
  return static_cast<std::size_t>(std::clamp(column, 0.0, static_cast<double>(columns_ - 1)));
}

std::size_t Placement::row_of(double y) const {
  const double row = std::floor((y - frame_.least.y) / cell_mm);
  return static_cast<std::size_t>(std::clamp(row, 0.0, static_cast<double>(rows_ - 1)));
}

template <class Visit>
bool Placement::all_cells(const Box& around, const Visit& visit) const {
  const std::size_t last_row = row_of(around.most.y);
  const std::size_t last_column = column_of(around.most.x);
  for (std::size_t row = row_of(around.least.y); row <= last_row; ++row) {
    for (std::size_t column = column_of(around.least.x); column <= last_column; ++column) {
      if (!visit(row * columns_ + column)) return false;
    }
  }
  return true;
}

bool Placement::is_free(const Circle& disc) const {
  const Box bounds = bounds_of(disc);
  if (!frame_.holds(bounds.least) || !frame_.holds(bounds.most)) return false;
  return all_cells(bounds, [&](std::size_t cell) {
    const auto meets = [&](const auto& other) { return meet(disc, other); };
    return std::ranges::none_of(cells_[cell].discs, meets) &&
           std::ranges::none_of(cells_[cell].boxes, meets);
  });
}

bool Placement::is_free(const Box& box) const {
  if (!frame_.holds(box.least) || !frame_.holds(box.most)) return false;
  return all_cells(box, [&](std::size_t cell) {
    return std::ranges::none_of(cells_[cell].discs,
                                [&](const Circle& disc) { return meet(disc, box); }) &&
           std::ranges::none_of(cells_[cell].boxes,
                                [&](const Box& other) { return meet(box, other); });
  });
}

void Placement::take(const Circle& disc) {
  all_cells(bounds_of(disc), [&](std::size_t cell) {
    cells_[cell].discs.push_back(disc);
    return true;
  });
}

void Placement::take(const Box& box) {
  all_cells(box, [&](std::size_t cell) {
    cells_[cell].boxes.push_back(box);
    return true;
  });
}

template <class MakeShape>
void Placement::search(Blocked& blocked, const Box& tile, Point wanted, const MakeShape& shape_at,
                       Best& best) const {
  constexpr Blocked all = ~Blocked{0};
  if (blocked == all || squared_distance(wanted, tile) >= best.squared_distance) return;
  for (unsigned i = 0; i < tries_a_side * tries_a_side; ++i) {
    const Blocked bit = Blocked{1} << i;
    if ((blocked & bit) != 0) continue;
    const unsigned column = i % tries_a_side;
    const unsigned row = i / tries_a_side;
    const Point step = {column + 0.5, row + 0.5};
    const Point at = tile.least + (tile_mm / tries_a_side) * step;
    const double away = squared_distance(wanted, at);
    if (away >= best.squared_distance) continue;
    if (is_free(shape_at(at))) {
      best = {at, away};
    } else {
      blocked |= bit;
    }
  }
}

std::vector<Placement::Blocked>& Placement::blocked_for(BlockedOfSize& blocked, double width,
                                                        double height) const {
  auto& tiles = blocked[{width, height}];
  tiles.resize(tile_columns_ * tile_rows_);
  return tiles;
}

template <class MakeShape>
std::optional<Point> Placement::place(std::vector<Blocked>& blocked, Point wanted,
                                      const MakeShape& shape_at) {
  const auto columns = static_cast<std::ptrdiff_t>(tile_columns_);
  const auto rows = static_cast<std::ptrdiff_t>(tile_rows_);
  const auto tile_of = [](double from_edge, std::ptrdiff_t count) {
    return static_cast<std::ptrdiff_t>(
        std::clamp(std::floor(from_edge / tile_mm), 0.0, static_cast<double>(count - 1)));
  };
  const std::ptrdiff_t home_column = tile_of(wanted.x - frame_.least.x, columns);
  const std::ptrdiff_t home_row = tile_of(wanted.y - frame_.least.y, rows);
  Best best;
  const auto visit = [&](std::ptrdiff_t column, std::ptrdiff_t row) {
    if (column < 0 || row < 0 || column >= columns || row >= rows) return;
    const Point least =
        frame_.least + tile_mm * Point{static_cast<double>(column), static_cast<double>(row)};
    search(blocked[static_cast<std::size_t>(row * columns + column)],
           {least, least + Point{tile_mm, tile_mm}}, wanted, shape_at, best);
  };
  // Squares of tiles around the one where it is wanted. All beyond are farther than their inside.
  visit(home_column, home_row);
  for (std::ptrdiff_t away = 1; away < std::max(columns, rows); ++away) {
    if (best.squared_distance <= squared(static_cast<double>(away - 1) * tile_mm)) break;
    for (std::ptrdiff_t along = -away; along < away; ++along) {
      visit(home_column + along, home_row - away);
      visit(home_column + away, home_row + along);
      visit(home_column - along, home_row + away);
      visit(home_column - away, home_row - along);
    }
  }
  if (best.at) take(shape_at(*best.at));
  return best.at;
}

std::optional<Point> Placement::place_disc(Point wanted, double radius) {
  return place(blocked_for(blocked_discs_, radius, radius), wanted, [&](Point at) {
    return Circle{at, radius};
  });
}

std::optional<Point> Placement::place_box(Point wanted, double width, double height) {
  return place(blocked_for(blocked_boxes_, width, height), wanted,
               [&](Point at) { return box_around(at, width, height); });
}

}  // namespace lodebook::drawing
