// SPDX-License-Identifier: MIT
// The reduction's document: large arrays a reading a line, small structures whole.
#include <lodebook/output/json.hpp>
#include <lodebook/output/table.hpp>

#include "json_pieces.hpp"
#include "row_json.hpp"

namespace lodebook::output {
namespace {

constexpr int version = 1;

void append_readings(std::string& out, Columns columns, const notebook::Source& source,
                     const reduction::Page& page) {
  out += "\"readings\":[";
  bool first = true;
  for (const reduction::Row& row : page.rows) {
    out += first ? "\n" : ",\n";
    first = false;
    append_row_object(out, columns, RowContext{source, page, row});
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

Json samples_json(const reduction::Page& page) {
  Json array = Json::array();
  for (const auto& [name, text] : page.samples) {
    array.push_back({{"name", notebook::valid_utf8(name)}, {"text", text_or_null(text)}});
  }
  return array;
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
  append_member(out, "settings", json_of(reduction.heading(), north_));
  out.push_back('\n');
  append_member(out, "landmarks", landmarks_json(reduction.landmarks()));
  out.push_back('\n');
}

void JsonWriter::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  if (page.is_station) {
    out += first_station_ ? "\n{" : ",\n{";
    first_station_ = false;
    append_member(out, "name", text_or_null(page.station));
    append_member(out, "line", page.first_line);
    append_member(out, "position", json_of(page.position));
    append_member(out, "elevation_m", figure(page.elevation_m, 1));
    append_member(out, "time", json_of(page.time));
    out.push_back('\n');
    append_member(out, "settings", json_of(page.settings, north_));
    out.push_back('\n');
  }
  append_member(out, "samples", samples_json(page));
  append_member(out, "photos", texts(page.photos));
  append_member(out, "notes", texts(page.notes));
  out.push_back('\n');
  append_readings(out, columns_, source, page);
  append_member(out, "checks", json_of(page.checks));
  out.push_back('\n');
  if (page.is_station) {
    append_member(out, "counts", json_of(page.counts));
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
    comments_ += comment.dump();
  }
}

void JsonWriter::end_log(std::string& out, const reduction::Reduction& reduction) {
  out += "],\n";
  out += "\"comments\":[";
  out += comments_;
  out += "],\n\"diagnostics\":[";
  out += diagnostics_;
  out += "],\n";
  append_member(out, "counts", json_of(reduction.counts()));
  out.back() = '}';
  counts_ = reduction.counts();
}

void JsonWriter::end(std::string& out) {
  out += "],\n";
  append_member(out, "counts", json_of(counts_));
  out.back() = '}';
  out.push_back('\n');
}

}  // namespace lodebook::output
