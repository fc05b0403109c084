// SPDX-License-Identifier: MIT
// Pages as people might type them, made at random from readings that are known.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lodebook::test {

/// A reading of a page.
struct Known {
  /// In the page, from 1.
  std::uint32_t line = 1;
  /// What its writer meant, as the language says it; empty for a mistake, which must be asked.
  std::string canonical;
  /// Where its figures stand in the page, in bytes.
  std::size_t offset = 0;
  std::size_t length = 0;
  /// All its figures are needed, and no line below leans on it.
  bool stands_alone = false;
};

struct RandomPage {
  std::string text;
  /// In the order of the page.
  std::vector<Known> readings;
  /// The log that the page means: its settings, and each canonical statement at its station.
  std::string truth;
};

/// The page of that number: one hand, some stations, each habit of writing as often as another.
RandomPage random_page(std::uint32_t seed);

}  // namespace lodebook::test
