// SPDX-License-Identifier: MIT
// `lodebook convert --column`: a CSV file with some cells converted and every other byte as it was.
#include <algorithm>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/converter.hpp>
#include <lodebook/cli/csv_cells.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

using notebook::Diagnostic;
using notebook::Source;

constexpr std::string_view blanks = " \t\r\n";

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(blanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(blanks) + 1 - begin);
}

/// The places of the columns called `name`: exactly so, or else in any case.
std::vector<std::size_t> places_of(std::string_view name, const std::vector<std::string>& header) {
  std::vector<std::size_t> exact;
  std::vector<std::size_t> alike;
  const std::string folded = notebook::fold_case(name);
  for (std::size_t i = 0; i < header.size(); ++i) {
    if (header[i] == name) exact.push_back(i);
    if (notebook::fold_case(header[i]) == folded) alike.push_back(i);
  }
  return exact.empty() ? alike : exact;
}

class ColumnConversion {
 public:
  ColumnConversion(const CommandLine& line, const Converter& converter, std::string name,
                   std::string text)
      : line_(line),
        converter_(converter),
        name_(std::move(name)),
        text_(std::move(text)),
        rows_(text_),
        color_(is_colored(line, OutputFile::standard_error())) {}

  /// Reads the header and finds the columns in it.
  std::optional<UsageError> find_columns() {
    rows_.next(cells_);
    std::vector<std::string> header;
    for (const CsvCell& cell : cells_)
      header.emplace_back(trimmed(value_in_utf8(cell)));
    for (const std::string& column : line_.columns) {
      const auto places = places_of(trimmed(column), header);
      if (places.empty()) return column_unknown(column, name_, header);
      wanted_.insert(wanted_.end(), places.begin(), places.end());
    }
    std::ranges::sort(wanted_);
    wanted_.erase(std::unique(wanted_.begin(), wanted_.end()), wanted_.end());
    return std::nullopt;
  }

  /// Writes the whole file.
  Outcome run(OutputFile file) {
    Outcome outcome;
    while (rows_.next(cells_)) {
      for (const std::size_t column : wanted_) {
        if (column < cells_.size() && !convert_cell(cells_[column])) outcome.errors = true;
      }
      if (results_.size() >= block) flush(file);
      if (file.error()) break;
    }
    results_.append(text_, copied_);
    flush(file);
    if (rows_.unclosed_line() != 0) {
      outcome.errors = true;
      if (!line_.quiet) tell(quote_unclosed(name_, rows_.unclosed_line()));
    }
    file.commit();
    finished(file, outcome);
    return outcome;
  }

 private:
  static constexpr std::size_t block = 1 << 18;

  std::string value_in_utf8(const CsvCell& cell) const {
    std::string value = value_of(text_, cell);
    return line_.encoding == Encoding::windows_1252 ? notebook::utf8_from_windows_1252(value)
                                                    : value;
  }

  /// A cell without a reading stays as it is and is no fault.
  bool convert_cell(const CsvCell& cell) {
    const std::string value = value_in_utf8(cell);
    const std::string_view reading = trimmed(value);
    if (reading.empty()) return true;
    const auto lead = static_cast<std::size_t>(reading.data() - value.data());
    std::string one_line(reading);
    std::ranges::replace_if(
        one_line, [](char c) { return c == '\r' || c == '\n'; }, ' ');
    std::string converted;
    std::vector<Diagnostic> diagnostics;
    const bool good =
        converter_.convert(Source(name_, one_line, line_.encoding), converted, diagnostics);
    for (Diagnostic& diagnostic : diagnostics)
      add_fault(cell, value, lead, diagnostic);
    if (!good) return false;
    results_.append(text_, copied_, cell.begin - copied_);
    append_cell(results_, value.substr(0, lead) + converted + value.substr(lead + reading.size()),
                cell.quoted);
    copied_ = cell.end;
    return true;
  }

  std::uint32_t columns(std::size_t begin, std::size_t end) const {
    const auto bytes = std::string_view(text_).substr(begin, end - begin);
    return line_.encoding == Encoding::windows_1252 ? static_cast<std::uint32_t>(bytes.size())
                                                    : notebook::count_columns(bytes);
  }

  /// Shows a fault of a cell's value at the cell's place in the file.
  void add_fault(const CsvCell& cell, const std::string& value, std::size_t lead,
                 Diagnostic& diagnostic) {
    if (line_.quiet) return;
    if (!whole_) {
      whole_.emplace(name_, line_.encoding == Encoding::windows_1252
                                ? notebook::utf8_from_windows_1252(text_)
                                : text_);
    }
    const std::size_t inside = cell.begin + (cell.quoted ? 1 : 0);
    const std::uint32_t first = columns(cell.line_begin, inside) + 1;
    const std::uint32_t before = notebook::count_columns(value.substr(0, lead));
    const auto raw = std::string_view(text_).substr(inside, cell.end - inside);
    // Behind a doubled quote or a line end, columns of the value are not those of the file.
    const bool plain = raw.find_first_of("\"\r\n") >= raw.size() - (cell.quoted ? 1 : 0);
    const auto shift = [&](notebook::Place& place) {
      place.line = cell.line;
      if (plain) {
        place.column += first - 1 + before;
        place.end_column += first - 1 + before;
      } else {
        const std::size_t end = std::min(text_.find_first_of("\r\n", cell.begin), cell.end);
        place.column = columns(cell.line_begin, cell.begin) + 1;
        place.end_column = std::max(columns(cell.line_begin, end) + 1, place.column + 1);
      }
    };
    shift(diagnostic.place);
    for (notebook::Related& related : diagnostic.related)
      shift(related.place);
    output::append_diagnostic(faults_, *whole_, diagnostic, color_);
  }

  void flush(OutputFile& file) {
    file.write(results_);
    results_.clear();
    if (!faults_.empty()) tell(faults_);
    faults_.clear();
  }

  const CommandLine& line_;
  const Converter& converter_;
  std::string name_;
  std::string text_;
  CsvRows rows_;
  bool color_;
  std::vector<std::size_t> wanted_;
  std::vector<CsvCell> cells_;
  std::size_t copied_ = 0;  ///< what stands before it in the text is in the results
  std::string results_;
  std::string faults_;
  std::optional<Source> whole_;  ///< made for the first fault
};

}  // namespace

Outcome convert_columns(const CommandLine& line) {
  if (line.words.empty()) return refused(csv_file_missing(line.columns.front()));
  if (line.words.size() > 1) return refused(csv_files_many());
  if (const auto error = RunFiles(line, !line.output).refuse(line.words)) return refused(*error);
  const auto made = Converter::from(line);
  if (const auto* const error = std::get_if<UsageError>(&made)) return refused(*error);
  const auto& converter = std::get<Converter>(made);

  const std::string& name = line.words.front();
  std::string text;
  if (const std::error_code error = read_file(name, largest_input, text)) {
    tell(cannot_read(typed_name(name), error));
    return {.io = true};
  }
  ColumnConversion conversion(line, converter, typed_name(name), std::move(text));
  if (const auto error = conversion.find_columns()) return refused(*error);
  if (converter.only_magnetic() && !line.quiet) tell(converted_to_magnetic());
  return conversion.run(line.output ? OutputFile::named(*line.output)
                                    : OutputFile::standard_output());
}

}  // namespace lodebook::cli
