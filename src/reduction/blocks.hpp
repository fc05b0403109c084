// SPDX-License-Identifier: MIT
// A log's entries in blocks: what stands before the first station, then a block a station.
#pragma once

#include <span>

#include <lodebook/reduction/page.hpp>

namespace lodebook::reduction {

/// Where the block that starts at the entry `begin` ends: before the next station.
std::size_t block_end(const notebook::Notebook& notebook, std::size_t begin, bool is_station);

/// Fills in what belongs to the whole station, wherever in its block's `entries` it stands: name,
/// position, elevation, time. Returns the unit of the readings before the first one that is stated,
/// which is that.
std::string_view read_station_wide(Page& page, const notebook::Notebook& notebook,
                                   std::span<const notebook::Entry> entries);

}  // namespace lodebook::reduction
