// SPDX-License-Identifier: MIT
// Readings in canonical notation: what the clean log and `convert` write.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::output {

// ---- as typed: canonical spelling, and the shortest digits that read back to the same value

/// `N50.5W`, `310`, `007.5`, `NNE`, `044 true`: the bearing in the notation in which it was typed,
/// and its own north.
void append_bearing(std::string& out, const notebook::Bearing& bearing);
/// `37`, `62%`, `-15`.
void append_slope(std::string& out, const notebook::Slope& slope);
/// `120m`, `400ft`, `85 paces`.
void append_length(std::string& out, const notebook::Length& length);
/// A space and the words, ` overturned`, ` normal`; nothing where nothing was said.
void append_facing(std::string& out, const notebook::PlaneAttitude& plane);
void append_sense(std::string& out, notebook::Sense sense);
/// `N62E 37NW`, `242/37 NW`, `N/38 W`, `37 > 332`, `horizontal`, `vertical N14E`, `strike N66W`,
/// `dip 13`, then facing and sense. A pair whose form an `order` in force would refuse was never
/// read under it.
void append_plane(std::string& out, const notebook::PlaneAttitude& plane);
/// `310/35`, `35 > N50W`, `rake 40 from N62E`, `horizontal N50W`, `vertical`, `118`, `from S60W`;
/// then the plane it lies in (`kinds` has its name) and its sense.
void append_line(std::string& out, const notebook::LineAttitude& line,
                 const std::vector<notebook::Kind>& kinds);

// ---- how people want them

/// A plane by its strike and dip, or by its dip and the direction it dips towards.
enum class PlanesAs : std::uint8_t { strike, direction };

/// How converted readings are shown. A notation of bearings alone shows planes by their strike.
struct ShownIn {
  ShownIn(notebook::Notation of_bearings, PlanesAs of_planes = PlanesAs::strike)
      : bearings(of_bearings), planes(of_planes) {}

  notebook::Notation bearings;  ///< azimuth or quadrant
  PlanesAs planes;
};

// ---- converted: exactly so many decimals (0 to 7; more are cut to 7), wrapped after rounding

/// Azimuth notation has three digits before the point, `007.50`; quadrant notation is `N50.5W`, and
/// `N`, `E`, `S` or `W` alone for the cardinals. `to` is azimuth or quadrant.
void append_converted_bearing(std::string& out, double degrees, int decimals,
                              notebook::Notation to);

/// The plane that dips to the right of `strike`; without one it is `horizontal`. `242/37 NW` with
/// the nearest eighth point of the dip direction, or `N62E 37NW` with the northern end of the
/// strike; a plane that shows as vertical, whose side is not known (`has_side` false), is `014/90`
/// or `N14E 90`. A cardinal strike in quadrant notation ends with a slash, `N/38 W`, since `N 38 W`
/// is ambiguous. By its direction it is `37 > 332` or `37 > N28W`, and `vertical 014` where the
/// side is not known.
void append_converted_plane(std::string& out, std::optional<double> strike, double dip,
                            bool has_side, int strike_decimals, int dip_decimals, ShownIn shown_in);

/// `strike 114`, of which both ends are alike; and `dip 13`.
void append_converted_strike(std::string& out, double strike, int decimals, notebook::Notation to);
void append_converted_dip(std::string& out, double dip, int decimals);

/// `310/35` or `N50W 35`; without a trend it is `vertical`.
void append_converted_line(std::string& out, std::optional<double> trend, double plunge,
                           int trend_decimals, int plunge_decimals, notebook::Notation to);

}  // namespace lodebook::output
