// SPDX-License-Identifier: MIT
// One reading in, the same reading in another notation out.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include <lodebook/cli/command_line.hpp>

namespace lodebook::cli {

/// Most bytes that are held at once; as UTF-8 they fit in a Source whatever their encoding.
inline constexpr std::size_t largest_input = notebook::Source::max_size / 3;

/// Converts readings as one command line asks. Nothing is corrected unless it says so.
class Converter {
 public:
  /// Fails where the north that was asked for cannot be had.
  static std::variant<Converter, UsageError> from(const CommandLine& line);

  /// Appends the reading that fills `source`, without a line's end, and its diagnostics. After a
  /// fault appends nothing and returns false.
  bool convert(const notebook::Source& source, std::string& out,
               std::vector<notebook::Diagnostic>& diagnostics) const;

  /// Corrected, but only to magnetic north, which was not asked for.
  bool only_magnetic() const { return only_magnetic_; }

 private:
  explicit Converter(const CommandLine& line);

  void append(std::string& out, const notebook::Bearing& bearing) const;
  void append(std::string& out, const notebook::PlaneAttitude& attitude) const;
  void append(std::string& out, const notebook::LineAttitude& attitude) const;
  /// What is added to a bearing, and its north where that stays as typed.
  reduction::Correction correction_of(const notebook::Bearing& bearing) const;
  double corrected(Azimuth<north::dial> azimuth, const notebook::Bearing& bearing) const;
  void append_north(std::string& out, const notebook::Bearing& bearing) const;
  /// Says why it stays, where a correction was asked for.
  void tell_north(const notebook::Source& source, const notebook::Bearing& bearing,
                  std::vector<notebook::Diagnostic>& diagnostics) const;
  int decimals_of(const notebook::Bearing& bearing) const;

  output::ShownIn to_;
  notebook::ReadAs as_;
  notebook::ReadOptions options_;
  /// What the line says of the compass, if it asks for a correction.
  std::optional<reduction::Settings> settings_;
  reduction::North wanted_ = reduction::North::geographic;
  int correction_decimals_ = 0;
  int declination_decimals_ = 0;
  bool only_magnetic_ = false;
};

}  // namespace lodebook::cli
