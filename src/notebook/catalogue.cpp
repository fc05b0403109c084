// SPDX-License-Identifier: MIT
// The wording of `lodebook explain`: one page a diagnostic, in the order of Code.
#include <lodebook/notebook/catalogue.hpp>

#include <algorithm>
#include <array>

namespace lodebook::notebook {

namespace {

using enum Code;
using enum Severity;

/// A log whose note is one byte longer than a line may be (64 KiB).
constexpr auto log_with_long_line = [] {
  constexpr std::string_view head = "station Q1\n  note ";
  constexpr std::size_t line_limit = 64 * 1024;
  constexpr std::size_t line_start = head.find('\n') + 1;
  std::array<char, line_start + line_limit + 2> text{};
  text.fill('x');
  std::copy(head.begin(), head.end(), text.begin());
  text.back() = '\n';
  return text;
}();

// An example that needs an option says so in its first line, `# lodebook check --option value`.
constexpr std::array<CodePage, code_count> pages = {{
    // ---- bearings
    {quadrant_angle, "quadrant-angle", error, "a quadrant bearing has an angle over 90",
     "A quadrant bearing starts at north or south and swings at most a quarter turn towards east "
     "or "
     "west. N95E would pass east and belongs to another quadrant; whether the angle or a letter "
     "was "
     "misheard cannot be known, so the reading is rejected and keeps its row in the table.",
     R"(set 0
declination 24.6E
station Q1
  bedding N95E 32N
)",
     "Look at the field page. If the needle really stood past east, write the bearing from the "
     "other "
     "pole (S85E for N95E); otherwise correct the angle."},
    {quadrant_letters, "quadrant-letters", error,
     "the letters of a quadrant bearing are missing or in the wrong order",
     "A quadrant bearing is N or S, an angle, then E or W. E20N starts from east, N20 never says "
     "to "
     "which side, and in N20 30W it is not clear whether 30 is minutes or another figure. Nothing "
     "is "
     "guessed; the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding E20N 32N
)",
     "Write the pole first (N70E for E20N), give the second letter, and mark minutes (N20°30'W)."},
    {azimuth_range, "azimuth-range", error, "an azimuth is over 360 or negative",
     "An azimuth is counted clockwise from north, once round the circle, from 0 to 360. A figure "
     "outside is nearly always a digit too many, so the reading is rejected instead of being "
     "wrapped.",
     R"(set 0
declination 24.6E
station Q1
  lineation 365/15
)",
     "Check the digits against the field page and type the azimuth between 0 and 360."},
    {notation_mixed, "notation-mixed", note, "a reading is in the other notation than the dial",
     "The heading says which way the dial is marked, and this reading is written the other way. "
     "Partners share pages, so it is kept and read as it stands. It is said once a station, "
     "because a "
     "few odd figures are how a copied page betrays itself. Points of the rose (N, NE, SSW) count "
     "as "
     "neither notation.",
     R"(set 0
declination 24.6E
dial quadrant
station Q1
  bedding 088/33 N
)",
     "Nothing, if another compass was used. Otherwise change `dial` from that line on."},

    // ---- planes and lines
    {dip_range, "dip-range", error, "a dip is over 90 degrees or negative",
     "A dip is measured down from the horizontal and ends at 90. A figure beyond may be a slip, or "
     "an "
     "overturned bed noted as 180 minus its dip; the two differ, so the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 95N
)",
     "For an overturned bed type the dip as it lies in the ground, with the side that really goes "
     "down, and add the word overturned: N85E 85S overturned."},
    {dip_side_missing, "dip-side-missing", error,
     "a strike and dip does not say which side goes down",
     "Two planes share a strike and a dip figure, one down to each side. Without a side, and "
     "without "
     "a thumb rule in the heading, the reading could be either, so it is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32
)",
     "Add the side (N85E 32N), or state once in the heading how you always read: rule right "
     "(standing "
     "on the strike and looking along it, the plane goes down to the right) or rule left."},
    {dip_side_impossible, "dip-side-impossible", error,
     "no plane with that strike dips to the side written",
     "A plane dips at right angles to its strike, to one side or the other. The point that names "
     "the "
     "side may be rough, but not by more than 67.5 degrees, which is three points of the rose. A "
     "plane striking N85E goes down to about north or about south and never to the east, so the "
     "strike or the side is wrong, and the reading is rejected. It is judged on the dial, before "
     "any "
     "correction.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32E
)",
     "Check both against the field page; type the side that goes down, or the right strike."},
    {attitude_ambiguous, "attitude-ambiguous", error,
     "point, number, point can be a strike alone or a whole attitude",
     "After a plane, N 45 W written with spaces is either the strike N45W with its dip left out, "
     "or a "
     "plane striking north that dips 45 to the west. The two planes are far apart, so the reading "
     "is "
     "rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N 45 W
)",
     "A slash ends the strike: N/45 W. If the strike was N45W, join it and add the dip: N45W "
     "30SW."},
    {pair_order, "pair-order", error, "two bare numbers whose order cannot be told",
     "By common practice a bearing is written with three digits and a slope with one or two, "
     "bearing "
     "first. Here the digits do not settle which figure is which, or they contradict the `order` "
     "of "
     "the heading. Swapping them would give another plane, so the reading is rejected.",
     R"(set 0
declination 24.6E
rule right
station Q1
  bedding 32 085
)",
     "Write the bearing with three digits, first (085/32); or dip, >, dip direction (32 > 355); or "
     "say in the heading how your pairs are written, such as order dip/direction."},
    {plunge_range, "plunge-range", error, "a plunge is over 90 degrees",
     "A plunge is measured down from the horizontal and ends at 90, straight down. A larger figure "
     "is "
     "a slip or a trend in the wrong place, so the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W 95
)",
     "Check the two figures against the field page; the trend comes first unless > stands "
     "between."},
    {other_end, "other-end", note, "a negative plunge was turned to the line's other end",
     "A line that rises towards the bearing typed goes down towards the opposite one. It is the "
     "same "
     "line, so it is kept, with its trend turned by 180 degrees and its plunge made positive.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W -15
)",
     "Nothing, if that is what you saw. If the minus was meant as a dash, remove it."},
    {rake_range, "rake-range", error, "a rake is outside 0 to 90 degrees",
     "A rake is the acute angle within the plane between its strike and the line, read from the "
     "end "
     "of the strike that `from` names. More than 90 means that the other end was meant.",
     R"(set 0
declination 24.6E
station Q1
  fault       N85E 32N
  slickenline rake 120 from N85E
)",
     "Measure from the nearer end: rake 60 from S85W is the line at 120 from N85E."},
    {rake_no_plane, "rake-no-plane", error, "a rake has no plane to lie in",
     "A rake only means something within a plane. It is taken in the plane read last before it at "
     "the "
     "same station; here there is none, or that reading was rejected or is horizontal. The line is "
     "rejected.",
     R"(set 0
declination 24.6E
station Q1
  slickenline rake 40 from N85E
)",
     "Type the plane on a line before the rake, or mend it; or give the line as trend and plunge."},
    {rake_end, "rake-end", error, "the bearing of a rake points to neither end of the strike",
     "`from` names the end of the strike from which the rake was read. It may be rough, but a "
     "bearing "
     "further than 67.5 degrees from both ends points down or up the plane, not along it. The line "
     "is "
     "rejected.",
     R"(set 0
declination 24.6E
station Q1
  fault       N85E 32N
  slickenline rake 40 from N5W
)",
     "Give the end of the strike from which you turned: rake 40 from N85E, or from S85W."},
    {incomplete, "incomplete", error, "a part is missing",
     "The statement stops before it is whole: a dip, a plunge, a bearing, a distance or a value is "
     "not there. A reading keeps its row in the table, rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E
)",
     "Type the missing part. If it was never read, keep the rest as a note."},

    // ---- sights and legs
    {slope_range, "slope-range", error, "a slope or vertical angle is over 90 degrees",
     "A slope is measured from the horizontal, up or down, and ends at 90. If it was read on the "
     "percent scale, it may be any figure, but needs its sign.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m slope 95
)",
     "Type 95% if the percent scale was read; otherwise check the figure."},
    {distance_unit, "distance-unit", error, "a distance has no unit",
     "120 may be metres, feet or paces, and 120' may be feet or minutes. A wrong unit moves the "
     "next "
     "station without leaving a trace, so the leg is rejected.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120
)",
     "Write 120m, 120ft or 120 paces (with pace 0.76m in the heading)."},
    {pace_missing, "pace-missing", error,
     "a distance in paces, and the length of a pace is not known",
     "Paces become metres only with the length of one pace, which nobody but you can tell.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 150 paces
)",
     "Put the length of your pace in the heading, such as pace 0.76m. Pace out a known line to "
     "find "
     "it; it is shorter uphill and in scrub."},
    {landmark_unknown, "landmark-unknown", warning,
     "a sight names something that the log does not have",
     "The first word after `sight` is a landmark or a station, declared anywhere in the log. This "
     "name is neither. The bearing is corrected and kept, but it can help to fix no position.",
     R"(set 0
declination 24.6E
landmark Trig-Dome 44.6711S 168.9920E
station Q1
  sight Trig-Dame N66W
)",
     "Correct the spelling, or add a line: landmark, the name, and its position if you know it."},
    {station_unknown, "station-unknown", note, "a leg goes to a station that the log does not have",
     "The leg is kept. Perhaps the station is in another day's log; perhaps the name is misspelt.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m to Q9
)",
     "Check the name after `to`."},
    {back_bearing, "back-bearing", warning, "the fore and back bearings of a leg do not agree",
     "Read from its two ends, a line must give opposite bearings. They may differ by the reading "
     "error of both, max(2°, 3√2σ), and not more. Beyond that a figure was misread, or iron or "
     "rock "
     "pulls the needle at one end. The leg is kept and marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m back N38W
)",
     "Compare with the field page. If both stand as read, suspect local attraction at one end: "
     "other "
     "bearings read there will be off by the same amount."},
    {percent_or_degrees, "percent-or-degrees", warning,
     "a slope typed in degrees is so steep that the percent scale may have been read",
     "A clinometer shows degrees and percent side by side. A slope over 45 degrees is steeper than "
     "a "
     "roof, rare on a line that someone walked or sighted, and just what a percent figure looks "
     "like "
     "when its sign is left out: 62% is 32 degrees. The figure is kept as degrees, marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m slope 62
)",
     "Add % if the percent scale was read. If it really is that steep, leave it."},

    // ---- positions from sights and legs
    {sight_misfit, "sight-misfit", warning, "sights that should meet in a point do not",
     "Three sights or more from a station are one too many to fix it, and so check each other. "
     "Here "
     "they disagree by more than their errors allow: by the chi-square test so large a misfit has "
     "a "
     "chance of less than one in a hundred where nothing is wrong. The single slips that people "
     "make "
     "are tried one by one, the other end of the needle, east for west, two digits swapped, ten "
     "degrees, another landmark; those that would make the sights agree are named in the help, "
     "best first. None is applied. The sight is suspect; the position stretches its ellipse, or is "
     "withheld where the sights meet nowhere. At a station that states its position a sight is "
     "held "
     "against it in the same way.",
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
    {sight_off, "sight-off", note, "a sight does not lead to where its landmark lies",
     "Both the station and the landmark state their positions, and the sight is further from the "
     "line between them than three degrees and its errors allow. None of the usual slips explains "
     "it (where one does, it is sight-misfit, a warning), so that one of the positions may be "
     "wrong "
     "as well.",
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
     "is "
     "known, so that they refer to no map.",
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
     "holds, "
     "with its long ellipse.",
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
     "under "
     "the same angles, so that the sights cannot tell a wrong declination from another place on "
     "the "
     "circle. With the stated declination the position is good.",
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
     "than "
     "the errors of distance and bearing allow (chance under one in a hundred). The misclosure is "
     "shared out by the compass rule all the same, which spreads a mistake over good legs.",
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
     "report "
     "of `lodebook fix` has the corrections of each leg."},
    {heights_disagree, "heights-disagree", warning, "vertical angles give different heights",
     "The height of a station or landmark was found from several vertical angles, and they are "
     "further apart than their errors allow (chance under one in a hundred). Their mean holds, "
     "with "
     "its error stretched.",
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
     "station "
     "are as wrong as its legs: look at them again, or leave them out."},
    {attraction_unapplied, "attraction-unapplied", warning,
     "corrections for local attraction cannot be made",
     "`attraction correct` needs legs with fore and back bearings, and among them one whose two "
     "bearings agree, so that its stations are free of attraction. Here there is none, and the "
     "legs "
     "stand as read.",
     R"(attraction correct
set 0
declination 24.6E
station A at 44.70S 169.00E
  leg N 500m to B
station B
)",
     "Add the back bearings (back), or leave the statement out."},
    // ---- checks across readings
    {repeat_spread, "repeat-spread", warning, "one of several readings of a surface stands apart",
     "Readings of one surface, typed with commas between them, should agree. The one furthest from "
     "the mean of the others is set aside first, then the next, until the rest agree within "
     "max(5°, 3σ). For planes it is the poles that are compared, so that a wandering strike on a "
     "nearly flat bed raises no alarm. What was set aside is kept and marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  bedding N20E 60E, N21E 61E, N20W 60E
)",
     "Look for E typed for W, the wrong side, or two figures swapped. If the surface really "
     "curves, "
     "type its readings on separate lines."},
    {line_off_plane, "line-off-plane", warning,
     "a line does not lie in the plane it is said to lie in",
     "A line on a plane must lie in it: along its dip direction it plunges as steeply as the plane "
     "dips, along the strike not at all. This one is out of the plane by more than max(5°, 3σ). "
     "Both "
     "readings are kept, and the line is marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  bedding   N85E 32N
  lineation N20W 15 on bedding
)",
     "Check the trend first: it is easily read from the wrong end or off the edge of the plane. On "
     "a "
     "steep plane a rake is the surer measurement."},
    {plane_unknown, "plane-unknown", warning,
     "the plane that a line is said to lie in was not read",
     "`on` names the last plane of that kind at the station. There is none before this line, or it "
     "was rejected. The line is kept, unchecked.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W 31 on bedding
)",
     "Type the plane first, mend it, or name the kind that was read."},
    {strike_uncertain, "strike-uncertain", note,
     "the plane is so flat that its strike means little",
     "On a nearly horizontal plane a small error of levelling turns the strike a long way: its "
     "sigma "
     "is the dip's divided by the sine of the dip. Here it is over 10 degrees. The dip and the "
     "pole "
     "are as good as any other.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 5N
)",
     "Nothing to mend. Average poles, not strikes, and do not read a trend into this strike."},
    {trend_uncertain, "trend-uncertain", note, "the line is so steep that its trend means little",
     "The trend of a nearly vertical line is hard to see: its sigma is the bearing's divided by "
     "the "
     "cosine of the plunge. Here it is over 10 degrees. The line itself is as well known as "
     "others.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W 88
)",
     "Nothing to mend. A rake on the plane that holds the line would fix its trend better."},
    {doubtful, "doubtful", warning, "the reading was marked doubtful when it was typed",
     "You wrote `doubtful` behind it. It is kept, and its row is marked suspect so that you can "
     "leave "
     "it out.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32N doubtful
)",
     "Remove the word once you trust the reading."},

    // ---- stations and places
    {name, "name", error, "a name is missing, or is not one word",
     "The name of a station, a landmark or a sample is one word, without a comma, semicolon or >, "
     "and does not begin with #. Two words would leave it open where the name ends.",
     R"(landmark Trig Dome 44.6711S 168.9920E
)",
     "Join the words with a hyphen: Trig-Dome."},
    {position, "position", error, "a position cannot be read",
     "A position is latitude and longitude (decimals, degrees and minutes, or degrees, minutes and "
     "seconds), a UTM zone with easting and northing, or an MGRS reference. This text is none of "
     "them, or one of its figures is out of range. It is not used.",
     R"(station Q1 at 94.6891S 169.0144E
)",
     "Check the figures and the letters: latitude first, to 90, N or S; longitude to 180, E or W."},
    {zone_south, "zone-south", note, "the S of a UTM zone was taken as south",
     "In 59S the letter is a latitude band, and band S lies in the northern hemisphere; many "
     "people "
     "mean the southern hemisphere by it. Only the south is within 500 km of the log's other "
     "positions, so the south was taken.",
     R"(landmark Cairn 44.6502S 169.0314E
station Q1 at 59S 342600 5049100
)",
     "Write 59 south, or the band letter (59G here)."},
    {datum, "datum", error, "the datum is not WGS 84 or equal to it",
     "Positions are taken on WGS 84, or on GDA2020, NZGD2000, ETRS89 or NAD83, which at compass "
     "accuracy are the same. On an older datum the same figures mean a place up to hundreds of "
     "metres away. No conversion is done, so the statement is void.",
     R"(datum NZGD49
)",
     "Convert the positions with your national survey's own service, or set the receiver to WGS "
     "84, "
     "then type them."},
    {already_stated, "already-stated", error, "something is stated twice",
     "A station has one position, one elevation and one time, and a landmark or a kind is declared "
     "once. The first statement stands; this one is void.",
     R"(station Q1 at 44.6891S 169.0144E
  at 44.6903S 169.0152E
)",
     "Remove one of them, or begin a new station if you moved."},
    {station_repeated, "station-repeated", warning, "two blocks have the same station name",
     "Perhaps you came back to the outcrop, perhaps a number was used twice. Both blocks are kept "
     "as "
     "they are, each with its own rows.",
     R"(station Q1
station Q1
)",
     "If they are different places, rename one of them."},
    {position_far, "position-far", warning, "a station lies far from those before it",
     "It is over 500 km from the last two stations, which no day's walk is. A wrong hemisphere, "
     "two "
     "figures swapped or the wrong grid zone move a station by so much, and with it the "
     "declination "
     "that the model gives and the point on the map. The position stands as typed.",
     R"(set 0
declination 24.6E
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
station Q2 at 44.6902N 169.0151E
  bedding N84E 31N
)",
     "Look at the letters and the zone. If the log really goes so far, nothing is to be done."},
    {reading_outside_station, "reading-outside-station", warning,
     "readings stand before the first station",
     "They belong to no station and so to no place. They are corrected and kept with an empty "
     "station "
     "name; it is said once a log.",
     R"(set 0
declination 24.6E
bedding N85E 32N
)",
     "Put a line with station and its name above them."},
    {tally, "tally", warning, "the tally does not agree with the log",
     "A tally is your own count of stations and readings, made from the field book. Counted since "
     "the "
     "start of the log, or since the last tally, the log has another number. A line was left out, "
     "typed twice, or miscounted. Rejected readings count.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32N
tally 1 stations 2 readings
)",
     "Go through the field pages since the last tally and tick off every line."},

    // ---- settings
    {declination_side, "declination-side", error, "a declination or set has no E or W",
     "An angle alone does not say to which side the needle was off, and the wrong side doubles the "
     "error. Nothing is assumed, not even from the sign; the statement is void.",
     R"(declination 24.6
)",
     "Write 24.6E if magnetic north lies east of true north, 24.6W if west. A 0 needs no letter."},
    {declination_missing, "declination-missing", warning, "no declination is known",
     "Without one no bearing can be turned to true north. Bearings stay magnetic (less what was "
     "set "
     "on the dial), and every row names that north. It is said once a log.",
     R"(station Q1
  bedding N85E 32N
)",
     "Add a line with the declination of the place and year, such as declination 24.6E, or pass "
     "--declination 24.6E."},
    {declination_large, "declination-large", warning, "a declination is very large",
     "Over 60 degrees happens only near the magnetic poles, where a compass hardly works, so it is "
     "kept with a warning. Over 180 degrees cannot be and is an error.",
     R"(set 0
declination 65E
station Q1
  bedding N85E 32N
)",
     "Check the figure; a decimal point may be missing."},
    {declination_model, "declination-model", error,
     "the geomagnetic model cannot give the declination",
     "`declination model` takes the declination of the station's own place and date from the "
     "models that are built in. Without a date, without a position here or above, or outside the "
     "years 1900 to 2030, they have none, and the bearings stay magnetic, as every row says. Each "
     "cause is said once a log; the report names the stations.",
     R"(set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Add the date above the station (date 2026-02-14), and its position (at), or state the "
     "declination as a figure."},
    {declination_sign, "declination-sign", warning, "a declination has the wrong side",
     "The geomagnetic model has nearly the same declination for this place and day, but on the "
     "other side of north. East for west is the commonest slip of all, and it turns every bearing "
     "by twice the declination. The statement holds as it stands. It is said once a declination, "
     "and again where it is off by five degrees more.",
     R"(date 2026-02-14
set 0
declination 24.6W
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Look at the map's margin: east if magnetic north is drawn to the right of true north. "
     "Correct the letter, or the position if that has the wrong hemisphere."},
    {declination_stale, "declination-stale", warning,
     "a declination is not the one of this place and day",
     "It is off from the geomagnetic model by more than a degree and by more than the "
     "uncertainties of both. Declination changes over the years, by a tenth of a degree a year and "
     "more, and old maps print that of their own; the help names the year in which the stated one "
     "was true here. The statement holds as it stands. It is said once a declination, and again "
     "where it is off by five degrees more.",
     R"(date 2026-02-14
set 0
declination 22E
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Use the declination of the day (declination model takes it from the model), or correct the "
     "date or the position. Where rocks are magnetic the statement may be right and the model "
     "wrong."},
    {weak_field, "weak-field", warning, "the field is too weak for a compass",
     "Near the magnetic poles the field points down, and little of it is left to turn a needle. "
     "Under 6000 nT of horizontal field a compass is sluggish and its declination doubtful; under "
     "2000 nT there is no compass, and declination model gives an error there instead of a "
     "correction. Each of these is said once a log.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 72.5N 95W
  bedding N85E 32N
)",
     "Take directions that do not come from a needle, or check the compass against a known "
     "direction and state what you find."},
    {position_borrowed, "position-borrowed", note, "a station's place is taken from above",
     "The declination of the model, or grid north, is wanted for this station, which has no "
     "position. "
     "That of the last station above is taken, or of the last landmark; over a day's walk the "
     "difference is small. The station itself stays without a position.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
station Q2
  bedding N84E 31N
)",
     "Nothing to do if the station is near. Otherwise give it a position with at."},
    {grid_unknown, "grid-unknown", warning, "grid north is not known without a position",
     "--north grid turns bearings to the north of the map's grid, which leans from true north by "
     "the "
     "convergence of each place. Without a position here or above it is not known; bearings refer "
     "to "
     "true north, as every row says. It is said once a log.",
     R"(# lodebook reduce --north grid
set 0
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Give the station a position with at, or ask for --north true."},
    {set_missing, "set-missing", warning, "the log does not say what was set on the dial",
     "The log gives a declination of more than a degree but not what was turned into the dial. "
     "Nothing is assumed to have been, so that the whole declination is added. If it had been set, "
     "every bearing is now corrected twice. It is said once a log.",
     R"(declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Look at your compass. Write set 0 if its dial is not turned, set 24.6E if it is, or "
     "declination "
     "as-set if it was set right."},
    {set_side, "set-side", warning, "the dial is set to the wrong side",
     "What was turned into the dial and the declination are nearly the same, but on two sides of "
     "north, so that their difference, and not nothing, is added to every bearing. Someone who "
     "sets "
     "a compass sets it to the declination; one of the two letters is probably wrong. It is said "
     "once a log.",
     R"(set 24W
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Look at the compass, and correct the letter of set or of declination. If the dial really "
     "stood "
     "there, nothing is to be done."},
    {option_overridden, "option-overridden", warning, "the log and an option disagree",
     "An option of the command line stands in for what a log leaves out. This log says otherwise, "
     "and "
     "the log wins: it was written by the person who held the compass.",
     R"(# lodebook check --declination 20E
set 0
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Drop the option for this log; or, if the log is wrong, correct it there, where it stays."},
    {word_taken, "word-taken", error,
     "a word that already means something cannot be given another meaning",
     "`short` and `kind` add words of your own. Keywords, kinds, points of the compass and the "
     "words "
     "rake, at, to, on, from and back already mean something; changing them would change other "
     "lines "
     "without a trace.",
     R"(short rake bedding
)",
     "Choose another word."},
    {date, "date", error, "not a date, or no such day",
     "Dates are year-month-day with two-digit months and days, since 3/4 means March to some and "
     "April to others. The statement is void and the date before it still holds. `lodebook "
     "declination` takes dates from 1900-01-01 to 2030-01-01, the years of its models.",
     R"(date 2026-02-30
)",
     "Write it as 2026-02-14."},
    {time, "time", error, "not a time of day",
     "A time is hours and minutes on the 24-hour clock with a colon. The statement is void.",
     R"(station Q1
  time 9.40
)",
     "Write 09:40, or 21:40 for the evening."},
    {date_order, "date-order", warning, "a date is earlier than the one before it",
     "A log goes forward in time. Perhaps the pages are in another order, perhaps a month is "
     "wrong. "
     "Both dates are kept.",
     R"(date 2026-02-14
station Q1
date 2026-02-13
station Q2
)",
     "Check the dates; if the pages were typed out of order, nothing else depends on it."},

    // ---- text
    {number, "number", error, "not a plain decimal number",
     "Numbers are digits with at most one point. 1e3, nan, 0x10 and two points in one number are "
     "not "
     "taken. Nor is a dash that touches the word before it, which may be a minus or only a stroke, "
     "nor minutes of 60 or more.",
     R"(station Q1
  elevation 1e3
)",
     "Write the number out: 1000. Put a space before a minus sign, and none behind it."},
    {decimal_comma, "decimal-comma", error, "a comma stands between two digits",
     "It may be a decimal comma, or the comma between two readings with its space left out. The "
     "first "
     "would be one reading, the second two, so neither is guessed.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85,5E 32N
)",
     "Write decimals with a point (N85.5E), and put a space behind the comma between readings."},
    {unknown_word, "unknown-word", error, "a word is not understood",
     "The first word of a line must be a keyword or a kind, and some words behind it must be, too. "
     "This one is neither. The nearest known word is offered. No text is skipped without saying "
     "so.",
     R"(set 0
declination 24.6E
station Q1
  beding N85E 32N
)",
     "Correct the spelling; declare a kind of your own (kind gneissosity plane); or begin the line "
     "with note if it is only text."},
    {trailing_text, "trailing-text", error, "text stands behind a complete statement",
     "The statement is whole, and more follows that is part of nothing. Since it may change what "
     "was "
     "meant, it is not ignored.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32N weathered
)",
     "Put a semicolon before a remark that should be kept with the reading, or # before a "
     "comment."},
    {encoding, "encoding", error, "the text is not UTF-8",
     "The log holds bytes that are not UTF-8, the usual encoding of text. Old editors save "
     "accented "
     "letters and degree signs in another one. Which one cannot be known from the bytes alone.",
     "station Q1\n  note caf\xE9\n", "Save the log as UTF-8, or pass --encoding windows-1252."},
    {control_character, "control-character", error, "the line holds a control character",
     "A byte that is no text, such as the page break or vertical tab that pasting from a document "
     "leaves behind. It is invisible and could hide something, so the line is not used.",
     "station Q1\n  note upper\x1Flower\n",
     "Delete the character; the caret in the report stands under it."},
    {line_length,
     "line-length",
     error,
     "a line is longer than 64 KiB",
     "No one types such a line. The file is probably not a station log, or has lost its line ends.",
     {log_with_long_line.data(), log_with_long_line.size()},
     "Check that the file is the log, and that its lines end."},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (static_cast<std::size_t>(pages[i].code) != i) return false;
    if (pages[i].name.empty() || pages[i].example.empty()) return false;
  }
  return true;
}
static_assert(in_order(), "pages stand in the order of Code");

}  // namespace

std::span<const CodePage> catalogue() {
  return pages;
}

const CodePage* page_named(std::string_view name) {
  const auto same = [](char a, char b) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
    return lower(a) == lower(b);
  };
  const auto* const found = std::find_if(pages.begin(), pages.end(), [&](const CodePage& page) {
    return std::equal(page.name.begin(), page.name.end(), name.begin(), name.end(), same);
  });
  return found == pages.end() ? nullptr : &*found;
}

std::string_view name_of(Code code) {
  return pages[static_cast<std::size_t>(code)].name;
}

std::string_view name_of(Severity severity) {
  switch (severity) {
    case error:
      return "error";
    case warning:
      return "warning";
    case note:
      break;
  }
  return "note";
}

}  // namespace lodebook::notebook
