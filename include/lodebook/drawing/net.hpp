// SPDX-License-Identifier: MIT
// Planes and lines on the lower hemisphere of an equal-area net.
#pragma once

#include <lodebook/drawing/picture.hpp>
#include <lodebook/output/summary.hpp>

namespace lodebook::drawing {

/// How planes are drawn, and whether their density is. By default they are poles.
struct NetStyle {
  bool poles = false;
  bool circles = false;
  /// A net for each kind, with the density of its poles or lines.
  bool contours = false;
};

/// A net for each unit, station and north that the summaries tell apart; each kind has the same
/// colour and symbol on all of them. Means and best great circles are drawn with their cones where
/// they are known well enough.
Picture net_picture(const output::SummaryDocument& document, const NetStyle& style);

/// Whether there is a plane or line to draw, so that a net shows more than its rim.
bool shows_on_net(const output::SummaryDocument& document);

/// Contours of fewer surfaces or lines say little, and of how many groups that must be said. Of the
/// least few there are none: the cap in which they are counted would be half the hemisphere.
inline constexpr std::size_t fewest_to_contour = 20;
inline constexpr std::size_t fewest_with_contours = 10;
std::size_t groups_too_small_to_contour(const output::SummaryDocument& document);

}  // namespace lodebook::drawing
