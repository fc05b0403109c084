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
     "Two sights fix a station; any more are redundant, and check the others. Here they disagree "
     "by more than their errors allow: by the chi-square test, so large a misfit has a chance of "
     "less than one in a hundred where nothing is wrong. The slips that people make are tried one "
     "by one: the other end of the needle, east for west, two digits swapped, ten degrees, another "
     "landmark. Those that make the sights agree are named in the help, best first; none is "
     "applied. The sight is suspect; the position's ellipse is enlarged accordingly, or the "
     "position is withheld where the sights meet nowhere. At a station that states its position, "
     "each sight is checked against it in the same way.",
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
     "Look at the field page, and check which end of the needle you read (south-end). Correct the "
     "reading, or mark it 'doubtful', so that only the others fix the station."},
    {sight_off, "sight-off", warning, "a sight misses its landmark",
     "Both the station and the landmark state their positions, and the sight misses the line "
     "between them by more than three degrees and more than its errors allow. None of the usual "
     "slips explains it (if one did, this would be sight-misfit), so one of the positions may be "
     "wrong, too.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
station Q1 at 44.70S 169.00E
  sight Cairn N25E
)",
     "Check the bearing, the landmark's name, and both positions."},
    {no_fix, "no-fix", warning, "sights give no position",
     "The station has no position and its sights cannot give one: their lines are nearly parallel "
     "(under three degrees), meet behind the observer, or meet at the landmark itself; or no "
     "declination is known, so that there are no true bearings.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Far 44.62S 169.06E
station Q1
  sight Cairn N3.6E
  sight Far N3.5E
)",
     "Sight a landmark well to the side, or give the station its position with 'at'."},
    {weak_cut, "weak-cut", warning, "sight lines cross at a narrow angle",
     "The best two sight lines cross at under 30 degrees, where a small reading error moves the "
     "crossing far along them: the error grows as one over the sine of the angle. The position "
     "stands, with its long ellipse.",
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
     "Sight another landmark, as near to a right angle as you can."},
    {no_check, "no-check", note, "a position has no check",
     "Two sights always meet somewhere, right or wrong. A third shows whether one of them is "
     "mistaken.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E
landmark Dome 44.68S 168.94E
station Q1
  sight Cairn N3.6E
  sight Dome N89.6W
)",
     "Sight a third landmark, if you can see one."},
    {implied_declination, "implied-declination", warning,
     "sights fit another declination than the one in use",
     "With the orientation left free, the sights of the station agree with each other, and give a "
     "declination that differs from the one in use by more than twice the uncertainty; no slip in "
     "a single sight explains it. Magnetic rock under the station, a mistyped declination or one "
     "on the wrong side turns all sights alike. The position is computed with the declination in "
     "use.",
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
     "If only one station shows it, suspect the rock; if all do, suspect the declination."},
    {danger_circle, "danger-circle", note, "sights cannot check the declination here",
     "The station lies near the circle through its landmarks. From everywhere on that circle they "
     "appear at the same angles to each other, so the sights cannot tell a wrong declination from "
     "another place on the circle. With the declination in use the position is good.",
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
     "To check the declination, sight a landmark inside the circle or well outside it."},
    {misclosure, "misclosure", warning, "legs do not close",
     "A loop of legs, or a traverse between two known stations, ends elsewhere by more than the "
     "errors of distance and bearing allow (chance under one in a hundred). The misclosure is "
     "still distributed by the compass rule, which spreads a mistake over good legs.",
     R"(set 0
declination 24.6E
station A at 44.70S 169.00E
  leg N 500m to B
station B
  leg E 500m to C
station C
  leg S45W 600m to A
)",
     "Look for a leg with a wrong letter, a wrong digit, or a pace count that was not doubled. The "
     "report of 'lodebook fix' lists the correction of each leg."},
    {heights_disagree, "heights-disagree", warning, "vertical angles give different heights",
     "The height of a station or landmark was found from several vertical angles, and they differ "
     "by more than their errors allow (chance under one in a hundred). Their mean is used, with a "
     "larger error.",
     R"(set 0
declination 24.6E
landmark Cairn 44.66S 169.03E elevation 1300
landmark Dome 44.68S 168.94E elevation 1300
station Q1 at 44.70S 169.00E
  sight Cairn N3.6E vertical 6
  sight Dome N89.6W vertical -6
)",
     "Check the signs: up is positive. A clinometer has degrees on one scale and percent on the "
     "other."},
    {local_attraction, "local-attraction", warning, "magnetic rock turns the needle here",
     "A leg whose fore and back bearings agree shows that both its stations are free of local "
     "attraction. From there the error of each next station follows from its back bearing (the "
     "handbook method). Here it is larger than reading errors explain.",
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
     "'attraction correct' in the heading corrects the legs. Strikes and sights read at the "
     "station are off by as much: check them again, or leave them out."},
    {attraction_unapplied, "attraction-unapplied", warning, "local attraction cannot be corrected",
     "'attraction correct' needs legs with fore and back bearings, and at least one leg whose two "
     "bearings agree, so that its stations are free of attraction. Here there is none, and the "
     "legs stand as read.",
     R"(attraction correct
set 0
declination 24.6E
station A at 44.70S 169.00E
  leg N 500m to B
station B
)",
     "Add back bearings, such as 'leg N62E 500m back S62W', or remove 'attraction correct'."},
});

}  // namespace lodebook::notebook::pages
