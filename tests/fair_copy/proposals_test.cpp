// SPDX-License-Identifier: MIT
// What is proposed for lines that the language refuses, and what the reader makes of it.
#include <algorithm>

#include <lodebook/notebook/notebook.hpp>

#include "made.hpp"

namespace lodebook {
namespace {

using namespace test;
using notebook::Notebook;
using notebook::Source;

std::vector<fair_copy::Proposal> proposed(const std::string& log,
                                          const notebook::ReadOptions& options = {}) {
  return fair_copy::proposals(notebook::read_log(Source("log", log), options));
}

/// The log with every proposal in place of its line.
std::string applied(const std::string& log) {
  const Source source("log", log);
  const auto proposals = proposed(log);
  std::string text;
  auto next = proposals.begin();
  for (std::uint32_t number = 1; number <= source.line_count(); ++number) {
    if (next == proposals.end() || next->line != number) {
      text += std::string(source.text(source.line(number))) + '\n';
      continue;
    }
    for (const std::string& statement : next->statements)
      text += statement + '\n';
    ++next;
  }
  return text;
}

std::size_t errors_of(const std::string& log) {
  const Notebook notebook = notebook::read_log(Source("log", log));
  notebook::BlockReader blocks(notebook);
  notebook::Block block;
  std::size_t errors = 0;
  while (blocks.next(block))
    errors += static_cast<std::size_t>(std::ranges::count(
        block.diagnostics, notebook::Severity::error, &notebook::Diagnostic::severity));
  return errors;
}

TEST_CASE("a line that can be read in one way is proposed") {
  const auto proposals = proposed(heading +
                                  "bedding N62E 37NW\n"
                                  "jts N50E 80SE and N48E 82 SE\n"
                                  "bedding N98E 37N\n"
                                  "axis of small fold plunges 12 to N40W\n");
  REQUIRE(proposals.size() == 2);
  CHECK(proposals[0].line == 8);
  CHECK(proposals[0].statements == Made{"joint N50E 80 SE", "joint N48E 82 SE"});
  CHECK(proposals[1].line == 10);
  CHECK(proposals[1].statements == Made{"fold-axis 12 > N40W"});
}

TEST_CASE("a proposal keeps every word of its line") {
  CHECK(proposed("Creek section below the dam, 3 June 2026\nstation 7\n").empty());
  const auto proposals = proposed(heading + "jts N50E 80SE, rusty\n");
  REQUIRE(proposals.size() == 1);
  CHECK(proposals[0].statements == Made{"joint N50E 80 SE  ; rusty"});
}

TEST_CASE("what would be lost is asked, not proposed") {
  CHECK(proposed(heading + "fault N20W 60 E normal dextral\n").empty());
  CHECK(proposed(heading + "leg S38E 120m to\n").empty());
}

TEST_CASE("neither a question nor a note is proposed") {
  CHECK(proposed(heading + "bedding N98E 37N\npebbly grit over slate\n").empty());
  CHECK(proposed(heading + "bedding N62E 37NW\n").empty());
  // A copy waits for a person.
  CHECK(proposed("# page 1: jt\nstation 7\njts N50E 80SE\n").empty());
  CHECK(proposed(heading + "ask joint N50E 80SE\n").empty());
}

TEST_CASE("the rule may come from an option") {
  const std::string log = "dial azimuth\nset 0\ndeclination 24.6E\nstation 7\njts 062/37\n";
  CHECK(proposed(log).empty());
  notebook::ReadOptions options;
  options.rule = HandRule::right;
  const auto proposals = proposed(log, options);
  REQUIRE(proposals.size() == 1);
  CHECK(proposals[0].statements == Made{"joint 062/37"});
}

TEST_CASE("the reader takes every proposal") {
  const std::string log = heading +
                          "Beds N62E 37NW, N58E 34NW; photo 12\n"
                          "strike N63E dip 55 to the NW, bedding\n"
                          "flt? N22W 65 NE\n"
                          "slicks on it pitch 20 from the NW end\n"
                          "Stop 8   above the ford\n"
                          "to the cairn N66W\n"
                          "vein (calcite 2 cm) N80W dips 70 to the north\n";
  const auto proposals = proposed(log);
  CHECK(proposals.size() == 7);
  CHECK(errors_of(log) >= proposals.size());
  CHECK(errors_of(applied(log)) == 0);
}

TEST_CASE("a heading file is read before the page") {
  Source page("page", "station 7\njts 062/37\n");
  page.add_heading("heading", "dial azimuth\nset 0\ndeclination 24.6E\norder direction/dip\n",
                   false);
  const std::string log = fair_copy::copy_page(notebook::read_log(std::move(page))).log;
  CHECK(log.find("joint 37 > 062\n") != std::string::npos);
  CHECK(log.find("ask ") == std::string::npos);
}

}  // namespace
}  // namespace lodebook
