// SPDX-License-Identifier: MIT
// Days in the Gregorian calendar, in ISO 8601.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lodebook::notebook {

struct Date {
  std::uint16_t year = 0;
  std::uint8_t month = 1;
  std::uint8_t day = 1;

  friend constexpr auto operator<=>(const Date&, const Date&) = default;
};

/// Reads `2026-02-14`, all of it; nothing for any other form or a day that does not exist.
std::optional<Date> read_date(std::string_view text);

/// The ISO form of a date in another order (`14.2.2026`), where only one order makes a day; else
/// empty.
std::string meant_date(std::string_view text);

/// `2026-02-14`
std::string iso_date(const Date& date);

/// Reads a decimal year, `1978` or `1978.5`, all of it; the year has four digits.
std::optional<double> read_decimal_year(std::string_view text);

/// The year and the fraction of it that has gone when the day begins: 2024-07-02 is 2024.5.
double decimal_year(const Date& date);

}  // namespace lodebook::notebook
