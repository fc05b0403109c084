// SPDX-License-Identifier: MIT
// `lodebook map`: stations, attitudes and sights on a map.
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <lodebook/drawing/map.hpp>
#include <lodebook/drawing/svg.hpp>

namespace lodebook::cli {

Outcome map(const CommandLine& line) {
  if (line.words.empty()) return refused(logs_missing(Command::map));
  RunFiles files(line, !line.output);
  if (const auto error = files.refuse(line.words)) return refused(*error);

  Outcome outcome;
  drawing::Map map(line.selection);
  std::size_t logs = 0;
  reduction::Options options = options_of(line);
  options.repeats = reduction::Repeats::mean;
  options.all_places = true;
  const auto make = [&](const notebook::Notebook& notebook, LogPart& part) {
    reduction::Reduction reduction(notebook, options);
    map.begin_log(reduction);
    ++logs;
    reduction::Page page;
    while (reduction.next(page))
      map.page(notebook.source, page);
    note_faults(part, line, reduction);
  };
  run_logs_in_turn(line, files, make, outcome);
  if (outcome.usage || logs == 0) return outcome;  // none could be read
  if (const auto error = refuse_kinds(line, map.kinds())) return refused(*error);
  if (const auto too_wide = map.too_wide()) return refused(map_too_wide(*too_wide, logs > 1));

  if (!line.quiet) {
    if (!map.has_places()) tell(nothing_on_map());
    for (const std::string& remark : map.remarks())
      tell(not_on_map(remark));
  }
  std::string text;
  drawing::append_svg_file(text, map.picture());
  deliver(line, text, outcome);
  return outcome;
}

}  // namespace lodebook::cli
