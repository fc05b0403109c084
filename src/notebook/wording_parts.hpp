// SPDX-License-Identifier: MIT
// What the factories of diagnostics are made of.
#pragma once

#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::notebook::wording {

/// A reading rejected, or a statement void.
inline constexpr double error_weight = 100;
/// A fault that turns every row below it.
inline constexpr double setting_weight = 120;
/// A line lost that holds no reading, as far as one can tell: less than a gross misfit.
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
/// What each shows, with its meaning where the words alone do not say it.
std::string either(const Offers& offers);
/// `diagnostic` with the fixes of `offers`, which its help names.
Diagnostic offering(Diagnostic diagnostic, const Offers& offers);

/// `24.98E`, with two decimals at most.
inline std::string lettered(double degrees_east) {
  std::string text;
  append_east_or_west(text, degrees_east, 2);
  return text;
}

}  // namespace lodebook::notebook::wording
