// SPDX-License-Identifier: MIT
// The random pages themselves: what they mean must be certain before a copy is held against it.
#include <catch.hpp>

#include "fair_copy/random_pages.hpp"
#include "fair_copy/reduced_rows.hpp"

namespace lodebook::test {
namespace {

constexpr std::uint32_t pages = 200;

TEST_CASE("what a random page means is a log with a row for each of its readings") {
  for (std::uint32_t seed = 0; seed < pages; ++seed) {
    const RandomPage page = random_page(seed);
    CAPTURE(seed, page.text, page.truth);
    const ReducedLog truth = reduced_rows(page.truth);
    REQUIRE(truth.error_lines.empty());
    std::size_t row = 0;
    for (const Known& known : page.readings) {
      if (known.canonical.empty()) continue;
      REQUIRE(row < truth.rows.size());
      REQUIRE_FALSE(truth.rows[row].rejected);
      REQUIRE(known.canonical.starts_with(truth.rows[row].kind + " "));
      ++row;
    }
    REQUIRE(row == truth.rows.size());
  }
}

TEST_CASE("a random page knows where its readings stand") {
  for (std::uint32_t seed = 0; seed < pages; ++seed) {
    const RandomPage page = random_page(seed);
    CAPTURE(seed, page.text);
    for (const Known& known : page.readings) {
      REQUIRE(known.offset + known.length <= page.text.size());
      const std::string_view before = std::string_view(page.text).substr(0, known.offset);
      REQUIRE(known.line ==
              1u + static_cast<std::uint32_t>(std::count(before.begin(), before.end(), '\n')));
    }
  }
}

TEST_CASE("a random page is the same each time") {
  for (std::uint32_t seed = 0; seed < pages; ++seed)
    REQUIRE(random_page(seed).text == random_page(seed).text);
  // On every machine: the generator's own arithmetic, not a library's.
  CHECK(random_page(1).text != random_page(2).text);
}

}  // namespace
}  // namespace lodebook::test
