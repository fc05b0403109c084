// SPDX-License-Identifier: MIT
// Striae that are said to run down the dip or along the strike, without a figure.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// `striae pure dip slip`: a question with the rake that this would be on the plane above; nothing
/// for a line that says no such thing of striae.
std::optional<Lines> slip_of_striae(std::string_view kind, const Tokens& tokens, const Page& page);

}  // namespace lodebook::fair_copy
