// SPDX-License-Identifier: MIT
#include "report_pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <map>
#include <span>
#include <unordered_map>
#include <unordered_set>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using reduction::Check;
using reduction::Page;
using reduction::Settings;

/// One sigma of each reading's azimuth after `before`, kind by kind: `bedding ±1.9 1.8 1.8, sight
/// ±0.6`. A level plane or an upright line has no azimuth: `-`.
void append_uncertainties(std::string& out, const Page& page, std::string_view before) {
  std::vector<std::vector<const reduction::Row*>> kinds;
  std::unordered_map<const notebook::Kind*, std::size_t> place_of;
  for (const reduction::Row& row : page.rows) {
    if (row.status == reduction::Status::rejected) continue;
    const std::size_t place = place_of.try_emplace(row.kind, kinds.size()).first->second;
    if (place == kinds.size()) kinds.emplace_back();
    kinds[place].push_back(&row);
  }
  for (const auto& rows : kinds) {
    out += &rows == &kinds.front() ? before : ", ";
    append_printable(out, rows.front()->kind->name);
    bool marked = false;
    for (const reduction::Row* const row : rows) {
      out.push_back(' ');
      if (!row->uncertainty) {
        out.push_back('-');
        continue;
      }
      if (!marked) out += "±";
      marked = true;
      append_figure_of(out, *row->uncertainty, 1);
    }
  }
}

/// Rows that wait for what is asked at another reading, or at a void statement. An open question is
/// asked in its own line, for all readings there.
std::vector<const reduction::Row*> rows_that_wait_untold(const Page& page) {
  std::unordered_set<std::uint32_t> told;
  for (const notebook::Diagnostic& diagnostic : page.diagnostics)
    told.insert(diagnostic.reading);
  std::vector<const reduction::Row*> waiting;
  for (const reduction::Row& row : page.rows) {
    const auto& code = row.reading->waits_for;
    if (code && code != notebook::Code::unanswered && !told.contains(row.reading->number))
      waiting.push_back(&row);
  }
  return waiting;
}

/// The rows that wait for what one diagnostic of the log asks for: `3 readings wait
/// [dip-side-missing]: lines 12, 13, 14`.
void append_waiting(std::string& out, std::span<const reduction::Row* const> waiting) {
  constexpr std::size_t most_lines = 12;
  std::map<notebook::Code, std::vector<std::uint32_t>> lines;
  for (const reduction::Row* const row : waiting)
    lines[*row->reading->waits_for].push_back(row->entry->line);
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
  const auto waiting = rows_that_wait_untold(page);
  const bool clean = page.counts.errors == 0 && page.counts.warnings == 0 && waiting.empty();
  const std::string_view before = clean ? "; " : "\n  ";
  append_uncertainties(out, page, before);
  for (const Check& check : page.checks) {
    out += before;
    append_check(out, check, shown_in);
  }
  append_waiting(out, waiting);
  out.push_back('\n');
}

void append_notes(std::string& out, const std::vector<notebook::Diagnostic>& diagnostics) {
  std::string_view before = "  notes: ";
  for (const notebook::Diagnostic& diagnostic : diagnostics) {
    if (diagnostic.severity != notebook::Severity::note) continue;
    fmt::format_to(std::back_inserter(out), "{}{}line {} {}", before,
                   diagnostic.place.heading == 0 ? "" : "heading ", diagnostic.place.shown_line(),
                   notebook::name_of(diagnostic.code));
    before = ", ";
  }
  if (before == ", ") out.push_back('\n');
}

}  // namespace lodebook::output
