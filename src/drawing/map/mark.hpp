// SPDX-License-Identifier: MIT
// Marks on strike lines and arrows, which tell kinds apart on a map.
#pragma once

#include <string_view>
#include <vector>

#include "symbol.hpp"

namespace lodebook::drawing {

/// Draws in millimetres ahead along an azimuth and to the right of it, around a place.
class Turned {
 public:
  struct Place {
    double ahead = 0;
    double right = 0;
  };

  Turned(Picture& picture, Point at, double azimuth)
      : picture_(picture),
        at_(at),
        ahead_(towards({0, 0}, azimuth, 1)),
        right_{-ahead_.y, ahead_.x} {}

  void line(const std::vector<Place>& places) const;
  void solid(const std::vector<Place>& places) const;
  void hollow(const std::vector<Place>& places) const;
  void disc(Place center, double radius) const;
  void ring(Place center, double radius) const;
  /// Of an overturned plane: from down dip across the strike line and back to it in a bow.
  void hook() const;

  /// Left for right.
  Turned mirrored() const;
  /// The other way round.
  Turned reversed() const;
  /// From a place so far ahead.
  Turned ahead(double distance) const;

 private:
  Point point(Place place) const { return at_ + place.ahead * ahead_ + place.right * right_; }
  std::vector<Point> points(const std::vector<Place>& places) const;

  Picture& picture_;
  Point at_;
  Point ahead_;
  Point right_;
};

enum class PlaneMark : std::uint8_t {
  tick,             ///< bedding
  triangle,         ///< foliation: solid
  barred_triangle,  ///< schistosity: the same with a bar across its point
  open_box,         ///< cleavage
  box,              ///< joint: solid
  arrow,            ///< fault
  double_line,      ///< shear
  diamond,          ///< vein: open
  thick_line,       ///< dike
  capped_line,      ///< contact
  chevron,          ///< axial-plane
  ring,             ///< kinds of the log's own
};
PlaneMark mark_of_plane(std::string_view kind);

enum class LineMark : std::uint8_t {
  plain,         ///< lineation
  solid_head,    ///< stretching
  double_shaft,  ///< fold-axis
  crossed,       ///< intersection
  half_head,     ///< slickenline
  open_head,     ///< flute
  feathered,     ///< current
  barred,        ///< striation: a bar across
  twice_barred,  ///< groove
  peaked,        ///< crest: a peak to one side
  dotted,        ///< alignment
  ring_tail,     ///< kinds of the log's own
};
LineMark mark_of_line(std::string_view kind);

/// The mark along a strike line.
void draw_bar(const Turned& on, PlaneMark mark);
/// The mark on it, down dip.
void draw_mark(const Turned& on, PlaneMark mark);
/// The point of an arrow, at the place, and the tail of its shaft.
void draw_head(const Turned& on, LineMark mark);
void draw_tail(const Turned& on, LineMark mark);

/// The form is one of FGDC-STD-013-2006.
bool is_standard(PlaneMark mark, Form form, notebook::Facing facing);
bool is_standard(LineMark mark, Form form);

}  // namespace lodebook::drawing
