// SPDX-License-Identifier: MIT
#include <lodebook/drawing/contours.hpp>

#include <array>
#include <unordered_map>

namespace lodebook::drawing {
namespace {

/// The grid with a border of points below every level.
class Field {
 public:
  Field(std::span<const double> values, std::size_t side, double level)
      : values_(values), side_(side), level_(level) {}

  /// Cells along one side, those of the border included.
  std::size_t cells() const { return side_ + 1; }

  bool is_inside(std::size_t column, std::size_t row) const { return excess(column, row) >= 0; }
  /// Value less level of a point of the bordered grid.
  double excess(std::size_t column, std::size_t row) const {
    if (column == 0 || row == 0 || column > side_ || row > side_) return -1;
    return values_[(row - 1) * side_ + column - 1] - level_;
  }

 private:
  std::span<const double> values_;
  std::size_t side_;
  double level_;
};

/// An edge between two points of the bordered grid: below (to the right of) the point it begins at.
struct Edge {
  std::size_t column = 0;
  std::size_t row = 0;
  bool is_vertical = false;
};

/// Joins the pieces that cross cells into rings.
class Tracer {
 public:
  explicit Tracer(const Field& field) : field_(field) {}

  std::vector<std::vector<Point>> rings() {
    for (std::size_t row = 0; row < field_.cells(); ++row) {
      for (std::size_t column = 0; column < field_.cells(); ++column)
        cross(column, row);
    }
    std::vector<std::vector<Point>> rings;
    for (std::size_t first = 0; first < pieces_.size(); ++first) {
      if (pieces_[first].used) continue;
      std::vector<Point>& ring = rings.emplace_back();
      for (std::size_t at = first; !pieces_[at].used; at = begins_at_.at(key(pieces_[at].to))) {
        pieces_[at].used = true;
        ring.push_back(point_on(pieces_[at].from));
      }
    }
    return rings;
  }

 private:
  /// Through a cell from one edge to another, the inside to its right.
  struct Piece {
    Edge from;
    Edge to;
    bool used = false;
  };

  std::size_t key(const Edge& edge) const {
    return (edge.row * (field_.cells() + 1) + edge.column) * 2 + (edge.is_vertical ? 1 : 0);
  }

  Point point_on(const Edge& edge) const {
    const double first = field_.excess(edge.column, edge.row);
    const double second = edge.is_vertical ? field_.excess(edge.column, edge.row + 1)
                                           : field_.excess(edge.column + 1, edge.row);
    const double share = first / (first - second);
    // The border's points lie one spacing before the first of the grid.
    const double x = static_cast<double>(edge.column) - 1;
    const double y = static_cast<double>(edge.row) - 1;
    return edge.is_vertical ? Point{x, y + share} : Point{x + share, y};
  }

  void add(const Edge& from, const Edge& to) {
    begins_at_.emplace(key(from), pieces_.size());
    pieces_.push_back({from, to});
  }

  void cross(std::size_t column, std::size_t row) {
    const std::array<bool, 4> inside = {
        field_.is_inside(column, row), field_.is_inside(column + 1, row),
        field_.is_inside(column + 1, row + 1), field_.is_inside(column, row + 1)};
    // Edges in the order of the corners they begin at, clockwise from the upper left.
    const std::array<Edge, 4> edges = {{{column, row, false},
                                        {column + 1, row, true},
                                        {column, row + 1, false},
                                        {column, row, true}}};
    // A line enters where, going round clockwise, the inside begins, and leaves where it ends.
    std::array<std::size_t, 2> entries{};
    std::array<std::size_t, 2> exits{};
    std::size_t count = 0;
    std::size_t ends = 0;
    for (std::size_t i = 0; i < 4; ++i) {
      const bool after = inside[(i + 1) % 4];
      if (!inside[i] && after) entries[count++] = i;
      if (inside[i] && !after) exits[ends++] = i;
    }
    if (count == 0) return;
    if (count == 1) {
      add(edges[exits[0]], edges[entries[0]]);
      return;
    }
    double sum = 0;
    for (const std::size_t down : {std::size_t{0}, std::size_t{1}}) {
      for (const std::size_t right : {std::size_t{0}, std::size_t{1}})
        sum += field_.excess(column + right, row + down);
    }
    // Two corners inside, at opposite ends: joined where the middle is inside too.
    const bool is_joined = sum >= 0;
    for (std::size_t i = 0; i < 2; ++i) {
      const std::size_t exit = exits[i];
      const std::size_t before = (exit + 3) % 4;
      const std::size_t behind = (exit + 1) % 4;
      add(edges[exit], edges[is_joined ? behind : before]);
    }
  }

  const Field& field_;
  std::vector<Piece> pieces_;
  std::unordered_map<std::size_t, std::size_t> begins_at_;
};

}  // namespace

std::vector<std::vector<Point>> rings_around(std::span<const double> values, std::size_t side,
                                             double level) {
  return Tracer(Field(values, side, level)).rings();
}

}  // namespace lodebook::drawing
