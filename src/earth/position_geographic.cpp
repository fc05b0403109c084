// SPDX-License-Identifier: MIT
// Latitude and longitude: where the text divides, what each half says, and which is which.
#include <algorithm>
#include <cmath>
#include <utility>

#include "position_text.hpp"

namespace lodebook::earth {
namespace {

constexpr int figures_max = 3;  // degrees, minutes, seconds

// One coordinate: its tokens [first, last) and what they say.
struct Half {
  const Token* first = nullptr;
  const Token* last = nullptr;
  const Token* sign = nullptr;
  const Token* letter = nullptr;
  char hemisphere = 0;
  std::array<const Token*, figures_max> figures{};
  std::size_t count = 0;
  double degrees = 0;  // signed by sign or letter

  PositionError fault(PositionFault fault) const { return fault_in(fault, *first, last[-1]); }
  bool is_latitude() const { return hemisphere == 'N' || hemisphere == 'S'; }
  bool is_negative() const {
    return hemisphere == 'S' || hemisphere == 'W' ||
           (sign != nullptr && sign->kind == TokenKind::minus);
  }
};

bool is_sign(const Token& token) {
  return token.kind == TokenKind::plus || token.kind == TokenKind::minus;
}
bool is_number(const Token& token) {
  return token.kind == TokenKind::number;
}

// 0 degrees, 1 minutes, 2 seconds; nothing for other tokens. Tells capitals `DEG` from a word.
std::optional<std::size_t> rank(const PositionText& text, const Token& token) {
  if (token.kind == TokenKind::degree) return 0;
  if (token.kind == TokenKind::minute) return 1;
  if (token.kind == TokenKind::second) return 2;
  if (token.kind == TokenKind::word && text.written(token) == "DEG") return 0;
  return std::nullopt;
}

// The letter of `1e3`: no hemisphere, unless the other coordinate has one too.
bool is_exponent(const PositionText& text, const Token& word) {
  const std::string_view written = text.written(word);
  return (equal_ignoring_case(written, "E") || equal_ignoring_case(written, "X")) &&
         &word != text.begin() && &word + 1 != text.end() && word.joined && (&word)[1].joined &&
         is_number((&word)[-1]) && is_number((&word)[1]);
}

// Every word must be a hemisphere, and there must be two of them or none.
std::optional<PositionError> check_words(const PositionText& text) {
  const Token* letter = nullptr;
  int letters = 0;
  for (const Token& token : text) {
    if (token.kind != TokenKind::word || rank(text, token)) continue;
    if (hemisphere(text.written(token)) == 0) {
      if (is_exponent(text, token)) {
        return fault_in(PositionFault::number, (&token)[-1], (&token)[1]);
      }
      return fault_in(PositionFault::unreadable, token, token);
    }
    letter = &token;
    ++letters;
  }
  const auto figures = std::count_if(text.begin(), text.end(), is_number);
  if (figures == 0) return fault_in(PositionFault::unreadable, *text.begin(), text.end()[-1]);
  if (letters == 1 && is_exponent(text, *letter)) {
    return fault_in(PositionFault::number, letter[-1], letter[1]);
  }
  if (figures == 1) return fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  if (letters == 1 || letters > 2) return fault_in(PositionFault::hemisphere, *letter, *letter);
  return std::nullopt;
}

// Where the second coordinate begins, by the plainest evidence there is. `stated` tells whether the
// writer marked the place; if not, or if only a sign marks it, both halves need as many figures.
struct Division {
  const Token* at = nullptr;
  bool stated = false;
};

Division divide(const PositionText& text) {
  const auto find = [&text](const Token* from, auto predicate) {
    return std::find_if(from, text.end(), predicate);
  };
  const Token* const comma =
      find(text.begin(), [](const Token& t) { return t.kind == TokenKind::comma; });
  if (comma != text.end()) return {comma, !is_between_digits(text, comma)};

  const auto is_hemisphere = [&text](const Token& t) {
    return t.kind == TokenKind::word && !rank(text, t);
  };
  const Token* const letter = find(text.begin(), is_hemisphere);
  if (letter == text.begin()) return {find(letter + 1, is_hemisphere), true};
  if (letter != text.end()) return {letter + 1, true};

  const Token* const sign = find(text.begin() + 1, is_sign);
  const Token* const figure = find(text.begin(), is_number);
  // The second figure's degree mark or a later one; check_words has seen two figures.
  const Token* const degree =
      find(figure + 2, [&text](const Token& t) { return rank(text, t) == std::size_t{0}; });
  if (sign != text.end()) return {sign, degree != text.end()};
  if (degree != text.end() && is_number(degree[-1])) return {degree - 1, true};

  const auto figures = std::count_if(text.begin(), text.end(), is_number);
  const bool is_half = figures == 2 && (rank(text, figure[1]) == std::size_t{0} ||
                                        figure[1].kind == TokenKind::colon);
  if (is_half) return {text.end()};  // `44:41` is more likely one coordinate than two
  auto left = figures / 2;
  return {find(text.begin(), [&left](const Token& t) { return is_number(t) && left-- == 0; })};
}

// A sign counts only directly before its number and not touching what is before it, so that
// neither `44-41` nor `--5` is taken for one.
bool is_sign_in_place(const Half& half, const Token* token) {
  const bool starts = half.count == 0 && half.sign == nullptr &&
                      (!token->joined || token[-1].kind == TokenKind::comma);
  return starts && token + 1 != half.last && token[1].joined && is_number(token[1]);
}

// Takes one token into the half; false if it has no place there.
bool take(const PositionText& text, const Token* token, Half& half) {
  const Token* const before = token == half.first ? nullptr : token - 1;
  const Token* const after = token + 1 == half.last ? nullptr : token + 1;
  if (const auto mark = rank(text, *token)) {
    return before != nullptr && is_number(*before) && *mark + 1 == half.count;
  }
  switch (token->kind) {
    case TokenKind::number:
      if (half.count == figures_max) return false;
      half.figures[half.count++] = token;
      return true;
    case TokenKind::word:
      if (half.letter != nullptr || (before != nullptr && after != nullptr)) return false;
      half.letter = token;
      half.hemisphere = hemisphere(text.written(*token));
      return true;
    case TokenKind::plus:
    case TokenKind::minus:
      half.sign = token;
      return true;
    case TokenKind::colon:
      return before != nullptr && is_number(*before) && after != nullptr && is_number(*after);
    default:
      return false;
  }
}

std::optional<PositionError> read_tokens(const PositionText& text, Half& half) {
  for (const Token* token = half.first; token != half.last; ++token) {
    if (is_sign(*token) && !is_sign_in_place(half, token)) {
      return fault_in(PositionFault::number, *token, *token);
    }
    if (!take(text, token, half)) {
      const bool too_many = is_number(*token);
      return fault_in(too_many ? PositionFault::uneven : PositionFault::unreadable, *token, *token);
    }
  }
  if (half.count == 0) return fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  return std::nullopt;
}

std::optional<PositionError> add_up(const PositionText& text, Half& half) {
  if (half.sign != nullptr && half.letter != nullptr) return half.fault(PositionFault::hemisphere);
  for (std::size_t i = half.count; i-- > 0;) {
    const Token& figure = *half.figures[i];
    const bool has_fraction = text.written(figure).find('.') != std::string_view::npos;
    if ((i > 0 && figure.value >= 60) || (i + 1 < half.count && has_fraction)) {
      return fault_in(PositionFault::minutes_range, figure, figure);
    }
    half.degrees = half.degrees / 60 + figure.value;
  }
  if (half.is_negative()) half.degrees = -half.degrees;
  return std::nullopt;
}

// Both halves' figures are good: which is the latitude?
PositionResult combine(const PositionText& text, const Half& a, const Half& b) {
  const bool has_letters = a.letter != nullptr;
  if (has_letters && a.is_latitude() == b.is_latitude()) {
    return fault_in(PositionFault::hemisphere, *b.letter, *b.letter);
  }
  const bool latitude_second = has_letters && b.is_latitude();
  const Half& latitude = latitude_second ? b : a;
  const Half& longitude = latitude_second ? a : b;
  if (std::abs(latitude.degrees) > 90) {
    if (has_letters || std::abs(latitude.degrees) > 180 || std::abs(longitude.degrees) > 90) {
      return latitude.fault(PositionFault::latitude_range);
    }
    PositionError error = fault_in(PositionFault::swapped, *a.first, b.last[-1]);
    const auto written = [&text](const Half& half) {
      const Token& end = half.last[-1];
      return text.text.substr(half.first->offset, end.offset + end.length - half.first->offset);
    };
    error.meant.append(written(b)).append(", ").append(written(a));
    return error;
  }
  if (std::abs(longitude.degrees) > 180) return longitude.fault(PositionFault::longitude_range);
  return WrittenPosition{normalised(latitude.degrees, longitude.degrees), std::nullopt, 0};
}

}  // namespace

PositionResult read_geographic(const PositionText& text) {
  if (auto error = check_words(text)) return *std::move(error);
  const Division division = divide(text);
  const bool at_comma = division.at != text.end() && division.at->kind == TokenKind::comma;
  Half a;
  a.first = text.begin();
  a.last = division.at;
  Half b;
  b.first = division.at + (at_comma ? 1 : 0);
  b.last = text.end();
  if (a.first == a.last || b.first == b.last) {
    return at_comma ? fault_in(PositionFault::unreadable, *division.at, *division.at)
                    : fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  }

  const bool odd = std::count_if(text.begin(), text.end(), is_number) % 2 != 0;
  std::optional<PositionError> error;
  if (odd && !division.stated) {
    error = fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  }
  if (!error) error = read_tokens(text, a);
  if (!error) error = read_tokens(text, b);
  if (!error && !division.stated && a.count != b.count) {
    error = fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  }
  if (error && at_comma && is_between_digits(text, division.at)) {  // `44,65S 169.03E`
    return fault_in(PositionFault::decimal_comma, division.at[-1], division.at[1]);
  }
  if (!error) error = add_up(text, a);
  if (!error) error = add_up(text, b);
  if (error) return *std::move(error);
  return combine(text, a, b);
}

}  // namespace lodebook::earth
