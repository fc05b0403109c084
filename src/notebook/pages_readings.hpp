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
     "A quadrant bearing starts at north or south and turns by at most 90 degrees towards east or "
     "west. N98E passes east, into another quadrant. Either the angle or a letter is wrong, and "
     "nothing says which, so the reading is rejected; its row stays in the table.",
     R"(set 0
declination 24.6E
station Q1
  bedding N98E 37N
)",
     "Look at the field page. If the needle really stood past east, write the bearing from the "
     "other pole (S82E for N98E); otherwise correct the angle."},
    {quadrant_letters, "quadrant-letters", error,
     "the letters of a quadrant bearing are missing or in the wrong order",
     "A quadrant bearing is N or S, an angle, then E or W. E25N starts from east, N50 does not say "
     "to which side, and in N50 30W it is not clear whether 30 is minutes or another figure. "
     "Nothing is guessed; the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding E25N 37N
)",
     "Write N or S first (N65E for E25N), give the second letter, and mark minutes (N50°30'W)."},
    {azimuth_range, "azimuth-range", error, "an azimuth is over 360 or negative",
     "An azimuth is counted clockwise from north, from 0 to 360. A figure outside is nearly always "
     "a typing slip, so the reading is rejected and not wrapped.",
     R"(set 0
declination 24.6E
station Q1
  lineation 365/35
)",
     "Check the digits against the field page and type the azimuth between 0 and 360."},
    {notation_mixed, "notation-mixed", note, "a reading is not in the notation of the dial",
     "The heading says how the dial is marked, and this reading is written in the other notation. "
     "Partners share pages, so it is kept and read as it stands. Reported once a station, because "
     "a few odd figures are often the only sign that a page was copied. Points of the rose (N, NE, "
     "SSW) belong to neither notation.",
     R"(set 0
declination 24.6E
dial quadrant
station Q1
  bedding 063/36 NW
)",
     "Nothing to do if another compass was used. Otherwise change 'dial' from that line on."},
    {north_kept, "north-kept", warning, "a bearing stays in the north it was read from",
     "A word behind the bearing (true, magnetic or grid) says from which north it was read. To "
     "turn "
     "magnetic north into another the declination must be known, and for grid north the station's "
     "position. Where they are not, nothing is added: the row's column 'north' names the north "
     "that "
     "the bearing refers to.",
     R"(station Q1
  bedding N62E 37NW magnetic
)",
     "State the declination, or give the station a position with 'at'. With --north magnetic or "
     "--north grid the other rows may come to the same north."},

    // ---- planes and lines
    {dip_range, "dip-range", error, "a dip is over 90 degrees or negative",
     "A dip is measured down from the horizontal, from 0 to 90. A larger figure may be a slip, or "
     "an overturned bed written as 180 minus its dip. These are different planes, so the reading "
     "is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 97NW
)",
     "For an overturned bed type the dip as it lies in the ground, with the side that really goes "
     "down, and add 'overturned': N62E 83SE overturned."},
    {dip_side_missing, "dip-side-missing", error,
     "a strike and dip without the side that goes down",
     "Two planes have the same strike and dip, one down to each side. Without a side, and without "
     "'rule' in the heading, either could be meant, so the reading is rejected. Several such "
     "readings are one question for the log, with their number.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37
)",
     "Add the side (N62E 37NW), or say once in the heading how you always read: 'rule right' "
     "(looking along the strike, the plane goes down to your right) or 'rule left'."},
    {dip_side_impossible, "dip-side-impossible", error,
     "no plane with that strike dips to the side written",
     "A plane dips at right angles to its strike, to one side or the other. The side may be rough, "
     "by up to 67.5 degrees (three points of the rose). A plane striking N62E dips about northwest "
     "or about southeast, never northeast, so the strike or the side is wrong, and the reading is "
     "rejected. It is judged as read on the dial, before any correction.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NE
)",
     "Check both against the field page, and correct the side or the strike."},
    {attitude_ambiguous, "attitude-ambiguous", error,
     "point, number, point can be a strike alone or a whole plane",
     "After a plane, N 38 W with spaces is either the strike N38W with its dip left out, or a "
     "plane that strikes north and dips 38 to the west. The two planes are far apart, so the "
     "reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N 38 W
)",
     "For the plane that strikes north write N/38 W. If the strike was N38W, join it and add the "
     "dip: N38W 30SW."},
    {pair_order, "pair-order", error, "two bare numbers whose order is not clear",
     "By common practice the bearing comes first, with three digits, and the dip or plunge second, "
     "with one or two. Here the digits do not settle which figure is which, or they contradict the "
     "'order' of the heading. Swapped figures would give another plane or line, so the reading is "
     "rejected.",
     R"(set 0
declination 24.6E
rule right
station Q1
  bedding 37 062
)",
     "Write the bearing first, with three digits (062/37); or dip > dip direction (37 > 332); or "
     "say in the heading how your pairs are written, such as 'order dip/direction'."},
    {plunge_range, "plunge-range", error, "a plunge is over 90 degrees",
     "A plunge is measured down from the horizontal, from 0 to 90, straight down. A larger figure "
     "is a slip, or a trend in the wrong place, so the reading is rejected.",
     R"(set 0
declination 24.6E
station Q1
  lineation N50W 95
)",
     "Check the two figures against the field page; the trend comes first unless > stands between "
     "them."},
    {plunge_missing, "plunge-missing", warning, "a trend whose plunge was not read",
     "A line without its plunge is only half read. Its trend is corrected and kept, with no plunge "
     "and marked suspect: it counts in roses and means of trends, not in means of lines, and a net "
     "cannot show it. A current or a flute needs no plunge, and nothing is said of it.",
     R"(set 0
declination 24.6E
station Q1
  lineation N50W
)",
     "Type the plunge behind the trend (N50W 35); for a level line type 'horizontal N50W'. Nothing "
     "else to do if it was not read."},
    {other_end, "other-end", note, "a negative plunge was turned to the line's other end",
     "A line that rises towards the bearing typed goes down towards the opposite one. It is the "
     "same line, so it is kept: its trend is turned by 180 degrees and its plunge is positive.",
     R"(set 0
declination 24.6E
station Q1
  lineation N50W -35
)",
     "Nothing to do if that is what you saw. If the minus was meant as a dash, remove it."},
    {rake_range, "rake-range", error, "a rake is outside 0 to 90 degrees",
     "A rake is the angle in the plane between its strike and the line, from 0 to 90, counted from "
     "the end of the strike that 'from' names. If it is over 90, the other end is the nearer one.",
     R"(set 0
declination 24.6E
station Q1
  fault       N62E 37NW
  slickenline rake 120 from N62E
)",
     "Count from the nearer end: for 120 from N62E type 'rake 60 from S62W'."},
    {rake_no_plane, "rake-no-plane", error, "a rake has no plane to lie in",
     "A rake has a meaning only in a plane. It belongs to the last plane above it at the same "
     "station; here there is none, or that reading was rejected or is horizontal. The line is "
     "rejected.",
     R"(set 0
declination 24.6E
station Q1
  slickenline rake 40 from N62E
)",
     "Type the plane above the rake, or correct it; or give the line as trend and plunge (N50W "
     "35)."},
    {rake_end, "rake-end", error, "the bearing after 'from' is not an end of the strike",
     "'from' names the end of the strike from which the rake was read. It may be rough, but a "
     "bearing more than 67.5 degrees from both ends points across the strike, not along it. The "
     "line is rejected.",
     R"(set 0
declination 24.6E
station Q1
  fault       N62E 37NW
  slickenline rake 40 from N28W
)",
     "Give the end of the strike from which you measured: 'rake 40 from N62E', or 'rake 40 from "
     "S62W'."},
    {incomplete, "incomplete", error, "a part is missing",
     "The statement ends too early: a dip, a plunge, a bearing, a distance or a value is missing. "
     "A reading is rejected but keeps its row in the table.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E
)",
     "Type the missing part. If it was never read, keep the rest as a note."},
    {partial, "partial", note, "a strike or a dip was read alone",
     "With 'strike' or 'dip' before its figure, one half of a plane is taken as all that was read: "
     "the trace of a joint, or an apparent dip. The other half stays empty. A strike alone has two "
     "ends and counts in roses; neither counts in means of planes, and a net cannot show it.",
     R"(set 0
declination 24.6E
station Q1
  joint strike N66W
)",
     "Nothing to do if no more was read. Otherwise type the other half behind it: 'N66W 30NE'."},
    {facing_impossible, "facing-impossible", error, "beds do not young the way that is said",
     "'youngs' names the side to which beds become younger. It must lie within 67.5 degrees of the "
     "dip direction (upright) or of its opposite (overturned), as read on the dial. A side along "
     "the strike says neither, and on a horizontal plane, or without a dip, none does. The reading "
     "is rejected.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NW youngs NE
)",
     "Check the strike and the side against the field page, or type 'upright' or 'overturned'."},
    {facing_doubtful, "facing-doubtful", note, "the facing of a plane is in doubt",
     "'facing doubtful' says that only the way up is in doubt. The plane itself is sound and stays "
     "ok.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NW overturned facing doubtful
)",
     "Nothing to do. A reading that is in doubt itself is marked 'doubtful'."},

    // ---- sights and legs
    {slope_range, "slope-range", error, "a slope or vertical angle is over 90 degrees",
     "A slope is measured from the horizontal, up or down, to 90 degrees. A figure from the "
     "percent scale may be larger, but needs its %.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 120m slope 95
)",
     "Type 95% if you read the percent scale; otherwise check the figure."},
    {distance_unit, "distance-unit", error, "a distance has no unit",
     "120 may be metres, feet or paces, and 120' may be feet or minutes. A wrong unit silently "
     "moves the next station, so the leg is rejected.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 120
)",
     "Write 120m, 120ft, or 120 paces (with 'pace 0.76m' in the heading)."},
    {pace_missing, "pace-missing", error, "a distance in paces, but no length of a pace",
     "Paces become metres by the length of one pace, which only you know.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 150 paces
)",
     "Put the length of your pace in the heading, such as 'pace 0.76m'. To find it, pace out a "
     "known distance; a pace is shorter uphill and in scrub."},
    {landmark_unknown, "landmark-unknown", warning,
     "a sight names something that is not in the log",
     "The first word after 'sight' is a landmark or a station, declared anywhere in the log. This "
     "name is neither. The bearing is corrected and kept, but it cannot help to place the station.",
     R"(set 0
declination 24.6E
landmark Trig-Dome 44.6711S 168.9920E
station Q1
  sight Trig-Dame N66W
)",
     "Correct the spelling, or declare it: 'landmark' and its name, with its position if you know "
     "it."},
    {station_unknown, "station-unknown", note, "a leg goes to a station that is not in the log",
     "The leg is kept. The station may be in another day's log, or the name may be misspelt.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 120m to Q9
)",
     "Check the name after 'to'."},
    {own_station, "own-station", warning, "a leg leads to the station that it starts from",
     "A leg runs from the station under which it stands to the one after 'to'. Where these are the "
     "same, either the name is wrong or the leg stands under the wrong station. It is kept and "
     "marked suspect, and places nothing.",
     R"(set 0
declination 24.6E
station Q2
  leg S38E 120m to Q2
)",
     "Name the station at the far end after 'to', or move the leg to the station where you read "
     "it."},
    {back_bearing, "back-bearing", warning, "the fore and back bearings of a leg do not agree",
     "Read from its two ends, a line has opposite bearings. Reading errors explain a difference of "
     "up to max(2°, 3√2σ). Beyond that a figure was misread, or iron or magnetic rock pulls the "
     "needle at one end. The leg is kept and marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 120m back N30W
)",
     "Compare with the field page. If both stand as read, suspect local attraction at one end: "
     "other bearings read there are off by the same amount."},
    {percent_or_degrees, "percent-or-degrees", warning, "a slope in degrees may be a percent grade",
     "A clinometer shows degrees and percent side by side. A slope over 45 degrees is unusually "
     "steep for a walked or sighted line, and may be a percent figure without its sign: 62% is 32 "
     "degrees. The figure is kept as degrees and marked suspect. No height is found from it, and a "
     "leg with such a slope places no station.",
     R"(set 0
declination 24.6E
station Q1
  leg S38E 120m slope 62
)",
     "Add % if you read the percent scale. If it really is that steep, type the grade: 119% is 50 "
     "degrees."},

});

}  // namespace lodebook::notebook::pages
