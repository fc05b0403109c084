// SPDX-License-Identifier: MIT
// `lodebook fair-copy`: a page as people type it, as a log.
#include <fmt/format.h>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <lodebook/fair_copy/fair_copy.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::cli {
namespace {

/// `61 readings: 55 taken, 6 asked; 9 lines kept as notes; 2 questions about the heading`
std::string summary_of(const fair_copy::Tally& tally) {
  using output::counted;
  std::string text = fmt::format("{}: {} taken, {} asked; {} kept as notes",
                                 counted(tally.taken + tally.asked, "reading", "readings"),
                                 tally.taken, tally.asked, counted(tally.notes, "line", "lines"));
  if (tally.questions > 0)
    text +=
        fmt::format("; {} about the heading", counted(tally.questions, "question", "questions"));
  if (tally.other_questions > 0)
    text +=
        fmt::format("; {}", counted(tally.other_questions, "other question", "other questions"));
  return text + '\n';
}

}  // namespace

Outcome fair_copy(const CommandLine& line) {
  if (line.words.empty()) return refused(page_missing());
  if (line.words.size() > 1) return refused(fair_copy_of_many());
  RunFiles files(line, !line.output);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  Outcome outcome;
  std::optional<fair_copy::Copy> copy;
  run_logs_in_turn(
      line, files,
      [&](const notebook::Notebook& notebook, LogPart&) { copy = fair_copy::copy_page(notebook); },
      outcome);
  if (!copy) return outcome;  // it could not be read
  deliver(line, copy->log, outcome);
  if (!line.quiet) tell(summary_of(copy->tally));
  if (!copy->tally.is_clear()) outcome.errors = true;
  return outcome;
}

}  // namespace lodebook::cli
