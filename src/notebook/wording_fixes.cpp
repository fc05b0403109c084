// SPDX-License-Identifier: MIT
// The wording of diagnostics on positions from sights and legs.
#include <fmt/format.h>

#include <cmath>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

using fmt::format;

Diagnostic sight_misfit(std::optional<double> chi_square, std::size_t freedom, bool one_suspected,
                        std::string_view help) {
  std::string message =
      chi_square ? format(
                       "the sights disagree by more than their errors allow: chi-square {}, about "
                       "{} expected",
                       figure_text(*chi_square, 1), freedom)
                 : std::string("the sights meet nowhere: at least one points the wrong way");
  std::string advice(help);
  if (advice.empty())
    advice = one_suspected ? "no single slip explains it; this one disagrees most with the others"
                           : "no single slip explains it";
  return warning(Code::sight_misfit, 84, std::move(message), std::move(advice));
}

Diagnostic sight_off(double off, double limit, std::string_view target, std::string_view slips) {
  const std::string fact = format("this sight misses '{}' by {}° (limit {}°)", target,
                                  figure_text(off, 1), figure_text(limit, 1));
  if (slips.empty())
    return warning(Code::sight_off, 80, fact, "check the bearing and both positions");
  return warning(Code::sight_misfit, 82, fact, std::string(slips));
}

Diagnostic no_fix(std::string_view why, std::string_view help) {
  return warning(Code::no_fix, 60, format("no position from the sights: {}", why),
                 std::string(help));
}

Diagnostic legs_without_declination() {
  return warning(Code::no_fix, 60, "no position from the legs: no declination is known",
                 "add 'declination 24.6E', or pass --declination 24.6E");
}

Diagnostic weak_cut(double degrees) {
  return warning(Code::weak_cut, 35,
                 format("the sight lines cross at {} degrees at best", figure_text(degrees, 0)),
                 "sight a landmark well to the side; near 90 degrees is best");
}

Diagnostic no_check() {
  return note(Code::no_check, "two sights always meet: nothing tells whether one is wrong",
              "sight a third landmark");
}

Diagnostic danger_circle() {
  return note(
      Code::danger_circle,
      "the station lies near the circle through its landmarks, where sights cannot check the "
      "declination",
      "");
}

Diagnostic implied_declination(double degrees_east, double sigma, std::string_view help) {
  return warning(Code::implied_declination, 72,
                 format("the sights fit a declination of {} ±{}, not the one in use",
                        lettered(degrees_east), trimmed_text(sigma, 1)),
                 help.empty() ? std::string("local attraction here, or a mistyped declination?")
                              : std::string(help));
}

Diagnostic misclosure(std::size_t legs, double metres, double length_m, std::string_view to) {
  const std::string what =
      legs == 1 ? format("this leg misses '{}' by {} m", to, figure_text(metres, 1))
                : format("the {} legs up to this one, to '{}', misclose by {} m in {} m", legs, to,
                         figure_text(metres, 1), figure_text(length_m, 0));
  return warning(Code::misclosure, 64, what + ", more than the errors allow",
                 legs == 1 ? "a mistyped figure or letter, or percent for degrees?"
                           : "a leg mistyped, left out or counted twice?");
}

Diagnostic heights_disagree(std::size_t count, double lowest_m, double highest_m) {
  return warning(
      Code::heights_disagree, 46,
      format("{} vertical angles give heights from {} to {} m, further apart than "
             "their errors allow",
             count, figure_text(lowest_m, 0), figure_text(highest_m, 0)),
      "an angle with the wrong sign, percent for degrees, or a wrong elevation of a landmark?");
}

Diagnostic local_attraction(double correction, bool applied) {
  return warning(Code::local_attraction, 58,
                 format("local attraction: the legs from stations free of it show that {} degrees "
                        "must be {} the bearings read here",
                        trimmed_text(std::abs(correction), 1),
                        correction < 0 ? "subtracted from" : "added to"),
                 applied ? "applied to the legs, as 'attraction correct' says; strikes and sights "
                           "here stay as read"
                         : "'attraction correct' in the heading applies it to the legs");
}

Diagnostic attraction_unapplied() {
  return warning(Code::attraction_unapplied, 50,
                 "no leg has fore and back bearings that agree: local attraction is not corrected",
                 "add 'back' to the legs, with the bearing read at the far end");
}

}  // namespace lodebook::notebook::wording
