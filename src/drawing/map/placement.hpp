// SPDX-License-Identifier: MIT
// Where there is room: the free place nearest to where a symbol or name should stand.
#pragma once

#include <cstdint>
#include <limits>
#include <lodebook/drawing/picture.hpp>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace lodebook::drawing {

/// A rectangle upright on the paper, from its upper left corner to its lower right one.
struct Box {
  Point least;
  Point most;

  double width() const { return most.x - least.x; }
  double height() const { return most.y - least.y; }
  Point center() const { return 0.5 * (least + most); }
  bool holds(Point point) const {
    return point.x >= least.x && point.x <= most.x && point.y >= least.y && point.y <= most.y;
  }
  /// Wider by `margin` on all sides.
  Box grown(double margin) const {
    return {{least.x - margin, least.y - margin}, {most.x + margin, most.y + margin}};
  }
  /// Its corners, one after the other.
  std::vector<Point> ring() const { return {least, {most.x, least.y}, most, {least.x, most.y}}; }
};
/// Of that size around a point.
Box box_around(Point center, double width, double height);

/// What is taken within a frame. A question costs the same however much is taken; a search looks at
/// tiles of the frame from near to far and remembers, for each size, where there is no room left:
/// let there be few sizes.
class Placement {
 public:
  explicit Placement(Box frame);

  bool is_free(const Circle& disc) const;
  bool is_free(const Box& box) const;
  void take(const Circle& disc);
  void take(const Box& box);

  /// The free place nearest to `wanted` (to 1 in a lattice of some millimetres), and it is taken.
  /// Nothing where the frame has no room left.
  std::optional<Point> place_disc(Point wanted, double radius);
  /// The same for the middle of a box.
  std::optional<Point> place_box(Point wanted, double width, double height);

 private:
  /// The places of a tile's lattice that are not free, a bit each: they never will be again.
  using Blocked = std::uint64_t;
  /// Of all tiles, for things of one size.
  using BlockedOfSize = std::map<std::pair<double, double>, std::vector<Blocked>>;
  /// The nearest found so far.
  struct Best {
    std::optional<Point> at;
    double squared_distance = std::numeric_limits<double>::infinity();
  };

  struct Cell {
    std::vector<Circle> discs;
    std::vector<Box> boxes;
  };
  std::size_t column_of(double x) const;
  std::size_t row_of(double y) const;
  template <class Visit>
  bool all_cells(const Box& around, const Visit& visit) const;

  template <class MakeShape>
  std::optional<Point> place(std::vector<Blocked>& blocked, Point wanted,
                             const MakeShape& shape_at);
  template <class MakeShape>
  void search(Blocked& blocked, const Box& tile, Point wanted, const MakeShape& shape_at,
              Best& best) const;
  std::vector<Blocked>& blocked_for(BlockedOfSize& blocked, double width, double height) const;

  Box frame_;
  std::size_t columns_;
  std::size_t rows_;
  std::vector<Cell> cells_;
  /// Tiles, several cells wide and high.
  std::size_t tile_columns_;
  std::size_t tile_rows_;
  BlockedOfSize blocked_discs_;
  BlockedOfSize blocked_boxes_;
};

}  // namespace lodebook::drawing
