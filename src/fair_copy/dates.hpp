// SPDX-License-Identifier: MIT
// Days as people write them.
#pragma once

#include <string>

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// A day on a line.
struct Day {
  /// ISO 8601; of one that is asked, the likelier reading.
  std::string iso;
  /// The other reading of `5/6/26`; empty where there is one only.
  std::string other;
  std::size_t begin = 0;  ///< its tokens
  std::size_t end = 0;
};

/// The first day on the line: `14 May 2026`, `May 14, 2026`, `July 8/26`, `14.05.2026`, `5/6/26`,
/// `2026-05-14`. A day of the week decides between two readings.
std::optional<Day> day_on(const Tokens& tokens);

}  // namespace lodebook::fair_copy
