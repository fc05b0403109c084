// SPDX-License-Identifier: MIT
#include <algorithm>
#include <lodebook/output/report.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>

#include "json_pieces.hpp"
#include "row_json.hpp"

namespace lodebook::output {
namespace {

constexpr int version = 1;

/// The columns that the report repeats, by name.
void append_readings(Pen& out, const notebook::Source& source, const reduction::Page& page) {
  append_array(out, "readings", page.rows, [&](Pen& to, const reduction::Row& row) {
    to.push_back('{');
    for (const std::string_view name :
         {"kind", "source", "uncertainty", "status", "codes", "written"}) {
      if (name == "uncertainty") {
        append_number(to, name, row.uncertainty, 2);
      } else {
        append_json_cell_of(to, *std::ranges::find(columns(), name, &Column::name),
                            RowContext{source, page, row});
      }
    }
    to.back() = '}';
    to.push_back(',');
  });
}

}  // namespace

void JsonReport::begin(std::string& out) {
  out += "{\"format\":\"lodebook-report\",";
  append_member(out, "version", version);
  out += "\n\"logs\":[";
}

void JsonReport::begin_log(std::string& out, const reduction::Reduction& reduction) {
  Pen pen(out);
  pen += "\n{";
  wanted_ = reduction.options().north;
  append_member(pen, "file", notebook::valid_utf8(shown_name(reduction.notebook().source)));
  pen.push_back('\n');
  append_settings(pen, "heading", reduction.heading(), reduction.options().north);
  pen.push_back('\n');
}

void JsonReport::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  Pen pen(out);
  caution_ = caution_ || needs_caution(page);
  second_look_.add(source, page);
  if (page.is_station) {
    pen += first_station_ ? "\n{" : ",\n{";
    first_station_ = false;
    append_text(pen, "name", page.station);
    append_count(pen, "line", page.first_line);
    append_position(pen, "position", page.position, page.position_origin);
    append_settings(pen, "settings", page.settings, wanted_);
  }
  append_readings(pen, source, page);
  append_checks(pen, "checks", page.checks);
  append_array(pen, "diagnostics", page.diagnostics,
               [&source](Pen& to, const notebook::Diagnostic& diagnostic) {
                 append_object(to, source, diagnostic);
                 to.push_back(',');
               });
  if (page.is_station) {
    append_counts(pen, "counts", page.counts);
    pen.back() = '}';
  } else {
    pen += "\n\"stations\":[";
  }
}

void JsonReport::end_log(std::string& out, const reduction::Reduction& reduction) {
  Pen pen(out);
  pen += "],\n";
  append_counts(pen, "counts", reduction.counts());
  append_text(pen, "advice", advice_on_page(reduction.notebook().source, reduction.counts()));
  pen.back() = '}';
  counts_ = reduction.counts();
}

void JsonReport::add(const JsonReport& log) {
  caution_ = caution_ || log.caution_;
  second_look_.add(log.second_look_);
  counts_ += log.counts_;
}

void JsonReport::end(std::string& out) {
  Pen pen(out);
  Json worst = Json::array();
  for (const auto& [file, station, diagnostic] : second_look_.items()) {
    worst.push_back({{"file", notebook::valid_utf8(file)},
                     {"station", text_or_null(station)},
                     {"line", diagnostic.place.shown_line()},
                     {"column", diagnostic.place.column},
                     {"code", std::string(notebook::name_of(diagnostic.code))},
                     {"severity", std::string(notebook::name_of(diagnostic.severity))},
                     {"message", notebook::valid_utf8(diagnostic.message)}});
  }
  pen += "],\n";
  append_member(pen, "worst", worst);
  pen.push_back('\n');
  append_member(pen, "caution", caution_ ? Json(std::string(caution())) : Json());
  append_counts(pen, "counts", counts_);
  pen.back() = '}';
  pen.push_back('\n');
}

}  // namespace lodebook::output
