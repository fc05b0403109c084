// SPDX-License-Identifier: MIT
// What a row says of its station and its day.
#include <fmt/format.h>

#include <utility>

#include "dates.hpp"
#include "row.hpp"

namespace lodebook::fair_copy {

namespace {

/// A day other than the row's above.
void take_date(Row& row, TableState& table, const Page& page, Lines& lines) {
  const auto day = day_on(tokens_of(row.peek(Column::date), page.words, false));
  if (!day || !day->other.empty()) return;
  row.take(Column::date);
  if (std::exchange(table.date, day->iso) != day->iso)
    lines.emplace_back().text = "date " + day->iso;
}

/// `Stn 3` as `3`.
std::string name_in(std::string cell, const Page& page) {
  const Tokens tokens = tokens_of(cell, page.words, false);
  if (tokens.size() == 2 && tokens.front().is(Meaning::station) && tokens.front().says.empty())
    cell.erase(0, tokens[1].begin);
  return cell;
}

}  // namespace

void add_place(Row& row, TableState& table, Page& page, Lines& lines) {
  const std::string station = name_in(row.take(Column::station), page);
  take_date(row, table, page, lines);
  if (station.empty()) return;
  const std::string latitude = row.take(Column::latitude);
  const std::string longitude = row.take(Column::longitude);
  std::string zone = row.take(Column::zone);
  if (zone.empty()) zone = page.units.zone;
  const bool has_grid = !zone.empty();
  const std::string easting = has_grid ? row.take(Column::easting) : std::string();
  const std::string northing = has_grid ? row.take(Column::northing) : std::string();
  const std::string elevation = row.take(Column::elevation);
  // The rest stands at the station's first row.
  if (page.is_here(station)) return;
  page.begin_station(station);
  Line& heading = lines.emplace_back();
  heading.text = "station " + name_text(station);
  if (!latitude.empty() && !longitude.empty())
    heading.text += fmt::format(" at {}, {}", latitude, longitude);
  if (latitude.empty() && !easting.empty() && !northing.empty())
    heading.text += fmt::format(" at {} {} {}", zone, easting, northing);
  const bool feet = row.unit_of(Column::elevation) == Unit::feet;
  if (!elevation.empty())
    lines.emplace_back().text = fmt::format("elevation {} {}", elevation, feet ? "ft" : "m");
}

}  // namespace lodebook::fair_copy
