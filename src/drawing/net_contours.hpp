// SPDX-License-Identifier: MIT
// How densely the readings of a group lie, as contours on a net.
#pragma once

#include <string>

#include <lodebook/reduction/summary.hpp>

#include "net_projection.hpp"

namespace lodebook::drawing {

/// Draws Kamb's density of a group that has members, over the net and a little beyond its rim,
/// where lines rise; cut off at the rim. Says in words how, and at which levels.
std::string draw_contours(Picture& picture, const NetFrame& frame,
                          const reduction::Summary& summary);

}  // namespace lodebook::drawing
