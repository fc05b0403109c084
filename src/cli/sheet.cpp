// SPDX-License-Identifier: MIT
// `lodebook sheet`: one log as a page to print.
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <lodebook/cli/proposals.hpp>
#include <lodebook/drawing/map.hpp>
#include <lodebook/drawing/sheet.hpp>

namespace lodebook::cli {
namespace {

/// The map to go with the log, which is reduced once more as a map wants it.
drawing::Map map_of(const notebook::Notebook& notebook, reduction::Options options) {
  options.repeats = reduction::Repeats::mean;
  options.all_places = true;
  reduction::Reduction reduction(notebook, options);
  drawing::Map map(reduction::Selection{});
  map.begin_log(reduction);
  reduction::Page page;
  while (reduction.next(page))
    map.page(notebook.source, page);
  return map;
}

}  // namespace

Outcome sheet(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::sheet));
  if (line.words.size() > 1) return refused(sheet_of_many());
  RunFiles files(line, !line.output);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  Outcome outcome;
  std::string text;
  const auto make = [&](const notebook::Notebook& notebook, LogPart& part) {
    const reduction::Options options = options_of(line);
    drawing::Sheet sheet(map_of(notebook, options), line.planes);
    reduction::Reduction reduction(notebook, options);
    sheet.begin_log(reduction);
    Proposals proposals(notebook);
    reduction::Page page;
    while (reduction.next(page)) {
      proposals.attach(page.diagnostics);
      sheet.page(notebook.source, page);
    }
    sheet.end_log();
    note_faults(part, line, reduction);
    sheet.append_html(text);
  };
  run_logs_in_turn(line, files, make, outcome);
  if (!text.empty()) deliver(line, text, outcome);
  return outcome;
}

}  // namespace lodebook::cli
