// SPDX-License-Identifier: MIT
#include "clock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace lodebook::fair_copy {

namespace {

using Use = Token::Use;

bool is_free(const Tokens& tokens, std::size_t i) {
  return i < tokens.size() && tokens[i].is_figure() && tokens[i].use == Use::none;
}
bool is(const Tokens& tokens, std::size_t i, Meaning meaning) {
  return i < tokens.size() && tokens[i].is(meaning);
}

void state(Tokens& tokens, std::size_t first, std::size_t end) {
  for (; first < end && first < tokens.size(); ++first)
    tokens[first].use = Use::stated;
}

/// `0840` as the last figure of a line: four digits that begin with a nought.
bool is_morning(const Tokens& tokens, std::size_t i) {
  return i + 1 == tokens.size() && tokens[i].text.starts_with('0');
}

/// `on map`, `by altimeter`, `GPS`: where a height comes from.
bool is_origin(const Tokens& tokens, std::size_t i) {
  constexpr std::array<std::string_view, 10> origins = {
      "map", "sheet", "gps", "altimeter", "barometer", "baro", "phone", "receiver", "topo", "dem"};
  while (is(tokens, i, Meaning::on) || is(tokens, i, Meaning::from) ||
         is(tokens, i, Meaning::filler) || (i < tokens.size() && tokens[i].text == "by"))
    ++i;
  return i < tokens.size() && std::ranges::find(origins, folded(tokens[i].text)) != origins.end();
}

/// Nothing joins the figure and its unit to a word beside them: `200 m off the ice` is no height.
bool stands_apart(const Tokens& tokens, std::size_t i, std::size_t end) {
  const auto is_gap = [&](std::size_t right) {
    return tokens[right].begin - tokens[right - 1].end >= 2;
  };
  const bool before = i == 0 || tokens[i - 1].use != Use::none || is_gap(i) ||
                      tokens[i - 1].type == Token::Type::mark;
  // A point behind the unit ends the sentence.
  const Token& unit = tokens[end - 1];
  const bool closes = unit.end - unit.begin > unit.text.size();
  const bool behind = end >= tokens.size() || closes || is_gap(end) || is_origin(tokens, end) ||
                      is(tokens, end, Meaning::elevation) || is(tokens, end, Meaning::together) ||
                      tokens[end].type == Token::Type::mark || tokens[end].is_figure();
  return before && behind;
}

std::optional<std::string> clock(double hour, double minute, std::string_view half) {
  if (half.ends_with('m') && hour > 12) return std::nullopt;
  if (half == "pm" && hour < 12) hour += 12;
  if (half == "am" && hour == 12) hour = 0;
  if (hour > 23 || minute > 59) return std::nullopt;
  return fmt::format("{:02}:{:02}", static_cast<int>(hour), static_cast<int>(minute));
}

/// Behind the figure at `i`: `am`, `pm`, `h`.
std::string_view half_at(const Tokens& tokens, std::size_t i) {
  if (!is(tokens, i, Meaning::clock)) return {};
  const std::string& text = tokens[i].text;
  const bool pm = text.starts_with('p') || text.starts_with('P');
  const bool am = text.starts_with('a') || text.starts_with('A');
  return pm ? "pm" : am ? "am" : "h";
}

}  // namespace

std::optional<std::string> take_time(Tokens& tokens, bool is_place) {
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!is_free(tokens, i)) continue;
    const Token& figure = tokens[i];
    std::optional<std::string> time;
    std::size_t end = i + 1;
    if (i + 2 < tokens.size() && tokens[i + 1].is(':') && !tokens[i + 1].spaced &&
        is_free(tokens, i + 2) && !tokens[i + 2].spaced && tokens[i + 2].digits == 2) {
      end = i + 3;
      time = clock(figure.value, tokens[i + 2].value, half_at(tokens, end));
    } else if (figure.decimals == 2 && !figure.is_unclear &&
               (i == 0 || is(tokens, end, Meaning::clock))) {
      const double hour = std::floor(figure.value);
      const bool ends = end == tokens.size() || tokens[end].is(',') ||
                        is(tokens, end, Meaning::clock) || is(tokens, end, Meaning::elevation);
      if (ends) time = clock(hour, std::round((figure.value - hour) * 100), half_at(tokens, end));
    } else if (figure.digits == 4 && figure.decimals == 0 &&
               (i == 0 || is(tokens, end, Meaning::clock) || (is_place && is_morning(tokens, i)))) {
      const double hour = std::floor(figure.value / 100);
      time = clock(hour, figure.value - hour * 100, half_at(tokens, end));
    } else if (figure.decimals == 0 && half_at(tokens, end).ends_with('m')) {
      time = clock(figure.value, 0, half_at(tokens, end));
    }
    if (!time) continue;
    if (is(tokens, end, Meaning::clock)) ++end;
    state(tokens, i, end);
    return time;
  }
  return std::nullopt;
}

std::optional<std::string> take_elevation(Tokens& tokens, bool is_place) {
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!is_free(tokens, i)) continue;
    const Token& figure = tokens[i];
    std::size_t before = i;
    while (before > 0 && (tokens[before - 1].is(':') || tokens[before - 1].is('=') ||
                          tokens[before - 1].is('.') || tokens[before - 1].is(Meaning::rough)))
      --before;
    const bool named = before > 0 && (tokens[before - 1].is(Meaning::elevation) ||
                                      (is_place && tokens[before - 1].is(Meaning::level)));
    std::size_t end = i + 1;
    const bool metres = is(tokens, end, Meaning::metres);
    const bool feet = is(tokens, end, Meaning::feet) || figure.is_minutes;
    if (metres || is(tokens, end, Meaning::feet)) ++end;
    const bool named_behind = is(tokens, end, Meaning::elevation);
    // `level 4.32 m below casing`
    if (is(tokens, end, Meaning::where)) continue;
    const bool may_be =
        named || named_behind || (is_place && figure.value >= 10 && stands_apart(tokens, i, end));
    if (!may_be || (!metres && !feet && !named && !named_behind) || figure.is_unclear) continue;
    while (is(tokens, end, Meaning::elevation))
      ++end;
    state(tokens, named ? before - 1 : i, end);
    return fmt::format("{} {}", figure.text, feet ? "ft" : "m");
  }
  return std::nullopt;
}

}  // namespace lodebook::fair_copy
