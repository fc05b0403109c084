// SPDX-License-Identifier: MIT
#include "report_pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <map>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using reduction::Check;
using reduction::Page;
using reduction::Settings;

/// One sigma of each reading's azimuth after `before`, kind by kind: `bedding ±1.9 1.8 1.8, sight
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
    bool marked = false;
    for (const reduction::Row& row : page.rows) {
      if (row.kind != kind || row.status == reduction::Status::rejected) continue;
      out.push_back(' ');
      if (!row.uncertainty) {
        out.push_back('-');
        continue;
      }
      if (!marked) out += "±";
      marked = true;
      append_figure_of(out, *row.uncertainty, 1);
    }
  }
}

/// Waits for what is asked at another reading, or at a void statement.
bool waits_untold(const Page& page, const reduction::Row& row) {
  return row.reading->waits_for &&
         std::ranges::find(page.diagnostics, row.reading->number, &notebook::Diagnostic::reading) ==
             page.diagnostics.end();
}

/// The rows that wait for what one diagnostic of the log asks for: `3 readings wait
/// [dip-side-missing]: lines 12, 13, 14`.
void append_waiting(std::string& out, const Page& page) {
  constexpr std::size_t most_lines = 12;
  std::map<notebook::Code, std::vector<std::uint32_t>> lines;
  for (const reduction::Row& row : page.rows) {
    if (waits_untold(page, row)) lines[*row.reading->waits_for].push_back(row.entry->line);
  }
  for (auto& [code, at] : lines) {
    const std::size_t count = at.size();
    at.erase(std::unique(at.begin(), at.end()), at.end());
    const std::size_t shown = std::min(at.size(), most_lines);
    fmt::format_to(std::back_inserter(out), "\n  {} {} [{}]: {} {}{}", count,
                   count == 1 ? "reading waits" : "readings wait", notebook::name_of(code),
                   at.size() == 1 ? "line" : "lines",
                   fmt::join(at.begin(), at.begin() + static_cast<std::ptrdiff_t>(shown), ", "),
                   shown < at.size() ? ", ..." : "");
  }
}

}  // namespace

void append_heading(std::string& out, const reduction::Reduction& reduction, bool color) {
  const Settings& settings = reduction.heading();
  const reduction::North wanted = reduction.options().north;
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
  append_compass(out, settings, wanted);
  out += "\n  ";
  append_rule(out, settings);
  std::string north;
  append_north(north, settings, wanted);
  if (reduction.notebook().reading_count == 0 && !has_wanted_north(settings, wanted)) {
    out += "; no readings yet";
  } else if (has_wanted_north(settings, wanted)) {
    out += "; ";
    out += north;
  } else {
    out += "\n  ";
    append_bold(out, north, color);
  }
  out.push_back('\n');
}

void append_station(std::string& out, const Page& page, reduction::North wanted, ShownIn shown_in,
                    bool color) {
  append_bold(out, page_name(page), color);
  out += ": ";
  if (page.is_station) {
    append_position(out, page);
    std::string site;
    append_site(site, page.settings, wanted);
    if (!site.empty()) {
      out += "; ";
      out += site;
    }
    out += "; ";
  }
  append_counts(out, page.counts);
  // One line for a clean station; where something is wrong, one for each thing.
  const bool waiting = std::ranges::any_of(
      page.rows, [&](const reduction::Row& row) { return waits_untold(page, row); });
  const bool clean = page.counts.errors == 0 && page.counts.warnings == 0 && !waiting;
  const std::string_view before = clean ? "; " : "\n  ";
  append_uncertainties(out, page, before);
  for (const Check& check : page.checks) {
    out += before;
    append_check(out, check, shown_in);
  }
  if (waiting) append_waiting(out, page);
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
