// SPDX-License-Identifier: MIT
// Numbers: strict decimal text in, correctly rounded figures out.
#pragma once

#include <array>
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

/// A number rounded to `decimals` (0 to 7) places: snapped to 1e-9 to shed the dust of sums, then
/// rounded half up, and counted in units of the last place, so that wrapping and formatting are
/// exact. 12.25 to one place is 123 units, -12.25 is -122. Saturates at +-9e18 units; never NaN in.
std::int64_t rounded(double value, int decimals);

/// The same for an azimuth, wrapped after rounding into [0, 360): 359.96 to one place is 0.
std::int64_t rounded_azimuth(double degrees, int decimals);

/// The same for an azimuth of which either end will do, wrapped into [0, 180).
std::int64_t rounded_axis(double degrees, int decimals);

/// `units` of 10^-decimals (0 to 9) with exactly that many decimals: 3240, 1 -> `324.0`; no point
/// for 0 decimals; never `-0`. At least `min_digits` (0 to 9) digits before the point, zero-padded.
/// It holds its own characters.
class Figure {
 public:
  Figure(std::int64_t units, int decimals, int min_digits = 1);
  std::string_view text() const {
    return {characters_.data() + start_, characters_.size() - start_};
  }

 private:
  /// A sign, all digits of the largest number or what is asked for, and a point.
  std::array<char, 21> characters_;
  std::size_t start_;
};

/// Appends the figure's text to a string, or to what is appended to like one.
template <class Text>
void append_figure(Text& out, std::int64_t units, int decimals, int min_digits = 1) {
  out += Figure(units, decimals, min_digits).text();
}

/// Appends the rounded value without trailing zeros: 24.6 and not 24.60.
void append_trimmed(std::string& out, double value, int decimals);

/// Appends a declination or convergence with its letter, trimmed: `24.98E`, `3W`; `0` has none.
void append_east_or_west(std::string& out, double degrees_east, int decimals);

}  // namespace lodebook
