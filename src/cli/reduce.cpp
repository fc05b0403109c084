// SPDX-License-Identifier: MIT
// `lodebook reduce`: the table to one place, the report to another.
#include <array>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/output/sidecar.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

constexpr std::string_view csv_extension = "csv";

std::optional<UsageError> refuse_sidecar(const CommandLine& line, Format format) {
  if (format != Format::csv) return sidecar_without_csv();
  if (!line.output || *line.output == standard_stream) return sidecar_without_file();
  if (extension_of(*line.output) != csv_extension)
    return sidecar_without_extension(*line.output, csv_extension);
  return std::nullopt;
}

/// The files beside the CSV file `table`. A GIS looks for them in lower case, whatever the case of
/// the table's extension.
std::vector<std::string> sidecars_of(const std::string& table) {
  return {with_extension(table, "csvt"), with_extension(table, "prj")};
}

/// Writes the files of `sidecars_of`.
void write_sidecars(std::span<const std::string> names, output::Columns columns, Outcome& outcome) {
  const std::array<std::string, 2> texts = {output::column_types(columns),
                                            std::string(output::coordinate_system())};
  for (std::size_t i = 0; i < names.size(); ++i) {
    OutputFile file = OutputFile::named(names[i]);
    file.write(texts[i]);
    file.commit();
    finished(file, outcome);
  }
}

/// Both go to one screen or file, where they would mix.
bool meet(const OutputFile& table, const OutputFile& report) {
  const auto one = table.stream();
  const auto other = report.stream();
  return one && other && same_file(*one, *other);
}

}  // namespace

Outcome reduce(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::reduce));
  const Format format = line.format.value_or(Format::csv);
  if (format == Format::log && line.words.size() > 1) return refused(clean_log_of_many());
  std::vector<std::string> sidecars;
  if (line.sidecar) {
    if (const auto error = refuse_sidecar(line, format)) return refused(*error);
    sidecars = sidecars_of(*line.output);
  }
  RunFiles files(line, !line.output, sidecars);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  OutputFile table = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
  OutputFile report = line.report ? OutputFile::named(*line.report) : OutputFile::standard_error();
  const bool color = is_colored(line, report);
  const bool keep = meet(table, report);
  const auto north = line.north.value_or(reduction::North::geographic);
  // JSON has all attributes, as an object.
  const std::span<const std::string> keys(line.attributes);
  const std::vector<output::Column> columns =
      output::columns(line.grid, format == Format::json ? keys.first(0) : keys);
  std::vector<Document> documents;
  documents.push_back(Document::table(format, north, columns, std::move(table)));
  if (line.report || !line.quiet)
    documents.push_back(
        Document::report(line.report_format, color, line.planes, std::move(report), keep));

  Outcome outcome;
  reduce_logs(line, files, documents, outcome);
  for (Document& document : documents) {
    // Whoever closed the table's pipe wants no report either.
    if (!documents.front().file().reader_gone()) document.finish(outcome);
  }
  if (documents.front().is_written()) write_sidecars(sidecars, columns, outcome);
  outcome.reader_gone = outcome.reader_gone || documents.front().file().reader_gone();
  return outcome;
}

}  // namespace lodebook::cli
