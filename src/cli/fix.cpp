// SPDX-License-Identifier: MIT
// `lodebook fix`: positions from the sights and legs of whole logs.
#include <array>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/output/fix_report.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

constexpr std::array<std::pair<std::string_view, FixFormat>, 3> extensions = {
    {{".json", FixFormat::json}, {".csv", FixFormat::csv}, {".geojson", FixFormat::geojson}}};

/// What was found, with all that is wrong in the log. Leaves the reduction at its end.
reduction::Fixes fixes_of(reduction::Reduction& reduction) {
  reduction::Fixes fixes = reduction.fixes();
  // Those of the fixes are among the reduction's.
  fixes.diagnostics.clear();
  reduction::Page page;
  while (reduction.next(page)) {
    fixes.diagnostics.insert(fixes.diagnostics.end(), page.diagnostics.begin(),
                             page.diagnostics.end());
  }
  return fixes;
}

}  // namespace

Outcome fix(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::fix));
  const FixFormat format = line.fix_format ? *line.fix_format
                           : line.output   ? format_of(*line.output, extensions, FixFormat::text)
                                           : FixFormat::text;
  const bool is_text = format == FixFormat::text;
  const bool to_screen = !line.output && !(line.quiet && is_text);
  if (const auto error = refuse(line, line.words, to_screen)) return refused(*error);

  std::vector<Document> documents;
  if (line.output || to_screen) {
    OutputFile file = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
    const bool color = is_colored(line, file);
    documents.push_back(Document::fixes(format, color, std::move(file)));
  }
  if (line.rays) documents.push_back(Document::rays(OutputFile::named(*line.rays)));
  // The other formats hold the diagnostics.
  const bool tells = !line.quiet && (format == FixFormat::csv || format == FixFormat::geojson);
  const bool color = is_colored(line, OutputFile::standard_error());

  Outcome outcome;
  reduction::Options options = options_of(line);
  options.all_places = true;
  read_logs(line, outcome, [&](const notebook::Notebook& notebook) {
    reduction::Reduction reduction(notebook, options);
    const reduction::Fixes fixes = fixes_of(reduction);
    for (Document& document : documents) {
      LogText text = document.blank_log();
      text.fixed(notebook.source, fixes);
      document.append(text);
    }
    if (tells) {
      std::string text;
      output::append_fix_diagnostics(text, notebook.source, fixes, color);
      tell(text);
    }
    judge(line, reduction.counts(), outcome);
    // The rays still go to their file where the reader of the other output has gone.
    return line.rays || documents.empty() || !documents.front().file().reader_gone();
  });
  for (Document& document : documents)
    document.finish(outcome);
  return outcome;
}

}  // namespace lodebook::cli
