// SPDX-License-Identifier: MIT
#include "register_table.hpp"

#include <array>

#include "page_cells.hpp"

namespace lodebook::output {
namespace {

using Out = Pen&;
using At = const RegisterRow&;

constexpr auto table = std::to_array<RegisterColumn>({
    {"station", Type::text, [](Out out, At at) { out += at.page.station; }},
    {"kind", Type::word, [](Out out, At at) { out += reduction::name_of(at.item.what); }},
    {"name", Type::text, [](Out out, At at) { out += at.item.name; }},
    {"text", Type::text, [](Out out, At at) { out += at.item.text; }},
    {"unit", Type::text, [](Out out, At at) { out += at.item.unit; }},
    {"date", Type::date, [](Out out, At at) { append_date(out, at.item.date); }},
    {"time", Type::time, [](Out out, At at) { append_clock(out, at.page); }},
    {"observer", Type::text, [](Out out, At at) { out += at.item.observer; }},
    {"latitude", Type::number, [](Out out, At at) { append_latitude(out, at.page); }},
    {"longitude", Type::number, [](Out out, At at) { append_longitude(out, at.page); }},
    {"elevation_m", Type::number, [](Out out, At at) { append_elevation(out, at.page); }},
    {"position_from", Type::word, [](Out out, At at) { append_position_from(out, at.page); }},
    {"accuracy_m", Type::number, [](Out out, At at) { append_accuracy(out, at.page); }},
    {"source", Type::text,
     [](Out out, At at) {
       append_source(out, shown_name(at.source), at.item.line, at.item.column);
     }},
});

}  // namespace

std::span<const RegisterColumn> register_columns() {
  return table;
}

}  // namespace lodebook::output
