// SPDX-License-Identifier: MIT
// A log read whole, which the program itself never does: it reads it station by station.
#pragma once

#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::test {

/// What is kept of a log, but with all entries and faults of its blocks.
struct Book : notebook::Notebook {
  std::vector<notebook::Diagnostic> diagnostics;
};

inline Book read_whole(notebook::Source source, const notebook::ReadOptions& options = {}) {
  Book book{notebook::read_log(std::move(source), options), {}};
  std::vector<notebook::Entry> entries;
  notebook::BlockReader blocks(book);
  for (notebook::Block block; blocks.next(block);) {
    std::ranges::move(block.entries, std::back_inserter(entries));
    std::ranges::move(block.diagnostics, std::back_inserter(book.diagnostics));
  }
  book.entries = std::move(entries);
  return book;
}

}  // namespace lodebook::test
