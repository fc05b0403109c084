// SPDX-License-Identifier: MIT
#include "attitude.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Form = Attitude::Form;

/// Reads one attitude of a line.
class AttitudeReader {
 public:
  AttitudeReader(const Tokens& tokens, std::size_t at, bool directions)
      : tokens_(tokens), at_(at), directions_(directions) {
    attitude_.begin = at;
  }

  std::optional<Attitude> read() {
    if (!read_form()) return std::nullopt;
    attitude_.end = at_;
    return attitude_;
  }

 private:
  const Token* peek(std::size_t ahead = 0) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  bool is(Meaning meaning, std::size_t ahead = 0) const {
    return peek(ahead) && peek(ahead)->is(meaning);
  }
  bool is(char mark, std::size_t ahead = 0) const { return peek(ahead) && peek(ahead)->is(mark); }
  bool skip(Meaning meaning) {
    const bool found = is(meaning);
    if (found) ++at_;
    return found;
  }
  bool skip(char mark) {
    const bool found = is(mark);
    if (found) ++at_;
    return found;
  }
  void fault(std::string problem) {
    if (attitude_.problem.empty()) attitude_.problem = std::move(problem);
  }

  bool starts_value(std::size_t ahead = 0) const {
    const Token* const token = peek(ahead);
    if (!token || token->use != Token::Use::none) return false;
    if (token->type == Type::bearing || token->type == Type::point) return true;
    return token->is_figure() && !token->is_minutes;
  }
  bool starts_figure(std::size_t ahead = 0) const {
    return starts_value(ahead) && peek(ahead)->is_figure();
  }

  Value take_value() {
    const Token& token = tokens_[at_++];
    Value value;
    value.text = token.text;
    value.degrees = token.value;
    value.digits = token.digits;
    value.is_rough = token.is_rough;
    value.type = token.is_figure()             ? Value::Type::figure
                 : token.type == Type::bearing ? Value::Type::bearing
                                               : Value::Type::point;
    if (value.type == Value::Type::point) value.degrees = degrees_of(*point_named(token.text));
    if (token.is_faulty) fault(fmt::format("'{}' is no bearing", token.text));
    if (token.is_unclear) fault(fmt::format("'{}' is not one plain figure", token.text));
    if (token.is_figure() && (is('-') || is(Meaning::toward)) && starts_figure(1) &&
        !peek()->spaced == !peek(1)->spaced && is_range(token, *peek(1)))
      take_range(value);
    if (value.is_lettered()) skip_other_end(value);
    return value;
  }
  /// `N-S`, `N65E - S65W`: both ends of a strike.
  void skip_other_end(const Value& value) {
    if (!is('-') || !starts_value(1) || peek(1)->is_figure()) return;
    const Token& other = *peek(1);
    const double end =
        other.type == Type::point ? degrees_of(*point_named(other.text)) : other.value;
    if (std::abs(std::remainder(end - value.degrees - 180, 360.0)) < 0.01) at_ += 2;
  }
  static constexpr double widest_range = 45;  ///< degrees; our own choice
  /// `35-40`, `0 to 5`: two figures that are one with its spread.
  bool is_range(const Token& low, const Token& high) const {
    if (is(Meaning::toward)) return false;
    return low.value < high.value && low.digits <= high.digits &&
           high.value - low.value <= widest_range && !(peek()->spaced) &&
           !(low.digits == 3 && high.digits == 3 && high.value - low.value == 180);
  }
  void take_range(Value& value) {
    const Token& high = *peek(1);
    fault(fmt::format("{}-{} is a range: its middle?", value.text, high.text));
    value.degrees = (value.degrees + high.value) / 2;
    value.text = trimmed_text(value.degrees, 2);
    value.digits = static_cast<std::uint8_t>(std::min(value.text.find('.'), value.text.size()));
    at_ += 2;
  }

  bool read_form() {
    if (is(Meaning::vertical)) return read_vertical();
    if (is(Meaning::horizontal)) return read_horizontal();
    if (is(Meaning::rake)) return read_rake();
    if (is(Meaning::strike)) return read_strike();
    if (is(Meaning::dip) || is(Meaning::plunge)) return read_angle();
    if (is(Meaning::trend)) return read_trend();
    if (is(Meaning::direction)) return read_direction();
    if (directions_ && is(Meaning::from) && starts_value(1)) {
      ++at_;
      attitude_.is_from = true;
      attitude_.first = take_value();
      attitude_.form = Form::direction;
      return true;
    }
    return read_bare();
  }

  bool read_vertical() {
    ++at_;
    attitude_.form = Form::vertical;
    const std::size_t start = at_;
    skip(',');
    const bool says = skip(Meaning::strike) || skip(Meaning::trend);
    const bool dip_direction = skip(Meaning::direction);
    if (starts_value() && (says || dip_direction || peek()->type != Type::point)) {
      attitude_.first = take_value();
      if (dip_direction) fault("a vertical plane with a dip direction");
    } else {
      at_ = start;
    }
    return true;
  }

  bool read_horizontal() {
    ++at_;
    attitude_.form = Form::horizontal;
    return true;
  }

  bool read_rake() {
    ++at_;
    skip(Meaning::filler);
    if (!starts_figure()) return false;
    attitude_.form = Form::rake;
    attitude_.second = take_value();
    if (!skip(Meaning::from)) {
      skip(Meaning::toward);
      fault("a rake from that end of the strike?");
    }
    if (!starts_value()) {
      fault("a rake from which end of the strike?");
      return true;
    }
    attitude_.first = take_value();
    skip(Meaning::end);
    return true;
  }

  bool read_strike() {
    ++at_;
    skip('=');
    skip(':');
    if (!starts_value()) return false;
    attitude_.says_strike = true;
    attitude_.first = take_value();
    read_dip_behind();
    return true;
  }

  /// Behind a strike: `dip 55 to the NW`, `, 12`, `/37 NW`; or nothing.
  void read_dip_behind() {
    const std::size_t start = at_;
    attitude_.form = Form::strike_dip;
    if (skip('/') && skip(Meaning::vertical)) {
      attitude_.form = Form::vertical;
      return;
    }
    const bool comma = skip(',');
    skip(';');
    if (is(Meaning::dip, 1)) skip(Meaning::and_);
    const bool says = skip(Meaning::dip);
    if (says) skip('=');
    if (!says && is(Meaning::vertical)) {
      ++at_;
      attitude_.form = Form::vertical;
      return;
    }
    if (!starts_figure() || (comma && !says && goes_on_as_list())) {
      at_ = start;
      attitude_.form = Form::direction;
      return;
    }
    attitude_.second = take_value();
    read_side();
  }

  static constexpr double across = 10;  ///< degrees; our own choice

  /// Behind a comma: the figure is followed by others like it.
  bool goes_on_as_list() const { return is(',', 1) && starts_figure(2); }

  void read_side() {
    const std::size_t start = at_;
    const bool says = skip(Meaning::toward);
    if (!says) skip('/');
    const bool is_point = starts_value() && peek()->type == Type::point;
    // `E side down` is said of a fault's blocks.
    const bool is_block = is(Meaning::block, 1) || is(Meaning::place, 1);
    if (is_point && !is_block) {
      attitude_.side = peek()->text;
      ++at_;
    } else if (says && starts_value()) {
      const Value direction = take_value();
      const double off =
          std::abs(std::remainder(direction.degrees - attitude_.first.degrees, 180.0));
      attitude_.side = name_of(nearest_eighth(direction.degrees));
      if (std::abs(off - 90) > across) fault("the dip is not across the strike");
    } else {
      at_ = start;
    }
  }

  /// `dips 40 to SE`, `plunges 9 to NE`, `dip 13`.
  bool read_angle() {
    const bool plunge = is(Meaning::plunge);
    attitude_.says_plunge = plunge;
    ++at_;
    skip('=');
    if (!starts_figure()) return false;
    attitude_.second = take_value();
    const std::size_t start = at_;
    skip(',');
    if (skip(Meaning::toward) || skip('>') || skip(Meaning::direction) || skip(Meaning::trend) ||
        (starts_value() && peek()->type != Type::figure && start == at_)) {
      skip('=');
      if (starts_value()) {
        attitude_.form = Form::towards;
        attitude_.first = std::exchange(attitude_.second, take_value());
        return true;
      }
    }
    at_ = start;
    attitude_.form = Form::dip;
    if (plunge) fault("a plunge without its trend");
    return true;
  }

  bool read_trend() {
    ++at_;
    skip('=');
    if (!starts_value()) return false;
    attitude_.first = take_value();
    attitude_.form = Form::direction;
    const std::size_t start = at_;
    skip(',');
    skip('/');
    if (skip(Meaning::plunge) && starts_figure()) {
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
    } else {
      at_ = start;
    }
    return true;
  }

  /// `dip direction 332 dip 37`
  bool read_direction() {
    ++at_;
    skip('=');
    if (!starts_value()) return false;
    const Value direction = take_value();
    skip(',');
    skip('/');
    if (!skip(Meaning::dip) || !starts_figure()) return false;
    attitude_.form = Form::towards;
    attitude_.first = take_value();
    attitude_.second = direction;
    return true;
  }

  bool read_bare() {
    if (!starts_value()) return false;
    const bool figure = starts_figure();
    attitude_.first = take_value();
    // `58@112`: a dip, at its direction.
    const bool at_direction =
        is('@') && attitude_.first.digits <= 2 && starts_figure(1) && peek(1)->digits == 3;
    if (figure &&
        (at_direction ? skip('@')
                      : false || skip('>') ||
                            (is(Meaning::toward) && starts_value(1) && skip(Meaning::toward)))) {
      if (!starts_value()) return false;
      attitude_.form = Form::towards;
      attitude_.second = take_value();
      return true;
    }
    if (!figure && is('>') && starts_figure(1)) {
      ++at_;
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
      return true;
    }
    if (skip(Meaning::plunge)) {
      if (!starts_figure()) return false;
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
      return true;
    }
    return figure ? read_pair() : read_lettered();
  }

  bool read_lettered() {
    read_dip_behind();
    if (attitude_.form == Form::strike_dip && !attitude_.says_strike) attitude_.form = Form::pair;
    // A point alone, with nothing that says strike, is seldom a reading.
    return attitude_.form != Form::direction || attitude_.first.type != Value::Type::point ||
           directions_;
  }

  bool read_pair() {
    const std::size_t start = at_;
    const bool slash = skip('/');
    const bool dash =
        !slash && is('-') && starts_figure(1) && peek()->spaced == peek(1)->spaced && skip('-');
    const bool comma = !slash && !dash && skip(',');
    if ((slash || comma) && skip(Meaning::vertical)) {
      attitude_.form = Form::vertical;
      return true;
    }
    const bool says = skip(Meaning::dip);
    if (slash && starts_value() && !starts_figure()) {
      attitude_.form = Form::pair;
      attitude_.second = take_value();
      return true;
    }
    const bool one_bearing =
        starts_figure() && (attitude_.first.digits == 3) != (peek()->digits == 3);
    // Two figures alone are a pair, or nobody knows.
    const bool two =
        starts_figure() && peek()->digits < 3 && attitude_.first.digits < 3 && !starts_figure(1);
    const bool as_pair = !directions_ || one_bearing || two;
    const bool glued = slash || dash || says || (!comma && as_pair);
    const bool listed = comma && !directions_ && attitude_.first.digits == 3 && starts_figure() &&
                        peek()->digits <= 2 && !goes_on_as_list();
    if (starts_figure() && (glued || listed)) {
      attitude_.form = Form::pair;
      attitude_.second = take_value();
      if (attitude_.second.text.starts_with('-')) fault("a figure with a minus sign");
      read_side();
      return true;
    }
    at_ = start;
    attitude_.form = Form::direction;
    return attitude_.first.digits == 3 || directions_;
  }

  const Tokens& tokens_;
  std::size_t at_;
  bool directions_;
  Attitude attitude_;
};

std::string rough(const Value& value) {
  return (value.is_rough ? "~" : "") + value.text;
}

/// A bearing as a statement has it: an azimuth with three digits, so that none is taken for an
/// angle.
std::string bearing_text(const Value& value) {
  std::string text = value.text;
  if (value.type == Value::Type::figure && value.digits < 3) text.insert(0, 3u - value.digits, '0');
  return (value.is_rough ? "~" : "") + text;
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

Statement strike_and_dip(const Value& strike, const Value& dip, const std::string& side,
                         const Conventions& conventions) {
  Statement statement;
  const std::string_view between = strike.is_lettered() ? " " : "/";
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
  } else if (dip.degrees == 90) {
    statement.meant.azimuth = wrap_degrees(strike.degrees + 90);
  } else if (conventions.rule) {
    statement.meant.azimuth =
        wrap_degrees(strike.degrees + (*conventions.rule == HandRule::right ? 90 : -90));
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
  statement.text += " " + bearing_text(attitude.first);
  check_bearing(statement, attitude.first);
  return statement;
}

}  // namespace

bool is_far(double direction, double side) {
  constexpr double most = 56;
  const double off = wrap_degrees(direction - side);
  return std::min(off, 360 - off) > most;
}

std::optional<Attitude> attitude_at(const Tokens& tokens, std::size_t at, bool directions) {
  return AttitudeReader(tokens, at, directions).read();
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
      statement = vertical(attitude);
      if (!attitude.first) ask(statement, "a vertical plane needs its strike");
      statement.meant.azimuth = wrap_degrees(attitude.first.degrees + 90);
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
  const auto trend_first = [](const Value& trend, const Value& plunge) {
    Statement said;
    said.text =
        fmt::format("{}{}{}", bearing_text(trend), trend.is_lettered() ? " " : "/", rough(plunge));
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
      if (!attitude.side.empty()) ask(statement, "a line has no dip side");
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
                      attitude.first ? bearing_text(attitude.first) : std::string("N"));
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
