// SPDX-License-Identifier: MIT
// The geomagnetic field of one place and time, as `declination` shows it.
#pragma once

#include <lodebook/earth/position.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace lodebook::output {

/// All that is shown. Angles are in degrees.
struct FieldAnswer {
  earth::Position position;
  double elevation_m = 0;
  std::string date;  ///< ISO, or a decimal year as typed
  std::string_view model;
  double declination = 0;           ///< east positive
  double uncertainty = 0;           ///< one sigma of the declination
  double annual_change = 0;         ///< of the declination, a year, east positive
  double magnetic_inclination = 0;  ///< positive where the north end of a needle dips
  double horizontal_nt = 0;
  double total_nt = 0;
  /// What to say before the declination, if anything.
  std::vector<std::string> cautions;
};

/// Several lines, among them one that can stand in the heading of a log: `declination 24.98E
/// ±0.38`. Its figures are rounded as in a table, to two decimals.
void append_field_text(std::string& out, const FieldAnswer& answer);

/// One object, on one line, by docs/declination.schema.json.
void append_field_json(std::string& out, const FieldAnswer& answer);

}  // namespace lodebook::output
