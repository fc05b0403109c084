// SPDX-License-Identifier: MIT
// A line without a reading over a list of them.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// `joints:`, `x-beds, three sets:`: keeps the kind of what stands below, or that nothing of the
/// kind above stands there. Sets aside what such a heading counts.
void keep_heading_kind(Tokens& tokens, Page& page);

}  // namespace lodebook::fair_copy
