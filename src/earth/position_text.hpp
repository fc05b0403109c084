// SPDX-License-Identifier: MIT
// The words and marks of a written position, before anything is made of them.
#pragma once

#include <lodebook/earth/position.hpp>

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <variant>

namespace lodebook::earth {

enum class TokenKind : std::uint8_t {
  number,  ///< digits with at most one point, already read
  word,    ///< a run of ASCII letters
  degree,
  minute,
  second,
  plus,
  minus,
  comma,
  colon,
};

struct Token {
  TokenKind kind = TokenKind::word;
  bool joined = false;  ///< touches the token before it
  std::size_t offset = 0;
  std::size_t length = 0;
  double value = 0;  ///< of a number
};

/// A position's tokens. The longest writings have six figures, six marks, two letters and a comma,
/// so a fixed array holds them all and nothing is allocated.
struct PositionText {
  static constexpr std::size_t capacity = 24;

  std::string_view text;
  std::array<Token, capacity> tokens;
  std::size_t size = 0;

  const Token* begin() const { return tokens.data(); }
  const Token* end() const { return tokens.data() + size; }
  std::string_view written(const Token& token) const {
    return text.substr(token.offset, token.length);
  }
};

using PositionResult = std::variant<WrittenPosition, PositionError>;

/// Splits `text`; fails with unreadable (a strange character, too many tokens) or number.
std::variant<PositionText, PositionError> split_position(std::string_view text);

/// UTM or MGRS, if the text begins like one; nothing if it must be latitude and longitude.
std::optional<PositionResult> read_grid(const PositionText& text);

PositionResult read_geographic(const PositionText& text);

/// A fault in the tokens from `first` to `last`, both included.
PositionError fault_in(PositionFault fault, const Token& first, const Token& last);

/// True if a comma has a figure touching it on either side, as in `44,65`. `comma` is in `text`.
bool is_between_digits(const PositionText& text, const Token* comma);

/// `N`, `S`, `E` or `W` for that letter or its word (`south`) in any case; 0 for anything else.
char hemisphere(std::string_view word);

/// ASCII only, whatever the locale.
constexpr char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}
constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
  return upper(c) >= 'A' && upper(c) <= 'Z';
}
bool equal_ignoring_case(std::string_view word, std::string_view upper_case);

/// -180 for 180, so that every meridian has one longitude; no negative zero.
Position normalised(double latitude, double longitude);

}  // namespace lodebook::earth
