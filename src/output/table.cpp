// SPDX-License-Identifier: MIT
// The columns: where each takes its figure from, and how it is rounded.
#include <algorithm>
#include <array>
#include <lodebook/notebook/attributes.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/table.hpp>

#include "page_cells.hpp"

namespace lodebook::output {
namespace {

using reduction::Row;

/// Tenths of a degree, wrapped after rounding.
void append_azimuth(Pen& out, const std::optional<double>& degrees) {
  if (degrees) append_figure(out, rounded_azimuth(*degrees, 1), 1);
}

/// The quadrant bearing of an azimuth in tenths of a degree, so that it agrees with the figure
/// beside it.
void append_quadrant(Pen& out, std::int64_t tenths) {
  const auto quarter = static_cast<std::size_t>(tenths / 900);
  if (tenths % 900 == 0) {
    out.push_back("NESW"[quarter]);
    return;
  }
  constexpr std::array<std::int64_t, 4> poles = {0, 1800, 1800, 3600};
  const std::int64_t angle = tenths - poles[quarter];
  out.push_back(quarter == 0 || quarter == 3 ? 'N' : 'S');
  append_figure(out, angle < 0 ? -angle : angle, 1);
  out.push_back(quarter < 2 ? 'E' : 'W');
}

void append_quadrant(Pen& out, const Row& row) {
  if (row.strike) {
    // The northern end; east for a strike that runs east and west.
    const std::int64_t tenths = rounded_axis(*row.strike, 1);
    append_quadrant(out, tenths <= 900 ? tenths : tenths + 1800);
  } else if (row.trend) {
    append_quadrant(out, rounded_azimuth(*row.trend, 1));
  } else if (row.bearing) {
    append_quadrant(out, rounded_azimuth(*row.bearing, 1));
  }
}

void append_codes(Pen& out, const Row& row) {
  bool first = true;
  for (const notebook::Code code : row.codes) {
    if (!first) out.push_back(' ');
    first = false;
    out += notebook::name_of(code);
  }
}

template <class Text>
void append_source(Text& out, const RowContext& at) {
  output::append_source(out, shown_name(at.source), at.row.entry->line, at.row.entry->column);
}

constexpr std::array<std::string_view, 4> types = {"plane", "line", "sight", "leg"};
constexpr std::array<std::string_view, 4> facings = {"", "upright", "overturned", "unknown"};
constexpr std::array<std::string_view, 5> senses = {"", "normal", "reverse", "dextral",
                                                    "sinistral"};

template <std::size_t size, class Enum>
std::string_view word(const std::array<std::string_view, size>& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}

/// `use` with the place where the row was read: the page's, or another station.
template <class Use>
void with_place(const RowContext& at, Use use) {
  if (at.row.elsewhere) {
    use(*at.row.elsewhere);
  } else {
    use(at.page);
  }
}

/// Where the station lies on the grid; missing where its position is another's.
const earth::GridPosition* grid_of(const RowContext& at) {
  if (at.row.elsewhere) return at.row.elsewhere->grid ? &*at.row.elsewhere->grid : nullptr;
  const auto& grid = at.page.settings.site.grid;
  return at.page.position && grid ? &*grid : nullptr;
}

void append_grid_number(Pen& out, const RowContext& at, double earth::GridPosition::*metres) {
  if (const auto* grid = grid_of(at)) append_figure_of(out, grid->*metres, 2);
}

// What a column's text depends on. What is the same all over a page joins its neighbours.

bool same_kind(const Row& above, const Row& row) {
  return above.kind == row.kind && above.elsewhere == row.elsewhere;
}

bool same_line(const Row& above, const Row& row) {
  return above.trend == row.trend && above.plunge == row.plunge && above.rake == row.rake &&
         above.bearing == row.bearing && above.back_bearing == row.back_bearing;
}

bool same_aim(const Row& above, const Row& row) {
  return above.correction == row.correction && above.north == row.north &&
         above.target == row.target && above.distance_m == row.distance_m &&
         above.vertical_angle == row.vertical_angle && above.facing == row.facing &&
         above.sense == row.sense;
}

bool same_status(const Row& above, const Row& row) {
  return above.status == row.status && above.codes == row.codes && above.elsewhere == row.elsewhere;
}

bool same_notes(const Row& above, const Row& row) {
  return above.date == row.date && above.observer == row.observer && above.unit == row.unit;
}

using Out = Pen&;
using At = const RowContext&;

constexpr auto with_grid_columns = std::to_array<Column>({
    {"station", Type::text, [](Out out, At at) { with_place(at, [&](const auto& place) { out += place.station; }); }, same_kind},
    {"kind", Type::text, [](Out out, At at) { out += at.row.kind->name; }, same_kind},
    {"type", Type::word, [](Out out, At at) { out += word(types, at.row.kind->type); }, same_kind},
    {"strike", Type::number,
     [](Out out, At at) { append_azimuth(out, at.row.strike); }},
    {"dip", Type::number, [](Out out, At at) { append_figure_of(out, at.row.dip, 1); }},
    {"dip_direction", Type::number,
     [](Out out, At at) {
       if (!at.row.strike || at.row.part != notebook::Part::whole) return;
       append_figure(out, (rounded_azimuth(*at.row.strike, 1) + 900) % 3600, 1);
     }},
    {"trend", Type::number, [](Out out, At at) { append_azimuth(out, at.row.trend); }, same_line},
    {"plunge", Type::number, [](Out out, At at) { append_figure_of(out, at.row.plunge, 1); },
     same_line},
    {"rake", Type::number, [](Out out, At at) { append_figure_of(out, at.row.rake, 1); },
     same_line},
    {"bearing", Type::number, [](Out out, At at) { append_azimuth(out, at.row.bearing); },
     same_line},
    {"back_bearing", Type::number, [](Out out, At at) { append_azimuth(out, at.row.back_bearing); },
     same_line},
    {"quadrant", Type::word, [](Out out, At at) { append_quadrant(out, at.row); }},
    {"uncertainty", Type::number, [](Out out, At at) { append_figure_of(out, at.row.uncertainty, 2); }},
    {"as_read", Type::number,
     [](Out out, At at) { append_azimuth(out, at.row.as_read); }},
    {"correction", Type::number, [](Out out, At at) { append_figure_of(out, at.row.correction, 2); },
     same_aim},
    {"north", Type::word, [](Out out, At at) { out += reduction::name_of(at.row.north); },
     same_aim},
    {"target", Type::text, [](Out out, At at) { out += at.row.target; }, same_aim},
    {"distance_m", Type::number, [](Out out, At at) { append_figure_of(out, at.row.distance_m, 2); },
     same_aim},
    {"vertical_angle", Type::number,
     [](Out out, At at) { append_figure_of(out, at.row.vertical_angle, 1); }, same_aim},
    {"facing", Type::word, [](Out out, At at) { out += word(facings, at.row.facing); }, same_aim},
    {"sense", Type::word, [](Out out, At at) { out += word(senses, at.row.sense); }, same_aim},
    {"surface", Type::count,
     [](Out out, At at) {
       if (at.row.surface != 0) append_figure(out, at.row.surface, 0);
     }},
    {"status", Type::word, [](Out out, At at) { out += reduction::name_of(at.row.status); },
     same_status},
    {"codes", Type::word, [](Out out, At at) { append_codes(out, at.row); }, same_status},
    {"latitude", Type::number, [](Out out, At at) { with_place(at, [&](const auto& place) { append_latitude(out, place); }); }, same_status},
    {"longitude", Type::number, [](Out out, At at) { with_place(at, [&](const auto& place) { append_longitude(out, place); }); }, same_status},
    {"elevation_m", Type::number, [](Out out, At at) { with_place(at, [&](const auto& place) { append_elevation(out, place); }); }, same_status},
    {"position_from", Type::word, [](Out out, At at) { with_place(at, [&](const auto& place) { append_position_from(out, place); }); }, same_status},
    {"accuracy_m", Type::number, [](Out out, At at) { with_place(at, [&](const auto& place) { append_accuracy(out, place); }); }, same_status},
    {"easting", Type::number,
     [](Out out, At at) { append_grid_number(out, at, &earth::GridPosition::easting_m); },
     same_status, true},
    {"northing", Type::number,
     [](Out out, At at) { append_grid_number(out, at, &earth::GridPosition::northing_m); },
     same_status, true},
    {"zone", Type::word,
     [](Out out, At at) {
       if (const auto* grid = grid_of(at)) out += grid->designation();
     },
     same_status, true},
    {"rotation", Type::number,
     [](Out out, At at) {
       append_azimuth(out, at.row.strike ? at.row.strike : at.row.trend);
     }},
    {"date", Type::date, [](Out out, At at) { append_date(out, at.row.date); }, same_notes},
    {"time", Type::time, [](Out out, At at) { append_clock(out, at.page); }, same_notes},
    {"observer", Type::text, [](Out out, At at) { out += at.row.observer; }, same_notes},
    {"unit", Type::text, [](Out out, At at) { out += at.row.unit; }, same_notes},
    {"written", Type::text, [](Out out, At at) { out += at.row.written; }},
    {"remark", Type::text, [](Out out, At at) { out += at.row.remark; }},
    {"source", Type::text, [](Out out, At at) { append_source(out, at); }},
});

constexpr auto plain_columns = [] {
  constexpr auto grid_count = std::ranges::count(with_grid_columns, true, &Column::of_grid);
  std::array<Column, with_grid_columns.size() - static_cast<std::size_t>(grid_count)> plain{};
  std::ranges::remove_copy(with_grid_columns, plain.begin(), true, &Column::of_grid);
  return plain;
}();

}  // namespace

Columns columns(bool with_grid) {
  return with_grid ? Columns(with_grid_columns) : Columns(plain_columns);
}

std::vector<Column> columns(bool with_grid, std::span<const std::string> keys) {
  const Columns plain = columns(with_grid);
  std::vector<Column> all(plain.begin(), plain.end());
  auto before = std::ranges::find(all, std::string_view("written"), &Column::name);
  for (const std::string& key : keys)
    before = std::next(all.insert(before, Column{key, Type::text, nullptr}));
  return all;
}

void Column::append_attribute(Pen& out, const RowContext& context) const {
  out += notebook::attribute_of(context.row.remark, name);
}

std::string source_of(const RowContext& at) {
  std::string out;
  append_source(out, at);
  return out;
}

std::string_view shown_name(const notebook::Source& source) {
  return shown_name(std::string_view(source.name()));
}

std::string_view shown_name(std::string_view name) {
  return name.starts_with('/') ? name.substr(name.rfind('/') + 1) : name;
}

}  // namespace lodebook::output
