// SPDX-License-Identifier: MIT
#include <lodebook/notebook/date.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <lodebook/orientation/decimal.hpp>

#include "tokens.hpp"

namespace lodebook::notebook {

namespace {

/// The number that `text` gives, if it is one to four digits and nothing else.
std::optional<unsigned> digits(std::string_view text) {
  if (text.empty() || text.size() > 4 || !std::all_of(text.begin(), text.end(), is_digit))
    return std::nullopt;
  unsigned value = 0;
  for (const char c : text)
    value = value * 10 + static_cast<unsigned>(c - '0');
  return value;
}

std::optional<Date> day_of(unsigned year, unsigned month, unsigned day) {
  const std::chrono::year_month_day date{std::chrono::year(static_cast<int>(year)),
                                         std::chrono::month(month), std::chrono::day(day)};
  if (!date.ok()) return std::nullopt;
  return Date{static_cast<std::uint16_t>(year), static_cast<std::uint8_t>(month),
              static_cast<std::uint8_t>(day)};
}

struct DateParts {
  std::array<std::string_view, 3> parts;
};

/// Splits `text` at two separators of the same kind.
std::optional<DateParts> date_parts(std::string_view text) {
  const std::size_t first = text.find_first_of("-/.");
  if (first == std::string_view::npos) return std::nullopt;
  const std::size_t second = text.find(text[first], first + 1);
  if (second == std::string_view::npos) return std::nullopt;
  return DateParts{
      {text.substr(0, first), text.substr(first + 1, second - first - 1), text.substr(second + 1)}};
}

std::chrono::sys_days day_number(const Date& date) {
  return std::chrono::year_month_day{std::chrono::year(date.year), std::chrono::month(date.month),
                                     std::chrono::day(date.day)};
}

}  // namespace

std::optional<Date> read_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  return day_of(*year, *month, *day);
}

std::string meant_date(std::string_view text) {
  const auto split = date_parts(text);
  if (!split) return {};
  const auto a = digits(split->parts[0]);
  const auto b = digits(split->parts[1]);
  const auto c = digits(split->parts[2]);
  if (!a || !b || !c) return {};
  const bool year_first = split->parts[0].size() == 4;
  const bool year_last = split->parts[2].size() == 4;
  if (!year_first && !year_last) return {};
  const unsigned year = year_first ? *a : *c;
  const unsigned other = year_first ? *c : *a;
  const auto as_day_month = day_of(year, *b, other);
  const auto as_month_day = year_first ? std::nullopt : day_of(year, other, *b);
  if (as_day_month.has_value() == as_month_day.has_value() && other != *b) return {};
  const Date date = as_day_month ? *as_day_month : as_month_day.value_or(Date{});
  if (date.year == 0) return {};
  return iso_date(date);
}

std::string iso_date(const Date& date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::optional<double> read_decimal_year(std::string_view text) {
  const std::string_view year = text.substr(0, 4);
  if (year.size() < 4 || !std::all_of(year.begin(), year.end(), is_digit)) return std::nullopt;
  const std::string_view fraction = text.substr(4);
  if (!fraction.empty() && (fraction[0] != '.' || fraction.size() < 2)) return std::nullopt;
  return read_decimal(text);
}

double decimal_year(const Date& date) {
  const auto begins = [&date](unsigned years_on) {
    return day_number({static_cast<std::uint16_t>(date.year + years_on), 1, 1});
  };
  const auto gone = day_number(date) - begins(0);
  const auto whole = begins(1) - begins(0);
  return date.year + static_cast<double>(gone.count()) / static_cast<double>(whole.count());
}

}  // namespace lodebook::notebook
