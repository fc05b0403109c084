// SPDX-License-Identifier: MIT
// A reading in words, the same in every picture and on the page.
#pragma once

#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/page.hpp>
#include <string>
#include <string_view>

namespace lodebook::drawing {

/// `H1, bedding: N89E 30N as typed, N66.1W 30.0NE from true north`; without a name the kind comes
/// first. `corrected` is the direction alone.
std::string reading_words(std::string_view station, std::string_view kind, std::string_view written,
                          std::string_view corrected, reduction::North north);

/// A row's direction as corrected: `293.9/30.0 NE`, `N66.1W 30.0NE`; of an arrow that rises the end
/// that it points to, `220.0/-12.0`. Empty for a rejected reading.
std::string corrected_words(const reduction::Row& row, output::ShownIn shown_in);

}  // namespace lodebook::drawing
