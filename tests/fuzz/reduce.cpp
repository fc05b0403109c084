// SPDX-License-Identifier: MIT
// A log reduced to every format: every reading has its row, every figure is a number, and the clean
// log means the same.
#include <algorithm>
#include <cmath>
#include <vector>

#include <nlohmann/json.hpp>

#include <lodebook/output/clean_log.hpp>
#include <lodebook/output/csv.hpp>
#include <lodebook/output/geojson.hpp>
#include <lodebook/output/json.hpp>
#include <lodebook/output/report.hpp>

#include "target.hpp"
#include "whole_log.hpp"

namespace lodebook::fuzz {
namespace {

using notebook::Notebook;
using reduction::Page;
using reduction::Row;

void require_within(const std::optional<double>& figure, double least, double most,
                    std::string_view what) {
  require(!figure || (*figure >= least && *figure <= most), what);
}

void require_sound(const Row& row) {
  for (const auto& azimuth : {row.strike, row.trend, row.bearing, row.back_bearing, row.as_read})
    require_within(azimuth, 0, std::nextafter(360, 0), "an azimuth outside [0, 360)");
  require_within(row.dip, 0, 90, "a dip outside [0, 90]");
  require_within(row.plunge, -90, 90, "a plunge outside [-90, 90]");
  require_within(row.rake, 0, 180, "a rake outside [0, 180]");
  require_within(row.correction, -720, 720, "a correction that is no angle");
  require_within(row.uncertainty, 0, 52, "an uncertainty outside [0, 52]");
  require_within(row.distance_m, 0, 1e300, "a distance that is no length");
  require_within(row.vertical_angle, -90, 90, "a vertical angle outside [-90, 90]");
  const bool has_figures =
      row.strike || row.dip || row.trend || row.plunge || row.rake || row.bearing || row.distance_m;
  require((row.status == reduction::Status::rejected) == !has_figures,
          "a rejected row with figures, or another without");
  require(row.correction.has_value() == row.as_read.has_value(),
          "a correction of nothing, or none of something");
}

using Rows = std::vector<std::vector<std::string>>;

/// The table of a log, in cells, header included.
Rows table_of(const Notebook& book, const reduction::Options& options) {
  const output::Columns columns = output::columns(options.grid_columns);
  std::string csv;
  output::append_csv_header(csv, columns);
  reduction::Reduction reduction(book, options);
  Page page;
  std::size_t readings = 0;
  while (reduction.next(page)) {
    output::append_csv(csv, columns, book.source, page);
    for (const Row& row : page.rows) {
      require_sound(row);
      readings += row.repeats;
    }
    const reduction::Counts& counts = page.counts;
    require(counts.readings == counts.ok + counts.suspect + counts.rejected, "readings miscounted");
  }
  require(reduction.counts().readings == book.reading_count,
          "readings counted are not those typed");
  require(readings == book.reading_count, "rows out are not readings in");
  Rows rows = cells_of_csv(csv);
  require_no_formula(rows);
  return rows;
}

/// A document of a log, as the program writes it.
template <class Writer>
std::string written(Writer writer, const Notebook& book, const reduction::Options& options) {
  std::string out;
  if constexpr (requires { writer.begin(out); }) writer.begin(out);
  reduction::Reduction reduction(book, options);
  if constexpr (requires { writer.begin_log(out, reduction); }) writer.begin_log(out, reduction);
  Page page;
  while (reduction.next(page))
    writer.page(out, book.source, page);
  if constexpr (requires { writer.end_log(out, reduction); }) writer.end_log(out, reduction);
  writer.end(out);
  return out;
}

/// Each cell of a column is what its type says, or empty.
void require_typed(const Rows& rows, output::Columns columns) {
  for (std::size_t i = 1; i < rows.size(); ++i) {
    require(rows[i].size() == columns.size(), "a row with cells of no column");
    for (std::size_t j = 0; j < columns.size(); ++j) {
      std::string_view cell = rows[i][j];
      if (cell.empty() || columns[j].type == output::Type::text) continue;
      if (columns[j].type == output::Type::date) {
        require(notebook::read_date(cell).has_value(), "a date that is none");
        continue;
      }
      if (columns[j].type == output::Type::word || columns[j].type == output::Type::time) {
        require(cell.find_first_of("\",\r\n=@\t") == cell.npos, "a word that is none");
        continue;
      }
      if (cell.starts_with('-')) cell.remove_prefix(1);
      const std::size_t digits = std::min(cell.find_first_not_of("0123456789"), cell.size());
      const bool whole = digits == cell.size();
      require(digits > 0 && whole == (columns[j].type == output::Type::count),
              "a figure that is no number");
      if (whole) continue;
      const std::string_view decimals = cell.substr(digits + 1);
      require(cell[digits] == '.' && !decimals.empty() &&
                  decimals.find_first_not_of("0123456789") == decimals.npos,
              "a figure that is no number");
      require(rows[i][j].find_first_not_of("-0.") != std::string::npos || rows[i][j][0] != '-',
              "a minus before zero");
    }
  }
}

std::size_t readings_of(const nlohmann::json& log) {
  std::size_t readings = log.at("readings").size();
  for (const auto& station : log.at("stations"))
    readings += station.at("readings").size();
  return readings;
}

/// The table without what a clean log may change.
Rows comparable(Rows rows) {
  for (auto& row : rows) {
    require(row.size() > 3, "a row with too few cells");
    row.erase(row.end() - 1);  // source
    row.erase(row.end() - 2);  // written
  }
  return rows;
}

void require_clean(const Notebook& book, const reduction::Options& options, const Rows& table) {
  std::string once;
  output::append_clean_log(once, book, options);
  // What options said now stands in the log.
  reduction::Options without;
  without.north = options.north;
  without.repeats = options.repeats;
  without.grid_columns = options.grid_columns;
  const Notebook again = notebook::read_log(notebook::Source("fuzz.log", once));
  require(comparable(table_of(again, without)) == comparable(table),
          "the clean log reduces to another table");
  std::string twice;
  output::append_clean_log(twice, again, without);
  require(twice == once, "a second pass changes the clean log");
}

}  // namespace

void try_input(std::string_view input) {
  const Choice choice = choice_of(input);
  const reduction::Options& options = choice.options;
  const Notebook book =
      notebook::read_log(notebook::Source("fuzz.log", choice.text), {options.rule});
  const std::size_t faults_of_language =
      test::read_whole(notebook::Source("fuzz.log", choice.text), {options.rule})
          .diagnostics.size();
  const output::Columns columns = output::columns(options.grid_columns);

  const Rows table = table_of(book, options);
  require_typed(table, columns);
  const std::size_t rows = table.size() - 1;
  const auto json =
      nlohmann::json::parse(written(output::JsonWriter(options.north, columns), book, options));
  require(readings_of(json.at("logs").at(0)) == rows, "the JSON has more or fewer rows");
  require(json.at("logs").at(0).at("diagnostics").size() >= faults_of_language,
          "the JSON lacks a diagnostic");
  const auto geojson =
      nlohmann::json::parse(written(output::GeoJsonWriter(columns), book, options));
  require(geojson.at("features").size() == rows, "the GeoJSON has more or fewer rows");
  require(nlohmann::json::accept(written(output::JsonReport(), book, options)),
          "the report is no JSON");
  require_printable(written(output::StationReport(false), book, options), "the report");
  require_clean(book, options, table);
}

}  // namespace lodebook::fuzz
