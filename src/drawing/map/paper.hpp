// SPDX-License-Identifier: MIT
// A map on its paper: title, frame, all that is drawn within it, and its margin.
#pragma once

#include <lodebook/drawing/map.hpp>

#include "survey.hpp"

namespace lodebook::drawing {

Picture paper_of(const Survey& survey, MapSize size);

}  // namespace lodebook::drawing
