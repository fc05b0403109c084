// SPDX-License-Identifier: MIT
// `lodebook reduce`: the table to one place, the report to another.
#include <algorithm>
#include <array>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

/// What FILE's extension says, in any case; csv for every other.
Format format_of(const std::string& file) {
  constexpr std::array<std::pair<std::string_view, Format>, 3> extensions = {
      {{".json", Format::json}, {".geojson", Format::geojson}, {".log", Format::log}}};
  const auto lower = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  for (const auto& [extension, format] : extensions) {
    if (file.size() < extension.size()) continue;
    const std::string_view end = std::string_view(file).substr(file.size() - extension.size());
    if (std::ranges::equal(end, extension, {}, lower)) return format;
  }
  return Format::csv;
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
  const Format format = line.format   ? *line.format
                        : line.output ? format_of(*line.output)
                                      : Format::csv;
  if (format == Format::log && line.words.size() > 1) return refused(clean_log_of_many());
  if (const auto error = refuse(line, line.words, !line.output)) return refused(*error);

  OutputFile table = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
  OutputFile report = line.report ? OutputFile::named(*line.report) : OutputFile::standard_error();
  const bool color = is_colored(line, report);
  const bool keep = meet(table, report);
  const auto north = line.north.value_or(reduction::North::geographic);
  std::vector<Document> documents;
  documents.push_back(Document::table(format, north, output::columns(line.grid), std::move(table)));
  if (line.report || !line.quiet)
    documents.push_back(Document::report(line.report_format, color, std::move(report), keep));

  Outcome outcome;
  reduce_logs(line, documents, outcome);
  for (Document& document : documents) {
    // Whoever closed the table's pipe wants no report either.
    if (!documents.front().file().reader_gone()) document.finish(outcome);
  }
  outcome.reader_gone = outcome.reader_gone || documents.front().file().reader_gone();
  return outcome;
}

}  // namespace lodebook::cli
