// SPDX-License-Identifier: MIT
// Numbers: strict decimal text in, correctly rounded figures out.
#pragma once

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lodebook {

/// Reads digits with at most one point and at least one digit (`7`, `7.5`, `.5`, `7.`), and nothing
/// else: no sign, exponent, hexadecimal, `nan`, space or thousands mark. Nothing if any character
/// is left over or the value is not finite. Allocates nothing.
std::optional<double> read_decimal(std::string_view text);

// Every row has a dozen figures. The functions that round and write them are inline, so that the
// compiler can use the number of decimals, which is nearly always a constant.

/// 1 to 1,000,000,000.
inline constexpr std::array<std::int64_t, 10> powers_of_ten = {
    1, 10, 100, 1'000, 10'000, 100'000, 1'000'000, 10'000'000, 100'000'000, 1'000'000'000};

/// A number rounded to `decimals` (0 to 7) places: first to 1e-9, against errors of binary sums,
/// then half up, in units of the last place, so that wrapping and formatting are exact. 12.25 to
/// one place is 123 units, -12.25 is -122. Saturates at +-9e18 units; never NaN in.
inline std::int64_t rounded(double value, int decimals) {
  assert(!std::isnan(value));
  assert(decimals >= 0 && decimals <= 7);
  constexpr double largest = 9e18;
  constexpr std::int64_t nano = powers_of_ten.back();
  const std::int64_t scale = powers_of_ten[static_cast<std::size_t>(decimals)];
  const double limit = largest / static_cast<double>(scale);
  if (!(value > -limit)) return -static_cast<std::int64_t>(largest);
  if (!(value < limit)) return static_cast<std::int64_t>(largest);
  // Truncated and then corrected: std::floor and std::llround are function calls.
  auto whole = static_cast<std::int64_t>(value);
  if (static_cast<double>(whole) > value) --whole;
  // The fraction is exact and in [0, 1), so that its nano-units are off by far less than a half.
  const double exact = (value - static_cast<double>(whole)) * static_cast<double>(nano);
  auto nanos = static_cast<std::uint32_t>(exact);
  if (exact - static_cast<double>(nanos) >= 0.5) ++nanos;
  const auto step = static_cast<std::uint32_t>(nano / scale);
  return whole * scale + (nanos + step / 2) / step;
}

/// The same for an azimuth, wrapped after rounding into [0, 360): 359.96 to one place is 0.
inline std::int64_t rounded_azimuth(double degrees, int decimals) {
  const std::int64_t turn = 360 * powers_of_ten[static_cast<std::size_t>(decimals)];
  std::int64_t units = rounded(degrees, decimals);
  if (units >= 0 && units < turn) return units;
  units %= turn;
  return units < 0 ? units + turn : units;
}

/// The same for the azimuth of an axis, wrapped into [0, 180).
inline std::int64_t rounded_axis(double degrees, int decimals) {
  return rounded_azimuth(degrees, decimals) %
         (180 * powers_of_ten[static_cast<std::size_t>(decimals)]);
}

/// The bytes of a figure (see below): 1 to 21.
inline std::size_t figure_size(std::int64_t units, int decimals, int min_digits) {
  auto rest = static_cast<std::uint64_t>(units);
  if (units < 0) rest = 0 - rest;
  constexpr int most_digits = 19;
  int digits = 1;
  for (std::uint64_t bound = 10; digits < most_digits && rest >= bound; bound *= 10)
    ++digits;
  digits = std::max(digits, decimals + std::max(min_digits, 1));
  return static_cast<std::size_t>(digits + (units < 0 ? 1 : 0) + (decimals > 0 ? 1 : 0));
}

/// Writes a figure (see below) so that it ends before `end`; returns where it begins.
inline char* write_figure(char* end, std::int64_t units, int decimals, int min_digits) {
  assert(decimals >= 0 && decimals <= 9 && min_digits >= 0 && min_digits <= 9);
  auto rest = static_cast<std::uint64_t>(units);
  if (units < 0) rest = 0 - rest;
  // From the last digit to the first.
  const auto put_digit = [&] {
    *--end = static_cast<char>('0' + rest % 10);
    rest /= 10;
  };
  for (int i = 0; i < decimals; ++i)
    put_digit();
  if (decimals > 0) *--end = '.';
  for (int least = std::max(min_digits, 1); least > 0 || rest > 0; --least)
    put_digit();
  if (units < 0) *--end = '-';
  return end;
}

/// `units` of 10^-decimals (0 to 9) with exactly that many decimals: 3240, 1 -> `324.0`; no point
/// for 0 decimals; never `-0`. At least `min_digits` (0 to 9) digits before the point, zero-padded.
/// It holds its own characters.
class Figure {
 public:
  Figure(std::int64_t units, int decimals, int min_digits = 1)
      : start_(write_figure(characters_.data() + characters_.size(), units, decimals, min_digits)) {
  }
  Figure(const Figure&) = delete;
  Figure& operator=(const Figure&) = delete;
  std::string_view text() const {
    return {start_, static_cast<std::size_t>(characters_.data() + characters_.size() - start_)};
  }

 private:
  /// A sign, all digits of the largest number or what is asked for, and a point.
  std::array<char, 21> characters_;
  const char* start_;
};

/// Appends the figure's text to a string, or to a type with the same append function.
template <class Text>
void append_figure(Text& out, std::int64_t units, int decimals, int min_digits = 1) {
  out += Figure(units, decimals, min_digits).text();
}

/// Appends the rounded value without trailing zeros: 24.6 and not 24.60.
void append_trimmed(std::string& out, double value, int decimals);

/// Decimals of an angle that was typed, where words repeat it: as fine as figures are rounded.
inline constexpr int angle_decimals = 7;

/// The value rounded to exactly so many decimals: `12.0`.
std::string figure_text(double value, int decimals);

/// Without trailing zeros: `12`, `12.5`.
std::string trimmed_text(double value, int decimals);

/// An azimuth, wrapped after rounding, with three digits before the point and no trailing zeros:
/// `007.5`.
std::string trimmed_azimuth_text(double degrees, int decimals);

/// Appends a declination or convergence with its letter, trimmed: `24.98E`, `3W`; `0` has none.
void append_east_or_west(std::string& out, double degrees_east, int decimals);

}  // namespace lodebook
