// SPDX-License-Identifier: MIT
// Days in the Gregorian calendar, in ISO 8601.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lodebook::notebook {

/// A day: year 0 to 9999, month and day from 1.
struct Date {
  std::uint16_t year = 0;
  std::uint8_t month = 1;
  std::uint8_t day = 1;

  friend constexpr auto operator<=>(const Date&, const Date&) = default;
};

/// Reads all of `text` as a date such as `2026-02-14`. Empty for any other form, and for a day that
/// does not exist.
std::optional<Date> read_date(std::string_view text);

/// The ISO form of a date that is written otherwise, such as `14.2.2026`. Empty if day and month
/// may be either way round, or if `text` is not a date.
std::string meant_date(std::string_view text);

/// The date in ISO 8601, such as `2026-02-14`.
std::string iso_date(const Date& date);

/// Reads all of `text` as a decimal year, such as `1978` or `1978.5`. Empty for anything else, and
/// unless the year has four digits.
std::optional<double> read_decimal_year(std::string_view text);

/// The decimal year at the start of the day, by the number of days in its year: 2024-07-02 is
/// 2024.5.
double decimal_year(const Date& date);

}  // namespace lodebook::notebook
