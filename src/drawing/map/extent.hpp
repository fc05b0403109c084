// SPDX-License-Identifier: MIT
// The part of the country that a map shows.
#pragma once

#include "grid.hpp"
#include "survey.hpp"

namespace lodebook::drawing {

/// All stations, or all landmarks where no station has a position (one of either has); then what
/// belongs to the stations, as far as it does not make them small.
Extent extent_of(const Survey& survey, const MapGrid& grid);

}  // namespace lodebook::drawing
