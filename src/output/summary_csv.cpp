// SPDX-License-Identifier: MIT
#include <array>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/plane.hpp>
#include <lodebook/output/summary.hpp>
#include <lodebook/output/text.hpp>

#include "row_csv.hpp"

namespace lodebook::output {
namespace {

using reduction::Summary;

struct SummaryRow {
  const SummaryDocument& document;
  const Summary& summary;
};
using Out = Pen&;
using At = const SummaryRow&;

struct SummaryColumn {
  std::string_view name;
  Type type;
  void (*append)(Out out, At at);
};

void append_count(Out out, std::size_t count) {
  append_figure(out, static_cast<std::int64_t>(count), 0);
}
void append_azimuth(Out out, const std::optional<double>& degrees) {
  if (degrees) append_figure(out, rounded_azimuth(*degrees, 2), 2);
}
void append_strike(Out out, Vector pole) {
  append_azimuth(out, shown_plane(pole, 2).strike);
}
void append_dip(Out out, Vector pole) {
  append_figure_of(out, shown_plane(pole, 2).dip, 2);
}
void append_trend(Out out, Vector line) {
  append_azimuth(out, shown_line(line, 2).trend);
}
void append_plunge(Out out, Vector line) {
  append_figure_of(out, shown_line(line, 2).plunge, 2);
}

/// The mean of a group of planes, or of one of lines.
void append_mean(Out out, At at, bool planes, void (*append)(Out, Vector)) {
  if (at.summary.mean && !at.summary.no_mean && at.summary.group.is_plane == planes)
    append(out, at.summary.mean->axis);
}
void append_girdle(Out out, At at, void (*append)(Out, Vector)) {
  if (at.summary.girdle) append(out, at.summary.girdle->pole);
}
template <std::size_t place>
void append_eigenvalue(Out out, At at) {
  if (at.summary.tensor) append_figure_of(out, at.summary.tensor->eigenvalues[place], 4);
}

constexpr auto table_columns = std::to_array<SummaryColumn>({
    {"kind", Type::text,
     [](Out out, At at) { out += at.document.attitudes.kind(at.summary.group.kind); }},
    {"type", Type::word,
     [](Out out, At at) { out += type_of(at.summary.group); }},
    {"unit", Type::text,
     [](Out out, At at) {
       if (at.summary.group.unit) out += at.document.attitudes.unit(*at.summary.group.unit);
     }},
    {"station", Type::text,
     [](Out out, At at) {
       if (at.summary.group.station)
         out += at.document.attitudes.station(*at.summary.group.station);
     }},
    {"file", Type::text,
     [](Out out, At at) {
       if (at.summary.group.log)
         out += file_of(at.document.attitudes.logs()[*at.summary.group.log]);
     }},
    {"north", Type::word,
     [](Out out, At at) { out += reduction::name_of(at.summary.group.north); }},
    {"count", Type::count,
     [](Out out, At at) { append_count(out, at.summary.group.members.size()); }},
    {"surfaces", Type::count, [](Out out, At at) { append_count(out, at.summary.group.surfaces); }},
    {"suspect", Type::count, [](Out out, At at) { append_count(out, at.summary.group.suspect); }},
    {"suspect_left_out", Type::count,
     [](Out out, At at) { append_count(out, at.summary.group.left_out); }},
    {"rejected", Type::count, [](Out out, At at) { append_count(out, at.summary.group.rejected); }},
    {"partial", Type::count,
     [](Out out, At at) { append_count(out, at.summary.group.halves.size()); }},
    {"mean_strike", Type::number,
     [](Out out, At at) { append_mean(out, at, true, append_strike); }},
    {"mean_dip", Type::number, [](Out out, At at) { append_mean(out, at, true, append_dip); }},
    {"mean_trend", Type::number,
     [](Out out, At at) { append_mean(out, at, false, append_trend); }},
    {"mean_plunge", Type::number,
     [](Out out, At at) { append_mean(out, at, false, append_plunge); }},
    {"resultant", Type::number,
     [](Out out, At at) {
       if (at.summary.mean) append_figure_of(out, at.summary.mean->resultant, 4);
     }},
    {"precision_k", Type::number,
     [](Out out, At at) {
       if (at.summary.mean) append_figure_of(out, at.summary.mean->precision, 2);
     }},
    {"cone95", Type::number,
     [](Out out, At at) {
       if (at.summary.mean) append_figure_of(out, at.summary.mean->cone95, 2);
     }},
    {"no_single_mean", Type::text,
     [](Out out, At at) {
       if (at.summary.no_mean) out += reduction::name_of(*at.summary.no_mean);
     }},
    {"eigenvalue_1", Type::number, append_eigenvalue<0>},
    {"eigenvalue_2", Type::number, append_eigenvalue<1>},
    {"eigenvalue_3", Type::number, append_eigenvalue<2>},
    {"woodcock_k", Type::number,
     [](Out out, At at) {
       if (at.summary.tensor) append_figure_of(out, at.summary.tensor->shape(), 3);
     }},
    {"woodcock_c", Type::number,
     [](Out out, At at) {
       if (at.summary.tensor) append_figure_of(out, at.summary.tensor->strength(), 3);
     }},
    {"fabric", Type::word, [](Out out, At at) { out += reduction::name_of(at.summary.fabric); }},
    {"girdle_strike", Type::number,
     [](Out out, At at) { append_girdle(out, at, append_strike); }},
    {"girdle_dip", Type::number, [](Out out, At at) { append_girdle(out, at, append_dip); }},
    {"axis_trend", Type::number, [](Out out, At at) { append_girdle(out, at, append_trend); }},
    {"axis_plunge", Type::number, [](Out out, At at) { append_girdle(out, at, append_plunge); }},
    {"axis_cone95", Type::number,
     [](Out out, At at) {
       if (at.summary.girdle) append_figure_of(out, at.summary.girdle->cone95, 2);
     }},
    {"azimuth_count", Type::count,
     [](Out out, At at) { append_count(out, at.summary.azimuths.count); }},
    {"azimuth_mean", Type::number,
     [](Out out, At at) {
       const auto& mean = at.summary.azimuths.azimuth;
       if (!mean || at.summary.no_azimuth) return;
       append_figure(out,
                     at.summary.group.is_axial() ? rounded_axis(*mean, 2) : rounded_azimuth(*mean, 2),
                     2);
     }},
    {"azimuth_resultant", Type::number,
     [](Out out, At at) {
       if (at.summary.azimuths.count > 0) append_figure_of(out, at.summary.azimuths.resultant, 4);
     }},
    {"azimuth_arc95", Type::number,
     [](Out out, At at) { append_figure_of(out, at.summary.azimuths.arc95, 2); }},
    {"azimuth_chance", Type::number,
     [](Out out, At at) {
       if (at.summary.azimuths.count > 0) append_figure_of(out, at.summary.azimuths.chance, 4);
     }},
    {"far_off", Type::text,
     [](Out out, At at) {
       std::string_view before;
       for (const reduction::FarOff& far : at.summary.far_off) {
         out += before;
         out += source_of(at.document.attitudes, *far.attitude);
         before = " ";
       }
     }},
});

}  // namespace

void append_summary_csv(std::string& out, const SummaryDocument& document) {
  append_csv_names(out, table_columns);
  Pen pen(out);
  for (const Summary& summary : document.summaries)
    append_csv_row(pen, table_columns, SummaryRow{document, summary});
}

}  // namespace lodebook::output
