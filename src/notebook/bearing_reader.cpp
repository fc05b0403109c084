// SPDX-License-Identifier: MIT
#include "bearing_reader.hpp"

#include <fmt/format.h>

#include <lodebook/orientation/decimal.hpp>

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
  // The mark `~` belongs to the whole bearing, so it stands before the first letter only.
  return ahead > 0 && token->rough ? 0 : upper(cursor.text(*token)[0]);
}

bool joined(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  return token && !token->spaced;
}

bool is_plain_figure(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  return token && token->type == Type::angle && !token->has_sign && !(ahead > 0 && token->rough);
}

bool east_or_west(char letter) {
  return letter == 'E' || letter == 'W';
}
bool north_or_south(char letter) {
  return letter == 'N' || letter == 'S';
}

Point opposite(Point point) {
  constexpr unsigned half_turn = 8;
  return static_cast<Point>((static_cast<unsigned>(point) + half_turn) % (2 * half_turn));
}

Bearing point_bearing(Point point) {
  Bearing bearing;
  bearing.notation = Notation::point;
  bearing.point = point;
  return bearing;
}

/// Whether the figure `ahead` is a distance rather than an angle, by its size, unit or foot mark.
bool is_distance(const Cursor& cursor, std::size_t ahead) {
  const Token& figure = *cursor.peek(ahead);
  return figure.value > 90 || figure.fault != Token::Fault::none ||
         cursor.is_word("m", ahead + 1) || cursor.is_word("ft", ahead + 1) ||
         cursor.is_word("paces", ahead + 1) || cursor.is_word("pace", ahead + 1);
}

/// Skips `count` tokens and reports that their letters make no quadrant bearing. `meant` is what
/// may have been meant; `help` is used if none of it is accepted.
std::nullopt_t fail_letters(Cursor& cursor, std::size_t count, std::vector<std::string> meant,
                            std::string_view help) {
  const std::size_t first = cursor.position();
  cursor.skip(count);
  const Span span = cursor.since(first);
  const Offers offers = cursor.accepted(each_in_place(span, std::move(meant)));
  return cursor.fail(span, wording::quadrant_letters(cursor.text(span), help, offers));
}

/// The letter O behind the figure of a quadrant bearing: the digit 0 or the degree mark.
std::nullopt_t fail_letter_for_zero(Cursor& cursor) {
  const char first = letter_at(cursor, 0);
  const std::string_view figure = cursor.text(*cursor.peek(1));
  const std::string_view rest = cursor.text(*cursor.peek(2)).substr(1);
  return fail_letters(
      cursor, 3,
      {fmt::format("{}{}0{}", first, figure, rest), fmt::format("{}{}{}", first, figure, rest)},
      letter_for_zero);
}

/// `N50`: no second letter. `N50 30W` may have a second one, and minutes without their mark.
std::nullopt_t fail_second_letter(Cursor& cursor) {
  if (cursor.is_letter_for_zero(2)) return fail_letter_for_zero(cursor);
  const char first = letter_at(cursor, 0);
  const std::string_view angle = cursor.text(*cursor.peek(1));
  if (is_plain_figure(cursor, 2) && east_or_west(letter_at(cursor, 3))) {
    const std::string_view minutes = cursor.text(*cursor.peek(2));
    const char last = letter_at(cursor, 3);
    const std::string marked = fmt::format("{}{}°{}'{}", first, angle, minutes, last);
    const bool is_one_figure = cursor.peek(1)->digits == 1 && cursor.peek(2)->digits == 1;
    const std::string one = fmt::format("{}{}{}{}", first, angle, minutes, last);
    return fail_letters(cursor, 4,
                        {is_one_figure ? one : marked, marked,
                         fmt::format("{}{}E {} {}", first, angle, minutes, last),
                         fmt::format("{}{}W {} {}", first, angle, minutes, last)},
                        fmt::format("minutes take a mark: {}", marked));
  }
  const Token* letters = cursor.peek(2);
  if (letters && letters->type == Type::word && !letters->spaced &&
      east_or_west(upper(cursor.text(*letters)[0]))) {
    // `N62EE`: one letter too many.
    return fail_letters(cursor, 3,
                        {fmt::format("{}{}{}", first, angle, upper(cursor.text(*letters)[0]))},
                        "type E or W behind the angle");
  }
  std::vector<std::string> meant = {fmt::format("{}{}E", first, angle),
                                    fmt::format("{}{}W", first, angle)};
  if (cursor.peek(1)->spaced) meant.push_back(fmt::format("{}/{}", first, angle));
  return fail_letters(cursor, 2, std::move(meant), "type E or W behind the angle");
}

/// `E25N`: counted from east or west.
std::nullopt_t fail_swapped(Cursor& cursor) {
  const char first = letter_at(cursor, 0);
  const char last = letter_at(cursor, 2);
  const double angle = cursor.peek(1)->value;
  const std::string_view figure = cursor.text(*cursor.peek(1));
  const std::size_t start = cursor.position();
  if (north_or_south(last) && angle <= 90) {
    cursor.skip(3);
    const Span span = cursor.since(start);
    const Offers offers = cursor.accepted({in_place(
        span, fmt::format("{}{}{}", last, trimmed_text(90 - angle, angle_decimals), first))});
    return cursor.fail(span, wording::quadrant_letters_swapped(cursor.text(span), offers));
  }
  const bool has_last = last != 0 && joined(cursor, 2);
  std::vector<std::string> meant;
  if (!has_last || last == first)
    meant = {fmt::format("N{}{}", figure, first), fmt::format("S{}{}", figure, first)};
  return fail_letters(cursor, has_last ? 3 : 2, std::move(meant),
                      "the first letter is N or S, the last E or W");
}

/// `NW`: both letters of a quadrant bearing on one side of its figure.
bool are_both_letters(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  if (!token || token->type != Type::word || token->length != 2) return false;
  const std::string_view word = cursor.text(*token);
  return north_or_south(upper(word[0])) && east_or_west(upper(word[1]));
}

/// `NW50` or `50NW`; `letters` and `figure` count the tokens ahead.
std::nullopt_t fail_both_letters(Cursor& cursor, std::size_t letters, std::size_t figure) {
  const std::string_view word = cursor.text(*cursor.peek(letters));
  const std::string meant =
      fmt::format("{}{}{}", upper(word[0]), cursor.text(*cursor.peek(figure)), upper(word[1]));
  return fail_letters(cursor, 2, {meant}, "the angle stands between the two letters");
}

std::nullopt_t fail_percent(Cursor& cursor, const Token& token) {
  std::string plain(cursor.text(token));
  plain.erase(plain.find('%'));
  const Offers offers = cursor.accepted({in_place(token.span(), plain)});
  return cursor.fail(token.span(),
                     wording::number(cursor.text(token), "a bearing has no %", offers));
}

std::optional<Bearing> read_quadrant(Cursor& cursor) {
  const std::size_t start = cursor.position();
  const char first = letter_at(cursor, 0);
  const char last = letter_at(cursor, 2);
  Cursor figures = cursor;
  figures.skip();
  const Token* token = figure_at(figures);
  if (!token) return std::nullopt;
  const auto own = own_error(cursor, *cursor.peek(), *cursor.peek(2));
  if (!own) return std::nullopt;
  cursor.skip(3);
  if (token->percent) return fail_percent(cursor, *token);
  Bearing bearing;
  bearing.own = *own;
  bearing.notation = Notation::quadrant;
  bearing.pole = first == 'N' ? QuadrantBearing::Pole::north : QuadrantBearing::Pole::south;
  bearing.side = last == 'E' ? QuadrantBearing::Side::east : QuadrantBearing::Side::west;
  bearing.angle = token->value;
  bearing.digits = token->digits;
  bearing.decimals = token->decimals;
  if (bearing.angle > 90) {
    const Span span = cursor.since(start);
    Offers offers;
    if (bearing.angle <= 180) {
      offers = cursor.accepted(
          {in_place(span, fmt::format("{}{}{}", first == 'N' ? 'S' : 'N',
                                      trimmed_text(180 - bearing.angle, angle_decimals), last))});
    }
    return cursor.fail(span,
                       wording::quadrant_angle(bearing.angle, bearing.pole, bearing.side, offers));
  }
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
        return fail_letters(cursor, 3,
                            {fmt::format("{}{}E", first, cursor.text(*cursor.peek(1))),
                             fmt::format("{}{}W", first, cursor.text(*cursor.peek(1)))},
                            "the second letter is E or W");
      return fail_second_letter(cursor);
    }
    // `N 20`: before a side (`N 20 NW`) the figure can only be a dip, with a unit (`N 20m`) only a
    // distance. Otherwise a letter is missing.
    const bool other_figure =
        behind == Behind::figure ? point_at(cursor, 2).has_value() : is_distance(cursor, 1);
    if (!other_figure) return fail_second_letter(cursor);
  }
  if (!due && east_or_west(first) && is_plain_figure(cursor, 1) && joined(cursor, 1))
    return fail_swapped(cursor);
  if (!due && are_both_letters(cursor, 0) && is_plain_figure(cursor, 1) && joined(cursor, 1))
    return fail_both_letters(cursor, 0, 1);
  if (const auto point = point_at(cursor)) {
    const auto own = own_error(cursor, *cursor.peek(), *cursor.peek());
    if (!own) return std::nullopt;
    cursor.skip();
    Bearing bearing = point_bearing(*point);
    bearing.own = *own;
    return bearing;
  }
  const std::string_view word = cursor.text(cursor.here());
  if (is_no_number(word))
    return cursor.fail(cursor.here(), wording::number(word, wording::bearings_look_so));
  Offers offers;
  if (word.size() == 2 && north_or_south(upper(word[0])) && upper(word[1]) == 'O')
    offers = cursor.accepted({in_place(cursor.here(), std::string{word[0], '0'})});
  return cursor.fail(cursor.here(), wording::no_bearing(word, offers));
}

std::optional<Bearing> read_azimuth(Cursor& cursor) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  if (token->percent) return fail_percent(cursor, *token);
  if (east_or_west(letter_at(cursor, 1)) && joined(cursor, 1)) {
    const std::string_view figure = cursor.text(*token);
    const char last = letter_at(cursor, 1);
    return fail_letters(cursor, 2,
                        {fmt::format("N{}{}", figure, last), fmt::format("S{}{}", figure, last)},
                        "the first letter is N or S");
  }
  if (are_both_letters(cursor, 1) && joined(cursor, 1) && !token->has_sign)
    return fail_both_letters(cursor, 1, 0);
  if (token->negative || token->value > 360) {
    const double azimuth = token->signed_value();
    Offers offers;
    if (azimuth >= -360 && azimuth <= 720)
      offers = cursor.accepted(
          {in_place(token->span(), azimuth_text(azimuth + (azimuth < 0 ? 360 : -360)))});
    return cursor.fail(token->span(), wording::azimuth_range(azimuth, offers));
  }
  const auto own = own_error(cursor, *token, *token);
  if (!own) return std::nullopt;
  cursor.skip();
  Bearing bearing;
  bearing.own = *own;
  bearing.angle = token->value;
  bearing.digits = token->digits;
  bearing.decimals = token->decimals;
  return bearing;
}

}  // namespace

std::string azimuth_text(double degrees) {
  return three_digits_of(trimmed_text(degrees, angle_decimals));
}

std::string three_digits_of(std::string_view figure) {
  const std::size_t digits = std::min(figure.find_first_not_of("0123456789"), figure.size());
  return std::string(3 - std::min<std::size_t>(3, digits), '0').append(figure);
}

Fix opposite_at(const Cursor& cursor) {
  const Token* token = cursor.peek();
  if (!token) return {};
  if (token->type == Type::angle) {
    return {token->span(), azimuth_text(wrap_degrees(token->signed_value() + 180))};
  }
  const char first = letter_at(cursor, 0);
  const char last = letter_at(cursor, 2);
  if (north_or_south(first) && is_plain_figure(cursor, 1) && east_or_west(last)) {
    const Span span{token->offset, cursor.peek(2)->end() - token->offset};
    return {span, fmt::format("{}{}{}", first == 'N' ? 'S' : 'N', cursor.text(*cursor.peek(1)),
                              last == 'E' ? 'W' : 'E')};
  }
  const auto point = point_at(cursor);
  if (!point) return {};
  return {token->span(), std::string(name_of(opposite(*point)))};
}

std::optional<Point> point_at(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  if (!token || token->type != Type::word) return std::nullopt;
  return point_named(cursor.text(*token));
}

bool starts_lettered_bearing(const Cursor& cursor, std::size_t ahead) {
  return cursor.is_word("due", ahead) || point_at(cursor, ahead).has_value();
}

OwnNorth north_at(const Cursor& cursor, std::size_t ahead) {
  const Token* token = cursor.peek(ahead);
  if (!token || !token->spaced || token->has_sigma) return OwnNorth::none;
  for (const OwnNorth north : {OwnNorth::geographic, OwnNorth::magnetic, OwnNorth::grid}) {
    if (cursor.is_word(word_of(north), ahead)) return north;
  }
  return OwnNorth::none;
}

std::optional<Bearing> read_bearing_alone(Cursor& cursor, Behind behind) {
  if (cursor.at_end()) {
    return cursor.fail(cursor.here(),
                       wording::incomplete("the statement", "bearing", wording::bearings_look_so));
  }
  return cursor.is(Type::word) ? read_lettered(cursor, behind) : read_azimuth(cursor);
}

std::optional<Bearing> read_bearing(Cursor& cursor, Behind behind) {
  auto bearing = read_bearing_alone(cursor, behind);
  if (!bearing) return std::nullopt;
  bearing->north = north_at(cursor);
  if (bearing->north != OwnNorth::none) cursor.skip();
  return bearing;
}

}  // namespace lodebook::notebook
