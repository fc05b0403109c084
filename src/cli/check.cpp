// SPDX-License-Identifier: MIT
// `lodebook check`: the report alone.
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <utility>

namespace lodebook::cli {

Outcome check(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::check));
  if (line.output && line.report) return refused(two_places_for_report());
  const std::optional<std::string>& name = line.output ? line.output : line.report;
  const bool to_screen = !name && !line.quiet;
  RunFiles files(line, to_screen);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  std::vector<Document> documents;
  if (name || !line.quiet) {
    OutputFile file = name ? OutputFile::named(*name) : OutputFile::standard_output();
    const bool color = is_colored(line, file);
    documents.push_back(
        Document::report(line.report_format, color, line.planes, std::move(file), false));
  }
  Outcome outcome;
  reduce_logs(line, files, documents, outcome);
  for (Document& document : documents)
    document.finish(outcome);
  return outcome;
}

}  // namespace lodebook::cli
