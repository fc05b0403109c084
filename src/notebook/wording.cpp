// SPDX-License-Identifier: MIT
#include <lodebook/notebook/wording.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace lodebook::notebook::wording {

namespace {

using fmt::format;

Diagnostic make(Code code, Severity severity, double weight, std::string message,
                std::string help) {
  Diagnostic diagnostic;
  diagnostic.code = code;
  diagnostic.severity = severity;
  diagnostic.message = std::move(message);
  diagnostic.help = std::move(help);
  diagnostic.weight = weight;
  return diagnostic;
}

constexpr double error_weight = 100;
/// A fault that turns every row below it.
constexpr double setting_weight = 120;
/// A line lost that holds no reading, as far as one can tell: less than a gross misfit.
constexpr double line_weight = 55;

Diagnostic error(Code code, std::string message, std::string help) {
  return make(code, Severity::error, error_weight, std::move(message), std::move(help));
}
Diagnostic warning(Code code, double weight, std::string message, std::string help) {
  return make(code, Severity::warning, weight, std::move(message), std::move(help));
}
Diagnostic note(Code code, std::string message, std::string help) {
  return make(code, Severity::note, 0, std::move(message), std::move(help));
}

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
               "a bearing is N20W, 340 or NNW");
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
                 format("no good {} was read before at this station", kind),
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

Diagnostic name_missing(std::string_view what) {
  return error(Code::name, format("{} has no name", what), "one word, such as Q1 or Trig-Dome");
}

Diagnostic name_of_two_words(std::string_view second, std::string_view joined) {
  return error(Code::name, format("a name is one word: '{}' is not understood", second),
               format("{}?", joined));
}

Diagnostic name_character(std::string_view typed) {
  return error(Code::name, format("'{}' cannot be a name", typed),
               "a name has no comma, ; or > and does not start with #");
}

Diagnostic accuracy_missing() {
  return error(Code::number, "a figure in metres must follow the plus-or-minus", "±8");
}

Diagnostic datum(std::string_view typed) {
  return error(
      Code::datum, format("datum '{}' is not WGS 84 at compass accuracy", typed),
      "convert the positions first; WGS84, GDA2020, NZGD2000, ETRS89 and NAD83 are taken as "
      "they are");
}

Diagnostic already_stated(std::string_view what, Place first) {
  Diagnostic diagnostic =
      error(Code::already_stated, format("{} was already stated", what), "keep one of the two");
  diagnostic.related.push_back({first, "the first one, which counts"});
  return diagnostic;
}

Diagnostic station_repeated(std::string_view name, Place first) {
  Diagnostic diagnostic = warning(Code::station_repeated, 20,
                                  format("station '{}' has a block already; both are kept", name),
                                  "another name, if it is another place");
  diagnostic.related.push_back({first, "the first block"});
  return diagnostic;
}

Diagnostic reading_outside_station() {
  return warning(Code::reading_outside_station, 25, "readings before the first station",
                 "a line such as 'station Q1' above them");
}

Diagnostic tally(std::string_view what, std::size_t said, std::size_t counted) {
  return warning(Code::tally, 45,
                 format("the tally says {} {}, the log has {}", said, what, counted),
                 "a line lost, or typed twice?");
}

Diagnostic declination_side(std::string_view typed) {
  return make(Code::declination_side, Severity::error, setting_weight,
              format("'{}' has no side", typed),
              typed.starts_with('-')   ? format("{}W?", typed.substr(1))
              : typed.starts_with('+') ? format("{}E?", typed.substr(1))
                                       : format("{0}E or {0}W?", typed));
}

Diagnostic declination_missing(bool set_known) {
  return warning(Code::declination_missing, 90,
                 set_known ? "no declination is known: bearings are read - set, magnetic"
                           : "no declination is known: bearings stay magnetic",
                 "a line such as 'declination 24.6E' above, or --declination");
}

Diagnostic declination_large(std::string_view typed, bool impossible) {
  if (impossible)
    return make(Code::declination_large, Severity::error, setting_weight,
                format("'{}' is over 180 degrees", typed), "");
  return warning(Code::declination_large, 85, format("'{}' is over 60 degrees", typed),
                 "so much only near a magnetic pole, where a compass is of little use");
}

Diagnostic declination_model() {
  return make(Code::declination_model, Severity::error, setting_weight,
              "this version has no geomagnetic model",
              "the declination of the place and day, such as 'declination 24.6E'");
}

Diagnostic set_missing(double declination) {
  return warning(
      Code::set_missing, 80,
      format("no 'set': the dial is taken as set to 0, and {:g} degrees {} are applied",
             std::abs(declination), declination < 0 ? "west" : "east"),
      "'set 0' if nothing was turned into the dial; 'declination as-set' if it was right");
}

Diagnostic option_overridden(std::string_view what, std::string_view log, std::string_view option) {
  return warning(
      Code::option_overridden, 70,
      format("the log says {} {}, the command line {}; the log's holds", what, log, option),
      format("leave out --{}, or correct the log", what));
}

Diagnostic attraction_unapplied() {
  return warning(Code::attraction_unapplied, 50,
                 "local attraction is not corrected: this version computes no traverse", "");
}

Diagnostic word_taken(std::string_view word) {
  return error(Code::word_taken, format("'{}' already means something", word), "another word");
}

Diagnostic date(std::string_view typed, std::string_view meant) {
  return error(
      Code::date, format("'{}' is no date", typed),
      meant.empty() ? std::string("year-month-day, such as 2026-02-14") : format("{}?", meant));
}

Diagnostic time(std::string_view typed) {
  return make(Code::time, Severity::error, line_weight, format("'{}' is no time of day", typed),
              "hours:minutes, such as 09:40");
}

Diagnostic date_order(std::string_view date, std::string_view before) {
  return warning(Code::date_order, 30, format("{} comes after {} in the log", date, before),
                 "pages out of order, or a date mistyped?");
}

Diagnostic number(std::string_view typed, std::string_view help) {
  return error(Code::number, format("'{}' is no plain number", typed), std::string(help));
}

Diagnostic number_dash(std::string_view figure) {
  return error(Code::number, "a dash that could be a minus sign or a hyphen",
               figure.empty() ? std::string("leave it out") : format("{0}, or minus {0}?", figure));
}

Diagnostic number_minutes(std::string_view typed) {
  return error(Code::number, format("'{}': minutes and seconds are whole parts below 60", typed),
               "20°30' is 20.5 degrees");
}

Diagnostic decimal_comma(std::string_view typed) {
  return error(
      Code::decimal_comma, format("'{}': a comma between digits", typed),
      "a point for decimals, no mark for thousands, or a space after the comma between two "
      "readings");
}

Diagnostic unknown_word(std::string_view word, std::string_view help) {
  return error(Code::unknown_word, format("'{}' is not understood here", word), std::string(help));
}

Diagnostic unknown_start(std::string_view word, std::optional<std::string_view> nearest) {
  return make(Code::unknown_word, Severity::error, line_weight,
              format("no statement or kind is called '{}'", word),
              nearest ? format("{}?", *nearest)
                      : format("'note' before free text; 'kind {} plane' or 'kind {} line' for a "
                               "kind of your own",
                               word, word));
}

Diagnostic attitude_without_kind(std::string_view line, std::string_view kind) {
  return error(Code::unknown_word, "a reading without its kind",
               kind.empty() ? format("bedding {}?", line) : format("{} {}?", kind, line));
}

Diagnostic trailing_text(std::string_view typed, std::string_view help) {
  return error(Code::trailing_text, format("'{}' after a complete statement", typed),
               help.empty() ? std::string("'; ' before a remark") : std::string(help));
}

Diagnostic encoding_byte(unsigned char byte) {
  return error(Code::encoding, format("byte 0x{:02X} is not UTF-8", byte),
               "save as UTF-8, or pass --encoding windows-1252");
}

Diagnostic encoding_utf_16() {
  return error(Code::encoding, "the file is UTF-16", "save it as UTF-8");
}

Diagnostic control_character(unsigned code) {
  return error(Code::control_character, format("control character U+{:04X}", code), "delete it");
}

Diagnostic line_length(std::size_t bytes, std::size_t limit) {
  return error(Code::line_length, format("a line of {} bytes; at most {} are read", bytes, limit),
               "break it into statements, one a line");
}

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

}  // namespace

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
               format("'{}S' is latitude band S in the north, or zone {} south; nothing in the log "
                      "tells which",
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
