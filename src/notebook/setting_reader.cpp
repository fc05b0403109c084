// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

std::string_view word_at(const Cursor& cursor) {
  return cursor.text(cursor.here());
}

/// Fails with the words that could stand here.
std::nullopt_t fail_word(Cursor& cursor, std::string_view what, std::string_view known) {
  if (cursor.at_end()) return cursor.fail(cursor.here(), wording::incomplete(what, "value", known));
  return cursor.fail(cursor.here(), wording::unknown_word(word_at(cursor), known));
}

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
    return fail_word(cursor, "'rule'",
                     "right or left: the side that goes down, looking along the strike");
  }
  cursor.skip();
  return rule;
}

/// `WORD/WORD`.
bool skip_pair(Cursor& cursor, std::string_view first, std::string_view second) {
  if (!cursor.is_word(first) || !cursor.is(Type::slash, 1) || !cursor.is_word(second, 2))
    return false;
  cursor.skip(3);
  return true;
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
    } else if (lines_open && skip_pair(cursor, "trend", "plunge")) {
      order.lines = LineOrder::trend_plunge;
    } else if (lines_open && skip_pair(cursor, "plunge", "trend")) {
      order.lines = LineOrder::plunge_trend;
    } else {
      return fail_word(cursor, "'order'",
                       "strike/dip, direction/dip, dip/direction, trend/plunge or plunge/trend");
    }
  } while (!cursor.at_end());
  return order;
}

/// Reads `24.6E`, `0`; with `with_sigma` also `±0.4`.
std::optional<DeclinationSetting> read_declination_angle(Cursor& cursor, bool with_sigma) {
  if (cursor.at_end())
    return cursor.fail(cursor.here(), wording::incomplete("the statement", "angle", "24.6E"));
  if (has_decimal_comma(cursor)) return std::nullopt;
  const std::size_t start = cursor.position();
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
  if ((angle.has_sign || !(east || west)) && angle.value != 0)
    return cursor.fail(span, wording::declination_side(cursor.text(span)));
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

/// A figure above zero behind a word of `accuracy`.
std::optional<double> read_sigma(Cursor& cursor, bool percent) {
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  if (token->percent != percent || token->negative || !(token->value > 0))
    return cursor.fail(token->span(), wording::number(cursor.text(*token),
                                                      percent ? "percent, such as 2%"
                                                              : "degrees above 0, such as 0.5"));
  cursor.skip();
  return token->value;
}

std::optional<AccuracySetting> read_accuracy(Cursor& cursor) {
  constexpr std::string_view known = "bearing 0.5 dip 1 distance 2%";
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
      return fail_word(cursor, "'accuracy'", known);
    }
  } while (!cursor.at_end());
  return accuracy;
}

std::optional<PaceSetting> read_pace(Cursor& cursor) {
  if (cursor.at_end()) return fail_word(cursor, "'pace'", "pace 0.76m");
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
  if (cursor.is(Type::word))
    return cursor.fail(cursor.here(), wording::number(word_at(cursor), "24.6E, model or as-set"));
  return read_declination_angle(cursor, true);
}

void LogReader::read_setting(Statement& statement, Keyword keyword) {
  const Tokens tokens(source_.text(), statement.body);
  Cursor cursor(source_.text(), tokens, faults_);
  // Takes the setting if it was read to its end; otherwise the statement is void.
  const auto take = [&](auto setting) {
    if (setting && finish(cursor)) {
      push(statement, *setting);
      return true;
    }
    push_unread(statement);
    return false;
  };
  if (keyword != Keyword::datum && keyword != Keyword::date && has_decimal_comma(cursor))
    return push_unread(statement);
  switch (keyword) {
    case Keyword::area:
      return push(statement, HeadingText{HeadingText::Which::area, statement.body});
    case Keyword::observer:
      return push(statement, HeadingText{HeadingText::Which::observer, statement.body});
    case Keyword::instrument:
      return push(statement, HeadingText{HeadingText::Which::instrument, statement.body});
    case Keyword::date: {
      const auto date = read_date(text(statement.body));
      if (date) return push(statement, DateSetting{*date});
      faults_.add(statement.body,
                  statement.body.empty()
                      ? wording::incomplete("'date'", "value", "date 2026-02-14")
                      : wording::date(text(statement.body), meant_date(text(statement.body))));
      return push_unread(statement);
    }
    case Keyword::dial: {
      const auto dial = read_dial(cursor);
      if (take(dial)) dial_ = dial->notation;
      return;
    }
    case Keyword::set:
      take(read_set(cursor));
      return;
    case Keyword::declination:
      take(read_declination_words(cursor));
      return;
    case Keyword::rule: {
      const auto rule = read_rule(cursor);
      if (take(rule)) rules_.rule = rule->rule;
      return;
    }
    case Keyword::order: {
      const auto order = read_order(cursor);
      if (!take(order)) return;
      if (order->planes != PlaneOrder::unstated) rules_.planes = order->planes;
      if (order->lines != LineOrder::unstated) rules_.lines = order->lines;
      return;
    }
    case Keyword::pace:
      if (take(read_pace(cursor))) has_pace_ = true;
      return;
    case Keyword::accuracy:
      take(read_accuracy(cursor));
      return;
    case Keyword::attraction:
      take(read_attraction(cursor));
      return;
    default:  // datum
      if (is_known_datum(text(statement.body)))
        return push(statement, DatumSetting{statement.body});
      faults_.add(statement.body, statement.body.empty()
                                      ? wording::incomplete("'datum'", "value", "datum WGS84")
                                      : wording::datum(text(statement.body)));
      return push_unread(statement);
  }
}

void LogReader::read_kind(Statement& statement) {
  Span body = statement.body;
  const auto name = take_name(body, "the kind");
  if (!name) return push_unread(statement);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  const bool plane = cursor.is_word("plane");
  if (!plane && !cursor.is_word("line")) {
    fail_word(cursor, "the kind", "plane or line");
    return push_unread(statement);
  }
  cursor.skip();
  if (!finish(cursor)) return push_unread(statement);
  if (const auto known = vocabulary_.find(text(*name))) {
    const auto first = declared_kinds_.find(known->kind);
    if (first != declared_kinds_.end() &&
        fold_case(kinds_[known->kind].name) == fold_case(text(*name))) {
      faults_.add(*name, wording::already_stated("a kind of that name", first->second));
      return push_unread(statement);
    }
  }
  if (vocabulary_.is_taken(text(*name))) {
    faults_.add(*name, wording::word_taken(text(*name)));
    return push_unread(statement);
  }
  if (kinds_.size() == most_kinds) {
    faults_.add(*name, wording::kinds_full(text(*name), most_kinds));
    return push_unread(statement);
  }
  const auto id = static_cast<KindId>(kinds_.size());
  kinds_.push_back({std::string(text(*name)), plane ? Kind::Type::plane : Kind::Type::line, false});
  vocabulary_.add(text(*name), {Keyword::reading, id});
  declared_kinds_.emplace(id, source_.place(statement.line, *name));
  push(statement, KindDeclaration{id});
}

void LogReader::read_short(Statement& statement) {
  Span body = statement.body;
  const auto word = take_name(body, "the short word");
  if (!word) return push_unread(statement);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  const Span meaning_span = take_word(cursor);
  const std::string_view meant = text(meaning_span);
  const auto meaning = vocabulary_.find(meant);
  if (!meaning) {
    const auto near = vocabulary_.nearest_to(meant);
    const std::string advice = near ? std::string(*near) + "?" : "short b bedding";
    faults_.add(meaning_span, meant.empty() ? wording::incomplete("'short'", "value", advice)
                                            : wording::unknown_word(meant, advice));
    return push_unread(statement);
  }
  if (!finish(cursor)) return push_unread(statement);
  if (vocabulary_.is_taken(text(*word))) {
    faults_.add(*word, wording::word_taken(text(*word)));
    return push_unread(statement);
  }
  vocabulary_.add(text(*word), *meaning);
  push(statement, ShortDeclaration{*word, meaning_span});
}

}  // namespace lodebook::notebook
