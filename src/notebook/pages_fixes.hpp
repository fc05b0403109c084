// SPDX-License-Identifier: MIT
// Pages of `lodebook explain` on positions from sights and legs.
#pragma once

#include <array>

#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::notebook::pages {

using enum Code;
using enum Severity;

inline constexpr auto of_fixes = std::to_array<CodePage>({
    // ---- positions from sights and legs
    {sight_misfit, "sight-misfit", warning, "sights that should meet in a point do not",
     "Three sights or more from a station are one too many to fix it, and so check each other. "
     "Here they disagree by more than their errors allow: by the chi-square test so large a misfit "
     "has a chance of less than one in a hundred where nothing is wrong. The single slips that "
     "people make are tried one by one, the other end of the needle, east for west, two digits "
     "swapped, ten degrees, another landmark; those that would make the sights agree are named in "
     "the help, best first. None is applied. The sight is suspect; the position stretches its "
     "ellipse, or is withheld where the sights meet nowhere. At a station that states its position "
     "a sight is held against it in the same way.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Dome 44.68S 168.94E
landmark Saddle 44.74S 169.02E
landmark Peak 44.70S 169.06E
station Q1
  sight Cairn S3.6W
  sight Dome N89.6W
  sight Saddle S44.2E
  sight Peak N65.4E
)",
     "Look at the field page, and at which end of the needle belongs to that way of sighting "
     "(south-end). Correct the reading, or mark it doubtful and leave the station to the others."},
    {sight_off, "sight-off", warning, "a sight does not lead to where its landmark lies",
     "Both the station and the landmark state their positions, and the sight is further from the "
     "line between them than three degrees and its errors allow. None of the usual slips explains "
     "it (where one does, it is sight-misfit), so that one of the positions may be wrong as well.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
station Q1 at 44.70S 169.00E
  sight Cairn N25E
)",
     "Look at the bearing, at the landmark's name, and at both positions."},
    {no_fix, "no-fix", warning, "sights give no position",
     "The station has no position and its sights cannot give one: their lines run together (under "
     "three degrees), meet behind the observer, or fall on the landmark itself; or no declination "
     "is known, so that they refer to no map.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Far 44.62S 169.06E
station Q1
  sight Cairn N3.6E
  sight Far N3.5E
)",
     "Sight a landmark well to the side, or give the station its position with at."},
    {weak_cut, "weak-cut", warning, "sight lines cross at a sharp angle",
     "The best two sight lines cross at under 30 degrees, where a small error of reading moves the "
     "crossing far along them: the error grows as one over the sine of the angle. The position "
     "holds, with its long ellipse.",
     R"(set 0
declination 24.6E
landmark Cairn 44.6642S 169.0266E
landmark Dome 44.6690S 169.0365E
landmark Peak 44.6751S 169.0447E
station Q1
  sight Cairn N3.4E
  sight Dome N15.4E
  sight Peak N27.4E
)",
     "Another landmark, as near to a right angle as can be."},
    {no_check, "no-check", note, "a position has no check",
     "Two sights always meet somewhere, right or wrong. A third tells whether one of them is "
     "mistaken.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Dome 44.68S 168.94E
station Q1
  sight Cairn N3.6E
  sight Dome N89.6W
)",
     "A third landmark, if one is in sight."},
    {implied_declination, "implied-declination", warning,
     "sights agree on another declination than the stated one",
     "With the orientation left free the sights of the station agree, and on a declination that "
     "differs from the stated one by more than twice the uncertainty; no slip in a single sight "
     "explains that. Magnetic rock under the station, a declination mistyped, or one on the wrong "
     "side turn all sights alike. The position is that of the stated declination.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Dome 44.68S 168.94E
landmark Saddle 44.74S 169.02E
landmark Peak 44.70S 169.06E
station Q1
  sight Cairn N5.4W
  sight Dome S81.4W
  sight Saddle S53.2E
  sight Peak N56.4E
)",
     "If one station only shows it, suspect the rock; if all do, the declination."},
    {danger_circle, "danger-circle", note, "sights say nothing of the declination here",
     "The station lies near the circle through its landmarks. From everywhere on it they appear "
     "under the same angles, so that the sights cannot tell a wrong declination from another place "
     "on the circle. With the stated declination the position is good.",
     R"(set 0
declination 24.6E
landmark Cairn 44.68199S 168.95631E
landmark Dome 44.664S 169E
landmark Peak 44.68768S 169.04741E
station Q1
  sight Cairn 305.4
  sight Dome 335.4
  sight Peak 010.4
)",
     "A landmark inside or well outside the circle, if the declination is to be checked."},
    {misclosure, "misclosure", warning, "legs do not close",
     "A loop of legs, or a run of them between two known stations, comes out elsewhere by more "
     "than the errors of distance and bearing allow (chance under one in a hundred). The "
     "misclosure is shared out by the compass rule all the same, which spreads a mistake over good "
     "legs.",
     R"(set 0
declination 24.6E
station A at 44.70S 169.00E
  leg N 500m to B
station B
  leg E 500m to C
station C
  leg S45W 600m to A
)",
     "Look at the leg for a wrong letter, a digit, or a pace count that was not doubled. The "
     "report of `lodebook fix` has the corrections of each leg."},
    {heights_disagree, "heights-disagree", warning, "vertical angles give different heights",
     "The height of a station or landmark was found from several vertical angles, and they are "
     "further apart than their errors allow (chance under one in a hundred). Their mean holds, "
     "with its error stretched.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E elevation 1300
landmark Dome 44.68S 168.94E elevation 1300
station Q1 at 44.70S 169.00E
  sight Cairn N3.6E vertical 6
  sight Dome N89.6W vertical -6
)",
     "Look at the signs: up is positive. A clinometer has degrees on one scale and percent on the "
     "other."},
    {local_attraction, "local-attraction", warning, "magnetic rock turns the needle here",
     "Fore and back bearings of a leg that agree show that both its stations are free of local "
     "attraction. From there each next station's error follows from its back bearing (the handbook "
     "method). Here it is more than the readings' errors.",
     R"(set 0
declination 24.6E
station A
  leg 044 100m back 224 to B
station B
  leg 096 100m back 274 to C
station C
  leg 030 100m back 212 to D
station D
  leg 320 100m back 140 to E
station E
)",
     "`attraction correct` in the heading corrects the legs. Strikes and sights read at the "
     "station are as wrong as its legs: look at them again, or leave them out."},
    {attraction_unapplied, "attraction-unapplied", warning,
     "corrections for local attraction cannot be made",
     "`attraction correct` needs legs with fore and back bearings, and among them one whose two "
     "bearings agree, so that its stations are free of attraction. Here there is none, and the "
     "legs stand as read.",
     R"(attraction correct
set 0
declination 24.6E
station A at 44.70S 169.00E
  leg N 500m to B
station B
)",
     "Add the back bearings (back), or leave the statement out."},
});

}  // namespace lodebook::notebook::pages
