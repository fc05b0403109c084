// SPDX-License-Identifier: MIT
// Draws what is within a map's frame.
#pragma once

#include "crowd.hpp"
#include "grid.hpp"
#include "survey.hpp"

namespace lodebook::drawing {

class Content {
 public:
  Content(const Survey& survey, const MapGrid& grid);

  const Extent& extent() const { return extent_; }
  /// About the paper that all symbols and names need to stand well apart, square millimetres.
  double area_mm2() const;

  /// Finds places for all symbols and names; false where the frame has too little room.
  bool arrange(const View& view);
  bool has_leaders() const { return !leaders_.empty(); }
  bool has_landmarks_inside() const { return !landmarks_inside_.empty(); }
  bool has_landmarks_outside() const { return !pointers_.empty(); }

  /// After `arrange`.
  void draw(Picture& picture) const;

 private:
  /// A landmark beyond the frame: where its direction leaves it, degrees from the top.
  struct Pointer {
    Point tip;
    double azimuth = 0;
  };
  /// From a place to what was moved aside from it.
  struct Leader {
    Point from;
    Point to;
  };
  struct Station {
    GridPlace place;
    const std::string* name = nullptr;
  };
  struct Measured {
    /// Among stations_.
    std::size_t station = 0;
    const BeginReading* reading = nullptr;
    /// Its azimuth is on the grid.
    MapSymbol symbol;
  };

  void note_landmarks(std::vector<Spot>& spots);
  void note_leaders();
  Point paper(const earth::Position& position) const {
    return view_.paper(grid_.place(position).at);
  }
  void draw_lines(Picture& picture) const;
  void draw_errors(Picture& picture) const;
  void draw_sighted(Picture& picture, Role role, const Survey::Sighted& sighted) const;
  void draw_symbols(Picture& picture) const;
  void draw_names(Picture& picture) const;

  const Survey& survey_;
  const MapGrid& grid_;
  /// Those that have a position.
  std::vector<Station> stations_;
  std::vector<GridPlace> landmarks_;
  std::vector<Measured> measured_;
  Extent extent_;

  // of the arrangement
  View view_;
  std::vector<Point> station_points_;
  std::vector<Point> landmarks_inside_;
  std::vector<Pointer> pointers_;
  std::vector<CrowdName> names_;
  Crowd crowd_;
  std::vector<Leader> leaders_;
};

}  // namespace lodebook::drawing
