// SPDX-License-Identifier: MIT
// The grid that a map stands on, its scale, and how both lie on the paper.
#pragma once

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/grid.hpp>
#include <optional>
#include <span>
#include <string>

#include "placement.hpp"

namespace lodebook::drawing {

/// Easting and northing, and how far grid north lies east of true north there, degrees.
struct GridPlace {
  earth::PlanePoint at;
  double convergence = 0;
};

/// The grid of the first place's zone, where it reaches all of them; else a plane around the first.
class MapGrid {
 public:
  /// `places` are not empty.
  explicit MapGrid(std::span<const earth::Position> places);

  /// A point beyond the grid's reach is put in its direction at the reach's edge or before it.
  GridPlace place(const earth::Position& position) const;
  earth::Position position(const earth::PlanePoint& point) const;
  /// `WGS 84 / UTM 59G`.
  std::string name() const;

 private:
  earth::LocalPlane plane_;
  std::optional<earth::ZoneGrid> zone_;
};

/// The smallest of 1, 2, 5 (and 2.5) times a power of ten that is not less than `least`.
double round_step(double least, bool with_quarters);

/// The part of the grid that is on the paper, and where.
struct View {
  Box frame;
  /// What lies in the frame's middle.
  earth::PlanePoint middle;
  /// 1 in so many.
  double scale = 1000;

  double metres_per_mm() const { return scale / 1000; }
  Point paper(const earth::PlanePoint& point) const;
  earth::PlanePoint grid(Point point) const;
};

/// Bounds of what should be seen, metres.
struct Extent {
  earth::PlanePoint least;
  earth::PlanePoint most;

  double east_m() const { return most.east_m - least.east_m; }
  double north_m() const { return most.north_m - least.north_m; }
  earth::PlanePoint middle() const;
  void include(const earth::PlanePoint& point);
};

/// The largest round scale at which the extent fits into a frame of that size, less its margins.
double scale_for(const Extent& extent, double width, double height);
/// The frame's inner margin: room for symbols around the outermost stations.
inline constexpr double view_margin_mm = 12;

/// Lines with their eastings and northings around the frame, which is `frame` wide and high.
void draw_grid(Picture& picture, const View& view);

/// A scale bar from its left end, with its length and `1:2500` in words.
void draw_scale_bar(Picture& picture, Point left, double scale);

/// `1:2500`.
std::string scale_words(double scale);
/// `350 m`, `3.5 km`.
std::string length_words(double metres);

}  // namespace lodebook::drawing
