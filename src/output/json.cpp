// SPDX-License-Identifier: MIT
// The reduction's document: large arrays a reading a line, small structures whole.
#include <lodebook/output/json.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

#include "json_pieces.hpp"
#include "page_rows.hpp"
#include "row_json.hpp"

namespace lodebook::output {
namespace {

constexpr int version = 1;

void append_readings(std::string& out, Columns columns, const notebook::Source& source,
                     const reduction::Page& page) {
  out += "\"readings\":[";
  PageRows rows(columns);
  bool first = true;
  for (const reduction::Row& row : page.rows) {
    out += first ? "\n" : ",\n";
    first = false;
    out.push_back('{');
    rows.append(out, {source, page, row}, append_json_cell_of<Column, RowContext>);
    out.back() = '}';
  }
  out += "],\n";
}

Json landmarks_json(const std::vector<reduction::LandmarkRow>& landmarks) {
  Json array = Json::array();
  for (const reduction::LandmarkRow& landmark : landmarks) {
    array.push_back({{"name", notebook::valid_utf8(landmark.name)},
                     {"position", json_of(landmark.position)},
                     {"elevation_m", figure(landmark.elevation_m, 1)}});
  }
  return array;
}

void append_samples(std::string& out, const std::vector<reduction::Page::Named>& samples) {
  append_array(out, "samples", samples, [](std::string& to, const reduction::Page::Named& sample) {
    to += "{\"name\":";
    append_json_string(to, sample.name);
    to.push_back(',');
    append_text(to, "text", sample.text);
    to.back() = '}';
    to.push_back(',');
  });
}

void append_texts(std::string& out, std::string_view name,
                  const std::vector<std::string_view>& texts) {
  append_array(out, name, texts, [](std::string& to, std::string_view text) {
    append_json_string(to, text);
    to.push_back(',');
  });
}

}  // namespace

void JsonWriter::begin(std::string& out) {
  out += "{\"format\":\"lodebook-reduction\",";
  append_member(out, "version", version);
  append_member(out, "north", std::string(reduction::name_of(north_)));
  out += "\n\"logs\":[";
}

void JsonWriter::begin_log(std::string& out, const reduction::Reduction& reduction) {
  out += "\n{";
  append_member(out, "file", notebook::valid_utf8(shown_name(reduction.notebook().source)));
  out.push_back('\n');
  append_settings(out, "settings", reduction.heading(), north_);
  out.push_back('\n');
  append_member(out, "landmarks", landmarks_json(reduction.landmarks()));
  out.push_back('\n');
}

void JsonWriter::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  if (page.is_station) {
    out += first_station_ ? "\n{" : ",\n{";
    first_station_ = false;
    append_text(out, "name", page.station);
    append_count(out, "line", page.first_line);
    append_position(out, "position", page.position);
    append_number(out, "elevation_m", page.elevation_m, 1);
    append_time(out, "time", page.time);
    out.push_back('\n');
    append_settings(out, "settings", page.settings, north_);
    out.push_back('\n');
  }
  append_samples(out, page.samples);
  append_texts(out, "photos", page.photos);
  append_texts(out, "notes", page.notes);
  out.push_back('\n');
  append_readings(out, columns_, source, page);
  append_checks(out, "checks", page.checks);
  out.push_back('\n');
  if (page.is_station) {
    append_counts(out, "counts", page.counts);
    out.back() = '}';
  } else {
    out += "\"stations\":[";
  }
  take_comments(source, *page.block);
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    diagnostics_ += diagnostics_.empty() ? "\n" : ",\n";
    append_json(diagnostics_, json_of(diagnostic));
  }
}

/// Repeats of one line share its comment, which is given once.
void JsonWriter::take_comments(const notebook::Source& source, const notebook::Block& block) {
  std::uint32_t line = 0;
  for (const notebook::Entry& entry : block.entries) {
    if (entry.comment.empty() || entry.line == line) continue;
    line = entry.line;
    const Json comment = {{"line", line},
                          {"text", notebook::valid_utf8(source.text(entry.comment))}};
    if (!comments_.empty()) comments_.push_back(',');
    append_json(comments_, comment);
  }
}

void JsonWriter::end_log(std::string& out, const reduction::Reduction& reduction) {
  out += "],\n";
  out += "\"comments\":[";
  out += comments_;
  out += "],\n\"diagnostics\":[";
  out += diagnostics_;
  out += "],\n";
  append_counts(out, "counts", reduction.counts());
  out.back() = '}';
  counts_ = reduction.counts();
}

void JsonWriter::end(std::string& out) {
  out += "],\n";
  append_counts(out, "counts", counts_);
  out.back() = '}';
  out.push_back('\n');
}

}  // namespace lodebook::output
