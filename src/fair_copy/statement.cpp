// SPDX-License-Identifier: MIT
// What an attitude means under a page's settings, as a statement of the language.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>

#include "attitude.hpp"

namespace lodebook::fair_copy {

namespace {

using Form = Attitude::Form;

std::string rough(const Value& value) {
  return (value.is_rough ? "~" : "") + value.text;
}

/// A bearing as a statement has it.
std::string bearing_text(const Value& value) {
  const bool figure = value.type == Value::Type::figure;
  return (value.is_rough ? "~" : "") +
         (figure ? azimuth_text(value.text, value.digits) : value.text);
}

void ask(Statement& statement, std::string why) {
  if (statement.question.empty()) statement.question = std::move(why);
}

void check_angle(Statement& statement, const Value& value, std::string_view what) {
  if (value.degrees < 0 || value.degrees > 90)
    ask(statement, fmt::format("{} {} is over 90", what, value.text));
}

void check_bearing(Statement& statement, const Value& value) {
  // `03` is one digit short, of 030 or of 003; four are one too many.
  const bool short_one =
      value.type == Value::Type::figure && value.digits == 2 && value.text[0] == '0';
  if (short_one) ask(statement, fmt::format("{0}0, or 0{0}?", value.text));
  if (value.type == Value::Type::figure && value.digits > 3)
    ask(statement, fmt::format("what is '{}'?", value.text));
  if (value.type == Value::Type::figure && value.degrees > 360)
    ask(statement, fmt::format("{} is over 360", value.text));
}

Statement towards(const Value& angle, const Value& direction, std::string_view what) {
  Statement statement;
  statement.text = fmt::format("{} > {}", rough(angle), bearing_text(direction));
  statement.meant = {wrap_degrees(direction.degrees), angle.degrees};
  check_angle(statement, angle, what);
  check_bearing(statement, direction);
  return statement;
}

/// The dip direction of a strike with a typed side; nothing for a side that cannot be.
std::optional<double> dip_direction(double strike, double side) {
  for (const double turned : {90.0, -90.0}) {
    const double off = wrap_degrees(strike + turned - side);
    if (std::min(off, 360 - off) <= Plane<north::dial>::side_tolerance)
      return wrap_degrees(strike + turned);
  }
  return std::nullopt;
}

double direction_by_rule(double strike, HandRule rule) {
  return wrap_degrees(strike + (rule == HandRule::right ? 90 : -90));
}

Statement strike_and_dip(const Value& strike, const Value& dip, const std::string& side,
                         const Conventions& conventions) {
  Statement statement;
  // `N 70 W` could be a bearing.
  const bool is_pole = strike.type == Value::Type::point && strike.text.find_first_of("EW") != 0;
  const std::string_view between = strike.is_lettered() && !is_pole ? " " : "/";
  statement.text = fmt::format("{}{}{}", bearing_text(strike), between, rough(dip));
  statement.meant.angle = dip.degrees;
  check_angle(statement, dip, "dip");
  check_bearing(statement, strike);
  if (!side.empty()) {
    statement.text += " " + side;
    const auto direction = dip_direction(strike.degrees, degrees_of(*point_named(side)));
    if (!direction)
      ask(statement, fmt::format("a plane that strikes {} cannot dip {}", strike.text, side));
    statement.meant.azimuth = direction;
    if (direction && is_far(*direction, degrees_of(*point_named(side))))
      ask(statement, fmt::format("a plane that strikes {} hardly dips {}", strike.text, side));
    // Who follows a rule turns a strike in figures by it, except where the plane all but stands.
    constexpr double steep = 85;
    const bool by_rule =
        conventions.rule && !strike.is_lettered() && direction && dip.degrees < steep;
    if (by_rule && direction != direction_by_rule(strike.degrees, *conventions.rule))
      ask(statement, fmt::format("the {}-hand rule says {}",
                                 *conventions.rule == HandRule::right ? "right" : "left",
                                 name_of(nearest_eighth(*direction + 180))));
  } else if (dip.degrees == 90) {
    statement.meant.azimuth = wrap_degrees(strike.degrees + 90);
  } else if (conventions.rule) {
    statement.meant.azimuth = direction_by_rule(strike.degrees, *conventions.rule);
    statement.side = name_of(nearest_eighth(*statement.meant.azimuth));
  } else {
    statement.waits = Statement::Wait::rule;
  }
  return statement;
}

/// Which of two figures is the bearing, by their digits: three for a bearing, one or two for an
/// angle. Common practice, no source.
enum class Digits : std::uint8_t { unclear, bearing_first, bearing_second };
Digits digits_of(const Value& first, const Value& second) {
  const bool first_bearing = first.digits == 3 || first.degrees > 90;
  const bool second_bearing = second.digits == 3 || second.degrees > 90;
  if (first_bearing == second_bearing) return Digits::unclear;
  return first_bearing ? Digits::bearing_first : Digits::bearing_second;
}

using notebook::LineOrder;
using notebook::PlaneOrder;

Statement pair_without_side(const Attitude& pair, const Conventions& conventions) {
  const Value& a = pair.first;
  const Value& b = pair.second;
  const Digits digits = digits_of(a, b);
  const PlaneOrder order = conventions.order.planes;
  const bool bearing_first = order == PlaneOrder::strike_dip || order == PlaneOrder::direction_dip;
  const bool stated = order != PlaneOrder::unstated || conventions.is_dip_strike;
  const Digits contrary = bearing_first ? Digits::bearing_second : Digits::bearing_first;
  Statement statement;
  if (!stated) {
    if (conventions.rule && digits == Digits::bearing_first)
      return strike_and_dip(a, b, {}, conventions);
    statement.text = fmt::format("{}/{}", rough(a), rough(b));
    statement.waits = Statement::Wait::order;
    if (digits == Digits::unclear && a.digits == 3) ask(statement, "neither figure can be a dip");
    check_bearing(statement, a);
    check_bearing(statement, b);
    return statement;
  }
  const bool turned = digits == contrary && !(bearing_first ? b : a).is_lettered();
  const bool takes_first = bearing_first != turned;
  const Value& bearing = takes_first ? a : b;
  const Value& dip = takes_first ? b : a;
  const bool by_strike = order == PlaneOrder::strike_dip || conventions.is_dip_strike;
  statement =
      by_strike ? strike_and_dip(bearing, dip, {}, conventions) : towards(dip, bearing, "dip");
  if (turned)
    ask(statement,
        fmt::format("{}/{} is the other way round than the heading says", a.text, b.text));
  return statement;
}

Statement pair_with_side(const Attitude& pair, const Conventions& conventions) {
  const Value& a = pair.first;
  const Value& b = pair.second;
  const Digits digits = digits_of(a, b);
  if (digits == Digits::bearing_second ||
      (conventions.is_dip_strike && digits == Digits::unclear)) {
    Statement statement = strike_and_dip(b, a, pair.side, conventions);
    if (!conventions.is_dip_strike)
      ask(statement, fmt::format("{}/{}: the dip seems to stand first", a.text, b.text));
    return statement;
  }
  Statement statement = strike_and_dip(a, b, pair.side, conventions);
  if (conventions.order.planes == PlaneOrder::direction_dip ||
      conventions.order.planes == PlaneOrder::dip_direction) {
    statement = towards(b, a, "dip");
    ask(statement,
        fmt::format("a side beside a dip direction; or {}/{} {}?", a.text, b.text, pair.side));
  }
  return statement;
}

Statement direction_alone(const Attitude& attitude, std::string_view word) {
  Statement statement;
  statement.text = fmt::format("{}{}", word, bearing_text(attitude.first));
  statement.meant.azimuth = wrap_degrees(attitude.first.degrees);
  check_bearing(statement, attitude.first);
  return statement;
}

Statement vertical(const Attitude& attitude) {
  Statement statement;
  statement.text = "vertical";
  statement.meant.angle = 90;
  if (!attitude.first) return statement;
  statement.text += fmt::format(" {}", bearing_text(attitude.first));
  check_bearing(statement, attitude.first);
  return statement;
}

Statement vertical_plane(const Attitude& attitude, const Conventions& conventions) {
  Statement statement = vertical(attitude);
  if (!attitude.first) ask(statement, "a vertical plane needs its strike");
  statement.meant.azimuth = wrap_degrees(attitude.first.degrees + 90);
  const PlaneOrder order = conventions.order.planes;
  const bool by_direction =
      order == PlaneOrder::direction_dip || order == PlaneOrder::dip_direction;
  if (by_direction && attitude.first.type == Value::Type::figure && !attitude.says_strike) {
    statement.text = fmt::format("90 > {}", bearing_text(attitude.first));
    ask(statement, fmt::format("its dip direction; or vertical {}?", bearing_text(attitude.first)));
  }
  return statement;
}

/// The other end of a bearing, in the notation that it is in.
std::string opposite_text(const Value& bearing) {
  constexpr int decimals = 5;
  if (!bearing.is_lettered())
    return trimmed_azimuth_text(wrap_degrees(bearing.degrees + 180), decimals);
  std::string text = bearing.text;
  constexpr std::string_view letters = "NSEW";
  constexpr std::string_view opposites = "SNWE";
  for (char& c : text) {
    const std::size_t at = letters.find(c);
    if (at != std::string_view::npos) c = opposites[at];
  }
  return text;
}

/// `N38E 5SW`: the point says which end of a line goes down.
void turn_to_end(Statement& statement, const Attitude& attitude) {
  const Value& trend = attitude.first;
  const Value& plunge = attitude.second;
  const double end = degrees_of(*point_named(attitude.side));
  const double off = std::abs(std::remainder(end - trend.degrees, 360.0));
  const bool trend_first = trend.is_lettered() || digits_of(trend, plunge) == Digits::bearing_first;
  if (!trend_first || std::min(off, 180 - off) > Plane<north::dial>::side_tolerance)
    return ask(statement, fmt::format("is {} the end that goes down?", attitude.side));
  if (off < 90) return;
  statement.text = fmt::format("{} > {}", rough(plunge), opposite_text(trend));
  statement.meant.azimuth = wrap_degrees(trend.degrees + 180);
}

}  // namespace

bool is_far(double direction, double side) {
  constexpr double most = 56;
  const double off = wrap_degrees(direction - side);
  return std::min(off, 360 - off) > most;
}

Statement plane_statement(const Attitude& attitude, const Conventions& conventions) {
  Statement statement;
  switch (attitude.form) {
    case Form::pair:
      if (attitude.first.is_lettered()) {
        statement = strike_and_dip(attitude.first, attitude.second, attitude.side, conventions);
      } else if (attitude.second.is_lettered()) {
        statement = towards(attitude.first, attitude.second, "dip");
        ask(statement, "a dip, then a bearing: its direction, or the strike?");
      } else {
        statement = attitude.side.empty() ? pair_without_side(attitude, conventions)
                                          : pair_with_side(attitude, conventions);
        // `5/60 NW`
        if (!attitude.side.empty() && attitude.first.digits == 1)
          ask(statement, fmt::format("00{0}, or 0{0}0?", attitude.first.text));
      }
      break;
    case Form::strike_dip:
      statement = strike_and_dip(attitude.first, attitude.second, attitude.side, conventions);
      break;
    case Form::towards:
      statement = towards(attitude.first, attitude.second, "dip");
      if (attitude.says_plunge) ask(statement, "a plane has no plunge");
      break;
    case Form::vertical:
      statement = vertical_plane(attitude, conventions);
      break;
    case Form::horizontal:
      statement.text = "horizontal";
      statement.meant.angle = 0;
      break;
    case Form::direction:
      statement = direction_alone(attitude, "strike ");
      if (!attitude.says_strike) ask(statement, "a strike alone? its dip is missing");
      break;
    case Form::dip:
      statement.text = "dip " + rough(attitude.second);
      statement.meant.angle = attitude.second.degrees;
      check_angle(statement, attitude.second, "dip");
      break;
    case Form::trend_plunge:
    case Form::rake:
      statement = line_statement(attitude, conventions, false);
      ask(statement, "a plane has no trend, plunge or rake");
      break;
  }
  if (!attitude.problem.empty()) ask(statement, attitude.problem);
  return statement;
}

Statement line_statement(const Attitude& attitude, const Conventions& conventions, bool bare) {
  Statement statement;
  const bool plunge_stands_first = conventions.order.lines == LineOrder::plunge_trend;
  const auto trend_first = [&](const Value& trend, const Value& plunge) {
    Statement said;
    said.text = plunge_stands_first ? fmt::format("{} > {}", rough(plunge), bearing_text(trend))
                                    : fmt::format("{}{}{}", bearing_text(trend),
                                                  trend.is_lettered() ? " " : "/", rough(plunge));
    said.meant = {wrap_degrees(trend.degrees), plunge.degrees};
    check_angle(said, plunge, "plunge");
    check_bearing(said, trend);
    return said;
  };
  switch (attitude.form) {
    case Form::pair: {
      const Value& a = attitude.first;
      const Value& b = attitude.second;
      const Digits digits = digits_of(a, b);
      const LineOrder order = conventions.order.lines;
      if (a.is_lettered()) {
        statement = trend_first(a, b);
      } else if (b.is_lettered()) {
        statement = towards(a, b, "plunge");
      } else if (digits == Digits::bearing_first ||
                 (digits == Digits::unclear && order != LineOrder::plunge_trend)) {
        statement = trend_first(a, b);
        if (digits == Digits::unclear && order == LineOrder::unstated)
          ask(statement, fmt::format("{}/{}: which is the trend?", a.text, b.text));
        if (order == LineOrder::plunge_trend)
          ask(statement,
              fmt::format("{}/{} is the other way round than the heading says", a.text, b.text));
      } else {
        statement = towards(a, b, "plunge");
        if (order == LineOrder::trend_plunge)
          ask(statement,
              fmt::format("{}/{} is the other way round than the heading says", a.text, b.text));
      }
      const bool axis = bare && std::abs(std::remainder(a.degrees - b.degrees - 180, 360.0)) < 0.01;
      if (a.digits == 3 && b.digits == 3 && axis) {
        statement = {};
        statement.text = fmt::format("{}/{}", a.text, b.text);
      } else if (a.digits == 3 && b.digits == 3) {
        statement.text = fmt::format("{}/{}", a.text, b.text);
        statement.question = "two directions: the two ends of an axis?";
      }
      if (!attitude.side.empty()) turn_to_end(statement, attitude);
      if (attitude.side.empty() && conventions.names_ends)
        ask(statement, "which end of the line goes down?");
      break;
    }
    case Form::towards:
      // `120 > 35` can only be the trend first.
      if (digits_of(attitude.first, attitude.second) == Digits::bearing_first &&
          !attitude.second.is_lettered()) {
        statement = trend_first(attitude.first, attitude.second);
        if (attitude.says_to) ask(statement, "a plunge, or a second trend?");
      } else {
        statement = towards(attitude.first, attitude.second, "plunge");
      }
      break;
    case Form::trend_plunge:
      statement = trend_first(attitude.first, attitude.second);
      break;
    case Form::rake:
      statement.text =
          fmt::format("rake {} from {}", rough(attitude.second),
                      attitude.first ? bearing_text(attitude.first) : std::string("?"));
      statement.meant.angle = attitude.second.degrees;
      check_angle(statement, attitude.second, "rake");
      check_bearing(statement, attitude.first);
      break;
    case Form::vertical:
      statement = vertical({});
      if (attitude.first) ask(statement, "a vertical line has no trend");
      break;
    case Form::horizontal:
      statement.text = "horizontal";
      ask(statement, "a level line needs its trend");
      break;
    case Form::direction:
      statement = direction_alone(attitude, attitude.is_from ? "from " : "");
      if (attitude.is_from) statement.meant.azimuth = wrap_degrees(attitude.first.degrees + 180);
      if (!bare && attitude.first.digits < 3 && !attitude.first.is_lettered())
        ask(statement, "a trend alone, or a plunge?");
      if (attitude.says_strike) ask(statement, "a line has a trend, no strike");
      break;
    case Form::strike_dip:
      statement = trend_first(attitude.first, attitude.second);
      ask(statement, "a line has a trend and a plunge");
      break;
    case Form::dip:
      statement.text = rough(attitude.second);
      ask(statement, "a plunge without its trend");
      break;
  }
  if (!attitude.problem.empty()) ask(statement, attitude.problem);
  return statement;
}

}  // namespace lodebook::fair_copy
