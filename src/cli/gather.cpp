// SPDX-License-Identifier: MIT
#include <lodebook/cli/gather.hpp>

#include <algorithm>
#include <lodebook/cli/commands.hpp>
#include <lodebook/output/table.hpp>

namespace lodebook::cli {

Outcome show_groups(Command command, const CommandLine& line,
                    const std::function<std::string(const output::SummaryDocument&)>& show) {
  if (line.words.empty()) return refused(logs_missing(command));
  if (const auto error = refuse(line, line.words, !line.output)) return refused(*error);

  Outcome outcome;
  reduction::Attitudes attitudes;
  LogVisitor visitor;
  visitor.begin_log = [&](const reduction::Reduction& reduction) {
    attitudes.begin_log(reduction);
  };
  visitor.page = [&](const notebook::Source&, const reduction::Page& page) {
    attitudes.add(page);
    return true;
  };
  visitor.end_log = [&](const reduction::Reduction& reduction) { tell_faults(line, reduction); };
  reduce_logs(line, options_of(line), visitor, outcome);
  if (attitudes.logs().empty()) return outcome;  // none could be read
  if (const auto error = refuse_kinds(line, attitudes.kinds())) return refused(*error);

  const auto summaries = reduction::summarise(attitudes, line.grouping, line.selection);
  deliver(line, show({attitudes, summaries, line.grouping, line.selection, line.repeats}), outcome);
  return outcome;
}

void tell_faults(const CommandLine& line, const reduction::Reduction& reduction) {
  if (line.quiet) return;
  const reduction::Counts& counts = reduction.counts();
  tell(faults_counted(output::shown_name(reduction.notebook().source), counts.errors,
                      counts.warnings));
}

std::optional<UsageError> refuse_kinds(const CommandLine& line,
                                       const std::vector<std::string>& kinds) {
  const auto fold = [](const std::string& name) { return notebook::fold_case(name); };
  for (const std::string& kind : line.selection.kinds) {
    if (std::ranges::find(kinds, fold(kind), fold) == kinds.end()) return kind_unknown(kind, kinds);
  }
  return std::nullopt;
}

void deliver(const CommandLine& line, std::string_view text, Outcome& outcome) {
  OutputFile file = line.output ? OutputFile::named(*line.output) : OutputFile::standard_output();
  file.write(text);
  file.commit();
  finished(file, outcome);
}

}  // namespace lodebook::cli
