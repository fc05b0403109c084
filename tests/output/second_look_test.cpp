// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/second_look.hpp>

namespace lodebook {
namespace {

using notebook::Severity;

void add(reduction::Page& page, std::uint32_t line, double weight,
         Severity severity = Severity::warning) {
  notebook::Diagnostic diagnostic;
  diagnostic.place = {line, 1, 2};
  diagnostic.weight = weight;
  diagnostic.severity = severity;
  page.diagnostics.push_back(diagnostic);
}

std::vector<std::uint32_t> lines(const output::SecondLook& look) {
  std::vector<std::uint32_t> out;
  for (const auto& item : look.items())
    out.push_back(item.diagnostic.place.line);
  return out;
}

TEST_CASE("the three heaviest come out, heaviest first, earlier ones before later equals") {
  const notebook::Source source("day.txt", "");
  reduction::Page page;
  page.station = "Q1";
  add(page, 1, 5);
  add(page, 2, 9);
  add(page, 3, 7);
  add(page, 4, 9);
  add(page, 5, 1);
  output::SecondLook look;
  look.add(source, page);
  CHECK(lines(look) == std::vector<std::uint32_t>{2, 4, 3});
  CHECK(look.items()[0].file == "day.txt");
  CHECK(look.items()[0].station == "Q1");
}

TEST_CASE("one line counts once, with its heaviest fault") {
  const notebook::Source source("day.txt", "");
  reduction::Page page;
  add(page, 1, 5);
  add(page, 1, 6);
  add(page, 1, 2);
  add(page, 2, 5.5);
  output::SecondLook look;
  look.add(source, page);
  CHECK(lines(look) == std::vector<std::uint32_t>{1, 2});
  CHECK(look.items()[0].diagnostic.weight == 6);

  // The same line of another log is another line, and comes later where it weighs the same.
  output::SecondLook both = look;
  add(page, 3, 6);
  output::SecondLook later;
  later.add(notebook::Source("day2.txt", ""), page);
  both.add(later);
  CHECK(lines(both) == std::vector<std::uint32_t>{1, 1, 3});
  CHECK(both.items()[0].file == "day.txt");
  CHECK(both.items()[1].file == "day2.txt");
}

TEST_CASE("notes are not worth a second look") {
  const notebook::Source source("day.txt", "");
  reduction::Page page;
  add(page, 1, 50, Severity::note);
  output::SecondLook look;
  look.add(source, page);
  CHECK(look.items().empty());
}

}  // namespace
}  // namespace lodebook
