// SPDX-License-Identifier: MIT
// The text of a statement as tokens: angles with their marks, words, and the few separators.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

#include <lodebook/notebook/source.hpp>

namespace lodebook::notebook {

inline bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
inline bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Whether two ASCII words are equal ignoring case; `lower` is in lower case already.
inline bool equals_word(std::string_view word, std::string_view lower) {
  if (word.size() != lower.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    const char c = word[i];
    if ((c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c) != lower[i]) return false;
  }
  return true;
}

/// Bytes of the no-break space at the start of `text`; 0 if there is none. There are three, of
/// different widths.
std::size_t wide_space_length(std::string_view text);

/// Bytes of white space (space, tab, no-break spaces) at the start of `text`; 0 if there is none.
inline std::size_t space_length(std::string_view text) {
  if (text.empty()) return 0;
  if (text[0] == ' ' || text[0] == '\t') return 1;
  return static_cast<unsigned char>(text[0]) < 0x80 ? 0 : wide_space_length(text);
}

/// Whether white space stands at `at`, which is not past the end of `text`.
inline bool starts_with_space(std::string_view text, std::size_t at) {
  return space_length(text.substr(at)) > 0;
}

/// Whether `text` ends with white space.
bool ends_with_space(std::string_view text);

/// `text` without white space at its ends.
std::string_view trimmed(std::string_view text);

/// Bytes of the dash at the start of `text` that may be a minus sign; 0 if there is none.
std::size_t dash_length(std::string_view text);

/// Bytes of the name in double quotes at the start of `text`, quotes included; 0 if there is none
/// or the closing quote is missing.
std::size_t quoted_length(std::string_view text);

/// Bytes of the plus-or-minus mark (`±`, `+-`, `+/-`) at the start of `text`; 0 if there is none.
std::size_t plus_minus_length(std::string_view text);

struct Token {
  enum class Type : std::uint8_t {
    other,  ///< any other character
    angle,  ///< a number with its marks: degrees, minutes, seconds
    word,   ///< letters, with hyphens between letters
    slash,
    greater,
    plus_minus,
    comma,  ///< only where a digit stands on both sides
    name,   ///< in quotes, behind `to` or `from`
  };
  /// What is wrong with an angle.
  enum class Fault : std::uint8_t { none, malformed, minutes_range, only_minutes };

  // Without initial values, because nearly all of the array of tokens stays unused.
  Type type;
  Fault fault;
  bool spaced;    ///< white space (or nothing) stands before it
  bool has_sign;  ///< a plus or minus stands before it as its sign
  bool negative;
  bool percent;
  bool marked;            ///< has a degree mark
  std::uint8_t digits;    ///< before the point
  std::uint8_t decimals;  ///< two for minutes, four for seconds
  bool rough;             ///< `~` stands directly before it
  bool has_sigma;         ///< `±` and a figure stand directly behind it
  bool sigma_percent;
  bool sigma_marked;  ///< in degrees
  double sigma;
  double value;          ///< degrees or a plain number, without its sign
  std::uint32_t offset;  ///< within the log
  std::uint32_t length;

  std::uint32_t end() const { return offset + length; }
  Span span() const { return {offset, length}; }
  double signed_value() const { return negative ? -value : value; }
};

/// The tokens of one statement or repeat, in an array of fixed size: no sensible statement has
/// more. If one does, its last token, of type `other`, is the rest of the text.
class Tokens {
 public:
  /// Whether `~` before and `±` behind a figure or word belong to it, as in readings.
  enum class Marks : std::uint8_t { apart, own };

  /// Splits `span` of `text`, the text of the log.
  Tokens(std::string_view text, Span span, Marks marks = Marks::apart);

  std::size_t size() const { return count_; }
  const Token& operator[](std::size_t i) const { return tokens_[i]; }
  /// Whether any token is of type `comma`.
  bool has_comma() const { return has_comma_; }
  /// The number of `~` and `±` that belong to tokens.
  std::size_t mark_count() const { return mark_count_; }
  /// Where the text ends. A missing part is reported there.
  std::uint32_t end_offset() const { return end_; }

 private:
  Token read_angle(std::string_view text, std::size_t at, std::size_t end) const;
  bool follows_separator() const;
  /// Takes `±` and a figure directly behind `token`; returns where it ends.
  std::size_t take_sigma(Token& token, std::string_view text, std::size_t end);
  /// Reads a token that starts with neither a digit nor a letter.
  void read_mark(Token& token, std::string_view text, std::size_t at, Span span);

  static constexpr std::size_t room = 32;
  std::array<Token, room> tokens_;
  std::size_t count_ = 0;
  std::uint32_t end_ = 0;
  std::size_t mark_count_ = 0;
  bool has_comma_ = false;
};

}  // namespace lodebook::notebook
