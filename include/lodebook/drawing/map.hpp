// SPDX-License-Identifier: MIT
// A map of stations: symbols of planes and lines, sights, legs and errors of positions on a grid.
#pragma once

#include <lodebook/drawing/picture.hpp>
#include <lodebook/notebook/notebook.hpp>
#include <lodebook/reduction/attitudes.hpp>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lodebook::drawing {

/// Whether the paper keeps its size, in millimetres, so that a ratio of scale holds; or is fitted
/// to a page, where only the scale bar does.
enum class MapSize : std::uint8_t { own, fitted };

/// The furthest that a place may lie from the first. There a plane around the first station
/// stretches lengths by 1.5 %, which is also how far a zone's grid is carried on.
inline constexpr double widest_map_m = 1'900'000;

/// Takes logs one at a time and keeps what it draws. Logs are to be reduced to true north, with
/// repeats averaged and all places found (Options::all_places).
///
/// All stands on the grid of the first station's zone (earth::ZoneGrid), or, where stations lie too
/// far apart for it, on a plane around the first station. Symbols are turned by true azimuth less
/// the convergence at their place. The scale is round and such that the stations fill the frame;
/// the paper is 180 mm wide, more where there are very many symbols. A symbol whose place is taken
/// is moved aside and joined to it by a leader.
class Map {
 public:
  /// Only the readings that are selected; sights and legs are kinds like others.
  explicit Map(const reduction::Selection& selection);
  ~Map();
  Map(Map&&) noexcept;
  Map& operator=(Map&&) noexcept;

  void begin_log(const reduction::Reduction& reduction);
  void page(const notebook::Source& source, const reduction::Page& page);

  /// After the last page: whether a station or a landmark has a position. The picture of a map
  /// without any says so.
  bool has_places() const;
  /// Two places that one map cannot hold, being further apart than `widest_map_m`: `day1.txt and
  /// day2.txt lie 10,010 km apart`, or stations of one log. Then there is no picture.
  std::optional<std::string> too_wide() const;
  Picture picture(MapSize size = MapSize::own) const;
  /// All kinds that were read, selected or not.
  std::vector<std::string> kinds() const;
  /// What could not be drawn, one sentence a reason, with the stations and how many readings of
  /// each; empty if all is drawn.
  std::vector<std::string> remarks() const;

 private:
  class Notes;
  std::unique_ptr<Notes> notes_;
};

}  // namespace lodebook::drawing
