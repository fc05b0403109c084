// SPDX-License-Identifier: MIT
// Splits a written position into figures, words and marks.
#include "position_text.hpp"

#include <lodebook/orientation/decimal.hpp>

#include <algorithm>

namespace lodebook::earth {
namespace {

struct Symbol {
  std::string_view bytes;
  std::optional<TokenKind> kind;  // nothing for a space
};

constexpr std::array symbols = {
    Symbol{" ", std::nullopt},           Symbol{"\t", std::nullopt},
    Symbol{",", TokenKind::comma},       Symbol{"-", TokenKind::minus},
    Symbol{"\u00B0", TokenKind::degree}, Symbol{"'", TokenKind::minute},
    Symbol{"\"", TokenKind::second},     Symbol{":", TokenKind::colon},
    Symbol{"+", TokenKind::plus},        Symbol{"\u2212", TokenKind::minus},  // minus sign
    Symbol{"\u2013", TokenKind::minus},                                       // en dash
    Symbol{"\u00BA", TokenKind::degree},  // masculine ordinal, on Spanish keyboards
    Symbol{"\u02DA", TokenKind::degree},  // ring above
    Symbol{"\u2032", TokenKind::minute},  // prime
    Symbol{"\u2019", TokenKind::minute},  // right single quotation mark
    Symbol{"\u2033", TokenKind::second},  // double prime
    Symbol{"\u201D", TokenKind::second},  // right double quotation mark
    Symbol{"\u00A0", std::nullopt},       // no-break space
    Symbol{"\u2007", std::nullopt},       // figure space
    Symbol{"\u202F", std::nullopt},       // narrow no-break space
};

// Bytes of the UTF-8 character that starts `text`, so that a fault never cuts one; 1 if it is
// none.
std::size_t character_length(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t expected = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC0 ? 2 : 1;
  std::size_t length = 1;
  while (length < std::min(expected, text.size()) &&
         (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
    ++length;
  }
  return length == expected ? length : 1;
}

template <typename Predicate>
std::size_t run_length(std::string_view text, Predicate predicate) {
  return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), predicate) -
                                  text.begin());
}

// The word at the start of `rest`. `deg` after a figure is the mark, also before a letter
// (`44degS`), except in capitals alone: band D, square EG is `31DEG`, and the grid comes first.
Token word_token(std::string_view rest, bool after_figure) {
  const std::string_view word = rest.substr(0, run_length(rest, is_letter));
  const bool is_mark = after_figure && word.size() <= 4 && word != "DEG" &&
                       equal_ignoring_case(word.substr(0, 3), "DEG");
  Token token;
  token.kind = is_mark ? TokenKind::degree : TokenKind::word;
  token.length = is_mark ? 3 : word.size();
  return token;
}

}  // namespace

std::variant<PositionText, PositionError> split_position(std::string_view text) {
  PositionText result;
  result.text = text;
  bool joined = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::string_view rest = text.substr(at);
    Token* const before = result.size > 0 ? &result.tokens[result.size - 1] : nullptr;
    Token token;
    if (is_digit(rest.front()) || rest.front() == '.') {
      token.kind = TokenKind::number;
      token.length = run_length(rest, [](char c) { return is_digit(c) || c == '.'; });
      const std::optional<double> value = read_decimal(rest.substr(0, token.length));
      if (!value) return PositionError{PositionFault::number, at, token.length, {}};
      token.value = *value;
    } else if (is_letter(rest.front())) {
      token = word_token(rest, before != nullptr && before->kind == TokenKind::number);
    } else {
      const auto* const symbol =
          std::find_if(symbols.begin(), symbols.end(),
                       [rest](const Symbol& s) { return rest.starts_with(s.bytes); });
      if (symbol == symbols.end()) {
        return PositionError{PositionFault::unreadable, at, character_length(rest), {}};
      }
      token.length = symbol->bytes.size();
      if (!symbol->kind) {
        at += token.length;
        joined = false;
        continue;
      }
      token.kind = *symbol->kind;
    }
    token.joined = joined;
    token.offset = at;
    at += token.length;
    if (token.kind == TokenKind::minute && joined && before != nullptr &&
        before->kind == TokenKind::minute) {  // two single marks are a double one
      before->kind = TokenKind::second;
      before->length += token.length;
      continue;
    }
    if (result.size == PositionText::capacity) {
      return PositionError{PositionFault::unreadable, token.offset, text.size() - token.offset, {}};
    }
    result.tokens[result.size++] = token;
    joined = true;
  }
  return result;
}

PositionError fault_in(PositionFault fault, const Token& first, const Token& last) {
  return {fault, first.offset, last.offset + last.length - first.offset, {}};
}

bool is_between_digits(const PositionText& text, const Token* comma) {
  return comma != text.begin() && comma + 1 != text.end() && comma->joined && comma[1].joined &&
         comma[-1].kind == TokenKind::number && comma[1].kind == TokenKind::number;
}

char hemisphere(std::string_view word) {
  if (word.empty()) return 0;
  const char letter = upper(word.front());
  for (const std::string_view name : {"NORTH", "SOUTH", "EAST", "WEST"}) {
    if (letter != name.front()) continue;
    return word.size() == 1 || equal_ignoring_case(word, name) ? letter : '\0';
  }
  return 0;
}

bool equal_ignoring_case(std::string_view word, std::string_view upper_case) {
  return std::equal(word.begin(), word.end(), upper_case.begin(), upper_case.end(),
                    [](char a, char b) { return upper(a) == b; });
}

Position normalised(double latitude, double longitude) {
  Position position;
  position.latitude = latitude + 0.0;  // -0 + 0 is 0
  position.longitude = (longitude >= 180 ? longitude - 360 : longitude) + 0.0;
  return position;
}

}  // namespace lodebook::earth
