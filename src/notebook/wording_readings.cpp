// SPDX-License-Identifier: MIT
// The wording of diagnostics on readings and the checks across them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

namespace {

using fmt::format;

/// The weight of a failed check: 10 at its limit, 60 at six times the limit and above.
double excess_weight(double figure, double limit) {
  return 10 * std::min(6.0, figure / limit);
}

/// A strike or trend that is uncertain for another reason than its dip or plunge.
Diagnostic uncertain(Code code, Doubt cause, std::string_view what, double sigma) {
  std::string_view whose = "a point of the compass rose leaves";
  std::string_view help = "read it in degrees, such as N62E, where the direction matters";
  if (cause == Doubt::bearing) {
    whose = "the accuracy of the bearing leaves";
    help = "";
  } else if (cause == Doubt::plane) {
    whose = "the errors of its plane leave";
    help = "read the trend and plunge, where they can be had";
  } else if (cause == Doubt::declination) {
    whose = "the declination leaves";
    help = "";
  }
  return note(code, format("{} the {} uncertain by {} degrees", whose, what, figure_text(sigma, 0)),
              std::string(help));
}

std::string question(std::optional<std::string_view> word) {
  return word ? format("{}?", *word) : std::string();
}

/// The question whether the offers were meant. If one is part of a statement, the whole statement
/// follows.
std::string meant(const Offers& offers) {
  std::string words;
  bool is_part = false;
  for (const Offer& offer : offers) {
    if (offer.fix.text == offer.whole && offer.whole.find(' ') != std::string::npos)
      return either(offers) + "?";
    if (!words.empty()) words += " or ";
    words += offer.fix.text;
    is_part = is_part || offer.shown != offer.fix.text;
  }
  return words + "?" + (is_part ? " type " + either(offers) : "");
}

/// The offers, or `help` if there are none.
std::string offers_or(const Offers& offers, std::string_view help) {
  return offers.empty() ? std::string(help) : either(offers);
}

}  // namespace

Diagnostic quadrant_angle(double angle, QuadrantBearing::Pole pole, QuadrantBearing::Side side,
                          const Offers& offers) {
  const bool north = pole == QuadrantBearing::Pole::north;
  const bool east = side == QuadrantBearing::Side::east;
  const std::string shown = trimmed_text(angle, angle_decimals);
  std::string help;
  if (angle <= 180) {
    const std::string meant = format("{}{}{}", north ? 'S' : 'N',
                                     trimmed_text(180 - angle, angle_decimals), east ? 'E' : 'W');
    help = format("{} is {} degrees {} from {}", meant, shown,
                  north == east ? "clockwise" : "counterclockwise", north ? "north" : "south");
    // Together with the fix of another fault, more than the bearing changes.
    if (!offers.empty() && offers.front().fix.text != meant) help += ": " + either(offers);
  } else {
    help = "the angle is counted from north or south, whichever is nearer: 90 at most";
  }
  return offering(error(Code::quadrant_angle, format("quadrant angle {} is over 90", shown), help),
                  offers);
}

Diagnostic quadrant_letters_swapped(std::string_view typed, const Offers& offers) {
  return offering(
      error(Code::quadrant_letters,
            format("'{}' starts from east or west; a quadrant bearing starts from north or south",
                   typed),
            offers.empty() ? "N or S comes first" : meant(offers)),
      offers);
}

Diagnostic quadrant_letters(std::string_view typed, std::string_view help, const Offers& offers) {
  return offering(error(Code::quadrant_letters,
                        format("'{}' is not a quadrant bearing: N or S, an angle, E or W", typed),
                        offers.empty() ? std::string(help) : meant(offers)),
                  offers);
}

Diagnostic azimuth_range(double azimuth, const Offers& offers) {
  return offering(
      error(Code::azimuth_range,
            format("azimuth {} is not between 0 and 360", trimmed_text(azimuth, angle_decimals)),
            offers.empty() ? std::string("azimuths run clockwise from north, from 0 to 360")
                           : meant(offers)),
      offers);
}

Diagnostic no_bearing(std::string_view typed, const Offers& offers) {
  return offering(error(Code::unknown_word, format("'{}' is not a bearing", typed),
                        offers_or(offers, bearings_look_so)),
                  offers);
}

Diagnostic notation_mixed(std::string_view typed, Notation dial) {
  return note(Code::notation_mixed,
              format("'{}' is {}, the dial is {}", typed,
                     dial == Notation::quadrant ? "an azimuth" : "a quadrant bearing",
                     dial == Notation::quadrant ? "a quadrant dial" : "an azimuth dial"),
              "nothing to do if another compass was read; said once a station");
}

Diagnostic dip_range(std::string_view typed, double degrees, const Offers& offers) {
  std::string help = "a dip is 0 to 90 degrees down from the horizontal";
  if (!offers.empty()) {
    help = (degrees > 90 ? "if overturned, type " : "a dip has no sign: ") + either(offers);
  } else if (degrees > 90 && degrees <= 180) {
    help = format("if overturned, type {} towards the other side and add the word overturned",
                  trimmed_text(180 - degrees, angle_decimals));
  }
  return offering(error(Code::dip_range, format("dip '{}' is not between 0 and 90", typed), help),
                  offers);
}

Diagnostic dip_side_missing(std::string_view typed, const Offers& offers,
                            const std::vector<std::string>& settings) {
  std::string help = offers_or(offers, "type the side that goes down behind the dip");
  if (!settings.empty() && settings.front().starts_with("order")) {
    // The order of the pairs comes first, because the question of the side depends on it.
    help = format("a line above says how pairs are written: {}; for this one alone {}",
                  either(settings), help);
  } else if (!settings.empty()) {
    help += "; or a line above: " + either(settings);
  }
  return offering(
      error(Code::dip_side_missing, format("which side does '{}' dip to?", typed), help), offers);
}

Diagnostic side_is_bearing(std::string_view typed, const Offers& offers) {
  return offering(error(Code::dip_side_impossible,
                        format("'{}' is a bearing, where a side should stand", typed),
                        offers_or(offers, "type the side as a point such as NW")),
                  offers);
}

Diagnostic dip_side_impossible(std::string_view strike, std::string_view side,
                               const Offers& offers) {
  return offering(
      error(Code::dip_side_impossible, format("no plane striking {} dips to {}", strike, side),
            offers_or(offers, "a plane dips across its strike: check both")),
      offers);
}

Diagnostic attitude_ambiguous(std::string_view typed, std::string_view strike,
                              const Offers& offers) {
  std::string help = format("if it is the strike {}, join it and add the dip", strike);
  if (!offers.empty()) help = either(offers) + "; " + help;
  return offering(
      error(Code::attitude_ambiguous,
            format("'{}' may be a strike without its dip, or strike, dip and side", typed), help),
      offers);
}

Diagnostic plane_or_line(std::string_view typed) {
  return error(Code::attitude_ambiguous, format("'{}' is a plane or a line", typed),
               "say which with --as plane or --as line, or put a kind such as bedding before it");
}

Diagnostic pair_order(std::string_view typed, const Offers& offers,
                      const std::vector<std::string>& settings) {
  std::string help = offers_or(offers, "a bearing has three digits, a dip or plunge one or two");
  if (!settings.empty()) help += "; or a line above: " + either(settings);
  return offering(
      error(Code::pair_order, format("'{}': which of the two is the bearing?", typed), help),
      offers);
}

Diagnostic pair_against_order(std::string_view typed, std::string_view order,
                              const Offers& offers) {
  return offering(
      error(Code::pair_order, format("'{}' contradicts 'order {}'", typed, order),
            offers_or(offers, "a bearing has three digits, a dip or plunge one or two")),
      offers);
}

Diagnostic bearing_before_towards(std::string_view typed, const Offers& offers) {
  return offering(
      error(Code::pair_order, format("'{}' has a bearing before the >", typed),
            offers_or(offers, "the dip or plunge comes first, then > and the direction")),
      offers);
}

Diagnostic plunge_range(std::string_view typed) {
  return error(Code::plunge_range, format("plunge '{}' is over 90", typed),
               "a plunge is 0 to 90 degrees down from the horizontal");
}

Diagnostic north_kept(std::string_view from, std::string_view to, bool by_position) {
  const std::string_view why = by_position ? "no position is known" : "no declination is known";
  return warning(Code::north_kept, 20,
                 format("stays from {} north, not turned to {} north: {}", from, to, why),
                 by_position ? "give the position with 'at'"
                             : "add 'declination 24.6E', or pass --declination 24.6E");
}

Diagnostic plunge_missing(std::string_view typed) {
  return warning(Code::plunge_missing, 20, format("'{}' is a trend without its plunge", typed),
                 "type the plunge behind it, if it was read");
}

Diagnostic other_end(std::string_view plunge) {
  return note(Code::other_end, format("plunge {} points up: turned to the other end", plunge), "");
}

Diagnostic rake_range(std::string_view typed, const Offers& offers) {
  std::string help = "a rake is counted from the nearer end of the strike";
  if (!offers.empty()) help += ": " + either(offers);
  return offering(error(Code::rake_range, format("rake '{}' is not between 0 and 90", typed), help),
                  offers);
}

Diagnostic rake_no_plane(std::string_view why) {
  return error(Code::rake_no_plane, format("a rake needs its plane: {}", why),
               "type the plane it was measured in on the line above it");
}

Diagnostic rake_end(double off, std::string_view strike) {
  return error(Code::rake_end,
               format("the bearing is {} degrees from either end of the strike {}",
                      figure_text(off, 0), strike),
               "name the end of the strike from which the rake was read");
}

Diagnostic incomplete(std::string_view what, std::string_view part, std::string_view help,
                      const Offers& offers) {
  return offering(
      error(Code::incomplete, format("{} has no {}", what, part), offers_or(offers, help)), offers);
}

Diagnostic partial(bool strike_alone) {
  return note(
      Code::partial,
      strike_alone ? "the strike alone: no dip was read" : "the dip alone: no strike was read", "");
}

Diagnostic youngs_without_dip(const Offers& offers) {
  return offering(error(Code::facing_impossible, "a side says nothing of the facing without a dip",
                        offers_or(offers, "say the facing in a word, if it is known")),
                  offers);
}

Diagnostic youngs_along_strike(std::string_view towards, const Offers& offers) {
  return offering(error(Code::facing_impossible,
                        format("'{}' is along the strike: beds young across it", towards),
                        offers_or(offers, "check it against the strike")),
                  offers);
}

Diagnostic mark_without_figure(std::string_view typed) {
  return error(Code::number, format("'{}' takes no ~ and no ±", typed),
               "they belong to a bearing or a figure");
}

Diagnostic facing_doubtful() {
  return note(Code::facing_doubtful, "facing marked doubtful in the field", "");
}

Diagnostic comma_within(std::string_view rest, const Offers& offers) {
  return offering(
      error(Code::incomplete,
            format("a comma begins another reading, and '{}' alone is none", rest),
            offers.empty() ? "leave out the comma" : "without the comma: " + either(offers)),
      offers);
}

Diagnostic slope_range(std::string_view typed, const Offers& offers) {
  std::string help = "degrees from the horizontal, or a percent grade with its %";
  if (!offers.empty()) help = "if read on the percent scale, type " + either(offers);
  return offering(error(Code::slope_range, format("angle '{}' is over 90", typed), help), offers);
}

Diagnostic distance_unit(std::string_view typed, bool foot_mark, const Offers& offers) {
  std::string help = offers_or(offers, "type m, ft or paces behind the figure");
  if (foot_mark) help = "a foot mark is a minute of arc here: " + help;
  return offering(error(Code::distance_unit, format("distance '{}' has no unit", typed), help),
                  offers);
}

Diagnostic pace_missing() {
  return error(Code::pace_missing, "pace length not set",
               "type it on a line above, such as 'pace 0.76m'");
}

Diagnostic landmark_unknown(std::string_view name, std::optional<std::string_view> nearest) {
  return warning(Code::landmark_unknown, 40, format("no landmark or station is called '{}'", name),
                 question(nearest));
}

Diagnostic station_unknown(std::string_view name, std::optional<std::string_view> nearest) {
  return note(Code::station_unknown, format("the log has no station '{}'", name),
              question(nearest));
}

Diagnostic own_station(std::string_view name) {
  return warning(Code::own_station, 40,
                 format("the leg leads to its own station '{}', and places nothing", name),
                 "name the station at its far end after 'to'");
}

Diagnostic back_bearing(double disagreement, double limit, std::string_view help) {
  return warning(Code::back_bearing, excess_weight(disagreement, limit),
                 format("fore and back bearing disagree by {} degrees (limit {})",
                        figure_text(disagreement, 1), figure_text(limit, 1)),
                 std::string(help));
}

Diagnostic percent_or_degrees(std::string_view typed, double degrees_if_percent, bool of_leg) {
  Diagnostic asked = warning(
      Code::percent_or_degrees, 35,
      format("'{}' is read as degrees: unusually steep for a walked or sighted line", typed),
      format("if read on the percent scale, type '{}%', which is {} degrees", typed,
             figure_text(degrees_if_percent, 1)));
  if (of_leg) asked.message += ", so the leg places nothing";
  return asked;
}

Diagnostic repeat_spread(std::string_view what, double off, double limit, std::string_view help) {
  return warning(Code::repeat_spread, excess_weight(off, limit),
                 format("{} is {} degrees from the mean of its repeats (limit {})", what,
                        figure_text(off, 1), figure_text(limit, 1)),
                 std::string(help));
}

Diagnostic line_off_plane(double off, std::string_view plane, double limit, std::string_view help) {
  return warning(Code::line_off_plane, excess_weight(off, limit),
                 format("the line lies {} degrees out of its {} (limit {})", figure_text(off, 1),
                        plane, figure_text(limit, 1)),
                 std::string(help));
}

Diagnostic plane_unknown(std::string_view kind) {
  return warning(Code::plane_unknown, 30,
                 format("no good reading in the last {} above it at this station", kind),
                 format("type the {} above the line, or leave out the words on {}", kind, kind));
}

Diagnostic strike_uncertain(double sigma, double dip, Doubt cause) {
  if (cause != Doubt::slope) return uncertain(Code::strike_uncertain, cause, "strike", sigma);
  return note(
      Code::strike_uncertain,
      format("a dip of {} leaves the strike uncertain by {} degrees", trimmed_text(dip, 1),
             figure_text(sigma, 0)),
      "a shallow dip has no good strike: read the dip direction over a long line, or use two "
      "apparent dips");
}

Diagnostic trend_uncertain(double sigma, double plunge, Doubt cause) {
  if (cause != Doubt::slope) return uncertain(Code::trend_uncertain, cause, "trend", sigma);
  return note(Code::trend_uncertain,
              format("a plunge of {} leaves the trend uncertain by {} degrees",
                     trimmed_text(plunge, 1), figure_text(sigma, 0)),
              "a steep line has no good trend: read its rake in a plane");
}

Diagnostic doubtful(bool is_leg) {
  return warning(Code::doubtful, 15,
                 format("marked doubtful in the field{}", is_leg ? ": the leg places nothing" : ""),
                 "");
}

}  // namespace lodebook::notebook::wording
