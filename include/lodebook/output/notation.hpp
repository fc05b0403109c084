// SPDX-License-Identifier: MIT
// Readings in canonical notation: what the clean log and `convert` write.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::output {

// ---- as typed: canonical spelling, and the shortest digits that read back to the same value

/// `N20.5W`, `340`, `007.5`, `NNE`: the bearing in the notation in which it was typed.
void append_bearing(std::string& out, const notebook::Bearing& bearing);
/// `32`, `62%`, `-15`.
void append_slope(std::string& out, const notebook::Slope& slope);
/// `120m`, `400ft`, `85 paces`.
void append_length(std::string& out, const notebook::Length& length);
/// A space and the words, ` overturned`, ` normal`; nothing where nothing was said.
void append_facing(std::string& out, notebook::Facing facing);
void append_sense(std::string& out, notebook::Sense sense);
/// `N85E 32N`, `265/32 N`, `N/45 W`, `32 > 355`, `horizontal`, `vertical N20E`, with facing and
/// sense behind it. A pair whose form an `order` in force would refuse was never read under it.
void append_plane(std::string& out, const notebook::PlaneAttitude& plane);
/// `340/15`, `15 > N20W`, `rake 40 from N85E`, `horizontal N20W`, `vertical`; then the plane it
/// lies in (`kinds` has its name) and its sense.
void append_line(std::string& out, const notebook::LineAttitude& line,
                 const std::vector<notebook::Kind>& kinds);

// ---- converted: exactly so many decimals (0 to 7; more are cut to 7), wrapped after rounding

/// Azimuth notation has three digits before the point, `007.50`; quadrant notation is `N20.5W`, and
/// `N`, `E`, `S` or `W` alone for the cardinals. `to` is azimuth or quadrant.
void append_converted_bearing(std::string& out, double degrees, int decimals,
                              notebook::Notation to);

/// The plane that dips to the right of `strike`; without one it is `horizontal`. `265/32 N` with
/// the nearest eighth point of the dip direction, or `N85E 32N` with the strike's northern end;
/// a vertical plane whose side is not known (`has_side` false) is `020/90` or `N20E 90`. A cardinal
/// strike in quadrant notation is set off by a slash, `N/45 W`, since `N 45 W` says nothing.
void append_converted_plane(std::string& out, std::optional<double> strike, double dip,
                            bool has_side, int strike_decimals, int dip_decimals,
                            notebook::Notation to);

/// `340/15` or `N20W 15`; without a trend it is `vertical`.
void append_converted_line(std::string& out, std::optional<double> trend, double plunge,
                           int trend_decimals, int plunge_decimals, notebook::Notation to);

}  // namespace lodebook::output
