// SPDX-License-Identifier: MIT
// `lodebook check`: the report alone, once or at every save.
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/heading.hpp>
#include <lodebook/cli/watch.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

/// Where the report goes; nothing where only the exit status is wanted.
std::optional<OutputFile> report_file(const CommandLine& line) {
  const std::optional<std::string>& name = line.output ? line.output : line.report;
  if (name) return OutputFile::named(*name);
  return line.quiet ? std::nullopt : std::optional(OutputFile::standard_output());
}

RunFiles files_of(const CommandLine& line) {
  return {line, !line.output && !line.report && !line.quiet};
}

/// What stands before a report of several: it comes onto a clear screen, or apart from the one
/// before it. Documents of JSON, and those in a file, have nothing between them.
std::string_view before_report(const CommandLine& line, const OutputFile& file, bool is_first) {
  if (line.report_format == ReportFormat::text && takes_sequences(file))
    return "\x1b[H\x1b[2J";  // ECMA-48: to the first column of the first line; erase the screen
  if (is_first || !file.stream() || line.report_format == ReportFormat::json) return {};
  return "--------------------------------------------------------------------------------\n";
}

Outcome report(const CommandLine& line, RunFiles& files, std::string_view before,
               std::optional<OutputFile> file) {
  std::vector<Document> documents;
  if (file) {
    const bool color = is_colored(line, *file);
    documents.push_back(
        Document::report(line.report_format, color, line.planes, *std::move(file), false));
    documents.front().precede(before);
  }
  Outcome outcome;
  reduce_logs(line, files, documents, outcome);
  for (Document& document : documents)
    document.finish(outcome);
  return outcome;
}

/// The inputs that the command line names.
std::vector<std::string> named_inputs(const CommandLine& line) {
  std::vector<std::string> inputs = line.words;
  if (line.heading) inputs.push_back(*line.heading);
  return inputs;
}

std::optional<UsageError> refuse_watch(const CommandLine& line) {
  if (line.quiet && !line.output && !line.report) return watch_without_report();
  for (const std::string& input : named_inputs(line)) {
    if (is_stream_or_folder(input)) return watch_of_no_file(input);
  }
  return std::nullopt;
}

/// Reports again whenever a log or heading is saved, until a signal ends the program or nobody
/// reads the reports any more.
Outcome watch_logs(CommandLine line) {
  if (const auto error = refuse_watch(line)) return refused(*error);
  std::unique_ptr<Watch> watch = watch_by_events();
  if (!watch) watch = watch_by_looking();
  const bool is_told = !line.quiet && OutputFile::standard_error().is_terminal();
  const std::vector<std::string> named = named_inputs(line);
  std::vector<std::string> inputs = named;

  for (bool is_first = true;; is_first = false) {
    watch->look_at(inputs);
    std::optional<OutputFile> file = report_file(line);
    const std::optional<int> stream = file->stream();
    if (take_heading(line)) {
      RunFiles files = files_of(line);
      if (const auto error = files.refuse(line.words)) return refused(*error);
      const std::string_view before = before_report(line, *file, is_first);
      const Outcome outcome = report(line, files, before, std::move(file));
      if (outcome.usage || outcome.reader_gone) return outcome;
      inputs = named;
      inputs.insert(inputs.end(), files.headings.begin(), files.headings.end());
      watch->look_at(inputs);
    }
    if (is_told) tell(waiting_for(line.words));
    if (!wait_for_save(*watch, stream)) return {.reader_gone = true};
  }
}

}  // namespace

Outcome check(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::check));
  if (line.output && line.report) return refused(two_places_for_report());
  if (line.watch) return watch_logs(line);
  RunFiles files = files_of(line);
  if (const auto error = files.refuse(line.words)) return refused(*error);
  return report(line, files, {}, report_file(line));
}

}  // namespace lodebook::cli
