// SPDX-License-Identifier: MIT
// A map on its paper: title, frame, all that is drawn within it, and its margin.
#pragma once

#include "map_survey.hpp"

namespace lodebook::drawing {

Picture sheet_of(const Survey& survey);

}  // namespace lodebook::drawing
