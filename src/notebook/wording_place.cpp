// SPDX-License-Identifier: MIT
// The wording of diagnostics on positions, and on what follows from place and date.
#include <fmt/format.h>

#include <algorithm>
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
      return "not a position";
    case number:
      return "not a plain number";
    case decimal_comma:
      return "a comma inside a figure";
    case latitude_range:
      return "a latitude over 90";
    case longitude_range:
      return "a longitude over 180";
    case minutes_range:
      return "minutes and seconds must be below 60; only the last may have decimals";
    case swapped:
      return "longitude before latitude";
    case hemisphere:
      return "each of the two needs its letter (N or S, E or W), or neither";
    case uneven:
      return "the figures do not make a latitude and a longitude";
    case loose_figure:
      return "a figure behind a whole position";
    case zone:
      return "there is no such grid zone";
    case band:
      return "the band letter does not fit the northing";
    case outside_grid:
      return "outside the grid zone";
  }
  return "not a position";
}

/// `345210` in place of a latitude.
bool is_lone_easting(std::string_view typed, earth::PositionFault fault) {
  constexpr std::size_t shortest = 5;
  return fault == earth::PositionFault::latitude_range && typed.size() >= shortest &&
         std::all_of(typed.begin(), typed.begin() + shortest,
                     [](char c) { return c >= '0' && c <= '9'; }) &&
         typed.find_first_of("NSEWnsew") == std::string_view::npos;
}

/// A position in whole degrees, enough to tell places apart: `36N 32E`.
std::string about(const earth::Position& position) {
  return format("{}{} {}{}", figure_text(std::abs(position.latitude), 0),
                position.latitude < 0 ? 'S' : 'N', figure_text(std::abs(position.longitude), 0),
                position.longitude < 0 ? 'W' : 'E');
}

/// `1900-01-01 to 2030-01-01`
std::string models_years() {
  return format("{}-01-01 to {}-01-01", figure_text(earth::first_field_year, 0),
                figure_text(earth::last_field_year, 0));
}

std::string outside_models(std::string_view date) {
  return format("'{}' is outside {}, the years of the geomagnetic models", date, models_years());
}

std::string against_model(double declared, const ModelDeclination& model) {
  return format("the stated declination is {}; the geomagnetic model ({}) gives {} ±{} here on {}",
                lettered(declared), model.model, lettered(model.degrees_east),
                trimmed_text(model.sigma, 2), model.date);
}

}  // namespace

Diagnostic model_without_date() {
  return make(Code::declination_model, Severity::error, setting_weight,
              "the geomagnetic model needs a date: bearings stay magnetic",
              "add a line such as 'date 1978-07-19' above");
}

Diagnostic model_without_position() {
  return make(Code::declination_model, Severity::error, setting_weight,
              "the geomagnetic model needs a position, here or above: bearings stay magnetic",
              "add 'at' and the station's position, or a figure, such as 'declination 24.6E'");
}

Diagnostic model_out_of_years(std::string_view date) {
  return make(Code::declination_model, Severity::error, setting_weight,
              format("{}: bearings stay magnetic", outside_models(date)),
              "is the date mistyped? else add that day's figure, such as 'declination 24.6E'");
}

Diagnostic model_out_of_heights(double height_m) {
  return make(Code::declination_model, Severity::error, setting_weight,
              format("elevation {} m is outside the geomagnetic models: bearings stay magnetic",
                     trimmed_text(height_m, 0)),
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
                        trimmed_text(off, 0)));
}

Diagnostic declination_stale(double declared, const ModelDeclination& model,
                             std::optional<double> true_in, double year) {
  std::string help =
      format("it was never so here from {} to {}: is the position wrong?",
             figure_text(earth::first_field_year, 0), figure_text(earth::last_field_year, 0));
  if (true_in) {
    const bool older = *true_in < year;
    help = format("it was right here {}in {}: from {} map?", older ? "" : "only ",
                  figure_text(std::floor(*true_in), 0), older ? "an old" : "a newer");
  }
  return warning(Code::declination_stale, 75, against_model(declared, model),
                 format("{} 'declination model' uses {}", help, lettered(model.degrees_east)));
}

Diagnostic set_side(double set, double declination) {
  return warning(Code::set_side, 88,
                 format("the dial is set to {}, but the declination is {}", lettered(set),
                        lettered(declination)),
                 format("set {}? as it stands, {} degrees are {} every bearing", lettered(-set),
                        trimmed_text(std::abs(declination - set), 2),
                        declination > set ? "added to" : "subtracted from"));
}

std::string needed_here() {
  return "needed here first";
}

std::string stated_here() {
  return "stated here";
}

Diagnostic no_compass(double horizontal_nt, bool model_asked) {
  const std::string fact = format("a compass is useless here: the horizontal field is only {} nT",
                                  trimmed_text(horizontal_nt, 0));
  constexpr std::string_view help = "take directions that do not come from a needle";
  if (!model_asked) return warning(Code::weak_field, 65, fact, std::string(help));
  return make(Code::weak_field, Severity::error, setting_weight,
              format("{}, and the geomagnetic model gives no declination", fact),
              std::string(help));
}

Diagnostic sluggish_needle(double horizontal_nt) {
  return warning(
      Code::weak_field, 40,
      format("the horizontal field is only {} nT: the needle is sluggish and its declination "
             "doubtful",
             trimmed_text(horizontal_nt, 0)),
      "check the compass against a known direction here");
}

Diagnostic position_borrowed(bool declination, bool grid) {
  return note(Code::position_borrowed,
              format("no position here: {} taken at the nearest one above",
                     !grid          ? "the declination is"
                     : !declination ? "grid north is"
                                    : "declination and grid north are"),
              "add 'at' and the station's position");
}

Diagnostic position_far(double metres, std::string_view before) {
  return warning(
      Code::position_far, 68,
      format("{} km from station '{}' before it", trimmed_text(metres / 1000, 0), before),
      "N for S, E for W, two figures swapped, or another grid zone?");
}

Diagnostic grid_unknown() {
  return warning(Code::grid_unknown, 70,
                 "no position here or above, so grid north is not known: bearings refer to true "
                 "north",
                 "add 'at' and the station's position");
}

Diagnostic position(std::string_view typed, const earth::PositionError& error_found) {
  const Code code = error_found.fault == earth::PositionFault::decimal_comma ? Code::decimal_comma
                                                                             : Code::position;
  if (is_lone_easting(typed, error_found.fault))
    return error(Code::position, format("'{}': a grid position without its zone", typed),
                 "the zone and its letter in front, such as 59G 345210 5052310");
  std::string help = "44.6502S 169.0314E, 44 39 00S 169 01 53E or 59G 345210 5052310";
  if (!error_found.meant.empty()) help = format("{}?", error_found.meant);
  if (error_found.fault == earth::PositionFault::loose_figure)
    help = format("{0} ±{1}? or, if it is a height, 'elevation {1}'", error_found.meant, typed);
  return error(code, format("'{}': {}", typed, position_fault(error_found.fault)), std::move(help));
}

Diagnostic position_zone_unclear(const earth::WrittenPosition& written) {
  const int zone = written.zone;
  if (!written.position)
    return error(
        Code::position,
        format("'{0}S': the northing is none of band S, and nothing else in the log tells that "
               "zone {0} south is meant",
               zone),
        format("{} south ({})?", zone, about(*written.if_south)));
  return error(Code::position,
               format("'{0}S' is zone {0} north in latitude band S, or zone {0} south", zone),
               format("{0} north ({1}) or {0} south ({2})?", zone, about(*written.position),
                      about(*written.if_south)));
}

Diagnostic zone_south(int zone) {
  return note(Code::zone_south,
              format("'{}S' is taken as zone {} south: only that fits the log's other positions",
                     zone, zone),
              format("'{} south' says so plainly", zone));
}

}  // namespace lodebook::notebook::wording
