// SPDX-License-Identifier: MIT
#include "blocks.hpp"

#include <algorithm>

namespace lodebook::reduction {

using namespace notebook;

std::size_t block_end(const Notebook& notebook, std::size_t begin, bool is_station) {
  const auto is_heading = [](const Entry& entry) {
    return std::holds_alternative<StationHeading>(entry.what);
  };
  const auto from =
      notebook.entries.begin() + static_cast<std::ptrdiff_t>(is_station ? begin + 1 : begin);
  return static_cast<std::size_t>(std::find_if(from, notebook.entries.end(), is_heading) -
                                  notebook.entries.begin());
}

std::string_view read_station_wide(Page& page, const Notebook& notebook,
                                   std::span<const Entry> entries) {
  const Unit* first_unit = nullptr;
  for (const Entry& entry : entries) {
    const auto& what = entry.what;
    if (const auto* station = std::get_if<StationHeading>(&what)) {
      if (station->name != no_name) page.station = notebook.names.shown(station->name);
      if (station->position) page.position = station->position;
    } else if (const auto* at = std::get_if<At>(&what)) {
      page.position = at->position;
    } else if (const auto* elevation = std::get_if<Elevation>(&what)) {
      page.elevation_m = elevation->height.metres(1);
      page.elevation_origin = notebook.source.text(elevation->origin);
    } else if (const auto* clock = std::get_if<Clock>(&what)) {
      page.time = clock->time;
    } else if (const auto* unit = std::get_if<Unit>(&what); unit && !first_unit) {
      first_unit = unit;
    }
  }
  if (page.position) page.position_origin = notebook.source.text(page.position->origin);
  return first_unit ? notebook.source.text(first_unit->text) : std::string_view();
}

}  // namespace lodebook::reduction
