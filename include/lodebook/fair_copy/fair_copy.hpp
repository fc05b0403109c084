// SPDX-License-Identifier: MIT
// The fair copy: a page as people type it, turned into a log for a person to read through beside
// it.
//
// What the page says beyond doubt is written as a statement of the language, what it does not say
// is asked (`ask STATEMENT`), and what is no reading is kept as a note. A statement is written only
// if every figure of its line is accounted for, and if the strict reader takes it with the same
// value. Nothing of the page is lost: each line that changes stands as a comment above what was
// made of it, `# page 14: axis of small fold plunges 12 to N40W`.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::fair_copy {

/// What became of the lines of a page.
struct Tally {
  /// Readings found: those taken, and those asked.
  std::uint32_t taken = 0;
  std::uint32_t asked = 0;
  /// Lines kept as notes.
  std::uint32_t notes = 0;
  /// Questions about the heading.
  std::uint32_t questions = 0;
  /// Other questions: a position, a setting, a line that might be a reading.
  std::uint32_t other_questions = 0;

  /// Nothing waits for an answer.
  bool is_clear() const { return asked == 0 && questions == 0 && other_questions == 0; }
};

struct Copy {
  std::string log;
  Tally tally;
};

/// The fair copy of a page. A page that is a log without errors comes out byte for byte, and so
/// does a copy. The same page gives the same bytes. Cost is linear in the page,
/// but for its landmarks and stations, each of whose names may stand on any line.
Copy copy_page(const notebook::Notebook& page);

/// A line that the language refuses, and the statements that it is taken for: those that stand in
/// the copy without a question, are no note, and keep every word of the line.
struct Proposal {
  std::uint32_t line = 1;
  std::vector<std::string> statements;
};

/// The proposals for a log, in the order of its lines. There are none for a copy, whose questions a
/// person answers. Cost as that of the copy.
std::vector<Proposal> proposals(const notebook::Notebook& log);

}  // namespace lodebook::fair_copy
