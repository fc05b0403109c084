// SPDX-License-Identifier: MIT
// The words of diagnostics on positions, and on what follows from place and date.
#include <fmt/format.h>

#include <cmath>

#include <lodebook/earth/geomagnetic.hpp>

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

/// `1900-01-01 to 2030-01-01`
std::string models_years() {
  return format("{:.0f}-01-01 to {:.0f}-01-01", earth::first_field_year, earth::last_field_year);
}

std::string outside_models(std::string_view date) {
  return format("'{}' is outside {}, the years of the geomagnetic models", date, models_years());
}

std::string against_model(double declared, const ModelDeclination& model) {
  return format("declination {}; the geomagnetic model ({}) has {} ±{} here on {}",
                lettered(declared), model.model, lettered(model.degrees_east),
                trimmed(model.sigma, 2), model.date);
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
              format("{}: bearings stay magnetic", outside_models(date)),
              "the declination of that day, such as 24.6E; or is the date mistyped?");
}

Diagnostic model_out_of_heights(double height_m) {
  return make(Code::declination_model, Severity::error, setting_weight,
              format("elevation {} m is outside the geomagnetic models: bearings stay magnetic",
                     trimmed(height_m, 0)),
              "is the elevation mistyped?");
}

Diagnostic date_outside_models(std::string_view typed) {
  return error(Code::date, outside_models(typed),
               "a map of that time may state the declination in its margin");
}

Diagnostic declination_sign(double declared, const ModelDeclination& model) {
  const double off = std::abs(std::remainder(declared - model.degrees_east, 360.0));
  return warning(Code::declination_sign, 95,
                 format("{}, on the other side", against_model(declared, model)),
                 format("{}? as it stands, every bearing is {} degrees off", lettered(-declared),
                        trimmed(off, 0)));
}

Diagnostic declination_stale(double declared, const ModelDeclination& model,
                             std::optional<double> true_in, double year) {
  std::string help = format("it was never so here from {:.0f} to {:.0f}: is the position wrong?",
                            earth::first_field_year, earth::last_field_year);
  if (true_in) {
    const bool older = *true_in < year;
    help = format("it was so here {}in {:.0f}: from {} map?", older ? "" : "only ",
                  std::floor(*true_in), older ? "an old" : "a newer");
  }
  return warning(Code::declination_stale, 75, against_model(declared, model),
                 format("{} 'declination model' takes {}", help, lettered(model.degrees_east)));
}

Diagnostic set_side(double set, double declination) {
  return warning(Code::set_side, 88,
                 format("the dial is set to {}, under a declination of {}", lettered(set),
                        lettered(declination)),
                 format("set {}? as it stands, {} degrees are {} every bearing", lettered(-set),
                        trimmed(std::abs(declination - set), 2),
                        declination > set ? "added to" : "subtracted from"));
}

std::string stated_here() {
  return "stated here";
}

Diagnostic no_compass(double horizontal_nt, bool model_asked) {
  const std::string fact =
      format("no compass here: the horizontal field is {} nT", trimmed(horizontal_nt, 0));
  constexpr std::string_view help = "directions that do not come from a needle";
  if (!model_asked) return warning(Code::weak_field, 65, fact, std::string(help));
  return make(Code::weak_field, Severity::error, setting_weight,
              format("{}, and the geomagnetic model gives no declination", fact),
              std::string(help));
}

Diagnostic sluggish_needle(double horizontal_nt) {
  return warning(
      Code::weak_field, 40,
      format("the horizontal field is only {} nT: a needle is sluggish and its declination "
             "doubtful",
             trimmed(horizontal_nt, 0)),
      "check the compass against a known direction here");
}

Diagnostic position_borrowed(bool declination, bool grid) {
  return note(Code::position_borrowed,
              format("no position here: {} taken at the nearest one above",
                     !grid          ? "the declination is"
                     : !declination ? "grid north is"
                                    : "declination and grid north are"),
              "'at' and the station's position");
}

Diagnostic position_far(double metres, std::string_view before) {
  return warning(Code::position_far, 68,
                 format("{} km from station '{}' before it", trimmed(metres / 1000, 0), before),
                 "N for S, E for W, two figures swapped, or another grid zone?");
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
