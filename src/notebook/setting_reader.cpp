// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <lodebook/notebook/nearest.hpp>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

std::optional<DialSetting> read_dial(Cursor& cursor) {
  DialSetting dial;
  if (cursor.is_word("quadrant")) {
    dial.notation = Notation::quadrant;
  } else if (!cursor.is_word("azimuth")) {
    return fail_word(cursor, "'dial'", "quadrant or azimuth");
  }
  cursor.skip();
  return dial;
}

std::optional<RuleSetting> read_rule(Cursor& cursor) {
  RuleSetting rule;
  if (cursor.is_word("left")) {
    rule.rule = HandRule::left;
  } else if (!cursor.is_word("right")) {
    const std::string_view word = cursor.at_end() ? std::string_view() : first_word(cursor);
    const bool right = word.starts_with('r') || word.starts_with('R');
    const bool left = word.starts_with('l') || word.starts_with('L');
    return fail_word(cursor, "'rule'",
                     right  ? "right?"
                     : left ? "left?"
                            : "right or left: the side that goes down, looking along the strike");
  }
  cursor.skip();
  if (cursor.is_word("hand")) {
    return cursor.fail(cursor.rest(), wording::trailing_text(cursor.text(cursor.rest()),
                                                             rule.rule == HandRule::left
                                                                 ? "leave it out: 'rule left'"
                                                                 : "leave it out: 'rule right'"));
  }
  return rule;
}

/// `WORD/WORD`.
bool skip_pair(Cursor& cursor, std::string_view first, std::string_view second) {
  if (!cursor.is_word(first) || !cursor.is(Type::slash, 1) || !cursor.is_word(second, 2))
    return false;
  cursor.skip(3);
  return true;
}

/// The pair with a slash, if it was typed without (`strike dip`); empty for anything else.
std::string pair_without_slash(const Cursor& cursor) {
  for (const auto& [first, second] :
       {std::pair("strike", "dip"), std::pair("direction", "dip"), std::pair("dip", "direction"),
        std::pair("dip", "strike"), std::pair("trend", "plunge"), std::pair("plunge", "trend")}) {
    if (cursor.is_word(first) && cursor.is_word(second, 1))
      return std::string(first) + "/" + second + "?";
  }
  return {};
}

std::optional<OrderSetting> read_order(Cursor& cursor) {
  OrderSetting order;
  do {
    const bool planes_open = order.planes == PlaneOrder::unstated;
    const bool lines_open = order.lines == LineOrder::unstated;
    if (planes_open && skip_pair(cursor, "strike", "dip")) {
      order.planes = PlaneOrder::strike_dip;
    } else if (planes_open && skip_pair(cursor, "direction", "dip")) {
      order.planes = PlaneOrder::direction_dip;
    } else if (planes_open && skip_pair(cursor, "dip", "direction")) {
      order.planes = PlaneOrder::dip_direction;
    } else if (planes_open && skip_pair(cursor, "dip", "strike")) {
      order.planes = PlaneOrder::dip_strike;
    } else if (lines_open && skip_pair(cursor, "trend", "plunge")) {
      order.lines = LineOrder::trend_plunge;
    } else if (lines_open && skip_pair(cursor, "plunge", "trend")) {
      order.lines = LineOrder::plunge_trend;
    } else {
      if (const std::string meant = pair_without_slash(cursor); !meant.empty())
        return cursor.fail(cursor.rest(), wording::unknown_word(cursor.text(cursor.rest()), meant));
      return fail_word(cursor, "'order'",
                       "strike/dip, dip/strike, direction/dip, dip/direction, trend/plunge or "
                       "plunge/trend");
    }
  } while (!cursor.at_end());
  return order;
}

/// `E`, `west`
bool is_side(const Cursor& cursor) {
  return cursor.is_word("e") || cursor.is_word("east") || cursor.is_word("w") ||
         cursor.is_word("west");
}

/// An angle without E or W. Its sign may tell the side; otherwise both are offered.
Diagnostic fault_of_side(const Cursor& cursor, const Token& angle, Span span) {
  Diagnostic fault = wording::declination_side(cursor.text(span));
  std::string bare(cursor.text(angle));
  if (angle.has_sign) bare.erase(0, angle.negative ? dash_length(bare) : 1);
  for (const char side : {'E', 'W'}) {
    if (angle.has_sign && angle.negative != (side == 'W')) continue;
    fault = mended(std::move(fault), span, bare + side);
  }
  return fault;
}

/// Reads `24.6E`, `0`; with `with_sigma` also `±0.4`.
std::optional<DeclinationSetting> read_declination_angle(Cursor& cursor, bool with_sigma) {
  if (cursor.at_end())
    return cursor.fail(cursor.here(), wording::incomplete("the statement", "angle", "24.6E"));
  if (has_decimal_comma(cursor)) return std::nullopt;
  const std::size_t start = cursor.position();
  if (is_side(cursor) && cursor.is(Type::angle, 1)) {
    const std::string meant =
        std::string(cursor.text(*cursor.peek(1))) + cursor.text(*cursor.peek(0))[0];
    return cursor.fail(
        cursor.rest(),
        mended(wording::number(cursor.text(cursor.rest()), meant + "?"),
               {cursor.here().offset, cursor.peek(1)->end() - cursor.here().offset}, meant));
  }
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  const Token angle = *token;
  cursor.skip();
  if (angle.percent)
    return cursor.fail(angle.span(), wording::number(cursor.text(angle), "degrees, such as 24.6E"));
  const bool east = cursor.is_word("e") || cursor.is_word("east");
  const bool west = cursor.is_word("w") || cursor.is_word("west");
  if (east || west) cursor.skip();
  const Span span = cursor.since(start);
  if (!(east || west) && angle.value != 0)
    return cursor.fail(span, fault_of_side(cursor, angle, span));
  if (angle.has_sign && angle.value != 0)
    return cursor.fail(span, wording::declination_twice(cursor.text(span), angle.negative, east));
  DeclinationSetting setting;
  const auto declination = west ? Declination::west(angle.value) : Declination::east(angle.value);
  if (!declination) return cursor.fail(span, wording::declination_large(cursor.text(span), true));
  setting.declination = *declination;
  if (angle.value > 60) cursor.report(span, wording::declination_large(cursor.text(span), false));
  if (with_sigma && cursor.skip_if(Type::plus_minus)) {
    const Token* sigma = figure_at(cursor);
    if (!sigma) return std::nullopt;
    if (sigma->has_sign || sigma->percent)
      return cursor.fail(sigma->span(),
                         wording::number(cursor.text(*sigma), "degrees, such as ±0.4"));
    cursor.skip();
    setting.sigma = sigma->value;
  }
  return setting;
}

std::optional<SetSetting> read_set(Cursor& cursor) {
  const auto angle = read_declination_angle(cursor, false);
  if (!angle) return std::nullopt;
  return SetSetting{angle->declination};
}

/// A figure above 0 behind a word of `accuracy`.
std::optional<double> read_sigma(Cursor& cursor, bool percent) {
  if (cursor.is(Type::plus_minus))
    return cursor.fail(
        cursor.here(),
        mended(wording::number(cursor.text(cursor.here()), "leave the ± out"), cursor.here(), {}));
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  const std::string_view typed = cursor.text(*token);
  if (token->negative || !(token->value > 0))
    return cursor.fail(token->span(), wording::accuracy_zero(typed, percent ? "2%" : "0.5"));
  if (token->percent != percent)
    return cursor.fail(token->span(), percent ? mended(wording::accuracy_percent(typed, true),
                                                       {token->span().end(), 0}, "%")
                                              : wording::accuracy_percent(typed, false));
  cursor.skip();
  return token->value;
}

std::optional<AccuracySetting> read_accuracy(Cursor& cursor) {
  AccuracySetting accuracy;
  do {
    if (!accuracy.bearing && cursor.is_word("bearing")) {
      cursor.skip();
      accuracy.bearing = read_sigma(cursor, false);
      if (!accuracy.bearing) return std::nullopt;
    } else if (!accuracy.dip && cursor.is_word("dip")) {
      cursor.skip();
      accuracy.dip = read_sigma(cursor, false);
      if (!accuracy.dip) return std::nullopt;
    } else if (!accuracy.distance_percent && cursor.is_word("distance")) {
      cursor.skip();
      accuracy.distance_percent = read_sigma(cursor, true);
      if (!accuracy.distance_percent) return std::nullopt;
    } else {
      return fail_word(cursor, "'accuracy'",
                       "bearing, dip or distance before each figure, such as bearing 0.5");
    }
  } while (!cursor.at_end());
  return accuracy;
}

std::optional<PaceSetting> read_pace(Cursor& cursor) {
  if (cursor.at_end()) return fail_word(cursor, "'pace'", "pace 0.76m");
  // `2.5'` probably means feet.
  if (cursor.is(Type::angle) && cursor.peek()->fault == Token::Fault::only_minutes) {
    report_unit(cursor, *cursor.peek());
    return std::nullopt;
  }
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  const Token figure = *token;
  cursor.skip();
  PaceSetting pace;
  pace.pace.value = figure.signed_value();
  if (cursor.is_word("ft")) {
    pace.pace.unit = LengthUnit::feet;
  } else if (!cursor.is_word("m")) {
    report_unit(cursor, figure);
    return std::nullopt;
  }
  if (!(pace.pace.value > 0) || figure.percent || figure.marked)
    return cursor.fail(figure.span(), wording::number(cursor.text(figure), "such as 0.76m"));
  cursor.skip();
  return pace;
}

std::optional<AttractionSetting> read_attraction(Cursor& cursor) {
  if (!cursor.is_word("correct")) return fail_word(cursor, "'attraction'", "correct");
  cursor.skip();
  return AttractionSetting{};
}

bool is_known_datum(std::string_view typed) {
  constexpr std::array<std::string_view, 5> known = {"wgs84", "gda2020", "nzgd2000", "etrs89",
                                                     "nad83"};
  std::string plain;
  for (const char c : typed) {
    if (c != ' ' && c != '-') plain += c;
  }
  return std::any_of(known.begin(), known.end(),
                     [&](std::string_view datum) { return equals_word(plain, datum); });
}

}  // namespace

std::optional<DeclinationSetting> read_declination_words(Cursor& cursor) {
  for (const auto& [word, from] : {std::pair("as-set", DeclinationSetting::From::as_set),
                                   std::pair("model", DeclinationSetting::From::model)}) {
    if (!cursor.is_word(word)) continue;
    cursor.skip();
    if (cursor.is(Type::plus_minus))
      return cursor.fail(
          cursor.rest(),
          wording::trailing_text(cursor.text(cursor.rest()), "leave it out: the ± comes with it"));
    DeclinationSetting setting;
    setting.from = from;
    return setting;
  }
  if (cursor.is(Type::word) && !(is_side(cursor) && cursor.is(Type::angle, 1))) {
    constexpr std::array<std::string_view, 2> words = {"model", "as-set"};
    const auto near = nearest(first_word(cursor), words);
    return cursor.fail(cursor.here(),
                       wording::number(first_word(cursor),
                                       near ? std::string(*near) + "?" : "24.6E, model or as-set"));
  }
  return read_declination_angle(cursor, true);
}

VoidSetting void_setting(Keyword keyword) {
  switch (keyword) {
    case Keyword::set:
      return VoidSetting::set;
    case Keyword::declination:
      return VoidSetting::declination;
    case Keyword::rule:
      return VoidSetting::rule;
    case Keyword::order:
      return VoidSetting::order;
    case Keyword::pace:
      return VoidSetting::pace;
    default:
      return VoidSetting::none;
  }
}

void LogReader::read_setting(Statement& statement, Keyword keyword) {
  const VoidSetting setting = void_setting(keyword);
  if (take_setting(statement, keyword)) {
    end_void(setting, text(statement.body));
  } else {
    begin_void(statement, setting);
    push_unread(statement, setting);
  }
}

bool LogReader::take_setting(Statement& statement, Keyword keyword) {
  const Tokens tokens(source_.text(), statement.body);
  Cursor cursor(source_.text(), tokens, faults_);
  // Takes the setting if its statement was read completely; otherwise the statement is void.
  const auto take = [&](const auto& setting) {
    if (!setting || !finish(cursor)) return false;
    push(statement, *setting);
    return true;
  };
  const auto take_text = [&](HeadingText::Which which) {
    push(statement, HeadingText{which, statement.body});
    return true;
  };
  if (keyword != Keyword::datum && keyword != Keyword::date && has_decimal_comma(cursor))
    return false;
  switch (keyword) {
    case Keyword::area:
      return take_text(HeadingText::Which::area);
    case Keyword::observer:
      return take_text(HeadingText::Which::observer);
    case Keyword::instrument:
      return take_text(HeadingText::Which::instrument);
    case Keyword::date:
      return take_date(statement);
    case Keyword::dial: {
      const auto dial = read_dial(cursor);
      if (!take(dial)) return false;
      dial_ = dial->notation;
      return true;
    }
    case Keyword::set:
      return take(read_set(cursor));
    case Keyword::declination:
      return take(read_declination_words(cursor));
    case Keyword::rule: {
      const auto rule = read_rule(cursor);
      if (!take(rule)) return false;
      rules_.rule = rule->rule;
      return true;
    }
    case Keyword::order: {
      const auto order = read_order(cursor);
      if (!take(order)) return false;
      if (order->planes != PlaneOrder::unstated) rules_.planes = order->planes;
      if (order->lines != LineOrder::unstated) rules_.lines = order->lines;
      return true;
    }
    case Keyword::pace:
      if (!take(read_pace(cursor))) return false;
      return has_pace_ = true;
    case Keyword::accuracy:
      return take(read_accuracy(cursor));
    case Keyword::attraction:
      return take(read_attraction(cursor));
    default:
      return take_datum(statement);
  }
}

bool LogReader::take_date(const Statement& statement) {
  const std::string_view typed = text(statement.body);
  if (const auto date = read_date(typed)) {
    push(statement, DateSetting{*date});
    return true;
  }
  const std::string meant = meant_date(typed);
  Diagnostic fault = typed.empty() ? wording::incomplete("'date'", "value", "date 2026-02-14")
                                   : wording::date(typed, meant);
  if (!meant.empty()) fault = mended(std::move(fault), statement.body, meant);
  faults_.add(statement.body, std::move(fault));
  return false;
}

bool LogReader::take_datum(const Statement& statement) {
  const std::string_view typed = text(statement.body);
  if (is_known_datum(typed)) {
    push(statement, DatumSetting{statement.body});
    return true;
  }
  faults_.add(statement.body, typed.empty() ? wording::incomplete("'datum'", "value", "datum WGS84")
                                            : wording::datum(typed));
  return false;
}

}  // namespace lodebook::notebook
