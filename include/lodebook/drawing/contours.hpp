// SPDX-License-Identifier: MIT
// Lines of equal value over a square grid.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// `values` of `side` by `side` points, row by row. Returns the closed rings around all that is at
/// least `level`, in units of the grid's spacing from its first point: x along a row, y down the
/// rows. Beyond the grid's edge everything counts as below the level, so that every ring closes.
/// Between two points a line is placed by linear interpolation (marching squares; the mean of the
/// four corners decides a saddle).
std::vector<std::vector<Point>> rings_around(std::span<const double> values, std::size_t side,
                                             double level);

}  // namespace lodebook::drawing
