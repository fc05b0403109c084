// SPDX-License-Identifier: MIT
// `lodebook register`: samples, photos and notes of whole logs.
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <utility>

namespace lodebook::cli {

Outcome register_items(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::register_items));
  RunFiles files(line, !line.output);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  OutputFile file = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
  std::vector<Document> documents;
  documents.push_back(
      Document::items(line.register_format.value_or(RegisterFormat::csv), std::move(file)));
  Outcome outcome;
  reduce_logs(line, files, documents, outcome, FaultsTold::counted);
  documents.front().finish(outcome);
  return outcome;
}

}  // namespace lodebook::cli
