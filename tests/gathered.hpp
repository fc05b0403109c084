// SPDX-License-Identifier: MIT
// Logs gathered into groups.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include <lodebook/reduction/attitudes.hpp>

namespace lodebook::test {

/// A log's name and its text.
using NamedLog = std::pair<std::string, std::string>;

/// The planes and lines of the logs, which themselves are gone.
inline reduction::Attitudes gathered(const std::vector<NamedLog>& logs,
                                     const reduction::Options& options = {}) {
  reduction::Attitudes attitudes;
  for (const auto& [name, text] : logs) {
    const notebook::Notebook book =
        notebook::read_log(notebook::Source(name, text), {options.rule});
    reduction::Reduction reduction(book, options);
    attitudes.begin_log(reduction);
    reduction::Page page;
    while (reduction.next(page))
      attitudes.add(page);
  }
  return attitudes;
}

}  // namespace lodebook::test
