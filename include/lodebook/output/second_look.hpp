// SPDX-License-Identifier: MIT
// The few faults of a batch that most deserve a second look.
#pragma once

#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

/// Keeps the three heaviest errors and warnings of all pages, at most one a line, earlier ones
/// first where they weigh the same.
class SecondLook {
 public:
  struct Item {
    std::string file;
    std::string station;  ///< empty outside stations
    notebook::Diagnostic diagnostic;
    std::size_t log = 0;
  };

  /// The pages that follow belong to another log, which may have the same name.
  void next_log() { ++log_; }
  void add(const notebook::Source& source, const reduction::Page& page);

  /// Heaviest first.
  const std::vector<Item>& items() const { return items_; }

 private:
  std::size_t log_ = 0;
  std::vector<Item> items_;
};

}  // namespace lodebook::output
