// SPDX-License-Identifier: MIT
// What became of a page, line by line: its text, its tally, the questions about its heading, and
// the strict reader's opinion of what was written.
#pragma once

#include <lodebook/fair_copy/fair_copy.hpp>

#include "page.hpp"

namespace lodebook::fair_copy {

/// A line of the page and what became of it.
struct Copied {
  std::uint32_t number = 0;  ///< on the page, from 1; 0 for the questions about the heading
  std::string_view typed;
  bool as_typed = true;
  Lines lines;  ///< in place of what is typed
  bool in_station = false;
  std::uint32_t typed_readings = 0;  ///< of a line that stands as typed
  /// It stands as typed although nobody understands it yet: a question, or a line that is too long.
  bool waits = false;
};

class CopiedPage {
 public:
  void add(Copied line);
  /// Puts the questions about the heading before the first station or reading.
  void ask_about_heading(const Page& page);
  /// Turns into questions what the strict reader refuses, or takes for something else; its headings
  /// and options are those of `page`.
  void hold_to_strict(const notebook::Notebook& page);

  const std::vector<Copied>& lines() const { return lines_; }
  std::string text() const;
  Tally tally() const;

 private:
  std::uint32_t waiting(Statement::Wait what) const;
  std::uint32_t waiting_for_kind(const std::string& kind) const;
  bool is_asked(std::string_view setting) const;
  bool asks_what_fails(const notebook::Notebook& page);

  std::vector<Copied> lines_;
  std::optional<std::size_t> first_;  ///< the line of the first station or reading
};

/// Whether a text is a copy already: it has lines of a page above what was made of them.
bool is_copy(const notebook::Source& page);

}  // namespace lodebook::fair_copy
