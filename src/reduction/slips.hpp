// SPDX-License-Identifier: MIT
// The single slips that people make in the field, tried one by one on a reading that does not fit:
// east for west, north for south, strike for dip direction, the other hand rule, percent for
// degrees, two digits swapped, the other end. They are offered as advice and never applied.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <lodebook/notebook/reading.hpp>

namespace lodebook::reduction {

/// A slope in degrees, over 45, so steep that the percent scale may have been read: steeper than
/// one walks or sights along. Common practice, no source.
bool may_be_percent(const notebook::Slope& slope);

/// A bearing as it may have been meant, and the slip in words.
struct MeantBearing {
  std::string words;
  notebook::Bearing bearing;
};

/// East for west, N for S, two digits swapped.
std::vector<MeantBearing> bearing_slips(const notebook::Bearing& typed);

/// How far a reading is from where it should be, degrees.
using PlaneMisfit = std::function<double(const Plane<north::dial>&)>;
/// `rises`: it was typed with a negative plunge, so that as an arrow it points to its upper end.
using LineMisfit = std::function<double(const Line<north::dial>&, bool rises)>;

/// The slips that bring the misfit to `limit` or less, best first and three at most, as advice
/// such as `east for west? then within 1.2 degrees`; empty if none does.
std::string explain_plane(const notebook::PlaneAttitude& typed, double limit,
                          const PlaneMisfit& misfit);
/// Arrows, which count at one of their `ends`, may also have been read against the flow.
std::string explain_line(const notebook::LineAttitude& typed, double limit, Ends ends,
                         const LineMisfit& misfit);

/// The same for a sight that is expected at an azimuth on the dial; `south_end` as it was typed,
/// `declination` in degrees, east positive, where it is known.
std::string explain_sight(const notebook::Bearing& typed, bool south_end,
                          std::optional<double> declination, Azimuth<north::dial> expected,
                          double limit);

/// The same for a fore and a back bearing, either of which may hold the slip. `turn` is added to
/// the back bearing where it was read from another north.
std::string explain_back_bearing(const notebook::Leg& leg, Angle turn, double limit);

}  // namespace lodebook::reduction
