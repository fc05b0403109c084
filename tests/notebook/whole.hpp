// SPDX-License-Identifier: MIT
// What holds of every log that has been read, whatever its bytes.
#pragma once

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include "whole_log.hpp"

namespace lodebook::test {

inline bool inside(const notebook::Source& source, notebook::Span span) {
  return span.end() >= span.offset && span.end() <= source.text().size();
}

/// Within its line, or one past it for what is missing at its end.
inline bool inside(const notebook::Source& source, const notebook::Place& place) {
  if (place.line < 1 || place.line > std::max(source.line_count(), 1u)) return false;
  const std::uint32_t columns = notebook::count_columns(source.text(source.line(place.line)));
  return place.column >= 1 && place.end_column > place.column && place.column <= columns + 1 &&
         place.end_column <= columns + 2;
}

/// The first thing wrong with a log's entries; empty where all is well.
inline std::string entry_fault(const Book& book) {
  using namespace notebook;
  const Source& source = book.source;
  std::uint32_t readings = 0;
  std::uint32_t line = 1;
  for (const Entry& entry : book.entries) {
    const std::string at = " in line " + std::to_string(entry.line);
    if (entry.line < line || entry.line > source.line_count()) return "entries out of order" + at;
    line = entry.line;
    const Span whole = source.line(line);
    for (const Span span : {entry.statement, entry.remark, entry.comment}) {
      const bool within = span.offset >= whole.offset && span.end() <= whole.end();
      if (!inside(source, span) || (!span.empty() && !within))
        return "a span outside its line" + at;
    }
    const auto* const reading = std::get_if<Reading>(&entry.what);
    if (!reading) continue;
    if (reading->number != readings++) return "readings out of order" + at;
    if (!inside(source, reading->written)) return "a reading outside the log" + at;
    if (reading->kind >= book.kinds.size()) return "a reading of no kind" + at;
  }
  return book.reading_count == readings ? "" : "readings miscounted";
}

/// The same of its diagnostics. Rejected readings must be those with an error, or that wait for
/// what one asks for all of them: none is dropped silently, none kept with one.
inline std::string diagnostic_fault(const Book& book) {
  using namespace notebook;
  std::vector<bool> rejected;
  for (const Entry& entry : book.entries) {
    if (const auto* const reading = std::get_if<Reading>(&entry.what))
      rejected.push_back(reading->rejected);
  }
  std::vector<bool> has_error;
  for (const Entry& entry : book.entries) {
    if (const auto* const reading = std::get_if<Reading>(&entry.what))
      has_error.push_back(reading->waits_for.has_value());
  }
  const bool all_have_reason =
      std::ranges::none_of(has_error, std::identity()) || !book.diagnostics.empty();
  if (!all_have_reason) return "readings that wait, and nothing that asks";
  const Diagnostic* before = nullptr;
  for (const Diagnostic& diagnostic : book.diagnostics) {
    const std::string at = " at line " + std::to_string(diagnostic.place.line) + ", column " +
                           std::to_string(diagnostic.place.column) + ": " + diagnostic.message;
    if (!inside(book.source, diagnostic.place)) return "a diagnostic outside the log" + at;
    for (const Related& related : diagnostic.related) {
      if (!inside(book.source, related.place)) return "a note outside the log" + at;
    }
    if (diagnostic.message.empty()) return "a diagnostic without words" + at;
    if (before && before->place.line > diagnostic.place.line)
      return "diagnostics out of order" + at;
    before = &diagnostic;
    if (diagnostic.reading == no_reading) continue;
    if (diagnostic.reading >= rejected.size()) return "a diagnostic of no reading" + at;
    if (diagnostic.severity == Severity::error) has_error[diagnostic.reading] = true;
  }
  return rejected == has_error ? "" : "rejected readings are not those with an error";
}

}  // namespace lodebook::test
