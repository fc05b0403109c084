// SPDX-License-Identifier: MIT
// Names of stations and marks on a line of sights or legs.
#pragma once

#include "page_line.hpp"

namespace lodebook::fair_copy {

class Names : PageLine {
 public:
  Names(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  /// A mark, or a station, and how many tokens name it.
  struct MarkHere {
    std::string name;      ///< empty for none
    bool is_known = true;  ///< the page says that it is a mark
    std::size_t length = 0;
  };
  /// What most of the words from token `at` on name; nothing where two marks are named alike.
  MarkHere mark_at(std::size_t at) const;

  /// What a line of a leg begins with: `30 - 31`, `C1 to C2`, `Peg 611 to peg 612`.
  struct Ends {
    std::string first;
    std::string second;   ///< empty for a known station alone: `D to the gate`
    std::size_t end = 0;  ///< of their tokens
  };
  std::optional<Ends> ends_of_leg() const;
  /// The ends of a leg lose what they mean elsewhere: `0 to S1`, where S1 is no foliation.
  void free_ends_of_leg();
  /// The stations that a sight or a leg goes to: `Stn 1 273`, `to Stn 2`. Elsewhere they are set
  /// aside.
  void free_stations();

  /// The end of a leg's target that begins at token `k`, behind `to`: `R4`, `the sign post`; `k` if
  /// there is none.
  std::size_t end_of_target(std::size_t k) const;
  /// What is named by the tokens from `first` up to `end`, without an article or the word station.
  std::string target(std::size_t first, std::size_t end) const;

  /// Where the words before the bearing at token `at` begin that name something nobody declared;
  /// `at` if there are none.
  std::size_t start_before(std::size_t at) const;
  /// Where they end: before `bears`, `is at`.
  std::size_t end_before(std::size_t at, std::size_t first) const;

 private:
  bool is_station_to_sight(std::size_t at) const;
  bool leads(std::size_t i) const;
  std::size_t behind_article(std::size_t k) const;
  std::size_t words_of(const Mark& mark, std::size_t at) const;
  std::optional<Ends> ends_before_colon() const;
  bool is_other_number(std::string_view word, std::size_t i) const;
  bool is_name(std::size_t i) const;
  bool is_id(std::size_t i) const;
  std::string station_at(std::size_t first, std::size_t end) const;
};

}  // namespace lodebook::fair_copy
