// SPDX-License-Identifier: MIT
// Traverses on a map: as measured, and their closures in words.
#pragma once

#include <lodebook/reduction/fixes.hpp>

#include "survey.hpp"

namespace lodebook::drawing {

/// Adds the traverses of a log.
void note_traverses(const reduction::Fixes& fixes, Survey& survey);

}  // namespace lodebook::drawing
