// SPDX-License-Identifier: MIT
// Strict decimal text in, correctly rounded figures out, without an allocation of their own.
#include <lodebook/orientation/decimal.hpp>

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <system_error>

namespace lodebook {
namespace {

constexpr std::array<std::int64_t, 10> power_of_ten = {
    1, 10, 100, 1'000, 10'000, 100'000, 1'000'000, 10'000'000, 100'000'000, 1'000'000'000};
constexpr std::int64_t nano = power_of_ten[9];
constexpr double largest = 9e18;

constexpr std::int64_t units_per_one(int decimals) {
  assert(decimals >= 0 && decimals <= 7);
  return power_of_ten[static_cast<std::size_t>(decimals)];
}

/// The value of `text` if it is plain and short: up to 15 digits, and a point that is not alone.
/// Digits and power of ten are then whole doubles, so that their quotient is correctly rounded (W.
/// D. Clinger, 1990, PLDI '90, section 2).
std::optional<double> read_short_decimal(std::string_view text) {
  constexpr std::size_t longest = 16;  // with its point
  if (text.empty() || text.size() > longest) return std::nullopt;
  std::int64_t digits = 0;
  std::size_t point = text.size();
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c == '.' && point == text.size()) {
      point = at;
    } else if (c >= '0' && c <= '9') {
      digits = 10 * digits + (c - '0');
    } else {
      return std::nullopt;
    }
  }
  const std::size_t decimals = text.size() - std::min(point + 1, text.size());
  const bool has_point = point < text.size();
  if (text.size() == longest && !has_point) return std::nullopt;
  if (has_point && (point == 0 || decimals == 0 || decimals >= power_of_ten.size()))
    return std::nullopt;
  return static_cast<double>(digits) / static_cast<double>(power_of_ten[decimals]);
}

}  // namespace

std::optional<double> read_decimal(std::string_view text) {
  if (const auto value = read_short_decimal(text)) return value;
  // std::from_chars also takes signs, exponents, `inf` and `nan`, so every character is looked at
  // before; and it stops quietly at what it does not know, such as a second point.
  for (const char c : text) {
    if ((c < '0' || c > '9') && c != '.') return std::nullopt;
  }
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (stop != end) return std::nullopt;
  if (error == std::errc::result_out_of_range) {
    // Too small to differ from zero, if there are only zeros before the point; else too large.
    if (text[text.find_first_not_of('0')] == '.') return 0.0;
    return std::nullopt;
  }
  if (error != std::errc() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::int64_t rounded(double value, int decimals) {
  assert(!std::isnan(value));
  const std::int64_t scale = units_per_one(decimals);
  const double limit = largest / static_cast<double>(scale);
  if (!(value > -limit)) return -static_cast<std::int64_t>(largest);
  if (!(value < limit)) return static_cast<std::int64_t>(largest);
  // Converted towards zero and then put right: std::floor and std::llround are calls.
  auto whole = static_cast<std::int64_t>(value);
  if (static_cast<double>(whole) > value) --whole;
  // The fraction is exact and in [0, 1), so that its nano-units are off by far less than a half.
  const double exact = (value - static_cast<double>(whole)) * static_cast<double>(nano);
  auto nanos = static_cast<std::uint32_t>(exact);
  if (exact - static_cast<double>(nanos) >= 0.5) ++nanos;
  const auto step = static_cast<std::uint32_t>(nano / scale);
  return whole * scale + (nanos + step / 2) / step;
}

std::int64_t rounded_azimuth(double degrees, int decimals) {
  const std::int64_t turn = 360 * units_per_one(decimals);
  std::int64_t units = rounded(degrees, decimals);
  if (units >= 0 && units < turn) return units;
  units %= turn;
  return units < 0 ? units + turn : units;
}

std::int64_t rounded_axis(double degrees, int decimals) {
  return rounded_azimuth(degrees, decimals) % (180 * units_per_one(decimals));
}

Figure::Figure(std::int64_t units, int decimals, int min_digits)
    : start_(std::tuple_size_v<decltype(characters_)>) {
  assert(decimals >= 0 && decimals <= 9 && min_digits >= 0 && min_digits <= 9);
  auto rest = static_cast<std::uint64_t>(units);
  if (units < 0) rest = 0 - rest;
  // From the last digit to the first.
  const auto put_digit = [&] {
    characters_[--start_] = static_cast<char>('0' + rest % 10);
    rest /= 10;
  };
  for (int i = 0; i < decimals; ++i)
    put_digit();
  if (decimals > 0) characters_[--start_] = '.';
  for (int least = std::max(min_digits, 1); least > 0 || rest > 0; --least)
    put_digit();
  if (units < 0) characters_[--start_] = '-';
}

void append_trimmed(std::string& out, double value, int decimals) {
  append_figure(out, rounded(value, decimals), decimals);
  if (decimals == 0) return;
  out.erase(out.find_last_not_of('0') + 1);
  if (out.back() == '.') out.pop_back();
}

void append_east_or_west(std::string& out, double degrees_east, int decimals) {
  append_trimmed(out, std::abs(degrees_east), decimals);
  if (rounded(std::abs(degrees_east), decimals) != 0) out.push_back(degrees_east > 0 ? 'E' : 'W');
}

}  // namespace lodebook
