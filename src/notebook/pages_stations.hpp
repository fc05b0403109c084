// SPDX-License-Identifier: MIT
// Pages of `lodebook explain` on readings held against each other, and the stations where they were
// made.
#pragma once

#include <array>

#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::notebook::pages {

using enum Code;
using enum Severity;

inline constexpr auto of_stations = std::to_array<CodePage>({
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
     "curves, type its readings on separate lines."},
    {line_off_plane, "line-off-plane", warning,
     "a line does not lie in the plane it is said to lie in",
     "A line on a plane must lie in it: along its dip direction it plunges as steeply as the plane "
     "dips, along the strike not at all. This one is out of the plane by more than max(5°, 3σ). "
     "Both readings are kept, and the line is marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  bedding   N85E 32N
  lineation N20W 15 on bedding
)",
     "Check the trend first: it is easily read from the wrong end or off the edge of the plane. On "
     "a steep plane a rake is the surer measurement."},
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
     "sigma is the dip's divided by the sine of the dip. Here it is over 10 degrees. The dip and "
     "the pole are as good as any other.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 5N
)",
     "Nothing to mend. Average poles, not strikes, and do not read a trend into this strike."},
    {trend_uncertain, "trend-uncertain", note, "the line is so steep that its trend means little",
     "The trend of a nearly vertical line is hard to see: its sigma is the bearing's divided by "
     "the cosine of the plunge. Here it is over 10 degrees. The line itself is as well known as "
     "others.",
     R"(set 0
declination 24.6E
station Q1
  lineation N20W 88
)",
     "Nothing to mend. A rake on the plane that holds the line would fix its trend better."},
    {doubtful, "doubtful", warning, "the reading was marked doubtful when it was typed",
     "You wrote `doubtful` behind it. It is kept, and its row is marked suspect so that you can "
     "leave it out.",
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
     "people mean the southern hemisphere by it. Only the south is within 500 km of the log's "
     "other positions, so the south was taken.",
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
     "84, then type them."},
    {already_stated, "already-stated", error, "something is stated twice",
     "A station has one position, one elevation and one time, and a landmark or a kind is declared "
     "once. The first statement stands; this one is void.",
     R"(station Q1 at 44.6891S 169.0144E
  at 44.6903S 169.0152E
)",
     "Remove one of them, or begin a new station if you moved."},
    {station_repeated, "station-repeated", warning, "two blocks have the same station name",
     "Perhaps you came back to the outcrop, perhaps a number was used twice. Both blocks are kept "
     "as they are, each with its own rows.",
     R"(station Q1
station Q1
)",
     "If they are different places, rename one of them."},
    {position_far, "position-far", warning, "a station lies far from those before it",
     "It is over 500 km from the last two stations, which no day's walk is. A wrong hemisphere, "
     "two figures swapped or the wrong grid zone move a station by so much, and with it the "
     "declination that the model gives and the point on the map. The position stands as typed.",
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
     "station name; it is said once a log.",
     R"(set 0
declination 24.6E
bedding N85E 32N
)",
     "Put a line with station and its name above them."},
    {tally, "tally", warning, "the tally does not agree with the log",
     "A tally is your own count of stations and readings, made from the field book. Counted since "
     "the start of the log, or since the last tally, the log has another number. A line was left "
     "out, typed twice, or miscounted. Rejected readings count.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32N
tally 1 stations 2 readings
)",
     "Go through the field pages since the last tally and tick off every line."},

});

}  // namespace lodebook::notebook::pages
