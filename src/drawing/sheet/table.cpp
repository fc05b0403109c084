// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <lodebook/notebook/catalogue.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>
#include <map>

#include "../reading_words.hpp"
#include "parts.hpp"

namespace lodebook::drawing {
namespace {

using notebook::Notation;
using reduction::North;
using reduction::Row;
using reduction::Status;

// Roles are said because a stacked table on a narrow screen loses them otherwise.
constexpr std::array<std::string_view, 7> headings = {"Line",  "Kind",  "As typed", "Corrected",
                                                      "± 1 σ", "Added", "Status"};

/// What was measured beside a bearing, in degrees and metres: `back 215.9, 335.0 m, slope 7.0°`.
std::string beside_bearing(const Row& row) {
  if (!row.bearing) return {};
  const bool is_leg = row.kind->type == notebook::Kind::Type::leg;
  std::string out;
  const auto add = [&](std::string_view words) {
    if (!out.empty()) out += ", ";
    out += words;
  };
  if (is_leg && row.back_bearing) add("back " + output::azimuth_text(*row.back_bearing));
  if (row.distance_m) add(output::figure_text(*row.distance_m, 1) + " m");
  if (row.vertical_angle) {
    add(is_leg ? "slope " : "vertical ");
    out += output::figure_text(*row.vertical_angle, 1) + "°";
  }
  return out;
}

/// `+24.90`, with a minus as wide as the plus.
std::string signed_figure(double value) {
  const std::string figure = output::figure_text(value, 2);
  return figure.starts_with('-') ? "\u2212" + figure.substr(1) : '+' + figure;
}

/// The north of the page's first azimuth; its caption names it.
std::optional<North> first_north(const reduction::Page& page) {
  const auto first =
      std::ranges::find_if(page.rows, [](const Row& row) { return row.correction.has_value(); });
  if (first == page.rows.end()) return std::nullopt;
  return first->north;
}

std::string from_north(North north) {
  return fmt::format("from {} north", reduction::name_of(north));
}

class TableWriter {
 public:
  TableWriter(Markup& markup, const notebook::Source& source, const reduction::Page& page,
              const std::unordered_set<std::string>& on_map, output::PlanesAs planes)
      : markup_(markup),
        source_(source),
        page_(page),
        on_map_(on_map),
        planes_(planes),
        north_(first_north(page)) {
    for (const notebook::Diagnostic& diagnostic : page.diagnostics)
      faults_.try_emplace({diagnostic.reading, diagnostic.code}, &diagnostic);
  }

  void write() {
    markup_.open("table", {{"role", "table"}});
    write_caption();
    markup_.open("thead", {{"role", "rowgroup"}});
    markup_.open("tr", {{"role", "row"}});
    for (const std::string_view heading : headings)
      markup_.element("th", {{"scope", "col"}, {"role", "columnheader"}}, heading);
    markup_.close();
    markup_.close();
    markup_.line_break();
    markup_.open("tbody", {{"role", "rowgroup"}});
    markup_.line_break();
    for (const Row& row : page_.rows) {
      write_row(row);
      markup_.line_break();
    }
    markup_.close();
    markup_.close();
    markup_.line_break();
  }

 private:
  void write_caption() {
    std::string caption = "Readings: ";
    output::append_counts(caption, page_.counts);
    if (north_) caption += "; azimuths " + from_north(*north_);
    markup_.element("caption", caption);
    markup_.line_break();
  }

  void write_row(const Row& row) {
    const std::string source = output::source_of({source_, page_, row});
    markup_.open(
        "tr",
        {{"class", reduction::name_of(row.status)}, {"data-source", source}, {"role", "row"}});
    markup_.element("th", {{"scope", "row"}, {"role", "rowheader"}},
                    std::to_string(row.entry->line));
    cell(row.kind->name);
    write_typed(row, source);
    write_corrected(row);
    cell(row.uncertainty ? "±" + output::figure_text(*row.uncertainty, 1) : "");
    cell(row.correction ? signed_figure(*row.correction) : "");
    write_status(row);
    markup_.close();
  }

  void cell(std::string_view words) { markup_.element("td", {{"role", "cell"}}, words); }

  /// A link to the first picture that shows it, so that the row can be reached and marked by key.
  void write_typed(const Row& row, const std::string& source) {
    markup_.open("td", {{"role", "cell"}});
    const bool on_net = row.status != Status::rejected && row.part == notebook::Part::whole &&
                        (row.dip || row.plunge);
    if (on_net || on_map_.contains(source)) {
      markup_.element("a", {{"href", on_net ? "#net" : "#map"}}, row.written);
    } else {
      markup_.element("span", row.written);
    }
    // Repeats share theirs.
    if (row.reading->first && !row.remark.empty()) markup_.element("i", row.remark);
    markup_.close();
  }

  void write_corrected(const Row& row) {
    const std::string azimuth = corrected_words(row, {Notation::azimuth, planes_});
    const std::string quadrant = corrected_words(row, {Notation::quadrant, planes_});
    markup_.open("td", {{"role", "cell"}});
    if (azimuth.empty()) {
      markup_.element("i", "none");
    } else {
      markup_.element("b", azimuth);
      if (quadrant != azimuth) markup_.element("span", quadrant);
    }
    const std::string beside = beside_bearing(row);
    if (!beside.empty()) markup_.element("span", beside);
    if (row.correction && row.north != north_) markup_.element("strong", from_north(row.north));
    markup_.close();
  }

  void write_status(const Row& row) {
    markup_.open("td", {{"role", "cell"}});
    markup_.element("b", reduction::name_of(row.status));
    for (const notebook::Code code : row.codes) {
      const std::string_view title = notebook::catalogue()[static_cast<std::size_t>(code)].title;
      const auto fault = faults_.find({row.reading->number, code});
      if (fault == faults_.end()) {
        markup_.element("span", title);
      } else {
        markup_.element("a", {{"href", '#' + id_of(*fault->second)}}, title);
      }
    }
    markup_.close();
  }

  Markup& markup_;
  const notebook::Source& source_;
  const reduction::Page& page_;
  const std::unordered_set<std::string>& on_map_;
  output::PlanesAs planes_;
  std::optional<North> north_;
  /// The first of each reading and code.
  std::map<std::pair<std::uint32_t, notebook::Code>, const notebook::Diagnostic*> faults_;
};

}  // namespace

void append_sheet_table(Markup& markup, const notebook::Source& source, const reduction::Page& page,
                        const std::unordered_set<std::string>& on_map, output::PlanesAs planes) {
  TableWriter(markup, source, page, on_map, planes).write();
}

}  // namespace lodebook::drawing
