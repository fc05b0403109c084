// SPDX-License-Identifier: MIT
// What is said of a reading beside its figures: facing, sense, doubt, how often.
#pragma once

#include "items.hpp"
#include "page_line.hpp"

namespace lodebook::fair_copy {

/// The reader of such words, on a line whose attitudes somebody else reads.
class ReadingWords : protected PageLine {
 protected:
  ReadingWords(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  /// `W side down`, `down to the E`, `downthrow E`: which block of a fault moved where.
  bool take_blocks();
  bool take_word();

  FoundItems found_;
  bool doubtful_ = false;    ///< of the next attitude
  std::string sense_ahead_;  ///< of the kind that follows

 private:
  /// `top to SW`: where the hanging wall of a shear went.
  bool take_top();
  bool is_beside_figure() const;
  bool is_question(std::size_t ahead) const;
  /// `normal` behind a fault, or before it: `normal fault`.
  bool take_sense(const std::string& said);
  bool take_facing(const std::string& said, std::size_t length);
  void note_facing();
  /// `youngs SE`, `yg to the SE`, `youngs ?`
  bool take_youngs();
  /// `dips NW`, behind an attitude without its side.
  bool take_side();
  bool take_doubt();
  bool take_times(const std::string& digits, std::size_t length);
};

}  // namespace lodebook::fair_copy
