// SPDX-License-Identifier: MIT
#include <array>
#include <lodebook/reduction/page.hpp>

namespace lodebook::reduction {

std::string_view name_of(PositionFrom from) {
  constexpr std::array<std::string_view, 3> names = {"at", "sights", "legs"};
  return names[static_cast<std::size_t>(from)];
}

std::string_view name_of(Item::What what) {
  constexpr std::array<std::string_view, 3> names = {"sample", "photo", "note"};
  return names[static_cast<std::size_t>(what)];
}

std::string_view name_of(Status status) {
  switch (status) {
    case Status::ok:
      return "ok";
    case Status::suspect:
      return "suspect";
    case Status::rejected:
      break;
  }
  return "rejected";
}

Counts& Counts::operator+=(const Counts& other) {
  readings += other.readings;
  ok += other.ok;
  suspect += other.suspect;
  rejected += other.rejected;
  stations += other.stations;
  not_understood += other.not_understood;
  errors += other.errors;
  warnings += other.warnings;
  notes += other.notes;
  lines_of_readings += other.lines_of_readings;
  return *this;
}

bool is_rough(const Counts& counts) {
  constexpr std::size_t fewest = 5;
  return counts.not_understood >= fewest && 5 * counts.not_understood >= counts.lines();
}

}  // namespace lodebook::reduction
