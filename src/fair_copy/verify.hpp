// SPDX-License-Identifier: MIT
// The strict reader's opinion: of the page as typed, and of what was written of it.
#pragma once

#include <functional>

#include <lodebook/notebook/notebook.hpp>

#include "page.hpp"

namespace lodebook::fair_copy {

/// What the strict reader makes of one line.
struct StrictLine {
  /// It has statements, and no error; or it is blank, or a comment.
  bool is_good = true;
  /// It is a question that waits for an answer: `ask STATEMENT`.
  bool is_question = false;
  /// What the first error on it says.
  std::string fault;
  std::vector<notebook::Entry> entries;
};

/// All lines of a log by their numbers, from 1; what its headings state stands at 0.
std::vector<StrictLine> strictly_read(const notebook::Notebook& notebook);

/// Whether the strict reader takes a reading with the meaning that was meant.
bool agrees(const notebook::Reading& reading, const Meant& meant);

/// What a line that is in the language already says to the lines below it.
void learn(Page& page, const StrictLine& line, const notebook::Notebook& notebook);

}  // namespace lodebook::fair_copy
