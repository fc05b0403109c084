// SPDX-License-Identifier: MIT
// Strict decimal text in, correctly rounded figures out, without an allocation of their own.
#include <lodebook/orientation/decimal.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <system_error>

namespace lodebook {
namespace {

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
  if (has_point && (point == 0 || decimals == 0 || decimals >= powers_of_ten.size()))
    return std::nullopt;
  return static_cast<double>(digits) / static_cast<double>(powers_of_ten[decimals]);
}

/// Takes trailing zeros from a figure that ends in so many decimals.
void trim(std::string& text, int decimals) {
  if (decimals == 0) return;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
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

void append_trimmed(std::string& out, double value, int decimals) {
  append_figure(out, rounded(value, decimals), decimals);
  trim(out, decimals);
}

std::string figure_text(double value, int decimals) {
  return std::string(Figure(rounded(value, decimals), decimals).text());
}

std::string trimmed_text(double value, int decimals) {
  std::string text;
  append_trimmed(text, value, decimals);
  return text;
}

std::string trimmed_azimuth_text(double degrees, int decimals) {
  std::string text(Figure(rounded_azimuth(degrees, decimals), decimals, 3).text());
  trim(text, decimals);
  return text;
}

void append_east_or_west(std::string& out, double degrees_east, int decimals) {
  append_trimmed(out, std::abs(degrees_east), decimals);
  if (rounded(std::abs(degrees_east), decimals) != 0) out.push_back(degrees_east > 0 ? 'E' : 'W');
}

}  // namespace lodebook
