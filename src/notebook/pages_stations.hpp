// SPDX-License-Identifier: MIT
// Pages of `lodebook explain` on readings compared with each other, and on their stations.
#pragma once

#include <array>

#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::notebook::pages {

using enum Code;
using enum Severity;

inline constexpr auto of_stations = std::to_array<CodePage>({
    // ---- checks across readings
    {repeat_spread, "repeat-spread", warning, "one of several readings of a surface is an outlier",
     "Readings of one surface, typed with commas between them, should agree. The one furthest from "
     "the mean of the others is set aside first, then the next, until the rest agree within "
     "max(5°, 3σ). Planes are compared by their poles, so that a strike that wanders on a nearly "
     "flat bed raises no alarm. What was set aside is kept and marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  bedding N14E 60E, N15E 61E, N14W 60E
)",
     "Look for E typed for W, a wrong side, or two digits swapped. If the surface really curves, "
     "type its readings on separate lines."},
    {line_off_plane, "line-off-plane", warning, "a line does not lie in its plane",
     "A line in a plane plunges as steeply as the plane dips where it points down the dip, and not "
     "at all where it points along the strike. This one is more than max(5°, 3σ) out of the plane. "
     "Both readings are kept, and the line is marked suspect.",
     R"(set 0
declination 24.6E
station Q1
  bedding   N62E 37NW
  lineation N50W 16 on bedding
)",
     "Check the trend first: it is easily read from the wrong end, or off the edge of the plane. "
     "On a steep plane a rake is more reliable."},
    {plane_unknown, "plane-unknown", warning, "the plane that 'on' names was not read",
     "'on' names the last plane of that kind at the station. There is none above this line, or it "
     "was rejected. The line is kept, unchecked.",
     R"(set 0
declination 24.6E
station Q1
  lineation N50W 35 on bedding
)",
     "Type the plane above the line, correct it, or name the kind that was read."},
    {strike_uncertain, "strike-uncertain", note, "the strike is uncertain by more than 10 degrees",
     "On a nearly horizontal plane a small levelling error turns the strike far: its sigma is that "
     "of the dip divided by the sine of the dip. The dip and the pole are as good as any. The "
     "message names another cause where there is one: a point of the compass rose is told to 22.5 "
     "or 45 degrees only (as a dip direction, N to 90), and 'accuracy' or the declination may be "
     "rough.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 5NW
)",
     "Nothing to correct. Average poles, not strikes, and draw no conclusion from this strike. "
     "Read degrees instead of points where the direction matters."},
    {trend_uncertain, "trend-uncertain", note, "the trend is uncertain by more than 10 degrees",
     "The trend of a nearly vertical line is hard to read: its sigma is that of the bearing "
     "divided by the cosine of the plunge. The line itself is as well known as any. The message "
     "names another cause where there is one: a rake has the errors of its plane, and the strike "
     "of a shallow plane is uncertain; a point of the compass rose is told to 22.5 or 45 degrees "
     "only; and 'accuracy' or the declination may be rough.",
     R"(set 0
declination 24.6E
station Q1
  lineation N50W 88
)",
     "Nothing to correct. On a steep plane a rake is easier to read than a trend."},
    {doubtful, "doubtful", warning, "the reading was marked doubtful when it was typed",
     "You wrote 'doubtful' after it. The reading is kept, and its row is marked suspect so that "
     "you can leave it out. A doubtful sight or leg places nothing.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NW doubtful
)",
     "Remove the word once you trust the reading."},
    {remark_reading, "remark-reading", warning, "a remark reads as a reading",
     "What stands behind ';' is a remark: it is kept with the reading and exported, but counts as "
     "no reading. This one is an attitude from end to end, so that it was probably meant to be "
     "one. The reading before it is kept as it is.",
     R"(set 0
declination 24.6E
station Q1
  joint 240 85 NW ; 238 87 NW
)",
     "Put a comma in place of ';' for another reading of the same surface, or the kind and the "
     "reading in a line of their own for another surface. If it is a remark, add a word to it."},

    // ---- stations and places
    {name, "name", error, "a name is missing, or is not one word",
     "The name of a station, a landmark or a sample is one word, without a comma, semicolon or >, "
     "and does not begin with #; or it stands in double quotes. Of two words without quotes it is "
     "not clear where the name ends.",
     R"(landmark Trig Dome 44.6711S 168.9920E
)",
     "Put the name in quotes (\"Trig Dome\"), or join its words with a hyphen (Trig-Dome)."},
    {position, "position", error, "a position cannot be read",
     "A position is latitude and longitude (decimals, degrees and minutes, or degrees, minutes and "
     "seconds), a UTM zone with easting and northing, or an MGRS reference. This text is none of "
     "these, or one of its figures is out of range. It is not used.",
     R"(station Q1 at 94.6891S 169.0144E
)",
     "Check the figures and the letters: latitude first, up to 90, N or S; then longitude, up to "
     "180, E or W."},
    {zone_south, "zone-south", note, "the S of a UTM zone was taken as south",
     "In 59S the letter is a latitude band, and band S lies in the northern hemisphere; but many "
     "people write S for the southern hemisphere. Only the south is within 500 km of the log's "
     "other positions, so the south was taken.",
     R"(landmark Cairn 44.6502S 169.0314E
station Q1 at 59S 342600 5049100
)",
     "Write '59 south', or the band letter (59G here)."},
    {datum, "datum", error, "the datum is not WGS 84 or equal to it",
     "Positions are taken as WGS 84; GDA2020, NZGD2000, ETRS89 and NAD83 are the same at compass "
     "accuracy. On an older datum the same figures mean a place up to hundreds of metres away. "
     "Datums are not converted, so the statement is void.",
     R"(datum NZGD49
)",
     "Convert the positions with your national survey's service, or set the receiver to WGS 84, "
     "then type them."},
    {already_stated, "already-stated", error, "something is stated twice",
     "A station has one position, one elevation and one time, and a landmark or a kind is declared "
     "once. The first statement stands; this one is void.",
     R"(station Q1 at 44.6891S 169.0144E
  at 44.6903S 169.0152E
)",
     "Remove one of them, or begin a new station if you moved."},
    {station_repeated, "station-repeated", warning, "two blocks have the same station name",
     "You may have come back to the outcrop, or used a name twice. Both blocks are kept as they "
     "are, each with its own rows.",
     R"(station Q1
station Q1
)",
     "If they are different places, rename one of them."},
    {position_far, "position-far", warning, "a station lies far from those before it",
     "It is over 500 km from the last two stations, which is no day's walk. A wrong hemisphere, "
     "two swapped figures or a wrong grid zone move a station that far, and with it the "
     "declination from the model and the point on the map. The position stands as typed.",
     R"(set 0
declination 24.6E
station Q1 at 44.6891S 169.0144E
  bedding N62E 37NW
station Q2 at 44.6902N 169.0151E
  bedding N60E 35NW
)",
     "Check the letters and the zone. If the log really goes that far, leave it."},
    {reading_outside_station, "reading-outside-station", warning,
     "readings stand before the first station",
     "They belong to no station and so have no place. They are corrected and kept with an empty "
     "station name. Reported once a log.",
     R"(set 0
declination 24.6E
bedding N62E 37NW
)",
     "Put a line above them with 'station' and its name."},
    {tally, "tally", warning, "the tally does not agree with the log",
     "A tally is your own count of stations and readings, made from the field book. The log, "
     "counted from its start or from the last tally, has another number: a line was left out, "
     "typed twice, or miscounted. Rejected readings count.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NW
tally 1 stations 2 readings
)",
     "Go through the field pages since the last tally and tick off every line."},

});

}  // namespace lodebook::notebook::pages
