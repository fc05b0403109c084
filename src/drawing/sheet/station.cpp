// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/text.hpp>

#include "parts.hpp"

namespace lodebook::drawing {
namespace {

using notebook::Diagnostic;
using reduction::Page;
using reduction::Row;
using reduction::Settings;

/// A value at a station and where it changes: `grey schist; from line 45 serpentinite`. `of`
/// says what it is at a row, `at_first` what it is without rows.
template <class Of>
std::string changes(const Page& page, std::string at_first, Of of) {
  if (page.rows.empty()) return at_first;
  std::string before = of(page.rows.front());
  std::string words = before;
  for (const Row& row : page.rows) {
    std::string now = of(row);
    if (now == before) continue;
    if (!words.empty()) words += "; ";
    words += fmt::format("from line {} {}", row.entry->line, now.empty() ? "none" : now);
    before = std::move(now);
  }
  return words;
}

std::string date_words(const std::optional<notebook::Date>& date) {
  return date ? notebook::iso_date(*date) : std::string();
}

void append_items(Markup& markup, const Page& page) {
  constexpr std::array<std::string_view, 3> terms = {"Sample", "Photo", "Note"};
  for (std::size_t what = 0; what < terms.size(); ++what) {
    for (const reduction::Item& item : page.items) {
      if (item.what != static_cast<reduction::Item::What>(what)) continue;
      std::string text(item.name);
      if (!text.empty()) text += ' ';
      append_fact(markup, terms[what], text.append(item.text));
    }
  }
}

void append_facts(Markup& markup, const Page& page, const reduction::Reduction& reduction) {
  const Settings& heading = reduction.heading();
  const Settings& here = page.settings;
  markup.open("dl", {{"class", "facts"}});
  if (page.is_station) {
    append_fact(markup, "Position",
                made([&](std::string& out) { output::append_position(out, page); }));
    append_fact(markup, "Correction", made([&](std::string& out) {
                  output::append_site(out, here, reduction.options().north);
                }));
  }
  // Those of the heading are not said again.
  const std::string date =
      changes(page, date_words(here.date), [](const Row& row) { return date_words(row.date); });
  if (date != date_words(heading.date)) append_fact(markup, "Date", date);
  if (page.time) append_fact(markup, "Time", output::clock_text(*page.time));
  const std::string observer = changes(page, std::string(here.observer),
                                       [](const Row& row) { return std::string(row.observer); });
  if (observer != heading.observer) append_fact(markup, "Observer", observer);
  append_fact(markup, "Unit",
              changes(page, "", [](const Row& row) { return std::string(row.unit); }));
  append_items(markup, page);
  markup.close();
  markup.line_break();
}

/// One below the other, those that failed in bold; their limit says so in words.
void append_checks(Markup& markup, const Page& page, output::ShownIn shown_in) {
  if (page.checks.empty()) return;
  markup.element("h4", "Checked");
  markup.open("ul", {{"class", "checks"}});
  for (const reduction::Check& check : page.checks) {
    markup.open("li");
    const std::string words =
        made([&](std::string& out) { output::append_check(out, check, shown_in); });
    markup.element(check.passed ? "span" : "strong", words);
    markup.close();
  }
  markup.close();
  markup.line_break();
}

void append_fault(Markup& markup, const notebook::Source& source, const Diagnostic& fault,
                  std::string_view id) {
  const std::string_view severity = notebook::name_of(fault.severity);
  if (id.empty()) {
    markup.open("li", {{"class", severity}});
  } else {
    markup.open("li", {{"class", severity}, {"id", id}});
  }
  markup.open("p");
  markup.element("strong",
                 fmt::format("{}, {}:", severity, output::words_of_line(source, fault.place)));
  markup.text(' ' + fault.message + ' ');
  markup.element("span", {{"class", "code"}}, fmt::format("[{}]", notebook::name_of(fault.code)));
  markup.close();
  append_typed_line(markup, source, fault.place);
  for (const notebook::Related& related : fault.related) {
    markup.open("p");
    markup.text(
        fmt::format("{}: {}", output::words_of_line(source, related.place), related.message));
    markup.close();
    append_typed_line(markup, source, related.place);
  }
  if (!fault.help.empty()) {
    markup.open("p", {{"class", "help"}});
    markup.text(fault.help);
    markup.close();
  }
  markup.close();
  markup.line_break();
}

void append_faults(Markup& markup, const notebook::Source& source, const Page& page) {
  if (page.diagnostics.empty()) return;
  markup.element("h4", "Look again");
  markup.open("ul", {{"class", "faults"}});
  markup.line_break();
  std::unordered_set<std::string> ids;
  for (const Diagnostic& fault : page.diagnostics) {
    const auto [id, is_new] = ids.insert(id_of(fault));
    append_fault(markup, source, fault, is_new ? std::string_view(*id) : "");
  }
  markup.close();
  markup.line_break();
}

}  // namespace

std::string id_of(const Page& page) {
  return fmt::format("station-{}", page.first_line);
}

std::string id_of(const Diagnostic& diagnostic) {
  const notebook::Place& place = diagnostic.place;
  const std::string heading = place.heading == 0 ? "" : fmt::format("heading-{}-", place.heading);
  return fmt::format("fault-{}{}-{}-{}", heading, place.shown_line(), place.column,
                     notebook::name_of(diagnostic.code));
}

void append_fact(Markup& markup, std::string_view name, std::string_view words) {
  if (words.empty()) return;
  markup.open("div");
  markup.element("dt", name);
  markup.element("dd", words);
  markup.close();
}

void append_typed_line(Markup& markup, const notebook::Source& source,
                       const notebook::Place& place) {
  if (!output::has_line(source, place)) return;
  const output::Excerpt shown = output::excerpt(source.text(source.line_of(place)), place);
  markup.open("code");
  if (shown.is_cut_before) markup.text("…");
  markup.text(shown.before);
  // Something is missing at the end of the line.
  markup.element("mark", shown.fault.empty() ? " " : shown.fault);
  markup.text(shown.after);
  if (shown.is_cut_after) markup.text("…");
  markup.close();
}

void append_sheet_station(Markup& markup, const notebook::Source& source, const Page& page,
                          const reduction::Reduction& reduction,
                          const std::unordered_set<std::string>& on_map, output::PlanesAs planes) {
  const notebook::Notation notation =
      reduction.heading().dial.value_or(notebook::Notation::azimuth);
  markup.open("section", {{"class", "station"}, {"id", id_of(page)}});
  markup.line_break();
  markup.element("h3", output::page_name(page));
  markup.line_break();
  append_facts(markup, page, reduction);
  if (!page.rows.empty()) {
    append_sheet_table(markup, source, page, on_map, planes);
  } else if (page.is_station) {
    markup.element("p", "No readings.");
  }
  append_checks(markup, page, {notation, planes});
  append_faults(markup, source, page);
  markup.close();
  markup.line_break();
}

}  // namespace lodebook::drawing
