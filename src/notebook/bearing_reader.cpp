// SPDX-License-Identifier: MIT
#include "bearing_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
}

/// The single letter of a one-letter word, in upper case; 0 for anything else.
char letter_at(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  if (!token || token->type != Type::word || token->length != 1) return 0;
  return upper(cursor.text(*token)[0]);
}

bool joined(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  return token && !token->spaced;
}

bool is_plain_figure(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  return token && token->type == Type::angle && !token->has_sign;
}

bool east_or_west(char letter) {
  return letter == 'E' || letter == 'W';
}
bool north_or_south(char letter) {
  return letter == 'N' || letter == 'S';
}

bool is_no_number(std::string_view word) {
  return word.size() >= 3 &&
         (equals_word(word, "nan") || equals_word(word, "inf") || equals_word(word, "infinity"));
}

Bearing point_bearing(Point point) {
  Bearing bearing;
  bearing.notation = Notation::point;
  bearing.point = point;
  return bearing;
}

/// A figure that is a distance rather than an angle, with its unit or the mark of feet.
bool is_distance(const Cursor& cursor, std::size_t ahead) {
  const Token& figure = *cursor.peek(ahead);
  return figure.value > 90 || figure.fault != Token::Fault::none ||
         cursor.is_word("m", ahead + 1) || cursor.is_word("ft", ahead + 1) ||
         cursor.is_word("paces", ahead + 1) || cursor.is_word("pace", ahead + 1);
}

/// Skips `count` tokens and reports that their letters make no quadrant bearing.
std::nullopt_t fail_letters(Cursor& cursor, std::size_t count, std::string_view help) {
  const std::size_t first = cursor.position();
  cursor.skip(count);
  const Span span = cursor.since(first);
  return cursor.fail(span, wording::quadrant_letters_missing(cursor.text(span), help));
}

/// `N20`: no second letter. `N20 30W` may be the same with minutes that lack their mark.
std::nullopt_t fail_second_letter(Cursor& cursor, Behind behind) {
  const bool may_have_zero = cursor.peek(1)->value <= 9;  // or else the o may be a degree sign
  if (may_have_zero && cursor.is_letter_for_zero(2))
    return fail_letters(cursor, 3, letter_for_zero);
  const char first = letter_at(cursor, 0);
  // Without its marks, which the advice adds itself.
  const std::string angle = fmt::format("{:.10g}", cursor.peek(1)->value);
  if (is_plain_figure(cursor, 2) && east_or_west(letter_at(cursor, 3))) {
    const std::string_view minutes = cursor.text(*cursor.peek(2));
    const std::string marked =
        fmt::format("{}{}°{}'{}", first, angle, minutes, letter_at(cursor, 3));
    return fail_letters(cursor, 4,
                        behind == Behind::words
                            ? "minutes take a mark: " + marked
                            : fmt::format("{0}{1}E or {0}{1}W? or, with the mark of minutes, {2}",
                                          first, angle, marked));
  }
  const bool spaced = cursor.peek(1)->spaced;
  return fail_letters(cursor, 2,
                      fmt::format("{0}{1}E or {0}{1}W?{2}", first, angle,
                                  spaced ? fmt::format(" or {}/{}", first, angle) : ""));
}

/// `E20N`: counted from the wrong cardinal points.
std::nullopt_t fail_swapped(Cursor& cursor) {
  const char first = letter_at(cursor, 0);
  const char last = letter_at(cursor, 2);
  const double angle = cursor.peek(1)->value;
  const std::size_t start = cursor.position();
  if (north_or_south(last) && angle <= 90) {
    cursor.skip(3);
    const Span span = cursor.since(start);
    return cursor.fail(
        span, wording::quadrant_letters_swapped(cursor.text(span),
                                                fmt::format("{}{:g}{}", last, 90 - angle, first)));
  }
  return fail_letters(cursor, last != 0 ? 3 : 2,
                      fmt::format("counted from north or south, such as N20{}", first));
}

std::optional<Bearing> read_quadrant(Cursor& cursor) {
  const std::size_t start = cursor.position();
  const char first = letter_at(cursor, 0);
  const char last = letter_at(cursor, 2);
  Cursor figures = cursor;
  figures.skip();
  const Token* token = figure_at(figures);
  if (!token) return std::nullopt;
  cursor.skip(3);
  if (token->percent)
    return cursor.fail(token->span(), wording::number(cursor.text(*token), "a bearing has no %"));
  Bearing bearing;
  bearing.notation = Notation::quadrant;
  bearing.pole = first == 'N' ? QuadrantBearing::Pole::north : QuadrantBearing::Pole::south;
  bearing.side = last == 'E' ? QuadrantBearing::Side::east : QuadrantBearing::Side::west;
  bearing.angle = token->value;
  bearing.decimals = token->decimals;
  if (bearing.angle > 90)
    return cursor.fail(cursor.since(start),
                       wording::quadrant_angle(bearing.angle, bearing.pole, bearing.side));
  return bearing;
}

std::optional<Bearing> read_lettered(Cursor& cursor, Behind behind) {
  const bool due = cursor.is_word("due");
  if (due) cursor.skip();
  const char first = letter_at(cursor, 0);
  if (!due && north_or_south(first) && is_plain_figure(cursor, 1)) {
    const char last = letter_at(cursor, 2);
    if (east_or_west(last)) return read_quadrant(cursor);
    if (joined(cursor, 1)) {
      if (north_or_south(last) && joined(cursor, 2))
        return fail_letters(cursor, 3, "the second letter is E or W");
      return fail_second_letter(cursor, behind);
    }
    // `N 20`: for `N 20 NW` the figure can only be a dip, for `N 20m` a distance; else a letter is
    // missing.
    const bool other_figure =
        behind == Behind::figure ? point_at(cursor, 2).has_value() : is_distance(cursor, 1);
    if (!other_figure) return fail_second_letter(cursor, behind);
  }
  if (!due && east_or_west(first) && is_plain_figure(cursor, 1) && joined(cursor, 1))
    return fail_swapped(cursor);
  if (const auto point = point_at(cursor)) {
    cursor.skip();
    return point_bearing(*point);
  }
  const std::string_view word = cursor.text(cursor.here());
  if (is_no_number(word))
    return cursor.fail(cursor.here(), wording::number(word, "a bearing is N50W, 310 or NNW"));
  return cursor.fail(cursor.here(), wording::no_bearing(word));
}

std::optional<Bearing> read_azimuth(Cursor& cursor) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  if (token->percent)
    return cursor.fail(token->span(), wording::number(cursor.text(*token), "a bearing has no %"));
  if (east_or_west(letter_at(cursor, 1)) && joined(cursor, 1)) {
    const std::string_view figure = cursor.text(*token);
    const char last = letter_at(cursor, 1);
    return fail_letters(cursor, 2, fmt::format("N{0}{1} or S{0}{1}?", figure, last));
  }
  if (token->negative || token->value > 360)
    return cursor.fail(token->span(), wording::azimuth_range(token->signed_value()));
  cursor.skip();
  Bearing bearing;
  bearing.angle = token->value;
  bearing.digits = token->digits;
  bearing.decimals = token->decimals;
  return bearing;
}

}  // namespace

std::optional<Point> point_at(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  if (!token || token->type != Type::word) return std::nullopt;
  return point_named(cursor.text(*token));
}

bool starts_lettered_bearing(const Cursor& cursor, std::size_t ahead) {
  return cursor.is_word("due", ahead) || point_at(cursor, ahead).has_value();
}

const Token* figure_at(Cursor& cursor) {
  const Token* token = cursor.peek();
  if (!token) {
    cursor.report(cursor.here(), wording::incomplete("the statement", "figure", ""));
    return nullptr;
  }
  const std::string_view typed = cursor.text(*token);
  if (token->type != Type::angle) {
    const Token* next = cursor.peek(1);
    if (dash_length(typed) > 0) {
      const bool figure = next && next->type == Type::angle;
      cursor.report(token->span(), wording::number_dash(figure ? cursor.text(*next) : ""));
    } else {
      cursor.report(token->span(), wording::number(typed, "digits, with a point for decimals"));
    }
    return nullptr;
  }
  // 1e3 and 0x10: letters and more, with no space between.
  const Token* letters = cursor.peek(1);
  const Token* tail = cursor.peek(2);
  const Token* before = cursor.previous();
  const bool after_letters = before && before->type == Type::word && !token->spaced;
  const auto is_exponent = [&cursor](const Token& figure) {
    const std::string_view shown = cursor.text(figure);
    return figure.type == Type::angle || shown == "+" || dash_length(shown) > 0;
  };
  if (letters && letters->type == Type::word && !letters->spaced && tail && !tail->spaced &&
      is_exponent(*tail) && !after_letters) {
    const Span span{token->offset, tail->end() - token->offset};
    cursor.report(span,
                  wording::number(cursor.text(span), cursor.is_letter_for_zero(1)
                                                         ? letter_for_zero
                                                         : "digits, with a point for decimals"));
    return nullptr;
  }
  switch (token->fault) {
    case Token::Fault::none:
      return token;
    case Token::Fault::malformed:
      cursor.report(token->span(), wording::number(typed, "digits, with one point for decimals"));
      break;
    case Token::Fault::minutes_range:
      cursor.report(token->span(), wording::number_minutes(typed));
      break;
    case Token::Fault::only_minutes:
      cursor.report(token->span(),
                    wording::number(typed, "minutes need degrees before them: 0°30'"));
      break;
  }
  return nullptr;
}

std::optional<Bearing> read_bearing(Cursor& cursor, Behind behind) {
  return cursor.is(Type::word) ? read_lettered(cursor, behind) : read_azimuth(cursor);
}

std::optional<Slope> read_slope(Cursor& cursor) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  cursor.skip();
  Slope slope;
  slope.value = token->signed_value();
  slope.percent = token->percent;
  slope.digits = token->digits;
  slope.decimals = token->decimals;
  return slope;
}

bool has_no_number(Cursor cursor) {
  for (; !cursor.at_end(); cursor.skip()) {
    if (!cursor.is(Type::word) || !is_no_number(cursor.text(cursor.here()))) continue;
    figure_at(cursor);
    return true;
  }
  return false;
}

bool has_decimal_comma(Cursor cursor) {
  if (!cursor.has_comma()) return false;
  for (std::size_t i = 0; const Token* token = cursor.peek(i); ++i) {
    if (token->type != Type::comma) continue;
    const Token* before = i > 0 ? cursor.peek(i - 1) : token;
    const Token* after = cursor.peek(i + 1) ? cursor.peek(i + 1) : token;
    const Span span{before->offset, after->end() - before->offset};
    cursor.report(span, wording::decimal_comma(cursor.text(span)));
    return true;
  }
  return false;
}

}  // namespace lodebook::notebook
