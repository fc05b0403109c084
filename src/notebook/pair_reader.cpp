// SPDX-License-Identifier: MIT
#include "pair_reader.hpp"

#include <fmt/format.h>

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// The text from token `first` up to the cursor and the `more` tokens behind it.
Span with_next(const Cursor& cursor, std::size_t first, std::size_t more) {
  Cursor end = cursor;
  end.skip(more);
  return end.since(first);
}

std::string pair_advice(const Token& first, const Token& second, std::string_view a,
                        std::string_view b, std::string_view in_place_of_strike,
                        std::string_view order) {
  if (three_digits(first) && three_digits(second))
    return "one or two digits make a dip or plunge, three a bearing";
  if (three_digits(second) || first.percent)
    return fmt::format("{} > {}, or 'order {}' above", a, b, order);
  return fmt::format("three digits for the bearing: {:0>3}/{}, or a line 'order {}' above", a, b,
                     in_place_of_strike);
}

}  // namespace

bool is_towards(const Cursor& cursor, std::size_t ahead) {
  return cursor.is(Type::greater, ahead) || cursor.is_word("to", ahead);
}

bool three_digits(const Token& token) {
  return token.digits >= 3 && !token.percent;
}

bool lacks_first_letter(const Cursor& cursor) {
  return (cursor.is_word("e", 1) || cursor.is_word("w", 1)) && !cursor.peek(1)->spaced;
}

bool touches(Cursor& cursor, std::size_t start) {
  const Token* token = cursor.peek();
  if (!token || token->type != Type::angle || token->spaced || cursor.position() == start)
    return false;
  Cursor before = cursor;
  const Span whole = with_next(cursor, start, 1);
  const Span bearing = before.since(start);
  const std::string_view text = cursor.text(bearing);
  if (text.empty() || text.back() == '/' || text.back() == '>') return false;
  cursor.report(token->span(),
                wording::number(cursor.text(whole),
                                fmt::format("a space: {} {}", text, cursor.text(*token))));
  return true;
}

std::optional<First> pair_roles(Cursor& cursor, std::size_t behind, const PairWords& words) {
  const std::size_t start = cursor.position();
  const Token& first = *cursor.peek();
  Cursor ahead = cursor;
  ahead.skip(behind);
  const Token* second = figure_at(ahead);
  if (!second) return std::nullopt;
  ahead.skip();
  if (words.takes_side && point_at(ahead)) return First::bearing;
  const Span span = ahead.since(start);
  const std::string_view typed = cursor.text(span);
  if (words.stated.empty()) {
    if (three_digits(first) && !three_digits(*second)) return First::bearing;
    return cursor.fail(
        span, wording::pair_order(
                  typed, pair_advice(first, *second, cursor.text(first), cursor.text(*second),
                                     words.bearing_first, words.slope_first)));
  }
  const Token& slope = words.slope_is_first ? first : *second;
  const Token& bearing = words.slope_is_first ? *second : first;
  if (three_digits(slope) || bearing.percent)
    return cursor.fail(span, wording::pair_against_order(typed, words.stated));
  return words.slope_is_first ? First::slope : First::bearing;
}

bool has_bearing_before_towards(Cursor& cursor, std::string_view advice) {
  if (!three_digits(*cursor.peek())) return false;
  const Span span = with_next(cursor, cursor.position(), 3);
  cursor.report(span, wording::pair_order(cursor.text(span), advice));
  return true;
}

std::nullopt_t fail_slope_first(Cursor& cursor, std::size_t behind, std::string_view order) {
  const Span first = cursor.here();
  cursor.skip(behind);
  const Span bearing = cursor.rest();
  const Span whole{first.offset, bearing.end() - first.offset};
  return cursor.fail(
      whole, wording::pair_order(cursor.text(whole),
                                 fmt::format("{} > {}, or 'order {}' above", cursor.text(first),
                                             cursor.text(bearing), order)));
}

}  // namespace lodebook::notebook
