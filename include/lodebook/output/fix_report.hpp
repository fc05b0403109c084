// SPDX-License-Identifier: MIT
// Positions from sights and legs as a text report.
#pragma once

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// The caution about positions from sights and legs.
std::string_view fix_caution();

/// What is wrong in a log, under its name: errors and warnings in full, notes on one line. Nothing
/// where nothing is wrong.
void append_fix_diagnostics(std::string& out, const notebook::Source& source,
                            const reduction::Fixes& fixes, bool color);

/// Writes one report: log for each log, with `between` between their texts, then end.
class FixReport {
 public:
  static constexpr std::string_view between = "\n";

  explicit FixReport(bool color) : color_(color) {}
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes) const;
  void end(std::string& out);

 private:
  bool color_;
};

}  // namespace lodebook::output
