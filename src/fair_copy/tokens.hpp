// SPDX-License-Identifier: MIT
// A line of a page in pieces: figures, bearings, points of the compass, words and marks.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "words.hpp"

namespace lodebook::fair_copy {

/// A piece of a line. What it means is settled by the readers of lines; what became of it stands in
/// `use`, so that no figure is forgotten.
struct Token {
  enum class Type : std::uint8_t {
    figure,   ///< `35`, `12 1/2`, `-4`, `62%`, `9°`
    bearing,  ///< `N62E`, or one that cannot be, such as `N98E`, `E25N`, `N50`
    point,    ///< `NW`, `north-east`
    word,     ///< a word or phrase of the trade, or any other word
    mark,     ///< `/`, `>`, `"`, `(` ...
  };
  enum class Use : std::uint8_t {
    none,
    stated,  ///< in a statement
    aside,   ///< shown to be no reading: `40 cm`, `photo 416`
  };
  Type type = Type::word;
  Use use = Use::none;
  std::size_t begin = 0;  ///< bytes of the line
  std::size_t end = 0;
  bool spaced = true;  ///< white space, or the line's start, before it
  /// As the language writes it: `12.5`, `N62E`, `NW`; a word in lower case; a mark.
  std::string text;

  // ---- of a figure or a bearing
  double value = 0;         ///< degrees for a bearing
  std::uint8_t digits = 0;  ///< before the point
  std::uint8_t decimals = 0;
  bool has_sign = false;
  bool is_degrees = false;  ///< with a degree mark
  bool is_percent = false;
  bool is_minutes = false;  ///< a `'` behind it: feet or minutes
  bool is_rough = false;    ///< `~` or `ca.` before it
  bool is_about = false;    ///< the same in a word, which is said of the whole reading
  bool is_unclear = false;  ///< could be two figures or one (`45,12`), or has letters in it
  /// Of a bearing that cannot be one.
  bool is_faulty = false;
  /// Of a bearing: its letters stand apart from its figure.
  bool is_loose = false;

  // ---- of a word
  Meaning meaning = Meaning::unknown;
  std::string_view says;  ///< from the table of words

  bool is(Meaning wanted) const { return type == Type::word && meaning == wanted; }
  bool is(char mark) const { return type == Type::mark && text.size() == 1 && text[0] == mark; }
  bool is_figure() const { return type == Type::figure; }
  /// A plain figure that may be an angle.
  bool is_angle() const {
    return is_figure() && !is_percent && !is_minutes && !is_unclear && !has_sign;
  }
};

using Tokens = std::vector<Token>;

/// The pieces of `line`; `own` are the page's own words. A comma between digits is a decimal one if
/// `decimal_commas`.
Tokens tokens_of(std::string_view line, const Words& own, bool decimal_commas);

/// A figure's text as an azimuth, with three digits before its point, so that none is taken for an
/// angle.
std::string azimuth_text(std::string text, std::uint8_t digits);

/// The bytes of the tokens from `first` up to `last` (exclusive), as typed.
std::string_view typed(std::string_view line, const Tokens& tokens, std::size_t first,
                       std::size_t last);

}  // namespace lodebook::fair_copy
