// SPDX-License-Identifier: MIT
#include <lodebook/reduction/field_ahead.hpp>

#include "blocks.hpp"

namespace lodebook::reduction {

using namespace notebook;

std::optional<earth::MagneticField> field_of(const PlaceAndDate& at) {
  return earth::magnetic_field(at.position, at.height_m, decimal_year(at.date));
}

std::optional<KnownField> FieldAhead::of(const Block& block) {
  std::optional<Date> at_first_reading;
  for (const Entry& entry : block.entries) {
    if (const auto* date = std::get_if<DateSetting>(&entry.what)) date_ = date->date;
    if (std::holds_alternative<Reading>(entry.what) && !at_first_reading) at_first_reading = date_;
  }
  if (!at_first_reading) return std::nullopt;
  Page page;
  read_station_wide(page, notebook_, block.entries);
  if (!page.position) return std::nullopt;
  const PlaceAndDate at{page.position->position, page.elevation_m.value_or(0), *at_first_reading};
  return KnownField{at, field_of(at)};
}

}  // namespace lodebook::reduction
