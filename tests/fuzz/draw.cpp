// SPDX-License-Identifier: MIT
// A log summed up, its positions found, and all of it drawn: whatever is in a log, the documents
// are well-formed and their figures numbers.
#include <nlohmann/json.hpp>

#include <lodebook/drawing/map.hpp>
#include <lodebook/drawing/net.hpp>
#include <lodebook/drawing/rose.hpp>
#include <lodebook/drawing/sheet.hpp>
#include <lodebook/drawing/svg.hpp>
#include <lodebook/output/fix_csv.hpp>
#include <lodebook/output/fix_geojson.hpp>
#include <lodebook/output/fix_json.hpp>
#include <lodebook/output/fix_rays.hpp>
#include <lodebook/output/fix_report.hpp>
#include <lodebook/output/summary.hpp>
#include <lodebook/reduction/fixes.hpp>

#include "target.hpp"

namespace lodebook::fuzz {
namespace {

using notebook::Notebook;
using reduction::Options;
using reduction::Page;
using reduction::Reduction;

void require_json(std::string_view text, std::string_view what) {
  require(nlohmann::json::accept(text), std::string(what) + " is no JSON");
}

void require_svg(const drawing::Picture& picture) {
  std::string text;
  drawing::append_svg_file(text, picture);
  require_well_formed(text);
}

template <class Writer>
std::string written(Writer writer, const Notebook& book, const reduction::Fixes& fixes) {
  std::string out;
  if constexpr (requires { writer.begin(out); }) writer.begin(out);
  writer.log(out, book.source, fixes);
  if constexpr (requires { writer.end(out); }) writer.end(out);
  return out;
}

void fix(const Notebook& book, Options options) {
  options.all_places = true;
  Reduction reduction(book, options);
  const reduction::Fixes& fixes = reduction.fixes();
  require_printable(written(output::FixReport(false), book, fixes), "the report on positions");
  require_json(written(output::FixJson(), book, fixes), "the document of positions");
  require_json(written(output::FixGeoJson(), book, fixes), "the map of positions");
  require_json(written(output::FixRays(), book, fixes), "the map of sights");
  const auto rows = cells_of_csv(written(output::FixCsv(), book, fixes));
  require_no_formula(rows);
  require(rows.size() == fixes.stations.size() + 1,
          "the table of positions has more or fewer rows than the log has stations");
}

void sum_up(const Notebook& book, const Options& options, unsigned bits) {
  reduction::Attitudes attitudes;
  Reduction reduction(book, options);
  attitudes.begin_log(reduction);
  Page page;
  while (reduction.next(page))
    attitudes.add(page);
  const reduction::Grouping grouping = {.by_unit = (bits & 1U) != 0,
                                        .by_station = (bits & 4U) != 0};
  const reduction::Selection selection = {.kinds = {}, .without_suspect = (bits & 32U) != 0};
  const auto summaries = reduction::summarise(attitudes, grouping, selection);
  const output::SummaryDocument document = {attitudes, summaries, grouping, selection,
                                            options.repeats};
  std::string text;
  output::append_summary_text(text, document, false);
  require_printable(text, "the summary");
  std::string json;
  output::append_summary_json(json, document);
  require_json(json, "the summary");
  std::string csv;
  output::append_summary_csv(csv, document);
  const auto rows = cells_of_csv(csv);
  require_no_formula(rows);
  require(rows.size() == summaries.size() + 1, "the summary has more or fewer rows than groups");
  require_svg(drawing::net_picture(
      document, {.poles = true, .circles = (bits & 8U) != 0, .contours = (bits & 16U) != 0}));
  require_svg(drawing::rose_picture(document, (bits & 64U) != 0 ? 5 : 10));
}

drawing::Map map_of(const Notebook& book, Options options) {
  options.repeats = reduction::Repeats::mean;
  options.all_places = true;
  drawing::Map map(reduction::Selection{});
  Reduction reduction(book, options);
  map.begin_log(reduction);
  Page page;
  while (reduction.next(page))
    map.page(book.source, page);
  return map;
}

void draw(const Notebook& book, const Options& options) {
  const drawing::Map map = map_of(book, options);
  require_svg(map.picture());
  drawing::Sheet sheet(map);
  Reduction reduction(book, options);
  sheet.begin_log(reduction);
  Page page;
  while (reduction.next(page))
    sheet.page(book.source, page);
  sheet.end_log();
  std::string text;
  sheet.append_html(text);
  require_well_formed(text);
}

}  // namespace

void try_input(std::string_view input) {
  const Choice choice = choice_of(input);
  const Notebook book =
      notebook::read_log(notebook::Source("fuzz.log", choice.text), {choice.options.rule});
  fix(book, choice.options);
  sum_up(book, choice.options, choice.bits);
  draw(book, choice.options);
}

}  // namespace lodebook::fuzz
