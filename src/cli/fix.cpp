// SPDX-License-Identifier: MIT
// `lodebook fix`: positions from the sights and legs of whole logs.
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/output/fix_report.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

/// The positions found, with all that is wrong in the log. Leaves the reduction at its end.
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

/// The positions of one log, for each document, and its diagnostics where no document holds them.
class FixedLog final : public LogPart {
 public:
  FixedLog(const CommandLine& line, const reduction::Options& options, bool tells,
           std::span<Document> documents)
      : line_(line),
        options_(options),
        tells_(tells),
        documents_(documents),
        texts_(blank_logs(documents)) {}

  void make(const notebook::Notebook& notebook, const GoOn& go_on) override {
    if (!go_on()) return;
    reduction::Reduction reduction(notebook, options_);
    const reduction::Fixes fixes = fixes_of(reduction);
    for (LogText& text : texts_)
      text.fixed(notebook.source, fixes);
    if (tells_) {
      const bool color = is_colored(line_, OutputFile::standard_error());
      output::append_fix_diagnostics(message, notebook.source, fixes, color);
    }
    is_faulty = cli::is_faulty(line_, reduction.counts());
  }
  bool take() override {
    for (std::size_t i = 0; i < texts_.size(); ++i)
      documents_[i].append(texts_[i]);
    // The rays still go to their file where the reader of the other output has gone.
    return line_.rays || documents_.empty() || !documents_.front().file().reader_gone();
  }

 private:
  const CommandLine& line_;
  const reduction::Options& options_;
  bool tells_;
  std::span<Document> documents_;
  std::vector<LogText> texts_;
};

}  // namespace

Outcome fix(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::fix));
  const FixFormat format = line.fix_format.value_or(FixFormat::text);
  const bool is_text = format == FixFormat::text;
  const bool to_screen = !line.output && !(line.quiet && is_text);
  RunFiles files(line, to_screen);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  std::vector<Document> documents;
  if (line.output || to_screen) {
    OutputFile file = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
    const bool color = is_colored(line, file);
    documents.push_back(Document::fixes(format, color, std::move(file)));
  }
  if (line.rays) documents.push_back(Document::rays(OutputFile::named(*line.rays)));
  // The other formats hold the diagnostics.
  const bool tells = !line.quiet && (format == FixFormat::csv || format == FixFormat::geojson);

  Outcome outcome;
  reduction::Options options = options_of(line);
  options.all_places = true;
  run_logs(
      line, files, documents,
      [&] { return std::make_unique<FixedLog>(line, options, tells, documents); }, outcome);
  for (Document& document : documents)
    document.finish(outcome);
  return outcome;
}

}  // namespace lodebook::cli
