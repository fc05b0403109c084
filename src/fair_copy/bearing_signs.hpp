// SPDX-License-Identifier: MIT
// What shows a line with bearings to be of sights, of a leg, or of attitudes.
#pragma once

#include "page_line.hpp"

namespace lodebook::fair_copy {

class BearingSigns : PageLine {
 public:
  BearingSigns(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  /// `N44E vertical 3`: behind a bearing, and before a short figure without a unit, `vertical` is
  /// an angle, and no word of an attitude.
  void settle_vertical_angles();
  /// It has a word that only an attitude has.
  bool has_attitude(bool leg) const;
  /// It has a bearing and a length.
  bool is_leg() const;
  /// It has two figures that are an attitude: `152/34`, `35 > 120`, `N24W 62`.
  bool has_pair(bool leg) const;
};

}  // namespace lodebook::fair_copy
