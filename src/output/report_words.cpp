// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <iterator>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/output/report_words.hpp>
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
    out += settings.as_set() ? "dial set, by an amount not stated" : "set not stated, taken as 0";
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
    out += "declination from the geomagnetic model";
    out += origin(settings.declination_from);
    if (!settings.declination_known()) {
      out += ", which has none for the first reading";
      return;
    }
    out += ", at the first reading ";
    append_declination_figure(out, settings);
    return;
  }
  out += "declination ";
  append_declination_figure(out, settings);
  out += origin(settings.declination_from);
}

void append_mean(std::string& out, const Check& check, ShownIn shown_in) {
  if (!check.mean_slope && !check.mean_azimuth) return;
  out += ", mean ";
  if (!check.mean_slope) {
    append_converted_bearing(out, *check.mean_azimuth, 0, shown_in.bearings);
  } else if (check.kind->type == notebook::Kind::Type::plane) {
    append_converted_plane(out, check.mean_azimuth, *check.mean_slope, false, 0, 0, shown_in);
  } else {
    append_converted_line(out, check.mean_azimuth, *check.mean_slope, 0, 0, shown_in.bearings);
  }
  if (check.cone95) {
    out += ", cone ";
    append_figure_of(out, *check.cone95, 1);
    out += "°";
  }
}

}  // namespace

std::string_view page_name(const Page& page) {
  if (!page.is_station) return "before the first station";
  return page.station.empty() ? "station without a name" : page.station;
}

void append_compass(std::string& out, const Settings& settings, reduction::North wanted) {
  const reduction::Correction correction = reduction::correction(settings, wanted);
  append_set(out, settings);
  out += ", ";
  append_declination(out, settings);
  if (correction.north == reduction::North::grid) append_convergence(out, *settings.site.grid);
  out += ", so ";
  append_what_is_added(out, correction.angle.degrees());
  if (varies_by_station(settings, wanted)) {
    out +=
        settings.from_model() && settings.declination_known() ? " there" : " at the first reading";
    out += "; each station has its own";
  }
}

void append_rule(std::string& out, const Settings& settings) {
  if (settings.rule) {
    out += *settings.rule == HandRule::right ? "right-hand rule" : "left-hand rule";
    out += origin(settings.rule_from);
  } else {
    out += "no right-hand or left-hand rule, so every strike and dip needs its side";
  }
}

bool has_wanted_north(const Settings& settings, reduction::North wanted) {
  return reduction::correction(settings, wanted).north == wanted;
}

void append_north(std::string& out, const Settings& settings, reduction::North wanted) {
  const reduction::North north = reduction::correction(settings, wanted).north;
  if (north != wanted) {
    out += north == reduction::North::geographic
               ? "NO POSITION IS KNOWN AT THE FIRST READING: BEARINGS REFER TO TRUE NORTH"
               : "NO DECLINATION IS KNOWN AT THE FIRST READING: BEARINGS STAY MAGNETIC";
    return;
  }
  out += "output refers to ";
  switch (north) {
    case reduction::North::geographic:
      out += "true north";
      break;
    case reduction::North::grid:
      out += "the north of the ";
      append_grid_name(out, *settings.site.grid);
      out += ", as asked";
      break;
    case reduction::North::magnetic:
      out += "magnetic north, as asked";
      break;
  }
}

bool varies_by_station(const Settings& settings, reduction::North wanted) {
  return reduction::correction(settings, wanted).north == reduction::North::grid ||
         (settings.from_model() && wanted != reduction::North::magnetic);
}

void append_what_is_added(std::string& out, double degrees, std::string_view north) {
  if (rounded(degrees, 2) == 0) {
    out += "nothing is added to the bearings";
  } else {
    append_trimmed(out, std::abs(degrees), 2);
    out += degrees > 0 ? " is added to every bearing" : " is subtracted from every bearing";
  }
  if (!north.empty()) fmt::format_to(std::back_inserter(out), " from {} north", north);
}

/// Where a position or height came from, in the log's own word.
static void append_origin(std::string& out, std::string_view origin) {
  if (origin.empty()) return;
  out += " (";
  append_printable(out, origin);
  out.push_back(')');
}

void append_position(std::string& out, const Page& page) {
  if (page.position) {
    append_coordinates(out, page.position->position);
    constexpr std::array<std::string_view, 3> ways = {" given", " from sights", " from legs"};
    out += ways[static_cast<std::size_t>(page.position_from)];
    append_origin(out, page.position_origin);
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
    append_origin(out, page.elevation_origin);
  }
}

void append_site(std::string& out, const Settings& settings, reduction::North wanted) {
  const reduction::Correction correction = reduction::correction(settings, wanted);
  std::string_view before;
  if (wanted != reduction::North::magnetic && settings.from_model()) {
    if (!settings.declination_known()) {
      out += "no declination, so bearings stay magnetic";
      return;
    }
    out += "declination ";
    append_declination_figure(out, settings);
    fmt::format_to(std::back_inserter(out), " ({})", earth::name_of(settings.site.field->model()));
    before = "; ";
  }
  if (correction.north == reduction::North::grid) {
    out += before;
    append_grid_name(out, *settings.site.grid);
    append_convergence(out, *settings.site.grid);
    if (const auto angle = settings.grid_magnetic_angle()) {
      out += ", grid-magnetic angle ";
      append_east_or_west(out, *angle, 2);
    }
  } else if (wanted == reduction::North::grid && correction.north == reduction::North::geographic) {
    out += before;
    out += "grid north is not known, so bearings refer to true north";
  }
  // Where the declination is all that is added it has been said.
  const bool is_sum = settings.set != Declination() || correction.north == reduction::North::grid;
  if (!varies_by_station(settings, wanted) || !is_sum) return;
  out += ", so ";
  append_what_is_added(out, correction.angle.degrees());
}

std::string advice_on_page(const notebook::Source& source, const reduction::Counts& counts) {
  if (!reduction::is_rough(counts)) return {};
  const std::string_view name = shown_name(source);
  std::string text = fmt::format(
      "{} of {} lines not understood; this makes a log of a page as people write it: "
      "lodebook fair-copy ",
      counts.not_understood, counts.lines());
  if (source.encoding() == notebook::Encoding::windows_1252) text += "--encoding windows-1252 ";
  append_printable(text, name == "<stdin>" ? "-" : shell_quoted(name));
  return text;
}

void append_counts(std::string& out, const reduction::Counts& counts) {
  if (counts.readings == 0) {
    out += "no readings";
    return;
  }
  const std::array<std::pair<std::size_t, std::string_view>, 3> parts = {
      {{counts.ok, "ok"}, {counts.suspect, "suspect"}, {counts.rejected, "rejected"}}};
  bool first = true;
  for (const auto& [count, word] : parts) {
    if (count == 0) continue;
    if (!first) out += ", ";
    first = false;
    append_figure(out, static_cast<std::int64_t>(count), 0);
    out.push_back(' ');
    out += word;
  }
}

void append_check(std::string& out, const Check& check, ShownIn shown_in) {
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
      append_mean(out, check, shown_in);
      break;
    case Check::What::line_in_plane:
      append_printable(out, check.kind->name);
      fmt::format_to(std::back_inserter(out), " {}° out of ", degrees);
      append_printable(out, check.plane_kind->name);
      out += limit;
      break;
    case Check::What::fore_and_back:
      fmt::format_to(std::back_inserter(out), "fore and back bearings {}° apart{}", degrees, limit);
      break;
  }
}

}  // namespace lodebook::output
