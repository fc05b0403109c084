// SPDX-License-Identifier: MIT
// Every example of `lodebook explain` provokes its own diagnostic, and no other.
#include <catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include <lodebook/notebook/catalogue.hpp>
#include <lodebook/reduction/reduction.hpp>

using namespace lodebook;

namespace {

/// The options in an example's first line, `# lodebook check --declination 20E` or
/// `# lodebook reduce --north grid`.
reduction::Options options_of(std::string_view example) {
  reduction::Options options;
  if (example.starts_with("# lodebook reduce --north grid\n")) {
    options.north = reduction::North::grid;
    return options;
  }
  constexpr std::string_view command = "# lodebook check ";
  if (!example.starts_with(command)) return options;
  constexpr std::string_view declination = "--declination ";
  std::string_view words = example.substr(command.size());
  words = words.substr(0, words.find('\n'));
  REQUIRE(words.starts_with(declination));  // the only other option that an example needs
  std::vector<notebook::Diagnostic> faults;
  options.declination = notebook::read_declination(
      notebook::Source("option", std::string(words.substr(declination.size()))), faults);
  REQUIRE(faults.empty());
  REQUIRE(options.declination.has_value());
  return options;
}

std::vector<notebook::Diagnostic> faults_of(std::string_view example) {
  const notebook::Notebook log =
      notebook::read_log(notebook::Source("example.txt", std::string(example)));
  reduction::Reduction reduction(log, options_of(example));
  std::vector<notebook::Diagnostic> faults;
  reduction::Page page;
  while (reduction.next(page))
    faults.insert(faults.end(), page.diagnostics.begin(), page.diagnostics.end());
  return faults;
}

}  // namespace

TEST_CASE("there is one page a code, found by its name in any case") {
  REQUIRE(notebook::catalogue().size() == notebook::code_count);
  for (const notebook::CodePage& page : notebook::catalogue()) {
    CHECK(notebook::name_of(page.code) == page.name);
    CHECK(notebook::page_named(page.name) == &page);
    std::string capitals(page.name);
    for (char& c : capitals)
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    CHECK(notebook::page_named(capitals) == &page);
  }
  CHECK(notebook::page_named("") == nullptr);
  CHECK(notebook::page_named("quadrant") == nullptr);
}

TEST_CASE("no two pages share a name, a title or an example") {
  const auto pages = notebook::catalogue();
  for (std::size_t i = 0; i < pages.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      CHECK(pages[i].name != pages[j].name);
      CHECK(pages[i].title != pages[j].title);
      CHECK(pages[i].example != pages[j].example);
    }
  }
}

TEST_CASE("every example provokes its own diagnostic and no other") {
  for (const notebook::CodePage& page : notebook::catalogue()) {
    CAPTURE(page.name);
    const std::vector<notebook::Diagnostic> faults = faults_of(page.example);
    CHECK(!faults.empty());
    for (const notebook::Diagnostic& fault : faults) {
      CHECK(std::string(notebook::name_of(fault.code)) == page.name);
      CHECK(notebook::name_of(fault.severity) == notebook::name_of(page.severity));
    }
  }
}

TEST_CASE("every page has its wording") {
  for (const notebook::CodePage& page : notebook::catalogue()) {
    CAPTURE(page.name);
    CHECK(!page.title.empty());
    CHECK(!page.title.ends_with('.'));
    CHECK(page.meaning.ends_with('.'));
    CHECK(!page.remedy.empty());
    CHECK(page.example.ends_with('\n'));
  }
}
