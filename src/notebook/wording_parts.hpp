// SPDX-License-Identifier: MIT
// Parts that the factories of diagnostics share.
#pragma once

#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::notebook::wording {

/// The weight of a rejected reading or a void statement.
inline constexpr double error_weight = 100;
/// The weight of a fault that makes every row below it wrong.
inline constexpr double setting_weight = 120;
/// The weight of a line that is lost but probably holds no reading: less than a gross misfit.
inline constexpr double line_weight = 55;

inline Diagnostic make(Code code, Severity severity, double weight, std::string message,
                       std::string help) {
  Diagnostic diagnostic;
  diagnostic.code = code;
  diagnostic.severity = severity;
  diagnostic.message = std::move(message);
  diagnostic.help = std::move(help);
  diagnostic.weight = weight;
  return diagnostic;
}
inline Diagnostic error(Code code, std::string message, std::string help) {
  return make(code, Severity::error, error_weight, std::move(message), std::move(help));
}
inline Diagnostic warning(Code code, double weight, std::string message, std::string help) {
  return make(code, Severity::warning, weight, std::move(message), std::move(help));
}
inline Diagnostic note(Code code, std::string message, std::string help) {
  return make(code, Severity::note, 0, std::move(message), std::move(help));
}

/// Things to type, in quotes: `'a', 'b' or 'c'`.
std::string either(const std::vector<std::string>& things);
/// What each offer shows, with its meaning if it has one.
std::string either(const Offers& offers);
/// `diagnostic` with the fixes of `offers`, which its help names.
Diagnostic offering(Diagnostic diagnostic, const Offers& offers);

/// A declination such as `24.98E`, with two decimals at most.
inline std::string lettered(double degrees_east) {
  std::string text;
  append_east_or_west(text, degrees_east, 2);
  return text;
}

}  // namespace lodebook::notebook::wording
