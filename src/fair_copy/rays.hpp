// SPDX-License-Identifier: MIT
// The sights and legs that a line holds, and their statements.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// A sight or a leg; each part as typed, empty where nothing is said of it.
struct Ray {
  std::string target;
  std::string from;
  std::string bearing;
  std::string back;
  std::string vertical;  ///< a sight's angle, or a leg's slope
  std::string distance;
  bool south_end = false;
  bool about = false;
  bool doubtful = false;
  bool is_known = true;  ///< the page says that its target is a mark
  std::string own_north;
};

/// What a line of sights or legs holds, in the order typed.
struct FoundRays {
  std::vector<Ray> rays;
  bool is_leg = false;        ///< the line has a length
  bool says_leg = false;      ///< by a word, a unit or its ends
  bool to_here = false;       ///< typed at its far end
  std::string opens_station;  ///< where the leg begins, if that is not here
  std::string question;
};

/// The statements of a line with at least one sight or leg, the last with the remark. Settles the
/// page's station, and the leg that a ditto mark below may repeat.
Lines stated(FoundRays found, std::string remark, Page& page);

/// A unit of lengths as it stands behind its figure: `m`, `ft`, ` paces`.
std::string_view unit_of(const Token& unit);

/// `ditto, second taping 64.3 m`: a leg's statement again with the length on this line, asked.
std::optional<Lines> same_leg(const std::string& leg, const Tokens& tokens);

}  // namespace lodebook::fair_copy
