// SPDX-License-Identifier: MIT
// The reduction's document: large arrays a reading a line, small structures whole.
#include <lodebook/notebook/attributes.hpp>
#include <lodebook/output/json.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

#include "json_pieces.hpp"
#include "page_rows.hpp"
#include "row_json.hpp"

namespace lodebook::output {
namespace {

constexpr int version = 1;

/// What a remark says by key and value, as an object; empty where it says nothing so.
void append_attributes(Pen& out, std::string_view remark) {
  out += "\"attributes\":{";
  std::string_view before;
  for (const auto& [key, value] : notebook::attributes_of(remark)) {
    out += before;
    before = ",";
    append_string(out, key);
    out.push_back(':');
    append_string(out, value);
  }
  out.push_back('}');
}

void append_readings(Pen& out, Columns columns, const notebook::Source& source,
                     const reduction::Page& page) {
  out += "\"readings\":[";
  PageRows rows(columns);
  bool first = true;
  for (const reduction::Row& row : page.rows) {
    out += first ? "\n" : ",\n";
    first = false;
    out.push_back('{');
    rows.append(out, {source, page, row}, append_json_cell_of<Column, RowContext>);
    append_attributes(out, row.remark);
    out.push_back('}');
  }
  out += "],\n";
}

void append_landmarks(Pen& out, const std::vector<reduction::LandmarkRow>& landmarks) {
  append_array(out, "landmarks", landmarks, [](Pen& to, const reduction::LandmarkRow& landmark) {
    to += "{\"name\":";
    append_string(to, landmark.name);
    to.push_back(',');
    append_position(to, "position", landmark.position, landmark.position_origin);
    append_number(to, "elevation_m", landmark.elevation_m, 1);
    append_text(to, "elevation_origin", landmark.elevation_origin);
    to.back() = '}';
    to.push_back(',');
  });
}

/// The page's items of one sort, as an array.
template <class AppendItem>
void append_items(Pen& out, std::string_view name, const reduction::Page& page,
                  reduction::Item::What what, AppendItem append_item) {
  std::vector<const reduction::Item*> wanted;
  for (const reduction::Item& item : page.items) {
    if (item.what == what) wanted.push_back(&item);
  }
  append_array(out, name, wanted, [&](Pen& to, const reduction::Item* item) {
    append_item(to, *item);
    to.push_back(',');
  });
}

void append_items(Pen& out, const reduction::Page& page) {
  using What = reduction::Item::What;
  const auto append_whole = [](Pen& to, const reduction::Item& item) {
    append_string(to, item.text);
  };
  append_items(out, "samples", page, What::sample, [](Pen& to, const reduction::Item& sample) {
    to += "{\"name\":";
    append_string(to, sample.name);
    to.push_back(',');
    append_text(to, "text", sample.text);
    to.back() = '}';
  });
  append_items(out, "photos", page, What::photo, append_whole);
  append_items(out, "notes", page, What::note, append_whole);
}

}  // namespace

void JsonWriter::begin(std::string& out) {
  out += "{\"format\":\"lodebook-reduction\",";
  append_member(out, "version", version);
  append_member(out, "north", std::string(reduction::name_of(north_)));
  out += "\n\"logs\":[";
}

void JsonWriter::begin_log(std::string& out, const reduction::Reduction& reduction) {
  Pen pen(out);
  pen += "\n{";
  append_member(pen, "file", notebook::valid_utf8(shown_name(reduction.notebook().source)));
  pen.push_back('\n');
  append_settings(pen, "settings", reduction.heading(), north_);
  pen.push_back('\n');
  append_landmarks(pen, reduction.landmarks());
  pen.push_back('\n');
}

void JsonWriter::page(std::string& out, const notebook::Source& source,
                      const reduction::Page& page) {
  Pen pen(out);
  if (page.is_station) {
    pen += first_station_ ? "\n{" : ",\n{";
    first_station_ = false;
    append_text(pen, "name", page.station);
    append_count(pen, "line", page.first_line);
    append_position(pen, "position", page.position, page.position_origin);
    append_number(pen, "elevation_m", page.elevation_m, 1);
    append_text(pen, "elevation_origin", page.elevation_origin);
    append_time(pen, "time", page.time);
    pen.push_back('\n');
    append_settings(pen, "settings", page.settings, north_);
    pen.push_back('\n');
  }
  append_items(pen, page);
  pen.push_back('\n');
  append_readings(pen, columns_, source, page);
  append_checks(pen, "checks", page.checks);
  pen.push_back('\n');
  if (page.is_station) {
    append_counts(pen, "counts", page.counts);
    pen.back() = '}';
  } else {
    pen += "\"stations\":[";
  }
  take_comments(source, *page.block);
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    diagnostics_ += diagnostics_.empty() ? "\n" : ",\n";
    Pen diagnostics(diagnostics_);
    append_object(diagnostics, source, diagnostic);
  }
}

/// Repeats of one line share its comment, which is given once.
void JsonWriter::take_comments(const notebook::Source& source, const notebook::Block& block) {
  std::uint32_t line = 0;
  for (const notebook::Entry& entry : block.entries) {
    if (entry.comment.empty() || entry.line == line) continue;
    line = entry.line;
    Pen pen(comments_);
    pen += comments_.empty() ? "{" : ",{";
    append_count(pen, "line", line);
    pen += "\"text\":";
    append_string(pen, source.text(entry.comment));
    pen.push_back('}');
  }
}

void JsonWriter::end_log(std::string& out, const reduction::Reduction& reduction) {
  Pen pen(out);
  pen += "],\n";
  pen += "\"comments\":[";
  pen += comments_;
  pen += "],\n\"diagnostics\":[";
  pen += diagnostics_;
  pen += "],\n";
  append_counts(pen, "counts", reduction.counts());
  pen.back() = '}';
  counts_ = reduction.counts();
}

void JsonWriter::end(std::string& out) {
  Pen pen(out);
  pen += "],\n";
  append_counts(pen, "counts", counts_);
  pen.back() = '}';
  pen.push_back('\n');
}

}  // namespace lodebook::output
