// SPDX-License-Identifier: MIT
#include "plausible.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::fair_copy {

namespace {

/// So far off a dip is no repeat, and so near its swapped digits are one, degrees. Our own choice.
constexpr double far_off = 20;
constexpr double near = 6;
/// So near a bearing with a nought behind it is its neighbours', degrees.
constexpr double near_bearing = 15;

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

/// 61 for 16; nothing for one digit, or two alike.
std::optional<double> swapped(double value) {
  const int whole = static_cast<int>(value);
  if (whole != value || whole < 10 || whole > 99 || whole / 10 == whole % 10) return std::nullopt;
  return whole % 10 * 10 + whole / 10;
}

std::vector<double> of(const std::vector<Meant>& neighbours, std::optional<double> Meant::*what) {
  std::vector<double> values;
  for (const Meant& meant : neighbours) {
    if (meant.*what) values.push_back(*(meant.*what));
  }
  return values;
}

/// `61/15` beside 20/055: two short figures that are their neighbour's neither way round for sure.
bool may_be_turned(const Attitude& attitude, const Meant& meant, const Meant& neighbour) {
  constexpr double alike = 10;  // degrees; our own choice
  const auto is_short = [](const Value& value) {
    return value.type == Value::Type::figure && value.digits < 3;
  };
  const bool short_pair = attitude.form == Attitude::Form::pair && attitude.side.empty() &&
                          is_short(attitude.first) && is_short(attitude.second);
  if (!short_pair || !meant.angle || !meant.azimuth || !neighbour.angle || !neighbour.azimuth)
    return false;
  return std::abs(*meant.angle - *neighbour.angle) + apart(*meant.azimuth, *neighbour.azimuth) >
         alike;
}

}  // namespace

std::string implausible(const Page& page, std::string_view kind, const Attitude& attitude,
                        const Statement& statement) {
  const auto found = page.neighbours.find(std::string(kind));
  if (found == page.neighbours.end()) return {};
  if (!found->second.empty() && may_be_turned(attitude, statement.meant, found->second.back()))
    return fmt::format("{}/{}: which is the dip?", attitude.first.text, attitude.second.text);
  const std::vector<double> angles = of(found->second, &Meant::angle);
  const auto angle = statement.meant.angle;
  if (angle && !angles.empty()) {
    const double usual = median(angles);
    const auto other = swapped(*angle);
    if (other && std::abs(*angle - usual) > far_off && std::abs(*other - usual) <= near)
      return fmt::format("digits swapped? {} beside {}", trimmed_text(*angle, 1),
                         trimmed_text(usual, 1));
  }
  const bool short_bearing =
      attitude.first.type == Value::Type::figure && attitude.first.digits == 2;
  const auto azimuth = statement.meant.azimuth;
  const auto azimuths = of(found->second, &Meant::azimuth);
  if (short_bearing && azimuth && !azimuths.empty()) {
    const double ten = *azimuth * 10;
    const double usual = azimuths.back();
    if (ten < 360 && apart(*azimuth, usual) > 2 * far_off && apart(ten, usual) <= near_bearing)
      return fmt::format("{0} or {0}0? beside {1}", attitude.first.text, trimmed_text(usual, 1));
  }
  return {};
}

void remember(Page& page, const std::string& kind, const Statement& statement) {
  if (statement.question.empty()) page.remember(kind, statement.meant);
}

}  // namespace lodebook::fair_copy
