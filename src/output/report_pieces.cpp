// SPDX-License-Identifier: MIT
#include "report_pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/output/table.hpp>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using reduction::Check;
using reduction::From;
using reduction::Page;
using reduction::Settings;

std::string_view origin(From from) {
  constexpr std::array<std::string_view, 3> names = {"", " (log)", " (option)"};
  return names[static_cast<std::size_t>(from)];
}

void append_set(std::string& out, const Settings& settings) {
  if (settings.set_from == From::nowhere) {
    out += settings.as_set() ? "dial set by an amount not stated" : "set not stated, taken as 0";
    return;
  }
  out += "dial set to ";
  append_east_or_west(out, settings.set.degrees_east(), 2);
  out += origin(settings.set_from);
}

/// `24.6E ±0.4`, `as set`.
void append_declination_figure(std::string& out, const Settings& settings) {
  if (settings.as_set()) {
    out += "as set";
  } else {
    append_east_or_west(out, settings.declination.degrees_east(), 2);
  }
  if (settings.declination_sigma == 0) return;
  out += " ±";
  append_trimmed(out, settings.declination_sigma, 2);
}

/// `grid of UTM zone 59G`; beyond the zones `grid of UPS Z`.
void append_grid_name(std::string& out, const earth::GridPosition& grid) {
  fmt::format_to(std::back_inserter(out), "grid of {} {}", grid.zone == 0 ? "UPS" : "UTM zone",
                 grid.designation());
}

void append_convergence(std::string& out, const earth::GridPosition& grid) {
  out += ", convergence ";
  append_east_or_west(out, grid.convergence.degrees_east(), 2);
}

void append_declination(std::string& out, const Settings& settings) {
  if (settings.declination_from == From::nowhere) {
    out += "declination unknown";
    return;
  }
  if (settings.from_model()) {
    out += "declination by the geomagnetic model";
    out += origin(settings.declination_from);
    out += settings.declination_known() ? ", first " : ", which has none for the first reading";
    if (settings.declination_known()) append_declination_figure(out, settings);
    return;
  }
  out += "declination ";
  append_declination_figure(out, settings);
  out += origin(settings.declination_from);
}

/// What changes from station to station: the model's declination, and the grid's north.
void append_site(std::string& out, const Settings& settings, reduction::North wanted) {
  const reduction::Correction correction = reduction::correction(settings, wanted);
  if (wanted != reduction::North::magnetic && settings.from_model()) {
    if (!settings.declination_known()) {
      out += "; no declination, so bearings stay magnetic";
      return;
    }
    out += "; declination ";
    append_declination_figure(out, settings);
    fmt::format_to(std::back_inserter(out), " ({})", earth::name_of(settings.site.field->model()));
  }
  if (correction.north == reduction::North::grid) {
    out += "; ";
    append_grid_name(out, *settings.site.grid);
    append_convergence(out, *settings.site.grid);
    if (const auto angle = settings.grid_magnetic_angle()) {
      out += ", grid-magnetic angle ";
      append_east_or_west(out, *angle, 2);
    }
  } else if (wanted == reduction::North::grid && correction.north == reduction::North::geographic) {
    out += "; grid north is not known, so bearings refer to true north";
  }
  // Where the declination is all that is added it has been said.
  const bool is_sum = settings.set != Declination() || correction.north == reduction::North::grid;
  if (!varies_by_station(settings, wanted) || !is_sum) return;
  out += ", so ";
  append_what_is_added(out, correction.angle.degrees());
}

void append_position(std::string& out, const Page& page) {
  if (page.position) {
    append_coordinates(out, page.position->position);
    constexpr std::array<std::string_view, 3> ways = {" given", " by sights", " by legs"};
    out += ways[static_cast<std::size_t>(page.position_from)];
    if (page.position->accuracy_m) {
      out += " ±";
      append_trimmed(out, *page.position->accuracy_m, 1);
      out += " m";
    }
  } else {
    out += "no position";
  }
  if (page.elevation_m) {
    out += ", elevation ";
    append_trimmed(out, *page.elevation_m, 1);
    out += " m";
  }
}

void append_counts(std::string& out, const Page& page) {
  const reduction::Counts& counts = page.counts;
  if (counts.readings == 0) {
    out += "no readings";
    return;
  }
  const std::array<std::pair<std::size_t, std::string_view>, 3> parts = {
      {{counts.ok, "ok"}, {counts.suspect, "suspect"}, {counts.rejected, "rejected"}}};
  bool first = true;
  for (const auto& [count, word] : parts) {
    if (count == 0) continue;
    fmt::format_to(std::back_inserter(out), "{}{} {}", first ? "" : ", ", count, word);
    first = false;
  }
}

/// One sigma of each reading's azimuth behind `before`, kind by kind: `bedding ±1.9 1.8 1.8, sight
/// ±0.6`. A level plane or an upright line has no azimuth: `-`.
void append_uncertainties(std::string& out, const Page& page, std::string_view before) {
  std::vector<const notebook::Kind*> kinds;
  for (const reduction::Row& row : page.rows) {
    const bool known = std::ranges::find(kinds, row.kind) != kinds.end();
    if (!known && row.status != reduction::Status::rejected) kinds.push_back(row.kind);
  }
  for (const notebook::Kind* kind : kinds) {
    out += kind == kinds.front() ? before : ", ";
    append_printable(out, kind->name);
    std::string_view mark = " ±";
    for (const reduction::Row& row : page.rows) {
      if (row.kind != kind || row.status == reduction::Status::rejected) continue;
      if (row.uncertainty) {
        out += mark;
        append_figure_of(out, *row.uncertainty, 1);
        mark = " ";
      } else {
        out += " -";
      }
    }
  }
}

void append_mean(std::string& out, const Check& check, notebook::Notation notation) {
  if (!check.mean_slope) return;
  out += ", mean ";
  if (check.kind->type == notebook::Kind::Type::plane) {
    append_converted_plane(out, check.mean_azimuth, *check.mean_slope, false, 0, 0, notation);
  } else {
    append_converted_line(out, check.mean_azimuth, *check.mean_slope, 0, 0, notation);
  }
  if (check.cone95) {
    out += ", cone ";
    append_figure_of(out, *check.cone95, 1);
    out += "°";
  }
}

void append_check(std::string& out, const Check& check, notebook::Notation notation) {
  std::string limit;
  if (!check.passed) {
    limit = " (limit ";
    append_figure_of(limit, check.limit, 1);
    limit += "°)";
  }
  std::string degrees;
  append_figure_of(degrees, check.figure, 1);
  switch (check.what) {
    case Check::What::repeats:
      fmt::format_to(std::back_inserter(out), "{} ", check.count);
      append_printable(out, check.kind->name);
      fmt::format_to(std::back_inserter(out), " within {}°{}", degrees, limit);
      append_mean(out, check, notation);
      break;
    case Check::What::line_in_plane:
      append_printable(out, check.kind->name);
      fmt::format_to(std::back_inserter(out), " {}° out of ", degrees);
      append_printable(out, check.plane_kind->name);
      out += limit;
      break;
    case Check::What::fore_and_back:
      fmt::format_to(std::back_inserter(out), "fore and back {}° apart{}", degrees, limit);
      break;
  }
}

}  // namespace

bool varies_by_station(const Settings& settings, reduction::North wanted) {
  return reduction::correction(settings, wanted).north == reduction::North::grid ||
         (settings.from_model() && wanted != reduction::North::magnetic);
}

void append_what_is_added(std::string& out, double degrees) {
  if (rounded(degrees, 2) == 0) {
    out += "nothing is added to the bearings";
    return;
  }
  append_trimmed(out, std::abs(degrees), 2);
  out += degrees > 0 ? " is added to every bearing" : " is subtracted from every bearing";
}

void append_heading(std::string& out, const reduction::Reduction& reduction, bool color) {
  const Settings& settings = reduction.heading();
  const reduction::North wanted = reduction.options().north;
  const reduction::Correction correction = reduction::correction(settings, wanted);
  append_bold(out, shown_name(reduction.notebook().source), color);
  std::string_view before = ": ";
  const auto add = [&](std::string_view text) {
    if (text.empty()) return;
    out += before;
    append_printable(out, text);
    before = ", ";
  };
  add(settings.area);
  if (settings.date) add(notebook::iso_date(*settings.date));
  add(settings.observer);

  out += "\n  ";
  append_set(out, settings);
  out += ", ";
  append_declination(out, settings);
  if (correction.north == reduction::North::grid) append_convergence(out, *settings.site.grid);
  out += ", so ";
  append_what_is_added(out, correction.angle.degrees());
  if (varies_by_station(settings, wanted))
    out += " at the first reading; each station says its own";
  out += "\n  ";
  if (settings.rule) {
    out += *settings.rule == ThumbRule::right ? "thumb rule right" : "thumb rule left";
    out += origin(settings.rule_from);
  } else {
    out += "no thumb rule, so that every pair names its side";
  }
  if (correction.north == reduction::North::geographic && wanted != reduction::North::grid) {
    out += "; output from true north\n";
  } else if (correction.north == reduction::North::grid) {
    out += "; output from the north of the ";
    append_grid_name(out, *settings.site.grid);
    out += ", as asked\n";
  } else if (wanted == reduction::North::magnetic) {
    out += "; output from magnetic north, as asked\n";
  } else {
    out += "\n  ";
    append_bold(out,
                correction.north == reduction::North::geographic
                    ? "NO POSITION IS KNOWN AT THE FIRST READING: BEARINGS REFER TO TRUE NORTH"
                    : "NO DECLINATION IS KNOWN AT THE FIRST READING: BEARINGS STAY MAGNETIC",
                color);
    out.push_back('\n');
  }
}

void append_station(std::string& out, const Page& page, reduction::North wanted,
                    notebook::Notation notation, bool color) {
  if (!page.is_station) {
    append_bold(out, "before the first station", color);
    out += ": ";
  } else {
    append_bold(out, page.station.empty() ? "station without a name" : page.station, color);
    out += ": ";
    append_position(out, page);
    append_site(out, page.settings, wanted);
    out += "; ";
  }
  append_counts(out, page);
  // One line for a clean station; where something is wrong, one for each thing.
  const bool clean = page.counts.errors == 0 && page.counts.warnings == 0;
  const std::string_view before = clean ? "; " : "\n  ";
  append_uncertainties(out, page, before);
  for (const Check& check : page.checks) {
    out += before;
    append_check(out, check, notation);
  }
  out.push_back('\n');
}

void append_notes(std::string& out, const std::vector<notebook::Diagnostic>& diagnostics) {
  std::string_view before = "  notes: ";
  for (const notebook::Diagnostic& diagnostic : diagnostics) {
    if (diagnostic.severity != notebook::Severity::note) continue;
    fmt::format_to(std::back_inserter(out), "{}line {} {}", before, diagnostic.place.line,
                   notebook::name_of(diagnostic.code));
    before = ", ";
  }
  if (before == ", ") out.push_back('\n');
}

}  // namespace lodebook::output
