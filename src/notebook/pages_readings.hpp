// SPDX-License-Identifier: MIT
// Pages of `lodebook explain` on single readings: bearings, planes and lines, sights and legs.
#pragma once

#include <array>

#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::notebook::pages {

using enum Code;
using enum Severity;

inline constexpr auto of_readings = std::to_array<CodePage>({
    // ---- bearings
    {quadrant_angle, "quadrant-angle", error, "a quadrant bearing has an angle over 90",
     "A quadrant bearing starts at north or south and swings at most a quarter turn towards east "
     "or west. N95E would pass east and belongs to another quadrant; whether the angle or a letter "
     "was misheard cannot be known, so the reading is rejected and keeps its row in the table.",
     R"(set 0
declination 24.6E
station Q1
  bedding N95E 32N
)",
     "Look at the field page. If the needle really stood past east, write the bearing from the "
     "other pole (S85E for N95E); otherwise correct the angle."},
    {quadrant_letters, "quadrant-letters", error,
     "the letters of a quadrant bearing are missing or in the wrong order",
     "A quadrant bearing is N or S, an angle, then E or W. E20N starts from east, N20 never says "
     "to which side, and in N20 30W it is not clear whether 30 is minutes or another figure. "
     "Nothing is guessed; the reading is rejected.",
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
     "because a few odd figures are how a copied page betrays itself. Points of the rose (N, NE, "
     "SSW) count as neither notation.",
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
     "an overturned bed noted as 180 minus its dip; the two differ, so the reading is rejected.",
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
     "without a thumb rule in the heading, the reading could be either, so it is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32
)",
     "Add the side (N85E 32N), or state once in the heading how you always read: rule right "
     "(standing on the strike and looking along it, the plane goes down to the right) or rule "
     "left."},
    {dip_side_impossible, "dip-side-impossible", error,
     "no plane with that strike dips to the side written",
     "A plane dips at right angles to its strike, to one side or the other. The point that names "
     "the side may be rough, but not by more than 67.5 degrees, which is three points of the rose. "
     "A plane striking N85E goes down to about north or about south and never to the east, so the "
     "strike or the side is wrong, and the reading is rejected. It is judged on the dial, before "
     "any correction.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32E
)",
     "Check both against the field page; type the side that goes down, or the right strike."},
    {attitude_ambiguous, "attitude-ambiguous", error,
     "point, number, point can be a strike alone or a whole attitude",
     "After a plane, N 45 W written with spaces is either the strike N45W with its dip left out, "
     "or a plane striking north that dips 45 to the west. The two planes are far apart, so the "
     "reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N 45 W
)",
     "A slash ends the strike: N/45 W. If the strike was N45W, join it and add the dip: N45W "
     "30SW."},
    {pair_order, "pair-order", error, "two bare numbers whose order cannot be told",
     "By common practice a bearing is written with three digits and a slope with one or two, "
     "bearing first. Here the digits do not settle which figure is which, or they contradict the "
     "`order` of the heading. Swapping them would give another plane, so the reading is rejected.",
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
     "is a slip or a trend in the wrong place, so the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W 95
)",
     "Check the two figures against the field page; the trend comes first unless > stands "
     "between."},
    {other_end, "other-end", note, "a negative plunge was turned to the line's other end",
     "A line that rises towards the bearing typed goes down towards the opposite one. It is the "
     "same line, so it is kept, with its trend turned by 180 degrees and its plunge made positive.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W -15
)",
     "Nothing, if that is what you saw. If the minus was meant as a dash, remove it."},
    {rake_range, "rake-range", error, "a rake is outside 0 to 90 degrees",
     "A rake is the acute angle within the plane between its strike and the line, read from the "
     "end of the strike that `from` names. More than 90 means that the other end was meant.",
     R"(set 0
declination 24.6E
station Q1
  fault       N85E 32N
  slickenline rake 120 from N85E
)",
     "Measure from the nearer end: rake 60 from S85W is the line at 120 from N85E."},
    {rake_no_plane, "rake-no-plane", error, "a rake has no plane to lie in",
     "A rake only means something within a plane. It is taken in the plane read last before it at "
     "the same station; here there is none, or that reading was rejected or is horizontal. The "
     "line is rejected.",
     R"(set 0
declination 24.6E
station Q1
  slickenline rake 40 from N85E
)",
     "Type the plane on a line before the rake, or mend it; or give the line as trend and plunge."},
    {rake_end, "rake-end", error, "the bearing of a rake points to neither end of the strike",
     "`from` names the end of the strike from which the rake was read. It may be rough, but a "
     "bearing further than 67.5 degrees from both ends points down or up the plane, not along it. "
     "The line is rejected.",
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
     "next station without leaving a trace, so the leg is rejected.",
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
     "find it; it is shorter uphill and in scrub."},
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
     "rock pulls the needle at one end. The leg is kept and marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m back N38W
)",
     "Compare with the field page. If both stand as read, suspect local attraction at one end: "
     "other bearings read there will be off by the same amount."},
    {percent_or_degrees, "percent-or-degrees", warning,
     "a slope typed in degrees is so steep that the percent scale may have been read",
     "A clinometer shows degrees and percent side by side. A slope over 45 degrees is steeper than "
     "a roof, rare on a line that someone walked or sighted, and just what a percent figure looks "
     "like when its sign is left out: 62% is 32 degrees. The figure is kept as degrees and "
     "marked suspect, and no height is found from it.",
     R"(set 0
declination 24.6E
station Q1
  leg S45E 120m slope 62
)",
     "Add % if the percent scale was read. If it really is that steep, leave it."},

});

}  // namespace lodebook::notebook::pages
