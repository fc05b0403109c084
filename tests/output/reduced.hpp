// SPDX-License-Identifier: MIT
// A log that goes through the rooms below, and what the outputs make of it.
#pragma once

#include <lodebook/output/clean_log.hpp>
#include <lodebook/output/csv.hpp>
#include <lodebook/output/geojson.hpp>
#include <lodebook/output/json.hpp>
#include <lodebook/output/report.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/reduction/reduction.hpp>

#include "joined.hpp"

namespace lodebook::test {

struct Log {
  std::string name;
  std::string text;
};

/// Writes a document the way the program does.
template <class Writer>
std::string written(Writer writer, const std::vector<Log>& logs,
                    const reduction::Options& options = {}) {
  return joined(writer, logs, [&](Writer& one, std::string& out, const Log& log) {
    const notebook::Notebook book =
        notebook::read_log(notebook::Source(log.name, log.text), {options.rule});
    reduction::Reduction reduction(book, options);
    if constexpr (requires { one.begin_log(out, reduction); }) one.begin_log(out, reduction);
    reduction::Page page;
    while (reduction.next(page))
      one.page(out, book.source, page);
    if constexpr (requires { one.end_log(out, reduction); }) one.end_log(out, reduction);
  });
}

/// The table with its header.
struct CsvWriter {
  void begin(std::string& out) { output::append_csv_header(out, output::columns()); }
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page) {
    output::append_csv(out, output::columns(), source, page);
  }
};

inline std::string csv(const std::string& text, const reduction::Options& options = {}) {
  return written(CsvWriter(), {{"day.txt", text}}, options);
}

inline std::string report(const std::string& text, const reduction::Options& options = {}) {
  return written(output::StationReport(false), {{"day.txt", text}}, options);
}

inline std::string clean(const std::string& text, const reduction::Options& options = {}) {
  std::string out;
  output::append_clean_log(
      out, notebook::read_log(notebook::Source("day.txt", text), {options.rule}), options);
  return out;
}

/// The lines of a text without their ends.
inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

/// The cells of a line of CSV.
inline std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      cells.emplace_back();
    } else {
      cells.back().push_back(c);
    }
  }
  return cells;
}

}  // namespace lodebook::test
