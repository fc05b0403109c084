// SPDX-License-Identifier: MIT
// Readings on their own, converted: what comes out reads back as itself. Positions, heights and
// declinations on their own, as options and arguments have them.
#include <lodebook/cli/converter.hpp>
#include <lodebook/cli/csv_cells.hpp>

#include "notebook/whole.hpp"
#include "target.hpp"

namespace lodebook::fuzz {
namespace {

using notebook::Diagnostic;
using notebook::Notation;
using notebook::ReadAs;
using notebook::Source;

/// Diagnostics that point into the text, with exactly one error where nothing was read.
void require_told(const Source& source, const std::vector<Diagnostic>& diagnostics, bool is_read) {
  std::size_t errors = 0;
  for (const Diagnostic& diagnostic : diagnostics) {
    require(test::inside(source, diagnostic.place), "a diagnostic outside the text");
    errors += diagnostic.severity == notebook::Severity::error ? 1U : 0U;
  }
  require(errors == (is_read ? 0U : 1U), "not exactly one error where nothing was read");
}

struct Converted {
  std::string text;
  bool done = false;
};

Converted convert(const cli::CommandLine& line, const Source& source) {
  const auto converter = cli::Converter::from(line);
  Converted converted;
  std::vector<Diagnostic> diagnostics;
  converted.done = std::get<cli::Converter>(converter).convert(source, converted.text, diagnostics);
  require(converted.done || converted.text.empty(), "a failed conversion that wrote something");
  require_told(source, diagnostics, converted.done);
  return converted;
}

/// How what was read must be read again.
ReadAs as_of(const notebook::SingleReading& reading) {
  if (std::holds_alternative<notebook::PlaneAttitude>(reading.what)) return ReadAs::plane;
  if (std::holds_alternative<notebook::LineAttitude>(reading.what)) return ReadAs::line;
  return ReadAs::bearing;
}

void try_reading(const Source& source) {
  for (const ReadAs as : {ReadAs::own_form, ReadAs::bearing, ReadAs::plane, ReadAs::line}) {
    const auto reading = notebook::read_single(source, as);
    const bool is_read = !std::holds_alternative<std::monostate>(reading.what);
    require_told(source, reading.diagnostics, is_read);
    for (const Notation to : {Notation::azimuth, Notation::quadrant}) {
      cli::CommandLine line;
      line.as = as;
      line.to = to;
      const Converted once = convert(line, source);
      require(once.done == is_read, "read, but not converted");
      if (!once.done) continue;
      require_printable(once.text, "a converted reading");
      line.as = as_of(reading);
      const Converted twice = convert(line, Source("fuzz", once.text));
      require(twice.done && twice.text == once.text, "a converted reading reads back as another");
    }
  }
}

void try_others(const Source& source) {
  std::vector<Diagnostic> diagnostics;
  const auto declination = notebook::read_declination(source, diagnostics);
  require_told(source, diagnostics, declination.has_value());
  diagnostics.clear();
  const auto position = notebook::read_position(source, diagnostics);
  require_told(source, diagnostics, position.has_value());
  if (position) {
    require(position->latitude >= -90 && position->latitude <= 90, "a latitude beyond the poles");
    require(position->longitude >= -180 && position->longitude <= 180,
            "a longitude beyond 180 degrees");
  }
  diagnostics.clear();
  const auto height = notebook::read_height(source, diagnostics);
  require_told(source, diagnostics, height.has_value());
}

/// Every byte belongs to one cell or stands between two.
void try_csv(std::string_view text) {
  cli::CsvRows rows(text);
  std::vector<cli::CsvCell> cells;
  std::size_t at = 0;
  while (rows.next(cells)) {
    require(!cells.empty(), "a row without cells");
    for (const cli::CsvCell& cell : cells) {
      require(cell.begin >= at && cell.end >= cell.begin && cell.end <= text.size(),
              "cells that overlap");
      require(cell.begin - at <= 3, "bytes that belong to no cell");
      at = cell.end;
      const std::string value = cli::value_of(text, cell);
      std::string again;
      cli::append_cell(again, value, cell.quoted);
      if (!cell.quoted) continue;
      cli::CsvRows one(again);
      std::vector<cli::CsvCell> alone;
      require(one.next(alone) && alone.size() == 1 && cli::value_of(again, alone[0]) == value,
              "a cell that reads back as another");
    }
  }
  require(text.size() - at <= 2, "bytes that belong to no row");
}

}  // namespace

void try_input(std::string_view input) {
  try_csv(input);
  const Source lines("fuzz", std::string(input));
  for (std::uint32_t i = 1; i <= std::min(lines.line_count(), 20U); ++i) {
    const Source source("fuzz", std::string(lines.text(lines.line(i))));
    try_reading(source);
    try_others(source);
  }
}

}  // namespace lodebook::fuzz
