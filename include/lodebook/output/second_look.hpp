// SPDX-License-Identifier: MIT
// The few faults of a batch that most deserve a second look.
#pragma once

#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

/// Keeps the three heaviest errors and warnings of a log's pages, at most one a line, earlier ones
/// first where they weigh the same; and so those of many logs.
class SecondLook {
 public:
  struct Item {
    std::string file;
    std::string station;  ///< empty outside stations
    notebook::Diagnostic diagnostic;
  };

  /// A page of the log.
  void add(const notebook::Source& source, const reduction::Page& page);
  /// Another log, after the last page of this one.
  void add(const SecondLook& log);

  /// Heaviest first.
  const std::vector<Item>& items() const { return items_; }

 private:
  void insert(Item item);

  std::vector<Item> items_;
};

}  // namespace lodebook::output
