// SPDX-License-Identifier: MIT
#include "figure_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// A comma before three digits may separate thousands.
constexpr std::size_t digits_a_thousand = 3;

/// The number of digits and points at the start of `typed`.
std::size_t number_length(std::string_view typed) {
  return std::min(typed.find_first_not_of("0123456789."), typed.size());
}

/// Reports a dash between words: a hyphen, or the sign of the figure behind it.
void report_dash(Cursor& cursor, const Token& dash) {
  const Token* next = cursor.peek(1);
  if (!next || next->type != Type::angle)
    return cursor.report(dash.span(),
                         wording::number_dash("", cursor.accepted({in_place(dash.span(), "")})));
  const Span span{dash.offset, next->offset - dash.offset};
  const std::string_view space = dash.spaced ? "" : " ";
  const Offers offers =
      cursor.accepted(each_in_place(span, {std::string(space), std::string(space) + '-'}));
  cursor.report(dash.span(), wording::number_dash(cursor.text(*next), offers));
}

/// Reports something that stands where a figure should.
void report_no_figure(Cursor& cursor, const Token& token) {
  const std::string_view typed = cursor.text(token);
  Offers offers;
  // A mark of doubt is typed on purpose; it is not a slip.
  if (token.type == Type::other && typed != "?" && typed != "~")
    offers = cursor.accepted(each_in_place(token.span(), {"", " "}));
  cursor.report(token.span(), wording::number(typed, wording::figures_look_so, offers));
}

/// `1e3` and `0x10`: letters that touch a figure; reports them.
bool reports_letters(Cursor& cursor, const Token& token) {
  const Token* letters = cursor.peek(1);
  const Token* tail = cursor.peek(2);
  const Token* before = cursor.previous();
  const bool after_letters = before && before->type == Type::word && !token.spaced;
  const auto is_exponent = [&cursor](const Token& figure) {
    const std::string_view shown = cursor.text(figure);
    return figure.type == Type::angle || shown == "+" || dash_length(shown) > 0;
  };
  if (!letters || letters->type != Type::word || letters->spaced || !tail || tail->spaced ||
      !is_exponent(*tail) || after_letters)
    return false;
  const Span span{token.offset, tail->end() - token.offset};
  std::string_view help = wording::figures_look_so;
  Offers offers;
  if (cursor.is_letter_for_zero(1)) {
    help = letter_for_zero;
    std::string zeros(cursor.text(span));
    std::ranges::replace_if(
        zeros, [](char c) { return c == 'O' || c == 'o'; }, '0');
    offers = cursor.accepted({in_place(span, std::move(zeros))});
  }
  cursor.report(span, wording::number(cursor.text(span), help, offers));
  return true;
}

/// Reports a figure with a fault of its own.
void report_figure(Cursor& cursor, const Token& token) {
  const std::string_view typed = cursor.text(token);
  switch (token.fault) {
    case Token::Fault::none:
    case Token::Fault::malformed: {
      Offers offers;
      if (const std::size_t points = typed.find(".."); points != std::string_view::npos)
        offers = cursor.accepted({in_place(token.span(), std::string(typed).erase(points, 1))});
      return cursor.report(token.span(), wording::number(typed, wording::figures_look_so, offers));
    }
    case Token::Fault::minutes_range:
      return cursor.report(token.span(), wording::number_minutes(typed));
    case Token::Fault::only_minutes: {
      const std::string figure(typed.substr(0, number_length(typed)));
      const Offers offers =
          cursor.accepted({in_place(token.span(), figure, "degrees"),
                           in_place(token.span(), fmt::format("0°{}'", figure), "minutes")});
      return cursor.report(token.span(),
                           wording::number(typed, "minutes need degrees before them", offers));
    }
  }
}

}  // namespace

bool is_no_number(std::string_view word) {
  return word.size() >= 3 &&
         (equals_word(word, "nan") || equals_word(word, "inf") || equals_word(word, "infinity"));
}

const Token* figure_at(Cursor& cursor) {
  const Token* token = cursor.peek();
  if (!token) {
    cursor.report(cursor.here(), wording::incomplete("the statement", "figure", ""));
    return nullptr;
  }
  if (token->type != Type::angle) {
    if (dash_length(cursor.text(*token)) > 0) {
      report_dash(cursor, *token);
    } else {
      report_no_figure(cursor, *token);
    }
    return nullptr;
  }
  if (reports_letters(cursor, *token)) return nullptr;
  if (token->fault == Token::Fault::none) return token;
  report_figure(cursor, *token);
  return nullptr;
}

std::optional<OwnError> own_error(Cursor& cursor, const Token& first, const Token& last) {
  if (last.has_sigma && !(last.sigma > 0))
    return cursor.fail(last.span(), wording::accuracy_zero(cursor.text(last), "0.5"));
  const bool other_unit = last.sigma_percent ? !last.percent : last.sigma_marked && last.percent;
  if (other_unit)
    return cursor.fail(last.span(), wording::accuracy_percent(cursor.text(last), last.percent));
  return OwnError{last.sigma, first.rough};
}

std::optional<Slope> read_slope(Cursor& cursor) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  const auto own = own_error(cursor, *token, *token);
  if (!own) return std::nullopt;
  cursor.skip();
  Slope slope;
  slope.own = *own;
  slope.value = token->signed_value();
  slope.percent = token->percent;
  slope.digits = token->digits;
  slope.decimals = token->decimals;
  return slope;
}

void report_unit(Cursor& cursor, const Token& figure) {
  const bool foot_mark = figure.fault == Token::Fault::only_minutes;
  std::string typed(cursor.text(figure));
  if (foot_mark) typed.resize(number_length(typed));
  std::vector<std::string> units = {typed + "m", typed + "ft", typed + " paces"};
  // `120 metres`: the unit as a full word.
  const auto is_word_of = [&cursor](std::initializer_list<std::string_view> words) {
    return std::ranges::any_of(words, [&](std::string_view word) { return cursor.is_word(word); });
  };
  const bool is_feet = is_word_of({"feet", "foot"});
  const bool is_metres = is_word_of({"metre", "metres", "meter", "meters"});
  if (foot_mark || is_feet) std::swap(units[0], units[1]);
  Span span = figure.span();
  if (is_feet || is_metres) {
    span.length = cursor.here().end() - span.offset;
    units.resize(1);
  }
  cursor.report(figure.span(),
                wording::distance_unit(cursor.text(figure), foot_mark,
                                       cursor.accepted(each_in_place(span, std::move(units)))));
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
    std::vector<std::string> meant = {".", "/"};
    if (after->length == digits_a_thousand) meant.emplace_back();  // `2,664`
    Offers offers = cursor.accepted(each_in_place(token->span(), std::move(meant)));
    if (offers.empty()) offers = cursor.accepted({in_place(token->span(), ", ")});
    cursor.report(span, wording::decimal_comma(cursor.text(span), offers));
    return true;
  }
  return false;
}

}  // namespace lodebook::notebook
