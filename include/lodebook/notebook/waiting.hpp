// SPDX-License-Identifier: MIT
// What readings wait for that their log does not say: asked once, for all of them.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>

namespace lodebook::notebook {

enum class Question : std::uint8_t {
  side,            ///< planes by their strike, without side or rule: `N62E 37`
  side_or_order,   ///< pairs that are a strike or a dip direction: `242/37`
  dip_first,       ///< `37/332`
  order_of_plane,  ///< two figures of which neither has three digits
  plunge_first,    ///< `35/310`
  order_of_line,   ///< two figures of which neither has three digits
  pace,            ///< legs in paces
};
inline constexpr std::size_t question_count = static_cast<std::size_t>(Question::pace) + 1;

/// How many readings of a log wait for something.
struct Waiting {
  std::array<std::uint32_t, question_count> for_answer{};
  /// By one past the offset of a void statement.
  std::map<std::uint32_t, std::uint32_t> for_line;
  /// Lines that begin with a word that is no kind, with an attitude behind it; by that word, its
  /// case folded.
  std::map<std::string, std::uint32_t> words;
};

}  // namespace lodebook::notebook
