// SPDX-License-Identifier: MIT
#include "tokens.hpp"

#include <lodebook/orientation/decimal.hpp>

#include <algorithm>
#include <cmath>

namespace lodebook::notebook {

namespace {

/// Bytes of the first of `marks` that starts `text`; 0 if none does.
std::size_t mark_length(std::string_view text, std::span<const std::string_view> marks) {
  if (text.empty()) return 0;
  for (const std::string_view mark : marks) {
    if (text[0] == mark[0] && text.starts_with(mark)) return mark.size();
  }
  return 0;
}

constexpr std::array<std::string_view, 3> degree_marks = {"°", "º", "˚"};
constexpr std::array<std::string_view, 3> minute_marks = {"'", "′", "’"};
constexpr std::array<std::string_view, 5> second_marks = {"\"", "″", "”", "''", "’’"};

/// Larger than any figure of a field book; outputs are exact up to here.
constexpr double largest_figure = 1e9;

bool is_number(char c) {
  return is_digit(c) || c == '.';
}

/// Where the digits and points from `at` on end.
std::size_t number_end(std::string_view text, std::size_t at, std::size_t end) {
  while (at < end && is_number(text[at]))
    ++at;
  return at;
}

/// Whether `c` is visible ASCII, whether or not `char` is signed.
bool is_ascii_mark(char c) {
  return c > ' ' && c <= '~';
}

inline std::size_t skip_space(std::string_view text, std::size_t at, std::size_t end) {
  if (at < end && is_ascii_mark(text[at])) return at;  // nearly always
  while (at < end) {
    const std::size_t length = space_length(text.substr(at, end - at));
    if (length == 0) break;
    at += length;
  }
  return at;
}

/// Whether a mark of degrees, minutes or seconds, or a percent sign, may start with this byte.
bool may_start_mark(char c) {
  return static_cast<unsigned char>(c) >= 0x80 || c == '\'' || c == '"' || c == '%' || c == 'd' ||
         c == 'D';
}

std::size_t degree_mark_length(std::string_view text) {
  if (const std::size_t length = mark_length(text, degree_marks)) return length;
  if (text.size() < 3 || !equals_word(text.substr(0, 3), "deg")) return 0;
  // `20degW`, but not the start of a longer word.
  constexpr std::string_view letters_behind = "NESWnesw";
  const bool longer = text.size() > 3 && is_letter(text[3]) &&
                      letters_behind.find(text[3]) == std::string_view::npos;
  return longer ? 0 : 3;
}

/// Whether the name of a station stands behind `word`.
bool takes_name(std::string_view word) {
  return equals_word(word, "to") || equals_word(word, "from");
}

/// Whether `~` stands at `at`, directly before a figure, its sign or a letter.
bool is_rough_mark(std::string_view text, std::size_t at, std::size_t end) {
  if (text[at] != '~' || at + 1 >= end) return false;
  const std::string_view rest = text.substr(at + 1, end - at - 1);
  return is_number(rest[0]) || is_letter(rest[0]) || rest[0] == '+' || dash_length(rest) > 0;
}

std::uint8_t small(std::size_t n) {
  return static_cast<std::uint8_t>(std::min<std::size_t>(n, 255));
}

}  // namespace

std::size_t wide_space_length(std::string_view text) {
  constexpr std::array<std::string_view, 3> no_break = {"\u00A0", "\u202F", "\u2007"};
  return mark_length(text, no_break);
}

bool ends_with_space(std::string_view text) {
  for (std::size_t length = 1; length <= 3 && length <= text.size(); ++length) {
    if (space_length(text.substr(text.size() - length)) == length) return true;
  }
  return false;
}

std::string_view trimmed(std::string_view text) {
  while (const std::size_t length = space_length(text))
    text.remove_prefix(length);
  for (;;) {
    const bool ends_plainly = !text.empty() && is_ascii_mark(text.back());
    if (ends_plainly) return text;
    if (!text.empty() && space_length(text.substr(text.size() - 1)) == 1) {
      text.remove_suffix(1);
    } else if (text.size() >= 2 && space_length(text.substr(text.size() - 2)) == 2) {
      text.remove_suffix(2);
    } else if (text.size() >= 3 && space_length(text.substr(text.size() - 3)) == 3) {
      text.remove_suffix(3);
    } else {
      return text;
    }
  }
}

std::size_t dash_length(std::string_view text) {
  if (text.empty()) return 0;
  if (text[0] == '-') return 1;
  if (static_cast<unsigned char>(text[0]) < 0x80) return 0;
  constexpr std::array<std::string_view, 2> dashes = {"\u2212", "\u2013"};
  return mark_length(text, dashes);
}

std::size_t quoted_length(std::string_view text) {
  if (!text.starts_with('"')) return 0;
  const std::size_t end = text.find('"', 1);
  return end == std::string_view::npos ? 0 : end + 1;
}

std::size_t plus_minus_length(std::string_view text) {
  constexpr std::array<std::string_view, 3> marks = {"±", "+-", "+/-"};
  return mark_length(text, marks);
}

Tokens::Tokens(std::string_view text, Span span, Marks marks) : end_(span.end()) {
  const std::size_t end = span.end();
  std::size_t at = span.offset;
  std::size_t shown_end = at;  // where the last token ended
  while (true) {
    const std::size_t before = at;
    at = skip_space(text, at, end);
    if (at >= end) break;
    const bool is_rough = marks == Marks::own && count_ < room - 1 &&
                          is_rough_mark(text, at, end) &&
                          (at > before || at == span.offset || follows_separator());
    if (is_rough) ++at;
    Token token{};
    token.spaced = at > before || at == span.offset;
    token.offset = static_cast<std::uint32_t>(at);
    const std::string_view rest = text.substr(at, end - at);
    const char c = rest[0];
    if (count_ == room - 1) {
      token.length = static_cast<std::uint32_t>(end - at);
    } else if (is_number(c)) {
      const bool spaced = token.spaced;
      token = read_angle(text, at, end);
      token.spaced = spaced;
    } else if (is_letter(c)) {
      std::size_t stop = at + 1;
      while (stop < end && (is_letter(text[stop]) ||
                            (text[stop] == '-' && stop + 1 < end && is_letter(text[stop + 1])))) {
        ++stop;
      }
      token.type = Token::Type::word;
      token.length = static_cast<std::uint32_t>(stop - at);
    } else {
      read_mark(token, text, at, span);
    }
    at = shown_end = token.end();
    if (is_rough) {
      token.rough = true;
      ++mark_count_;
    }
    if (marks == Marks::own) at = shown_end = take_sigma(token, text, end);
    tokens_[count_++] = token;
    if (count_ == room) break;
  }
  end_ = static_cast<std::uint32_t>(shown_end);
}

bool Tokens::follows_separator() const {
  return count_ > 0 && (tokens_[count_ - 1].type == Token::Type::slash ||
                        tokens_[count_ - 1].type == Token::Type::greater);
}

std::size_t Tokens::take_sigma(Token& token, std::string_view text, std::size_t end) {
  const bool takes = token.type == Token::Type::word ||
                     (token.type == Token::Type::angle && token.fault == Token::Fault::none);
  const std::size_t mark = plus_minus_length(text.substr(token.end(), end - token.end()));
  const std::size_t figure = token.end() + mark;
  if (!takes || mark == 0 || figure >= end || !is_number(text[figure])) return token.end();
  const Token sigma = read_angle(text, figure, end);
  if (sigma.fault != Token::Fault::none) return token.end();
  token.has_sigma = true;
  token.sigma = sigma.value;
  token.sigma_percent = sigma.percent;
  token.sigma_marked = sigma.marked;
  ++mark_count_;
  return sigma.end();
}

void Tokens::read_mark(Token& token, std::string_view text, std::size_t at, Span span) {
  const std::size_t end = span.end();
  const std::string_view rest = text.substr(at, end - at);
  const char c = rest[0];
  const bool sign_may_stand = token.spaced || follows_separator();
  const std::size_t dash = c == '+' ? 1 : dash_length(rest);
  if (const std::size_t name = token.spaced ? quoted_length(rest) : 0;
      name > 0 && count_ > 0 &&
      takes_name(text.substr(tokens_[count_ - 1].offset, tokens_[count_ - 1].length))) {
    token.type = Token::Type::name;
    token.length = static_cast<std::uint32_t>(name);
    return;
  }
  if (const std::size_t both = plus_minus_length(rest)) {
    token.type = Token::Type::plus_minus;
    token.length = static_cast<std::uint32_t>(both);
  } else if (dash > 0 && sign_may_stand && dash < rest.size() && is_number(rest[dash])) {
    const bool spaced = token.spaced;
    token = read_angle(text, at + dash, end);
    token.spaced = spaced;
    token.has_sign = true;
    token.negative = c != '+';
    token.offset = static_cast<std::uint32_t>(at);
    token.length += static_cast<std::uint32_t>(dash);
  } else if (c == '/' || c == '>') {
    token.type = c == '/' ? Token::Type::slash : Token::Type::greater;
    token.length = 1;
  } else {
    const bool between = c == ',' && at > span.offset && is_digit(text[at - 1]) && at + 1 < end &&
                         is_digit(text[at + 1]);
    token.type = between ? Token::Type::comma : Token::Type::other;
    token.length = static_cast<std::uint32_t>(std::max<std::size_t>(1, utf8_length(rest)));
  }
  has_comma_ = has_comma_ || token.type == Token::Type::comma;
}

Token Tokens::read_angle(std::string_view text, std::size_t at, std::size_t end) const {
  Token token{};
  token.type = Token::Type::angle;
  token.offset = static_cast<std::uint32_t>(at);
  const std::size_t stop = number_end(text, at, end);
  const std::string_view number = text.substr(at, stop - at);
  const std::size_t point = std::min(number.find('.'), number.size());
  token.digits = small(point);
  token.decimals = small(number.size() - std::min(point + 1, number.size()));
  if (const auto value = read_decimal(number); value && *value <= largest_figure) {
    token.value = *value;
  } else {
    token.fault = Token::Fault::malformed;
  }
  std::size_t done = stop;
  token.length = static_cast<std::uint32_t>(done - at);

  // A mark or percent sign may stand behind a space, minutes only behind a degree mark.
  const std::size_t after = skip_space(text, stop, end);
  if (after == end || !may_start_mark(text[after])) return token;
  const std::string_view rest = text.substr(after, end - after);
  if (const std::size_t mark = degree_mark_length(rest)) {
    token.marked = true;
    done = after + mark;
    double share = 60;
    for (const auto& marks : {std::span<const std::string_view>(minute_marks),
                              std::span<const std::string_view>(second_marks)}) {
      const std::size_t begin = skip_space(text, done, end);
      const std::size_t figure_end = number_end(text, begin, end);
      const std::size_t mark_at = skip_space(text, figure_end, end);
      const std::string_view behind = text.substr(mark_at, end - mark_at);
      const std::size_t length = mark_length(behind, marks);
      const bool seconds_follow = share == 60 && mark_length(behind, second_marks) > 0;
      if (figure_end == begin || length == 0 || seconds_follow) break;
      const auto figure = read_decimal(text.substr(begin, figure_end - begin));
      const bool fraction_before = token.value != std::floor(token.value) && share == 60;
      if (!figure) {
        token.fault = Token::Fault::malformed;
      } else if (*figure >= 60 || fraction_before) {
        token.fault = Token::Fault::minutes_range;
      } else {
        token.value += *figure / share;
      }
      token.decimals = share == 60 ? 2 : 4;
      share *= 60;
      done = mark_at + length;
    }
  } else if (rest.starts_with('%')) {
    token.percent = true;
    done = after + 1;
  } else if (const std::size_t minutes = mark_length(text.substr(stop, end - stop), minute_marks)) {
    token.fault = Token::Fault::only_minutes;
    done = stop + minutes;
  }
  token.length = static_cast<std::uint32_t>(done - at);
  return token;
}

}  // namespace lodebook::notebook
