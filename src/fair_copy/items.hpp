// SPDX-License-Identifier: MIT
// The attitudes that a line holds, and what becomes of them: their kinds, what is said of them,
// their statements.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// One attitude of a line, with what is said of it.
struct Item {
  std::string kind;
  std::string on;
  Attitude attitude;
  Statement statement;
  std::string facing;
  std::string youngs;  ///< a point of the compass
  std::string sense;
  bool about = false;
  bool doubtful = false;
  unsigned times = 1;
  /// The kind stands on this line, or a ditto mark for it.
  bool has_own_kind = false;
  /// Why its kind is asked, such as an unknown word before it; empty where it is known.
  std::string kind_question;
};

/// What a line of attitudes holds, in the order typed.
struct FoundItems {
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  std::vector<Item> items;
  std::string kind;            ///< the last on the line; empty where none stands there
  bool has_new_kind = false;   ///< no attitude stands behind it
  bool ditto = false;          ///< a mark for the kind
  bool ditto_behind = false;   ///< a mark behind the figures
  bool kind_in_doubt = false;  ///< what stands below is not of that kind either
  std::string on;              ///< the plane, named before its line
  std::string facing_ahead;    ///< said before the figures
  std::string youngs_ahead;
  std::size_t facing_of = none;  ///< the item behind which facing is said
  bool says_sense = false;
  bool all = false;  ///< facing or sense holds for the whole list
  // ---- which block of a fault moved where
  std::string block_side;
  bool block_down = false;
  bool is_top = false;  ///< the upper side of a shear
  std::string question;
};

/// The statements of a line with at least one item. Settles the page's kind, and what a ditto mark
/// below may repeat.
Lines settled(FoundItems found, std::string_view line, const Tokens& tokens, Page& page);

}  // namespace lodebook::fair_copy
