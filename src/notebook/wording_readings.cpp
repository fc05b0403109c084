// SPDX-License-Identifier: MIT
// The words of diagnostics on readings and the checks across them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

namespace {

using fmt::format;

/// How loud a failed check is: 10 at its limit, 60 at six times the limit and over.
double excess_weight(double figure, double limit) {
  return 10 * std::min(6.0, figure / limit);
}

std::string question(std::optional<std::string_view> word) {
  return word ? format("{}?", *word) : std::string();
}

}  // namespace

Diagnostic quadrant_angle(double angle, QuadrantBearing::Pole pole, QuadrantBearing::Side side) {
  const bool north = pole == QuadrantBearing::Pole::north;
  const bool east = side == QuadrantBearing::Side::east;
  std::string help;
  if (angle <= 180) {
    help = format("{}{:g}{} is {:g} degrees {} from {}", north ? 'S' : 'N', 180 - angle,
                  east ? 'E' : 'W', angle, north == east ? "clockwise" : "counterclockwise",
                  north ? "north" : "south");
  } else {
    help = "the angle is counted from the nearer of north and south, so it is 90 at most";
  }
  return error(Code::quadrant_angle, format("quadrant angle {:g} is over 90", angle), help);
}

Diagnostic quadrant_letters_swapped(std::string_view typed, std::string_view meant) {
  return error(
      Code::quadrant_letters,
      format("'{}' starts from east or west, a quadrant bearing from north or south", typed),
      format("{}?", meant));
}

Diagnostic quadrant_letters_missing(std::string_view typed, std::string_view help) {
  return error(Code::quadrant_letters,
               format("'{}' is no quadrant bearing: N or S, an angle, E or W", typed),
               std::string(help));
}

Diagnostic azimuth_range(double azimuth) {
  return error(Code::azimuth_range, format("azimuth {:g} is not between 0 and 360", azimuth),
               azimuth >= -360 && azimuth <= 720
                   ? format("{:03g}?", azimuth < 0 ? azimuth + 360 : azimuth - 360)
                   : "azimuths run clockwise from north, 0 to 360");
}

Diagnostic no_bearing(std::string_view typed) {
  return error(Code::unknown_word, format("'{}' is no bearing", typed),
               "a bearing is N50W, 310 or NNW");
}

Diagnostic notation_mixed(std::string_view typed, Notation dial) {
  return note(Code::notation_mixed,
              format("'{}' is {}, the dial is {}", typed,
                     dial == Notation::quadrant ? "an azimuth" : "a quadrant bearing",
                     dial == Notation::quadrant ? "a quadrant dial" : "an azimuth dial"),
              "fine if a partner read it; said once a station");
}

Diagnostic dip_range(std::string_view typed, double degrees) {
  return error(Code::dip_range, format("dip '{}' is not between 0 and 90", typed),
               degrees > 90 && degrees <= 180
                   ? format("overturned? then {:g} to the other side, and the word overturned",
                            180 - degrees)
                   : "a dip is 0 to 90 degrees down from the horizontal");
}

Diagnostic dip_side_missing(std::string_view strike, std::string_view dip, Point one, Point other) {
  return error(Code::dip_side_missing, format("which side does '{} {}' dip to?", strike, dip),
               format("{0} {1} {2} or {0} {1} {3}; or a line 'rule right' or 'rule left' above",
                      strike, dip, name_of(one), name_of(other)));
}

Diagnostic dip_side_impossible(std::string_view strike, std::string_view side, Point one,
                               Point other, std::string_view mirrored) {
  std::string help = format("{} or {}?", name_of(one), name_of(other));
  if (!mirrored.empty()) help += format(" or is the strike {}?", mirrored);
  return error(Code::dip_side_impossible, format("no plane striking {} dips to {}", strike, side),
               std::move(help));
}

Diagnostic attitude_ambiguous(std::string_view typed, std::string_view point,
                              std::string_view figure, std::string_view side) {
  return error(Code::attitude_ambiguous,
               format("'{}' is a strike without its dip, or a strike, a dip and a side", typed),
               format("{0}/{1} {2} for strike {0}, dip {1} to {2}; else add the dip: {0}{1}{2} and "
                      "then the dip",
                      point, figure, side));
}

Diagnostic plane_or_line(std::string_view typed) {
  return error(Code::attitude_ambiguous, format("'{}' is a plane or a line", typed),
               "--as plane or --as line, or a kind in front");
}

Diagnostic pair_order(std::string_view typed, std::string_view help) {
  return error(Code::pair_order, format("'{}': which of the two is the bearing?", typed),
               std::string(help));
}

Diagnostic pair_against_order(std::string_view typed, std::string_view order) {
  return error(Code::pair_order, format("'{}' contradicts 'order {}'", typed, order),
               "three digits before the point make a bearing, one or two a dip or plunge");
}

Diagnostic plunge_range(std::string_view typed) {
  return error(Code::plunge_range, format("plunge '{}' is over 90", typed),
               "a plunge is 0 to 90 degrees down from the horizontal");
}

Diagnostic other_end(std::string_view plunge) {
  return note(Code::other_end, format("plunge {} points up: turned to the other end", plunge), "");
}

Diagnostic rake_range(std::string_view typed) {
  return error(Code::rake_range, format("rake '{}' is not between 0 and 90", typed),
               "a rake is the acute angle from the nearer end of the strike");
}

Diagnostic rake_no_plane(std::string_view why) {
  return error(Code::rake_no_plane, format("a rake needs its plane: {}", why),
               "type the plane it was measured in on the line above it");
}

Diagnostic rake_end(double off, std::string_view strike) {
  return error(
      Code::rake_end,
      format("the bearing is {:.0f} degrees from either end of the strike {}", off, strike),
      "a rake is counted from an end of the strike: name that end");
}

Diagnostic incomplete(std::string_view what, std::string_view part, std::string_view help) {
  return error(Code::incomplete, format("{} has no {}", what, part), std::string(help));
}

Diagnostic slope_range(std::string_view typed) {
  return error(Code::slope_range, format("angle '{}' is over 90", typed),
               "degrees from the horizontal, or a percent grade with its %");
}

Diagnostic distance_unit(std::string_view typed, bool foot_mark) {
  return error(Code::distance_unit, format("distance '{}' has no unit", typed),
               foot_mark ? "a lone ' is a minute of arc here: ft for feet"
                         : "m, ft or paces behind the figure");
}

Diagnostic pace_missing() {
  return error(Code::pace_missing, "paces, but no length of a pace",
               "a line such as 'pace 0.76m' above");
}

Diagnostic landmark_unknown(std::string_view name, std::optional<std::string_view> nearest) {
  return warning(Code::landmark_unknown, 40, format("no landmark or station is called '{}'", name),
                 question(nearest));
}

Diagnostic station_unknown(std::string_view name, std::optional<std::string_view> nearest) {
  return note(Code::station_unknown, format("the log has no station '{}'", name),
              question(nearest));
}

Diagnostic back_bearing(double disagreement, double limit, std::string_view help) {
  return warning(Code::back_bearing, excess_weight(disagreement, limit),
                 format("fore and back bearing disagree by {:.1f} degrees (limit {:.1f})",
                        disagreement, limit),
                 std::string(help));
}

Diagnostic percent_or_degrees(std::string_view typed, double degrees_if_percent) {
  return warning(
      Code::percent_or_degrees, 35,
      format("'{}' is read as degrees, and steeper than one walks or sights", typed),
      format("percent scale? then {}%, which is {:.1f} degrees", typed, degrees_if_percent));
}

Diagnostic repeat_spread(std::string_view what, double off, double limit, std::string_view help) {
  return warning(
      Code::repeat_spread, excess_weight(off, limit),
      format("{} is {:.1f} degrees from the mean of its repeats (limit {:.1f})", what, off, limit),
      std::string(help));
}

Diagnostic line_off_plane(double off, std::string_view plane, double limit, std::string_view help) {
  return warning(
      Code::line_off_plane, excess_weight(off, limit),
      format("the line lies {:.1f} degrees out of its {} (limit {:.1f})", off, plane, limit),
      std::string(help));
}

Diagnostic plane_unknown(std::string_view kind) {
  return warning(Code::plane_unknown, 30,
                 format("no good reading in the last {} above it at this station", kind),
                 format("type the {} above the line, or leave out 'on {}'", kind, kind));
}

Diagnostic strike_uncertain(double sigma, double dip) {
  return note(
      Code::strike_uncertain,
      format("a dip of {:.4g} leaves the strike uncertain by {:.0f} degrees", dip, sigma),
      "a shallow dip has no good strike: read the dip direction over a long line, or use two "
      "apparent dips");
}

Diagnostic trend_uncertain(double sigma, double plunge) {
  return note(
      Code::trend_uncertain,
      format("a plunge of {:.4g} leaves the trend uncertain by {:.0f} degrees", plunge, sigma),
      "a steep line has no good trend: read its rake in a plane");
}

Diagnostic doubtful() {
  return warning(Code::doubtful, 15, "marked doubtful in the field", "");
}

}  // namespace lodebook::notebook::wording
