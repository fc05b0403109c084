// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <iterator>
#include <lodebook/orientation/decimal.hpp>
#include <utility>

#include <lodebook/output/text.hpp>
#include "aligned.hpp"
#include "fix_text.hpp"

namespace lodebook::output {
namespace {

using reduction::Fixes;
using reduction::FixLeg;
using reduction::Traverse;

std::string signed_figure(double value) {
  std::string out = rounded(value, 1) > 0 ? "+" : "";
  append_figure_of(out, value, 1);
  return out;
}

std::string name_of(const Fixes& fixes, std::size_t station) {
  return printable(fixes.stations[station].name);
}

std::string leg_name(const Fixes& fixes, const FixLeg& leg, bool reversed) {
  return name_of(fixes, reversed ? leg.to : leg.from) + " to " +
         name_of(fixes, reversed ? leg.from : leg.to);
}

std::string_view word_of(Traverse::Kind kind) {
  switch (kind) {
    case Traverse::Kind::loop:
      return "loop";
    case Traverse::Kind::between:
      return "traverse between known stations";
    case Traverse::Kind::open:
      break;
  }
  return "open traverse";
}

void append_title(std::string& out, const Fixes& fixes, const Traverse& traverse, bool color) {
  std::string title(word_of(traverse.kind));
  std::string_view before = ": ";
  for (const std::size_t station : traverse.stations) {
    title.append(before).append(name_of(fixes, station));
    before = ", ";
  }
  append_bold(out, title, color);
  fmt::format_to(std::back_inserter(out), "; {} m\n", figure_text(traverse.length_m, 1));
}

void append_misclosure(std::string& out, const Traverse& traverse, bool color) {
  if (traverse.kind == Traverse::Kind::open) {
    out += "  no check: it does not close\n";
    return;
  }
  fmt::format_to(std::back_inserter(out), "  misclosure {} m: departure {}, latitude {}",
                 figure_text(traverse.misclosure_m, 1),
                 signed_figure(traverse.departure_misclosure_m),
                 signed_figure(traverse.latitude_misclosure_m));
  if (traverse.precision) {
    out += "; 1 in ";
    append_figure(out, rounded(*traverse.precision, 0), 0);
  }
  out.push_back('\n');
  if (!traverse.contradicts) return;
  out += "  ";
  append_bold(out, "MORE THAN ITS ERRORS ALLOW", color);
  out += ": a leg or a known end is probably wrong\n";
}

}  // namespace

void append_traverse(std::string& out, const Fixes& fixes, const Traverse& traverse, bool color) {
  append_title(out, fixes, traverse, color);
  append_misclosure(out, traverse, color);
  const bool is_adjusted = traverse.kind != Traverse::Kind::open;
  std::vector<AlignedRow> rows = {
      {{"leg", "line", "measured m", "slope", "horizontal m", "departure m", "latitude m"}, ""}};
  if (is_adjusted) {
    for (const char* const column : {"add to departure", "add to latitude"})
      rows.front().cells.emplace_back(column);
  }
  for (const reduction::TraversedLeg& traversed : traverse.legs) {
    const FixLeg& leg = fixes.legs[traversed.leg];
    std::vector<std::string> cells = {
        leg_name(fixes, leg, traversed.reversed),
        std::to_string(leg.line),
        figure_text(leg.measured_m, 1),
        leg.vertical_angle ? figure_text(*leg.vertical_angle, 1) + "°" : "-",
        figure_text(leg.distance_m, 1),
        figure_text(traversed.departure_m, 1),
        figure_text(traversed.latitude_m, 1)};
    if (is_adjusted) {
      cells.push_back(signed_figure(traversed.departure_correction_m));
      cells.push_back(signed_figure(traversed.latitude_correction_m));
    }
    rows.push_back({std::move(cells), ""});
  }
  append_aligned(out, rows);
}

void append_left_out_legs(std::string& out, const Fixes& fixes, bool color) {
  std::vector<AlignedRow> rows = {{{"leg", "line"}, "why"}};
  for (const FixLeg& leg : fixes.legs) {
    if (!leg.left_out) continue;
    rows.push_back({{leg_name(fixes, leg, false), std::to_string(leg.line)},
                    std::string(reduction::words_for(*leg.left_out))});
  }
  if (rows.size() == 1) return;
  out.push_back('\n');
  append_bold(out, "legs that place nothing", color);
  out.push_back('\n');
  append_aligned(out, rows);
}

void append_back_bearings(std::string& out, const Fixes& fixes, bool color) {
  std::vector<AlignedRow> legs = {
      {{"leg", "line", "fore", "back", "apart", "corrected fore", "corrected back"}, ""}};
  for (const FixLeg& leg : fixes.legs) {
    if (!leg.back) continue;
    legs.push_back({{leg_name(fixes, leg, false), std::to_string(leg.line), azimuth_text(leg.fore),
                     azimuth_text(*leg.back), figure_text(*leg.disagreement, 1) + "°",
                     leg.corrected ? azimuth_text(leg.corrected->fore) : "-",
                     leg.corrected ? azimuth_text(leg.corrected->back) : "-"},
                    ""});
  }
  if (legs.size() == 1) return;
  out.push_back('\n');
  append_bold(out, "fore and back bearings", color);
  out += ", and the same corrected for local attraction\n";
  append_aligned(out, legs);
  if (!fixes.attraction) {
    out +=
        "  no leg has two bearings that agree, so no station is known to be free of attraction\n";
    return;
  }
  out += fixes.attraction_applied
             ? "  correction for local attraction, added to the legs read at each station:\n"
             : "  correction for local attraction at each station, not applied:\n";
  std::vector<AlignedRow> stations;
  for (const reduction::StationAttraction& station : fixes.attraction->stations) {
    stations.push_back({{name_of(fixes, station.station),
                         station.is_free ? "free" : signed_figure(station.correction) + "°"},
                        ""});
  }
  append_aligned(out, stations);
}

}  // namespace lodebook::output
