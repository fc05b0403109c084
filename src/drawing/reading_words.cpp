// SPDX-License-Identifier: MIT
#include "reading_words.hpp"

#include <fmt/format.h>

#include <lodebook/orientation/angle.hpp>
#include <lodebook/output/notation.hpp>

namespace lodebook::drawing {

std::string reading_words(std::string_view station, std::string_view kind, std::string_view written,
                          std::string_view corrected, reduction::North north) {
  return fmt::format("{}{}{}: {} as typed, {} from {} north", station, station.empty() ? "" : ", ",
                     kind, written, corrected, reduction::name_of(north));
}

std::string corrected_words(const reduction::Row& row, output::ShownIn shown_in) {
  std::string out;
  const bool is_half = row.part != notebook::Part::whole;
  if (is_half && row.strike) {
    output::append_converted_strike(out, *row.strike, 1, shown_in.bearings);
  } else if (is_half && row.dip) {
    output::append_converted_dip(out, *row.dip, 1);
  } else if (row.dip) {
    output::append_converted_plane(out, row.strike, *row.dip, !row.strike_is_axis, 1, 1, shown_in);
  } else if (row.plunge) {
    const bool turns = row.rises && row.trend;
    output::append_converted_line(out, turns ? wrap_degrees(*row.trend + 180) : row.trend,
                                  row.rises ? -*row.plunge : *row.plunge, 1, 1, shown_in.bearings);
  } else if (const auto& bearing = row.trend ? row.trend : row.bearing) {
    output::append_converted_bearing(out, *bearing, 1, shown_in.bearings);
  }
  return out;
}

}  // namespace lodebook::drawing
