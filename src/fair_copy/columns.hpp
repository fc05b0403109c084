// SPDX-License-Identifier: MIT
// What the columns of a table hold, by their headings.
#pragma once

#include <optional>
#include <vector>

#include "cells.hpp"
#include "units.hpp"
#include "words.hpp"

namespace lodebook::fair_copy {

/// What a column holds.
enum class Column : std::uint8_t {
  other,  ///< goes into the remark, with its heading
  index,  ///< of the row: likewise
  remark,
  station,  ///< of a leg, where it begins
  to,
  kind,
  on,       ///< the plane that a line lies in
  set,      ///< of joints: a kind, or a number
  surface,  ///< its kind, or how it looks
  strike,
  dip,
  side,
  direction,
  bearing,  ///< without a word for what of: an azimuth
  trend,
  plunge,
  rake,
  end,  ///< of the strike, from which a rake is counted
  facing,
  sense,
  back,
  distance,
  slope,
  date,
  latitude,
  longitude,
  zone,
  easting,
  northing,
  elevation,
};

struct Heading {
  std::string name;  ///< as typed
  Column column = Column::other;
  /// Of a pair in one column, what stands second: `dip/dd`.
  std::optional<Column> second;
  Unit unit = Unit::none;  ///< that it names
  /// The slope is an angle by its name: `clino`.
  bool is_angle = false;
  Span span;  ///< in the line
};

/// The headings of `line`, parted by `separator`. Words before a colon are no part of the first.
std::vector<Heading> headings_in(std::string_view line, Separator separator, const Words& words);

/// What holds an angle, and what a bearing.
bool is_angle(Column column);
bool is_bearing(Column column);

}  // namespace lodebook::fair_copy
