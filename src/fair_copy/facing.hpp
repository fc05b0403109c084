// SPDX-License-Identifier: MIT
// Which way up a bed is, as people write that they could not see it, or say it twice.
#pragma once

#include <optional>

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// Makes `cannot see which way up`, `way up not clear` one word of facing, unknown.
void join_unseen_facing(std::string_view line, Tokens& tokens);

/// What a plane that dips to `dip_direction` is whose younger side looks to `point`: `upright` or
/// `overturned`; empty where that decides nothing.
std::string_view facing_by_younging(std::optional<double> dip_direction, std::string_view point);

}  // namespace lodebook::fair_copy
