// SPDX-License-Identifier: MIT
// What the tests of this room share: logs of a few lines, their readings, and their faults as text.
#pragma once

#include <catch.hpp>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "whole_log.hpp"

namespace lodebook::test {

/// Degrees that are equal on the circle but for dust of the arithmetic.
inline bool same_direction(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0)) <= 1e-9;
}

inline Book read(std::string text, const notebook::ReadOptions& options = {}) {
  return read_whole(notebook::Source("day.txt", std::move(text)), options);
}

/// A log of one line at a station, below the settings of `heading` (a line each, or empty). The
/// station has no settings to inherit and nothing that could be at fault.
inline Book read_line(std::string_view line, std::string_view heading = "") {
  std::string text(heading);
  if (!text.empty() && text.back() != '\n') text += '\n';
  return read(text.append("station Q1\n").append(line).append("\n"));
}

/// `code` of each diagnostic, a space between.
inline std::string codes(const std::vector<notebook::Diagnostic>& diagnostics) {
  std::string out;
  for (const notebook::Diagnostic& diagnostic : diagnostics)
    out.append(out.empty() ? "" : " ").append(notebook::name_of(diagnostic.code));
  return out;
}
inline std::string codes(const Book& book) {
  return codes(book.diagnostics);
}

/// `line:column-end code` of each diagnostic, `, ` between; the end is one past the last column.
inline std::string places(const std::vector<notebook::Diagnostic>& diagnostics) {
  std::string out;
  for (const notebook::Diagnostic& diagnostic : diagnostics) {
    const notebook::Place& place = diagnostic.place;
    out.append(out.empty() ? "" : ", ")
        .append(std::to_string(place.line) + ':' + std::to_string(place.column) + '-' +
                std::to_string(place.end_column) + ' ')
        .append(notebook::name_of(diagnostic.code));
  }
  return out;
}
inline std::string places(const Book& book) {
  return places(book.diagnostics);
}

/// All entries of one sort, in order.
template <class What>
std::vector<What> all(const Book& book) {
  std::vector<What> found;
  for (const notebook::Entry& entry : book.entries) {
    if (const auto* what = std::get_if<What>(&entry.what)) found.push_back(*what);
  }
  return found;
}

/// The last entry of one sort; the test fails without one.
template <class What>
What last(const Book& book) {
  const std::vector<What> found = all<What>(book);
  REQUIRE_FALSE(found.empty());
  return found.back();
}

/// The attitude, sight or leg of the last reading, which must be a good one.
template <class What>
What good(const Book& book) {
  const auto reading = last<notebook::Reading>(book);
  REQUIRE_FALSE(reading.rejected);
  REQUIRE(std::holds_alternative<What>(reading.what));
  return std::get<What>(reading.what);
}

/// A reading's own bytes.
inline std::string written(const Book& book, const notebook::Reading& reading) {
  return std::string(book.source.text(reading.written));
}
inline std::string text(const Book& book, notebook::Span span) {
  return std::string(book.source.text(span));
}
inline std::string kind_of(const Book& book, const notebook::Reading& reading) {
  return book.kinds.at(reading.kind).name;
}

}  // namespace lodebook::test
