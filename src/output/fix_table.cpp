// SPDX-License-Identifier: MIT
#include "fix_table.hpp"

#include <array>
#include <lodebook/earth/grid.hpp>
#include <lodebook/orientation/decimal.hpp>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

void append_grid_number(Pen& out, const FixRow& at, double earth::GridPosition::*metres) {
  if (at.point.position) append_figure_of(out, earth::grid_position(*at.point.position).*metres, 2);
}

void append_ellipse_number(Pen& out, const FixRow& at, double reduction::ErrorEllipse::*metres) {
  if (at.point.ellipse) append_figure_of(out, (*at.point.ellipse).*metres, 2);
}

void append_suspicions(Pen& out, const FixRow& at) {
  if (at.point.fix == nullptr) return;
  std::string_view before;
  for (const reduction::FixedSight& sight : at.point.fix->sights) {
    if (sight.suspicion.empty()) continue;
    out += before;
    out += sight.name;
    out += ": ";
    out += sight.suspicion;
    before = "; ";
  }
}

using Out = Pen&;
using At = const FixRow&;

constexpr auto table = std::to_array<FixColumn>({
    {"station", Type::text, [](Out out, At at) { out += at.point.name; }},
    {"latitude", Type::number,
     [](Out out, At at) {
       if (at.point.position) append_figure_of(out, at.point.position->latitude, 7);
     }},
    {"longitude", Type::number,
     [](Out out, At at) {
       if (at.point.position) append_figure_of(out, at.point.position->longitude, 7);
     }},
    {"easting", Type::number,
     [](Out out, At at) { append_grid_number(out, at, &earth::GridPosition::easting_m); }},
    {"northing", Type::number,
     [](Out out, At at) { append_grid_number(out, at, &earth::GridPosition::northing_m); }},
    {"zone", Type::word,
     [](Out out, At at) {
       if (at.point.position) out += earth::grid_position(*at.point.position).designation();
     }},
    {"position_from", Type::word, [](Out out, At at) { out += at.point.position_from(); }},
    {"accuracy_m", Type::number,
     [](Out out, At at) { append_figure_of(out, at.point.accuracy_m(), 2); }},
    {"semi_major_m", Type::number,
     [](Out out, At at) {
       append_ellipse_number(out, at, &reduction::ErrorEllipse::semi_major_m);
     }},
    {"semi_minor_m", Type::number,
     [](Out out, At at) {
       append_ellipse_number(out, at, &reduction::ErrorEllipse::semi_minor_m);
     }},
    {"major_azimuth", Type::number,
     [](Out out, At at) {
       if (at.point.ellipse)
         append_figure(out, rounded_axis(at.point.ellipse->major_azimuth, 2), 2);
     }},
    {"elevation_m", Type::number,
     [](Out out, At at) { append_figure_of(out, at.point.elevation_m(), 2); }},
    {"sights", Type::count,
     [](Out out, At at) {
       if (at.point.fix != nullptr)
         append_figure(out, static_cast<std::int64_t>(at.point.fix->sights.size()), 0);
     }},
    {"chi_square", Type::number,
     [](Out out, At at) {
       if (at.point.is_checked()) append_figure_of(out, at.point.fix->chi_square, 2);
     }},
    {"freedom", Type::count,
     [](Out out, At at) {
       if (at.point.fix != nullptr && at.point.fix->position)
         append_figure(out, static_cast<std::int64_t>(at.point.fix->freedom), 0);
     }},
    {"agrees", Type::word,
     [](Out out, At at) {
       if (at.point.is_checked()) out += at.point.fix->agrees ? "yes" : "no";
     }},
    {"suspicion", Type::text, append_suspicions},
    {"source", Type::text,
     [](Out out, At at) {
       out += shown_name(at.source);
       out.push_back(':');
       if (at.point.line) append_figure(out, *at.point.line, 0);
     }},
});

}  // namespace

std::span<const FixColumn> fix_columns() {
  return table;
}

}  // namespace lodebook::output
