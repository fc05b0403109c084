// SPDX-License-Identifier: MIT
#include <lodebook/drawing/sheet.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <lodebook/drawing/net.hpp>
#include <lodebook/drawing/rose.hpp>
#include <lodebook/drawing/style.hpp>
#include <lodebook/drawing/svg.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/report.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

#include "parts.hpp"

namespace lodebook::drawing {
namespace {

constexpr int bin_degrees = 10;

constexpr std::string_view caution_of_scale =
    "The map is fitted to screen or paper: measure by its bar.";

constexpr std::string_view key_to_strikes =
    "its strike, with the dip to the right, the dip, and the side that goes down";
constexpr std::string_view key_to_directions =
    "its dip and the direction towards which it goes down";

std::string key_to_table(output::PlanesAs planes) {
  return fmt::format(
      "Angles are in degrees. A corrected plane is {}; a line is trend and plunge. ± is one sigma "
      "of that azimuth. The column Added is what was added to the azimuth as read; dips, plunges, "
      "slopes and distances are never corrected.",
      planes == output::PlanesAs::strike ? key_to_strikes : key_to_directions);
}

/// `Harrier Tops, west ridge, 2026-02-14`; the log's name where its heading says neither.
std::string title_of(const reduction::Reduction& reduction) {
  const reduction::Settings& heading = reduction.heading();
  std::string title(heading.area);
  if (heading.date) {
    if (!title.empty()) title += ", ";
    title += notebook::iso_date(*heading.date);
  }
  return title.empty() ? std::string(output::shown_name(reduction.notebook().source)) : title;
}

/// Whether there is anything to say of a page: the one before the first station is often empty.
bool says_something(const reduction::Page& page) {
  return page.is_station || !page.rows.empty() || !page.diagnostics.empty() || !page.items.empty();
}

void append_style(Markup& markup) {
  std::string sheet;
  append_style_sheet(sheet, Paper::light, svg_scope);
  sheet += "@media screen and (prefers-color-scheme:dark){\n";
  append_style_sheet(sheet, Paper::dark, svg_scope);
  sheet += "}";
  // What the page says of pictures stands behind what they say themselves.
  sheet += sheet_style;
  markup.open("style");
  markup.line_break();
  markup.verbatim(sheet);
  markup.close();
  markup.line_break();
}

void append_head(Markup& markup, std::string_view title) {
  markup.open("head");
  markup.line_break();
  markup.empty("meta", {{"charset", "utf-8"}});
  markup.line_break();
  markup.empty("meta", {{"http-equiv", "Content-Security-Policy"},
                        {"content", fmt::format("default-src 'none'; style-src 'unsafe-inline'; "
                                                "script-src 'sha256-{}'; base-uri 'none'; "
                                                "form-action 'none'",
                                                sheet_script_hash)}});
  markup.line_break();
  markup.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  markup.line_break();
  markup.element("title", title);
  markup.line_break();
  append_style(markup);
  markup.close();
  markup.line_break();
}

/// Its title is drawn, and a heading for those who do not see it. On a small screen, where the
/// picture's words are too small, what it says to others is shown below it.
void append_figure(Markup& markup, std::string_view name, const Picture& picture) {
  markup.open("figure", {{"id", picture.name()}, {"tabindex", "-1"}});
  markup.element("h3", {{"class", "unseen"}}, name);
  markup.line_break();
  markup.verbatim(made([&](std::string& out) { append_svg_element(out, picture); }));
  markup.element("figcaption", {{"aria-hidden", "true"}}, picture.description());
  markup.close();
  markup.line_break();
}

void append_link(Markup& markup, std::string_view to, std::string_view words) {
  markup.open("li");
  markup.element("a", {{"href", std::string("#").append(to)}}, words);
  markup.close();
}

/// `1 suspect, 2 lines not understood`
std::string faults_of(const reduction::Counts& counts) {
  std::string words;
  const auto add = [&](std::size_t count, std::string_view word) {
    if (count > 0) words += fmt::format("{}{} {}", words.empty() ? "" : ", ", count, word);
  };
  add(counts.suspect, "suspect");
  add(counts.rejected, "rejected");
  add(counts.not_understood, "not understood");
  return words;
}

/// `caution` as the sentence that it is.
std::string sentence(std::string_view caution) {
  std::string words(caution);
  if (words.front() >= 'a' && words.front() <= 'z') words.front() -= 'a' - 'A';
  return words + '.';
}

}  // namespace

Sheet::Sheet(const Map& map, output::PlanesAs planes) : planes_(planes) {
  if (!map.has_places()) {
    no_map_ = "no position is known";
    return;
  }
  if (const auto too_wide = map.too_wide()) {
    no_map_ = *too_wide;
    return;
  }
  map_ = map.picture(MapSize::fitted);
  not_on_map_ = map.remarks();
  for (const Picture::Item& item : map_->items()) {
    if (const auto* const reading = std::get_if<BeginReading>(&item))
      on_map_.insert(reading->source);
  }
}

void Sheet::begin_log(const reduction::Reduction& reduction) {
  reduction_ = &reduction;
  attitudes_.begin_log(reduction);
  title_ = title_of(reduction);
}

void Sheet::page(const notebook::Source& source, const reduction::Page& page) {
  attitudes_.add(page);
  second_look_.add(source, page);
  caution_ = caution_ || output::needs_caution(page);
  if (!says_something(page)) return;

  Markup stations(stations_);
  append_sheet_station(stations, source, page, *reduction_, on_map_, planes_);
  Markup contents(contents_);
  contents.open("li");
  contents.element("a", {{"href", '#' + id_of(page)}}, output::page_name(page));
  if (page.counts.suspect + page.counts.rejected + page.counts.not_understood > 0) {
    contents.text(" ");
    contents.element("small", faults_of(page.counts));
  }
  contents.close();
  contents.line_break();
}

void Sheet::end_log() {
  Markup heading(heading_);
  append_sheet_heading(heading, title_, *reduction_);
  Markup look(look_);
  if (second_look_.items().empty()) {
    look.element("p", "Nothing stands out for a second look.");
    return;
  }
  look.open("ol");
  for (const output::SecondLook::Item& item : second_look_.items()) {
    look.open("li");
    look.element(
        "a", {{"href", '#' + id_of(item.diagnostic)}},
        fmt::format("{}{}{}", item.station, item.station.empty() ? "" : ", ",
                    output::words_of_line(reduction_->notebook().source, item.diagnostic.place)));
    look.text(": " + item.diagnostic.message);
    append_typed_line(look, reduction_->notebook().source, item.diagnostic.place);
    look.close();
  }
  look.close();
  look.line_break();
}

void Sheet::append_html(std::string& out) const {
  Markup markup(out);
  out += "<!DOCTYPE html>\n";
  markup.open("html", {{"lang", "en"}});
  markup.line_break();
  append_head(markup, title_);
  markup.open("body");
  markup.line_break();
  markup.verbatim(heading_);
  append_contents(out);
  markup.open("main");
  markup.line_break();

  markup.open("div", {{"class", "log"}});
  markup.open("section", {{"id", "first"}});
  markup.element("h2", "Look here first");
  markup.line_break();
  markup.verbatim(look_);
  markup.close();
  markup.line_break();
  markup.open("section", {{"id", "stations"}});
  markup.element("h2", "Stations");
  markup.line_break();
  markup.element("p", {{"class", "key"}}, key_to_table(planes_));
  markup.line_break();
  markup.verbatim(stations_);
  markup.close();
  markup.line_break();
  append_cautions(out);
  markup.close();
  markup.line_break();

  append_pictures(out);
  markup.close();
  markup.line_break();
  markup.open("script");
  markup.verbatim(sheet_script);
  markup.close();
  markup.line_break();
  markup.close();
  markup.line_break();
  markup.close();
  markup.line_break();
}

void Sheet::append_contents(std::string& out) const {
  Markup markup(out);
  markup.open("nav", {{"aria-label", "Contents"}});
  markup.open("ul");
  append_link(markup, "first", "Look here first");
  append_link(markup, "pictures", "Pictures");
  if (has_cautions()) append_link(markup, "cautions", "Cautions");
  append_link(markup, "stations", "Stations:");
  markup.line_break();
  markup.verbatim(contents_);
  markup.close();
  markup.close();
  markup.line_break();
}

void Sheet::append_pictures(std::string& out) const {
  Markup markup(out);
  markup.open("section", {{"id", "pictures"}});
  markup.element("h2", "Pictures");
  markup.line_break();
  const auto summaries = reduction::summarise(attitudes_, {}, {});
  const bool has_members = std::ranges::any_of(
      summaries, [](const reduction::Summary& summary) { return !summary.group.members.empty(); });
  if (!has_members)
    markup.element("p", "There is no net and no rose: no plane and no line was read.");
  if (!map_) markup.element("p", fmt::format("There is no map: {}.", no_map_));
  if (has_members) {
    const output::SummaryDocument document{attitudes_, summaries, {}, {}, reduction::Repeats::each,
                                           planes_};
    append_figure(markup, "Net", net_picture(document, {}));
    append_figure(markup, "Roses", rose_picture(document, bin_degrees));
  }
  if (map_) append_figure(markup, "Map", *map_);
  markup.close();
  markup.line_break();
}

void Sheet::append_cautions(std::string& out) const {
  if (!has_cautions()) return;
  Markup markup(out);
  markup.open("section", {{"id", "cautions"}});
  markup.element("h2", "Cautions");
  if (caution_) markup.element("p", sentence(output::caution()));
  if (map_) markup.element("p", caution_of_scale);
  for (const std::string& remark : not_on_map_)
    markup.element("p", "Not on the map: " + remark + '.');
  markup.close();
  markup.line_break();
}

}  // namespace lodebook::drawing
