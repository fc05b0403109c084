// SPDX-License-Identifier: MIT
#include "pair_reader.hpp"

#include <fmt/format.h>

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// The text from token `first` to the cursor, and `more` tokens further.
Span with_next(const Cursor& cursor, std::size_t first, std::size_t more) {
  Cursor end = cursor;
  end.skip(more);
  return end.since(first);
}

/// `37` for `037`; other figures stay as they are.
std::string_view without_zeros(std::string_view figure) {
  while (figure.size() > 1 && figure[0] == '0' && is_digit(figure[1]))
    figure.remove_prefix(1);
  return figure;
}

/// Offers for two bare figures at `span`, the most likely first.
Offers pair_offers(const Cursor& cursor, const Token& first, const Token& second, Span span) {
  const std::string_view a = without_zeros(cursor.text(first));
  const std::string_view b = without_zeros(cursor.text(second));
  std::vector<std::string> texts;
  const auto add_slope_and_bearing = [&](const Token& slope, std::string_view figure,
                                         std::string_view bearing) {
    if (slope.value <= 90)
      texts.push_back(fmt::format("{} > {}", figure, three_digits_of(bearing)));
  };
  const auto add_bearing_and_slope = [&](const Token& slope, std::string_view bearing,
                                         std::string_view figure) {
    if (slope.value <= 90) texts.push_back(fmt::format("{}/{}", three_digits_of(bearing), figure));
  };
  const bool slope_is_first = three_digits(second) && !three_digits(first);
  const bool bearing_is_first = three_digits(first) && !three_digits(second);
  if (bearing_is_first) {
    add_slope_and_bearing(second, b, a);
    add_bearing_and_slope(second, a, b);
  } else {
    if (!slope_is_first) add_bearing_and_slope(second, a, b);
    add_slope_and_bearing(first, a, b);
    if (slope_is_first) add_bearing_and_slope(first, b, a);
  }
  return cursor.accepted(each_in_place(span, std::move(texts)));
}

/// Offers for two figures before a side.
Offers side_offers(const Cursor& cursor, const Token& first, const Token& second, Span span) {
  const std::string_view a = without_zeros(cursor.text(first));
  const std::string_view b = without_zeros(cursor.text(second));
  return cursor.accepted(each_in_place(span, {fmt::format("{}/{}", a, three_digits_of(b)),
                                              fmt::format("{}/{}", three_digits_of(a), b)}));
}

}  // namespace

bool is_towards(const Cursor& cursor, std::size_t ahead) {
  return cursor.is(Type::greater, ahead) || cursor.is_word("to", ahead);
}

bool three_digits(const Token& token) {
  return token.digits >= 3 && !token.percent;
}

bool is_pair_with_north(const Cursor& cursor) {
  if (north_at(cursor, 1) == OwnNorth::none) return false;
  return cursor.is(Type::angle, cursor.is(Type::slash, 2) ? 3 : 2);
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
  const Offers offers = cursor.accepted({in_place({token->offset, 0}, " ")});
  cursor.report(token->span(),
                wording::number(cursor.text(whole), "a space before the second figure", offers));
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
  const bool has_side = words.side != Side::none && point_at(ahead);
  if (has_side && words.side == Side::of_strike_dip) return First::bearing;
  const Span span = ahead.since(start);
  const std::string_view typed = cursor.text(span);
  if (words.stated.empty()) {
    if (three_digits(first) && !three_digits(*second)) return First::bearing;
    return cursor.fail(
        span,
        wording::pair_order(typed, pair_offers(cursor, first, *second, span),
                            cursor.accepted_above({words.orders.begin(), words.orders.end()})));
  }
  if (has_side) {
    if (three_digits(first) != three_digits(*second))
      return three_digits(first) ? First::bearing : First::slope;
    return cursor.fail(span,
                       wording::pair_order(typed, side_offers(cursor, first, *second, span), {}));
  }
  const Token& slope = words.slope_is_first ? first : *second;
  const Token& bearing = words.slope_is_first ? *second : first;
  if (three_digits(slope) || bearing.percent) {
    return cursor.fail(span, wording::pair_against_order(
                                 typed, words.stated, pair_offers(cursor, first, *second, span)));
  }
  return words.slope_is_first ? First::slope : First::bearing;
}

bool has_bearing_before_towards(Cursor& cursor) {
  const Token first = *cursor.peek();
  if (!three_digits(first)) return false;
  const Token* const second = cursor.peek(2);
  const bool figures = second && second->type == Type::angle;
  // Before a certain bearing the figure can only be a dip or plunge, and it is too large for one.
  const bool bearing_follows =
      starts_lettered_bearing(cursor, 2) || (figures && three_digits(*second));
  const bool may_be_swapped = figures && second->value <= 90;
  if (bearing_follows && first.value > 90 && !may_be_swapped) return false;
  const Span span = with_next(cursor, cursor.position(), 3);
  const std::string_view a = cursor.text(first);
  Offers offers = {in_place(first.span(), std::string(without_zeros(a)))};
  if (figures) {
    const std::string_view b = without_zeros(cursor.text(*second));
    const Span both{first.offset, second->end() - first.offset};
    offers.push_back(in_place(both, fmt::format("{} > {}", b, a)));
    offers.push_back(in_place(both, fmt::format("{}/{}", a, b)));
  }
  cursor.report(
      span, wording::bearing_before_towards(cursor.text(span), cursor.accepted(std::move(offers))));
  return true;
}

std::nullopt_t fail_slope_first(Cursor& cursor, std::size_t behind, std::string_view order) {
  const Span first = cursor.here();
  cursor.skip(behind);
  const std::size_t start = cursor.position();
  const Span rest = cursor.rest();
  const Span whole{first.offset, rest.end() - first.offset};
  // Three tokens, because a single letter and a figure stand at the cursor.
  cursor.skip(3);
  const Span bearing = cursor.since(start);
  const Span both{first.offset, bearing.end() - first.offset};
  const Span between{first.end(), rest.offset - first.end()};
  const Offers offers = cursor.accepted(
      {in_place(between, " > "),
       in_place(both, fmt::format("{} {}", cursor.text(bearing), cursor.text(first)))});
  return cursor.fail(whole, wording::pair_order(cursor.text(whole), offers,
                                                cursor.accepted_above({std::string(order)})));
}

Offer without_sign(const Cursor& cursor, Span figure) {
  const std::size_t sign = std::max<std::size_t>(1, dash_length(cursor.text(figure)));
  return in_place({figure.offset, static_cast<std::uint32_t>(sign)}, "");
}

}  // namespace lodebook::notebook
