// SPDX-License-Identifier: MIT
// `lodebook convert`: readings from arguments, or one a line from standard input.
#include <algorithm>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/converter.hpp>
#include <lodebook/cli/words.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

using notebook::Diagnostic;
using notebook::Source;

constexpr int standard_input = 0;

/// Bytes of `block` that are whole lines; a CR at its very end may be the half of a line's end.
std::size_t whole_lines(std::string_view block) {
  if (block.ends_with('\r')) block.remove_suffix(1);
  const std::size_t last = block.find_last_of("\r\n");
  return last == std::string_view::npos ? 0 : last + 1;
}

/// The whole command line is one reading that the shell has cut at its spaces.
std::optional<std::string> joined_reading(const CommandLine& line, const Converter& converter) {
  std::string reading = joined(line.words);
  std::string result;
  std::vector<Diagnostic> diagnostics;
  if (!converter.convert(Source("arguments", reading), result, diagnostics)) return std::nullopt;
  return reading;
}

Outcome convert_arguments(const CommandLine& line, const Converter& converter, OutputFile file) {
  Outcome outcome;
  const bool color = is_colored(line, OutputFile::standard_error());
  std::string results;
  std::string faults;
  std::vector<Diagnostic> diagnostics;
  for (std::size_t i = 0; i < line.words.size(); ++i) {
    const Source source("argument " + std::to_string(i + 1), line.words[i]);
    diagnostics.clear();
    if (!converter.convert(source, results, diagnostics)) outcome.errors = true;
    results += '\n';
    for (const Diagnostic& diagnostic : diagnostics)
      output::append_diagnostic(faults, source, diagnostic, color);
  }
  if (outcome.errors && line.words.size() > 1) {
    if (const auto reading = joined_reading(line, converter)) return refused(quote_it(*reading));
  }
  file.write(results);
  if (!line.quiet) tell(faults);
  file.commit();
  finished(file, outcome);
  return outcome;
}

/// Lines of standard input on their way to results. Input is taken a block at a time, of as much as
/// is there, so that whoever types sees each result at once.
class LineConversion {
 public:
  LineConversion(const CommandLine& line, const Converter& converter, OutputFile file)
      : line_(line),
        converter_(converter),
        file_(std::move(file)),
        color_(is_colored(line, OutputFile::standard_error())) {}

  Outcome run() {
    std::string block;
    for (bool more = true; more && !file_.error();) {
      if (const std::error_code error = read_block(block, more)) {
        tell(cannot_read(typed_name(std::string(standard_stream)), error));
        outcome_.io = true;
        return outcome_;
      }
      const std::size_t whole = more ? whole_lines(block) : block.size();
      convert_lines(std::string_view(block).substr(0, whole));
      block.erase(0, whole);
    }
    file_.commit();
    finished(file_, outcome_);
    return outcome_;
  }

 private:
  static std::error_code read_block(std::string& block, bool& more) {
    constexpr std::size_t large = 1 << 20;
    const std::size_t before = block.size();
    do {
      if (const std::error_code error = read_some(standard_input, block, more)) return error;
      if (block.size() > largest_input) return std::make_error_code(std::errc::file_too_large);
    } while (more && block.size() - before < large && has_input(standard_input));
    return {};
  }

  void convert_lines(std::string_view bytes) {
    const Source lines(typed_name(std::string(standard_stream)),
                       line_.encoding == Encoding::windows_1252
                           ? notebook::utf8_from_windows_1252(bytes)
                           : std::string(bytes));
    std::string results;
    std::vector<Diagnostic> diagnostics;
    for (std::uint32_t i = 1; i <= lines.line_count(); ++i) {
      const std::string_view text = lines.text(lines.line(i));
      const std::size_t before = diagnostics.size();
      if (!is_blank(text) &&
          !converter_.convert(Source(lines.name(), std::string(text), line_.encoding), results,
                              diagnostics))
        outcome_.errors = true;
      results += '\n';
      for (std::size_t j = before; j < diagnostics.size(); ++j) {
        diagnostics[j].place.line = lines_before_ + i;
        for (notebook::Related& related : diagnostics[j].related)
          related.place.line = lines_before_ + i;
      }
    }
    file_.write(results);
    if (!diagnostics.empty() && !line_.quiet) tell_faults(lines, diagnostics);
    lines_before_ += lines.line_count();
  }

  /// Shows the block's faults under the line numbers of the whole input.
  void tell_faults(const Source& lines, const std::vector<Diagnostic>& diagnostics) const {
    const Source numbered(lines.name(),
                          std::string(lines_before_, '\n') + std::string(lines.text()));
    std::string faults;
    for (const Diagnostic& diagnostic : diagnostics)
      output::append_diagnostic(faults, numbered, diagnostic, color_);
    tell(faults);
  }

  const CommandLine& line_;
  const Converter& converter_;
  OutputFile file_;
  bool color_;
  std::uint32_t lines_before_ = 0;
  Outcome outcome_;
};

}  // namespace

Outcome convert(const CommandLine& line) {
  if (!line.columns.empty()) return convert_columns(line);
  const bool from_arguments =
      !line.words.empty() && !(line.words.size() == 1 && line.words.front() == standard_stream);
  std::vector<std::string> inputs;
  if (!from_arguments) inputs.emplace_back(standard_stream);
  if (const auto error = RunFiles(line, !line.output).refuse(inputs)) return refused(*error);
  const auto made = Converter::from(line);
  if (const auto* const error = std::get_if<UsageError>(&made)) return refused(*error);
  const auto& converter = std::get<Converter>(made);
  if (converter.only_magnetic() && !line.quiet) tell(converted_to_magnetic());
  OutputFile file = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
  if (from_arguments) return convert_arguments(line, converter, std::move(file));
  return LineConversion(line, converter, std::move(file)).run();
}

}  // namespace lodebook::cli
