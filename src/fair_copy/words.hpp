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
  direction,  ///< the azimuth of a dip
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
  // ---- what is said about it
  facing,  ///< says: upright, overturned or unknown
  youngs,
  sense,  ///< says: normal, reverse, dextral or sinistral
  downthrow,
  upthrow,
  top_to,  ///< of a shear, where its upper side went
  block,   ///< side, block, wall of a fault, behind a point
  way_up,  ///< which way up, without a word that says it
  place,   ///< limb, bank: a point before or behind it says where it is, and is no reading
  doubt,
  rough,
  ditto,
  all,       ///< all, both: what follows belongs to all of a list
  together,  ///< and
  either,    ///< or
  mean,
  contrary,  ///< not, wrong, oops: the words beside it are not meant as they stand
  unread,    ///< no reading, not measured
  // ---- what shows that a figure is no reading
  unit,  ///< of something else: cm, mm, %
  metres,
  feet,
  paces,
  label,    ///< photo, sample, spacing: the figure behind it belongs to it
  ordinal,  ///< 2nd
  filler,   ///< changes nothing about the figure beside it
  where,    ///< near, below, upstream: leads to a place
  which,    ///< older, checked: tells one reading from another
  so,       ///< i.e.: the same thing again
  slip,     ///< of striae; says: the rake of such a slip
  // ---- headings
  named,    ///< a station or mark that the page has named; says: its name
  station,  ///< says: the word that stays before its name, such as Window
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
  marks,  ///< the heading of a list of landmarks
  elevation,
  clock,  ///< am, pm, h
  area,
  column,  ///< of a table: says its name
};

/// What a phrase means. `says` is what it adds to its meaning, see there; it may be empty.
struct Word {
  Meaning meaning = Meaning::unknown;
  std::string_view says;
};

/// A meaning and the phrases that have it, folded and separated by commas.
struct WordRow {
  Meaning meaning;
  std::string_view says;
  std::string_view phrases;
};

/// `text` in lower case, without points and colons, and with a space for a hyphen. Accents stay.
std::string folded(std::string_view text);

/// The table of the trade, and the page's own words, which take precedence.
class Words {
 public:
  /// The number of words in the longest phrase.
  static constexpr std::size_t longest = 5;

  /// What `phrase` means, or nothing. It must be folded, with one space between words. A kind may
  /// stand in the plural.
  std::optional<Word> find(const std::string& phrase) const;
  /// Declares a word of the page's own; `says` must outlive it.
  void add(std::string_view word, Word meaning) { own_[folded(word)] = meaning; }
  bool is_own(std::string_view word) const { return own_.contains(folded(word)); }
  /// The page writes `O` for west or for east: `N30O`, `SO`.
  void set_letter_o(char meant) { letter_o_ = meant; }
  /// What the page's `O` stands for; 0 where it has not said so.
  char letter_o() const { return letter_o_; }

  /// A name of a station or a mark, which a line then has as one word: with a figure in it, or of
  /// several words. Any other may be a word of the trade as well, and is not kept. `name` must
  /// outlive it.
  void add_name(std::string_view name) { add_name(name, name); }
  /// The same for a part of it that people use alone.
  void add_name(std::string_view part, std::string_view name);
  /// The page says that its bearings are azimuths.
  void take_azimuths() { has_azimuths_ = true; }
  bool has_azimuths() const { return has_azimuths_; }

  struct NameHere {
    std::string_view name;
    std::size_t length = 0;  ///< bytes of the line; 0 for no name
  };
  /// The longest name that stands at `at`.
  NameHere name_at(std::string_view line, std::size_t at) const;

 private:
  std::unordered_map<std::string, Word> own_;
  bool has_azimuths_ = false;
  std::unordered_map<std::string, std::string_view> names_;  ///< by their plain form
  char letter_o_ = 0;
};

}  // namespace lodebook::fair_copy
