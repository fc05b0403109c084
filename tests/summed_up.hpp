// SPDX-License-Identifier: MIT
// Logs, and the document of what they add up to.
#pragma once

#include <lodebook/output/summary.hpp>

#include "gathered.hpp"

namespace lodebook::test {

/// A summary of logs and all that it is made from.
struct SummedUp {
  explicit SummedUp(const std::vector<NamedLog>& logs, reduction::Grouping by = {},
                    reduction::Selection which = {}, const reduction::Options& options = {})
      : attitudes(gathered(logs, options)),
        grouping(by),
        selection(std::move(which)),
        repeats(options.repeats),
        summaries(reduction::summarise(attitudes, grouping, selection)) {}
  explicit SummedUp(const std::string& log) : SummedUp({{"day.txt", log}}) {}
  SummedUp(const SummedUp&) = delete;
  SummedUp& operator=(const SummedUp&) = delete;

  output::SummaryDocument document() const {
    return {attitudes, summaries, grouping, selection, repeats};
  }

  reduction::Attitudes attitudes;
  reduction::Grouping grouping;
  reduction::Selection selection;
  reduction::Repeats repeats;
  std::vector<reduction::Summary> summaries;
};

}  // namespace lodebook::test
