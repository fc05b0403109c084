// SPDX-License-Identifier: MIT
// The words of the trade as people write them, and those that a page declares for itself.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

namespace lodebook::fair_copy {

enum class Meaning : std::uint8_t {
  unknown,
  // ---- what is read
  kind,   ///< says: the language's word for it
  sight,  ///< shot, sighted
  leg,
  strike,
  dip,
  direction,  ///< of a dip
  trend,
  plunge,
  rake,
  toward,  ///< to, towards, `->`
  from,
  on,
  back,  ///< of a bearing
  slope,
  up,
  down,
  level,
  south_end,
  end,       ///< of a strike, for a rake
  north_of,  ///< says: grid, true or magnetic
  vertical,
  horizontal,
  // ---- what is said of it
  facing,  ///< says: upright, overturned or unknown
  youngs,
  sense,  ///< says: normal, reverse, dextral or sinistral
  downthrow,
  upthrow,
  top_to,  ///< of a shear, where its upper side went
  block,   ///< side, block, wall: behind a point, of a fault
  place,   ///< limb, bank: the point before it, or behind it, says where, and is no reading
  doubt,
  rough,
  ditto,
  all,       ///< all, both: of what is said behind a list
  together,  ///< and
  either,    ///< or
  mean,
  contrary,  ///< not, wrong, oops: what it stands beside is not meant as it stands
  unread,    ///< no reading, not measured
  // ---- what shows a figure to be no reading
  unit,  ///< of something else: cm, mm, %
  metres,
  feet,
  paces,
  label,    ///< photo, sample, spacing: the figure behind it
  ordinal,  ///< 2nd
  filler,   ///< of no consequence beside a figure
  // ---- headings
  station,  ///< says: what its name keeps in front, such as Window
  at,
  month,    ///< says: its number
  weekday,  ///< says: its number, Monday is 1
  declination,
  dialled,   ///< turned into the dial
  set_word,  ///< of the dial in a heading, of joints at a station
  same,      ///< as what was said before
  none,
  rule,  ///< says: right or left
  order,
  pace,
  observer,
  quadrant,
  azimuth,
  accuracy,
  datum,
  marks,  ///< over a list of landmarks
  elevation,
  clock,  ///< am, pm, h
  area,
  column,  ///< of a table: says its name
};

struct Word {
  Meaning meaning = Meaning::unknown;
  std::string_view says;
};

/// One meaning and the phrases that have it, folded and parted by commas.
struct WordRow {
  Meaning meaning;
  std::string_view says;
  std::string_view phrases;
};

/// `text` in lower case, without accents that nobody types and points, a hyphen as a space.
std::string folded(std::string_view text);

/// The table of the trade, and the page's own words, which take precedence.
class Words {
 public:
  /// The longest phrase has so many words.
  static constexpr std::size_t longest = 5;

  /// What a phrase means, folded and with one space between its words; also in the plural.
  std::optional<Word> find(const std::string& phrase) const;
  /// Declares a word of the page's own; `says` must outlive it.
  void add(std::string_view word, Word meaning) { own_[folded(word)] = meaning; }
  bool is_own(std::string_view word) const { return own_.contains(folded(word)); }

 private:
  std::unordered_map<std::string, Word> own_;
};

}  // namespace lodebook::fair_copy
