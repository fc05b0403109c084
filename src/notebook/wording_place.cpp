// SPDX-License-Identifier: MIT
// The words of diagnostics on positions, and on what follows from place and date.
#include <fmt/format.h>

#include <cmath>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

using fmt::format;

namespace {

std::string_view position_fault(earth::PositionFault fault) {
  using enum earth::PositionFault;
  switch (fault) {
    case unreadable:
      return "no position";
    case number:
      return "no plain number";
    case decimal_comma:
      return "a comma inside a figure";
    case latitude_range:
      return "a latitude over 90";
    case longitude_range:
      return "a longitude over 180";
    case minutes_range:
      return "minutes or seconds that are not below 60, or a fraction before them";
    case swapped:
      return "longitude before latitude";
    case hemisphere:
      return "which hemisphere?";
    case uneven:
      return "figures that do not make a latitude and a longitude";
    case zone:
      return "no such grid zone";
    case band:
      return "the band letter contradicts the northing";
    case outside_grid:
      return "outside the grid zone";
  }
  return "no position";
}

/// `24.98E`, with two decimals at most.
std::string lettered(double degrees_east) {
  const double size = std::round(std::abs(degrees_east) * 100) / 100;
  if (size == 0) return "0";
  return format("{:.10g}{}", size, degrees_east > 0 ? 'E' : 'W');
}

std::string against_model(double declared, const ModelDeclination& model) {
  return format("declination {}; the geomagnetic model ({}) has {} ±{:.2f} here on {}",
                lettered(declared), model.model, lettered(model.degrees_east), model.sigma,
                model.date);
}

}  // namespace

Diagnostic model_without_date() {
  return make(Code::declination_model, Severity::error, setting_weight,
              "no date, so the geomagnetic model gives no declination: bearings stay magnetic",
              "a line such as 'date 1978-07-19' above");
}

Diagnostic model_without_position() {
  return make(
      Code::declination_model, Severity::error, setting_weight,
      "no position here or above, so the geomagnetic model gives no declination: bearings stay "
      "magnetic",
      "'at' and the station's position, or a declination such as 24.6E");
}

Diagnostic model_out_of_years(std::string_view date) {
  return make(Code::declination_model, Severity::error, setting_weight,
              format("{} is outside 1900 to 2030, the years of the geomagnetic models: bearings "
                     "stay magnetic",
                     date),
              "the declination of that day, such as 24.6E; or is the date mistyped?");
}

Diagnostic declination_sign(double declared, const ModelDeclination& model) {
  const double off = std::abs(std::remainder(declared - model.degrees_east, 360.0));
  return warning(
      Code::declination_sign, 95, format("{}, on the other side", against_model(declared, model)),
      format("{}? as it stands, every bearing is {:.0f} degrees off", lettered(-declared), off));
}

Diagnostic declination_stale(double declared, const ModelDeclination& model,
                             std::optional<double> true_in, double year) {
  std::string when = "it was never so here from 1900 to 2030";
  if (true_in && *true_in < year) {
    when = format("it was so here in {:.0f}: from an old map?", std::floor(*true_in));
  } else if (true_in) {
    when = format("it was so here only in {:.0f}: from a newer map?", std::floor(*true_in));
  }
  return warning(Code::declination_stale, 75, against_model(declared, model),
                 format("{} 'declination model', or {}", when, lettered(model.degrees_east)));
}

Diagnostic weak_field(double horizontal_nt, bool model_asked) {
  if (model_asked)
    return make(Code::weak_field, Severity::error, setting_weight,
                format("no compass here: the horizontal field is {:.0f} nT, and the geomagnetic "
                       "model gives no declination",
                       horizontal_nt),
                "directions that do not come from a needle");
  return warning(Code::weak_field, 65,
                 format("no compass here: the horizontal field is {:.0f} nT", horizontal_nt),
                 "directions that do not come from a needle");
}

Diagnostic sluggish_needle(double horizontal_nt) {
  return warning(
      Code::weak_field, 40,
      format("the horizontal field is only {:.0f} nT: a needle is sluggish and its declination "
             "doubtful",
             horizontal_nt),
      "check the compass against a known direction here");
}

Diagnostic position_borrowed(std::string_view what) {
  return note(Code::position_borrowed,
              format("no position here: {} taken at the nearest one above", what),
              "'at' and the station's position");
}

Diagnostic grid_unknown() {
  return warning(Code::grid_unknown, 70,
                 "no position here or above, so grid north is not known: bearings refer to true "
                 "north",
                 "'at' and the station's position");
}

Diagnostic position(std::string_view typed, const earth::PositionError& error_found) {
  const Code code = error_found.fault == earth::PositionFault::decimal_comma ? Code::decimal_comma
                                                                             : Code::position;
  return error(code, format("'{}': {}", typed, position_fault(error_found.fault)),
               error_found.meant.empty()
                   ? std::string("44.6502S 169.0314E, 44 39 00S 169 01 53E or 59G 345210 5052310")
                   : format("{}?", error_found.meant));
}

Diagnostic position_zone_unclear(int zone) {
  return error(Code::position,
               format("'{}S' is latitude band S in the north, or zone {} south; nothing else tells "
                      "which",
                      zone, zone),
               format("{} south?", zone));
}

Diagnostic zone_south(int zone) {
  return note(Code::zone_south,
              format("'{}S' is taken as zone {} south: only that fits the log's other positions",
                     zone, zone),
              format("{} south", zone));
}

}  // namespace lodebook::notebook::wording
