// SPDX-License-Identifier: MIT
// A map on its paper: title, frame, all that is drawn within it, and its margin.
#pragma once

#include "survey.hpp"

namespace lodebook::drawing {

Picture paper_of(const Survey& survey);

}  // namespace lodebook::drawing
