// SPDX-License-Identifier: MIT
#include "values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

constexpr std::size_t npos = std::string::npos;
constexpr double widest_range = 45;  ///< degrees; our own choice

void set_degrees(Value& value, double degrees) {
  value.degrees = degrees;
  value.text = trimmed_text(degrees, 2);
  value.digits = static_cast<std::uint8_t>(std::min(value.text.find('.'), value.text.size()));
}

}  // namespace

Value ValueReader::take_value() {
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
  // `N20`: its other letter is missing.
  if (token.is_faulty && token.text.size() > 1 && token.text.find_first_of("EW", 1) == npos)
    value.text += 'E';
  if (token.is_faulty) fault(fmt::format("'{}' is no bearing", token.text));
  if (token.is_figure() && token.digits == 0)
    fault(fmt::format("'{}' alone? its whole figure is missing", token.text));
  if (token.is_unclear) fault(fmt::format("'{}' is not one plain figure", token.text));
  if (token.is_figure() && (is('-') || is(Meaning::toward)) && starts_figure(1) &&
      !peek()->spaced == !peek(1)->spaced && is_range(token, *peek(1)))
    take_range(value);
  if (value.type == Value::Type::bearing && is(Meaning::toward) && starts_value(1) &&
      peek(1)->type == Type::bearing)
    take_lettered_range(value);
  if (value.is_lettered()) skip_other_end(value);
  return value;
}

void ValueReader::take_lettered_range(Value& value) {
  const Token& end = *peek(1);
  const double width = std::remainder(end.value - value.degrees, 360.0);
  if (std::abs(width) > widest_range) return;
  fault(fmt::format("{} to {} is a range: its middle?", value.text, end.text));
  value.degrees = wrap_degrees(value.degrees + width / 2);
  value.type = Value::Type::figure;
  value.text = trimmed_text(value.degrees, 2);
  value.digits = static_cast<std::uint8_t>(std::min(value.text.find('.'), value.text.size()));
  at_ += 2;
}

void ValueReader::skip_other_end(const Value& value) {
  if (!is('-') || !starts_value(1) || peek(1)->is_figure()) return;
  const Token& other = *peek(1);
  const double end = other.type == Type::point ? degrees_of(*point_named(other.text)) : other.value;
  if (std::abs(std::remainder(end - value.degrees - 180, 360.0)) < 0.01) at_ += 2;
}
bool ValueReader::take_other_end(Value& value) {
  const bool range = value.type == Value::Type::figure && value.digits == 3 &&
                     is(Meaning::toward) && starts_figure(1) && peek(1)->digits == 3;
  if (!range) return false;
  ++at_;
  const Value other = take_value();
  fault(fmt::format("{} to {} is a range: its middle?", value.text, other.text));
  const double half = std::remainder(other.degrees - value.degrees, 360.0) / 2;
  set_degrees(value, wrap_degrees(value.degrees + half));
  return true;
}

bool ValueReader::is_range(const Token& low, const Token& high) const {
  if (is(Meaning::toward)) return false;
  return low.value < high.value && low.digits <= high.digits &&
         high.value - low.value <= widest_range && !(peek()->spaced) &&
         !(low.digits == 3 && high.digits == 3 && high.value - low.value == 180);
}
void ValueReader::take_range(Value& value) {
  const Token& high = *peek(1);
  fault(fmt::format("{}-{} is a range: its middle?", value.text, high.text));
  set_degrees(value, (value.degrees + high.value) / 2);
  const double lowest = tokens_[at_ - 1].value;
  at_ += 2;
  // `038-042, say 040`
  const std::size_t said = is(',') || is('(') ? 1 : 0;
  if (starts_figure(said) && peek(said)->is_rough && peek(said)->value >= lowest &&
      peek(said)->value <= high.value) {
    value.degrees = peek(said)->value;
    value.text = peek(said)->text;
    value.digits = peek(said)->digits;
    at_ += said + 1;
    skip(')');
  }
}

}  // namespace lodebook::fair_copy
