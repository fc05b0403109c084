// SPDX-License-Identifier: MIT
#include <lodebook/cli/gather.hpp>

#include <algorithm>
#include <lodebook/cli/commands.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

/// The planes and lines of one log, on their way into those of all.
class GatheredLog final : public LogPart {
 public:
  GatheredLog(const CommandLine& line, const reduction::Options& options, reduction::Attitudes& all)
      : line_(line), options_(options), all_(all) {}

  void make(const notebook::Notebook& notebook, const GoOn& go_on) override {
    reduction::Reduction reduction(notebook, options_);
    attitudes_.begin_log(reduction);
    reduction::Page page;
    while (go_on() && reduction.next(page))
      attitudes_.add(page);
    note_faults(*this, line_, reduction);
  }
  bool take() override {
    all_.add(std::move(attitudes_));
    return true;
  }

 private:
  const CommandLine& line_;
  const reduction::Options& options_;
  reduction::Attitudes& all_;
  reduction::Attitudes attitudes_;
};

}  // namespace

Outcome show_groups(Command command, const CommandLine& line,
                    const std::function<std::string(const output::SummaryDocument&)>& show) {
  if (line.words.empty()) return refused(logs_missing(command));
  RunFiles files(line, !line.output);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  Outcome outcome;
  reduction::Attitudes attitudes;
  const reduction::Options options = options_of(line);
  run_logs(
      line, files, {}, [&] { return std::make_unique<GatheredLog>(line, options, attitudes); },
      outcome);
  if (outcome.usage || attitudes.logs().empty()) return outcome;  // none could be read
  if (const auto error = refuse_kinds(line, attitudes.kinds())) return refused(*error);

  const auto summaries = reduction::summarise(attitudes, line.grouping, line.selection);
  deliver(line,
          show({attitudes, summaries, line.grouping, line.selection, line.repeats, line.planes}),
          outcome);
  return outcome;
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
