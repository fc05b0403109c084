// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/report.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>

#include <lodebook/output/text.hpp>
#include "report_pieces.hpp"

namespace lodebook::output {
namespace {

using notebook::Severity;

}  // namespace

std::string_view caution() {
  return "positions, slopes and bearings here are no substitute for local knowledge or licensed "
         "survey practice";
}

bool needs_caution(const reduction::Page& page) {
  return page.position || std::ranges::any_of(page.rows, [](const reduction::Row& row) {
           return row.vertical_angle ||
                  (row.bearing && row.kind->type == notebook::Kind::Type::leg);
         });
}

void append_totals(std::string& out, const reduction::Counts& counts) {
  fmt::format_to(std::back_inserter(out),
                 "{}: {} ok, {} suspect, {} rejected; {}; {} not understood",
                 counted(counts.readings, "reading", "readings"), counts.ok, counts.suspect,
                 counts.rejected, counted(counts.stations, "station", "stations"),
                 counted(counts.not_understood, "line", "lines"));
}

void StationReport::begin_log(std::string& out, const reduction::Reduction& reduction) {
  append_heading(out, reduction, color_);
  out.push_back('\n');
  spaced_ = true;
  const reduction::Settings& heading = reduction.heading();
  wanted_ = reduction.options().north;
  stated_ = {};
  state_correction(heading);
  notation_ = heading.dial == notebook::Notation::quadrant ? notebook::Notation::quadrant
                                                           : notebook::Notation::azimuth;
}

void StationReport::state_correction(const reduction::Settings& settings) {
  const auto correction = reduction::correction(settings, wanted_);
  stated_.front() = {rounded(correction.angle.degrees(), 2), correction.north};
}

/// Says what is added from a row on, where that is not said already.
void StationReport::state_correction(std::string& out, const reduction::Row& row) {
  if (!row.correction) return;
  const bool on_dial = row.read_from == notebook::OwnNorth::none;
  const std::string_view from = notebook::word_of(row.read_from);
  if (from == reduction::name_of(row.north)) return;
  auto& stated = stated_[static_cast<std::size_t>(row.read_from)];
  const Stated now{rounded(*row.correction, 2), row.north};
  // What the grid's north adds follows the place, a little from station to station.
  constexpr std::int64_t told = 50;
  const bool is_near = stated && stated->north == now.north &&
                       std::abs(stated->correction - now.correction) < (on_dial ? 1 : told);
  if (is_near) return;
  stated = now;
  fmt::format_to(std::back_inserter(out), "  from line {} on, ", row.entry->line);
  append_what_is_added(out, *row.correction, from);
  fmt::format_to(std::back_inserter(out), "; output refers to {} north\n",
                 reduction::name_of(row.north));
}

void StationReport::page(std::string& out, const notebook::Source& source,
                         const reduction::Page& page) {
  caution_ = caution_ || needs_caution(page);
  second_look_.add(source, page);
  if (!page.is_station && page.rows.empty() && page.diagnostics.empty()) return;

  if (page.is_station || !page.rows.empty())
    append_station(out, page, wanted_, {notation_, planes_}, color_);
  if (page.is_station && varies_by_station(page.settings, wanted_)) state_correction(page.settings);
  spaced_ = false;
  for (const reduction::Row& row : page.rows)
    state_correction(out, row);
  append_notes(out, page.diagnostics);
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    if (diagnostic.severity == Severity::note) continue;
    append_diagnostic(out, source, diagnostic, color_);
    spaced_ = true;
  }
  if (spaced_) out.push_back('\n');
}

void StationReport::end_log(std::string& out, const reduction::Reduction& reduction) {
  if (!spaced_) out.push_back('\n');
  const notebook::Source& source = reduction.notebook().source;
  const reduction::Counts& counts = reduction.counts();
  logs_.push_back({std::string(shown_name(source)), counts, advice_on_page(source, counts)});
}

void StationReport::add(const StationReport& log) {
  caution_ = caution_ || log.caution_;
  second_look_.add(log.second_look_);
  logs_.insert(logs_.end(), log.logs_.begin(), log.logs_.end());
}

void StationReport::end(std::string& out) {
  if (second_look_.items().empty()) {
    out += "nothing stands out for a second look\n";
  } else {
    out += "worth a second look:\n";
  }
  for (const auto& [file, station, diagnostic] : second_look_.items()) {
    out += "  ";
    append_printable(out, file);
    fmt::format_to(std::back_inserter(out), ":{}:{}: ", diagnostic.place.shown_line(),
                   diagnostic.place.column);
    if (!station.empty()) {
      out += "station ";
      append_printable(out, station);
      out += ": ";
    }
    append_printable(out, diagnostic.message);
    fmt::format_to(std::back_inserter(out), " [{}]\n", notebook::name_of(diagnostic.code));
  }
  if (caution_) {
    out += caution();
    out.push_back('\n');
  }
  out.push_back('\n');
  reduction::Counts all;
  for (const LogTotals& log : logs_) {
    all += log.counts;
    if (logs_.size() == 1) continue;
    append_printable(out, log.name);
    out += ": ";
    append_totals(out, log.counts);
    out.push_back('\n');
  }
  append_totals(out, all);
  out.push_back('\n');
  for (const LogTotals& log : logs_) {
    if (log.advice.empty()) continue;
    out += log.advice;
    out.push_back('\n');
  }
}

void LineReport::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  for (const notebook::Diagnostic& diagnostic : page.diagnostics)
    append_diagnostic_line(out, source, diagnostic);
}

}  // namespace lodebook::output
