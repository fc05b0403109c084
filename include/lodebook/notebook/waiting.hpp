// SPDX-License-Identifier: MIT
// What a log does not state although readings need it. Each question is asked once, for all of
// them.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>

namespace lodebook::notebook {

enum class Question : std::uint8_t {
  side,            ///< strike and dip without side or rule: `N62E 37`
  side_or_order,   ///< a strike or a dip direction: `242/37`
  dip_first,       ///< is it the dip that stands first? `37/332`
  order_of_plane,  ///< two figures, neither with three digits
  plunge_first,    ///< is it the plunge that stands first? `35/310`
  order_of_line,   ///< two figures, neither with three digits
  pace,            ///< legs in paces
};
inline constexpr std::size_t question_count = static_cast<std::size_t>(Question::pace) + 1;

/// How many readings of a log wait for something.
struct Waiting {
  /// By question.
  std::array<std::uint32_t, question_count> for_answer{};
  /// Readings, or other lines, that wait for a void statement, by its offset plus one.
  std::map<std::uint32_t, std::uint32_t> for_line;
  /// Lines with an unknown word before an attitude, by that word with its case folded.
  std::map<std::string, std::uint32_t> words;
};

}  // namespace lodebook::notebook
