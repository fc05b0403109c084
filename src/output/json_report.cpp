// SPDX-License-Identifier: MIT
#include <lodebook/output/report.hpp>
#include <lodebook/output/table.hpp>

#include "json_pieces.hpp"

namespace lodebook::output {
namespace {

constexpr int version = 1;

/// The columns that the report repeats, by name.
Json readings_json(const notebook::Source& source, const reduction::Page& page) {
  Json array = Json::array();
  for (const reduction::Row& row : page.rows) {
    Json reading;
    for (const std::string_view name :
         {"kind", "source", "uncertainty", "status", "codes", "written"}) {
      std::string text;
      for (const Column& column : columns()) {
        if (column.name == name) column.append(text, {source, page, row});
      }
      reading[std::string(name)] =
          name == "uncertainty" ? figure(row.uncertainty, 2) : text_or_null(text);
    }
    array.push_back(std::move(reading));
  }
  return array;
}

}  // namespace

void JsonReport::begin(std::string& out) {
  out += "{\"format\":\"lodebook-report\",";
  append_member(out, "version", version);
  out += "\n\"logs\":[";
}

void JsonReport::begin_log(std::string& out, const reduction::Reduction& reduction) {
  out += "\n{";
  wanted_ = reduction.options().north;
  append_member(out, "file", notebook::valid_utf8(shown_name(reduction.notebook().source)));
  out.push_back('\n');
  append_settings(out, "heading", reduction.heading(), reduction.options().north);
  out.push_back('\n');
}

void JsonReport::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  caution_ = caution_ || needs_caution(page);
  second_look_.add(source, page);
  if (page.is_station) {
    out += first_station_ ? "\n{" : ",\n{";
    first_station_ = false;
    append_text(out, "name", page.station);
    append_count(out, "line", page.first_line);
    append_position(out, "position", page.position);
    append_settings(out, "settings", page.settings, wanted_);
  }
  append_member(out, "readings", readings_json(source, page));
  append_checks(out, "checks", page.checks);
  Json diagnostics = Json::array();
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    diagnostics.push_back(json_of(diagnostic));
  }
  append_member(out, "diagnostics", diagnostics);
  if (page.is_station) {
    append_counts(out, "counts", page.counts);
    out.back() = '}';
  } else {
    out += "\n\"stations\":[";
  }
}

void JsonReport::end_log(std::string& out, const reduction::Reduction& reduction) {
  out += "],\n";
  append_counts(out, "counts", reduction.counts());
  out.back() = '}';
  counts_ = reduction.counts();
}

void JsonReport::add(const JsonReport& log) {
  caution_ = caution_ || log.caution_;
  second_look_.add(log.second_look_);
  counts_ += log.counts_;
}

void JsonReport::end(std::string& out) {
  Json worst = Json::array();
  for (const auto& [file, station, diagnostic] : second_look_.items()) {
    worst.push_back({{"file", notebook::valid_utf8(file)},
                     {"station", text_or_null(station)},
                     {"line", diagnostic.place.line},
                     {"column", diagnostic.place.column},
                     {"code", std::string(notebook::name_of(diagnostic.code))},
                     {"severity", std::string(notebook::name_of(diagnostic.severity))},
                     {"message", notebook::valid_utf8(diagnostic.message)}});
  }
  out += "],\n";
  append_member(out, "worst", worst);
  out.push_back('\n');
  append_member(out, "caution", caution_ ? Json(std::string(caution())) : Json());
  append_counts(out, "counts", counts_);
  out.back() = '}';
  out.push_back('\n');
}

}  // namespace lodebook::output
