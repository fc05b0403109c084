// SPDX-License-Identifier: MIT
// The log language on one page of 80 columns and 60 lines, and a heading to start from.
#include <lodebook/cli/commands.hpp>

namespace lodebook::cli {

std::string_view log_card() {
  return R"(THE STATION LOG: plain text, one statement a line, capitals or not as you like.

How the compass was set up; each line holds from where it stands to the end.
  dial quadrant              or azimuth: how the dial is marked
  set 0                      the declination turned into the dial: 0, 12E, 3.5W
  declination 24.6E ±0.4     the true one; or model, from place and date; or
                             as-set, if the dial was set correctly
  rule right                 or left: the side that goes down, as you look along
                             the strike as typed
  order strike/dip           two bare numbers; or dip/strike, direction/dip,
                             dip/direction, trend/plunge, plunge/trend
  date 2026-02-14            area, observer, instrument: free text
  heading dial.txt           the lines of a file, above all else
  pace 0.76m                 accuracy bearing 0.5 dip 1 distance 2%

Places: 44.6891S 169.0144E, 59G 345210 5052310, MGRS; ±8 in metres; from map
  landmark Cairn 44.6502S 169.0314E elevation 1412
  station Q1 at 44.6891S 169.0144E ±8    "Tarr Knob": a name in quotes

At a station
  elevation 812              time 09:40
  sample Q1-a garnet band    unit, note, photo: free text
Bearings: N50W, N50.5W, N50°30'W, S, NE, SSW, 310, 007.5 (azimuths: 3 digits)

Planes: bedding foliation cleavage schistosity joint fault shear vein dike
        contact axial-plane
  bedding N62E 37NW          strike, dip, the side that goes down
  bedding 242/37             strike, dip; the side comes from rule
  bedding 37 > 332           dip, dip direction; `to` means the same as >
  bedding horizontal         or: vertical N14E
  joint strike N66W          alone, or dip 13: the other half was not read
  Then: overturned, upright, facing unknown, doubtful. 62% is a percent grade.
  youngs NW: the side to which beds become younger; facing doubtful.
  bedding N58E 34NW, N60E 35NW is one surface measured twice.
  by JT behind a reading: its observer; x3: read three times.
  ~N62E, ~37, or about behind a reading: rough. N62E±5 37±3 NW: its own errors.
  N62E 37NW grid, sight Mast 044 true, or magnetic: read from that north.

Lines:  lineation slickenline fold-axis intersection stretching flute current
        two-ended: striation groove crest alignment
  lineation N50W 35          trend, plunge; also 310/35 or 35 > N50W
  lineation rake 40 from N62E    in the last plane, from that end of its strike
  lineation N50W 35 on bedding   names the plane it lies in
  current 118                trend alone; current from S60W: where it comes from
  fault N14E 60E normal      or reverse, dextral, sinistral; slickenlines too

Sights and legs
  sight Cairn N17W           from here to there; then vertical 4.5, south-end
  sight Cairn back S18E      from there to here; N17W, N18W are repeats
  leg S38E 120m to Q3        or ft, paces; then slope -6 or -9%, back N37W
  leg from Q2 S38E 120m      read at Q2, leads here; sight Cairn from Q2 N17W
  tally 14 stations 63 readings  your own count of what stands above

Words of your own
  kind tension-gash plane    or line, or axis (two-ended)
  short b bedding            b then stands for bedding
  # starts a comment; ; starts a remark that is kept with the reading.
  joint N66W 40NE ; spacing=0.3m infill=clay    for reduce --attributes
  ask bedding 40 > 160 ; or 016?   is not taken until you delete the word ask

`lodebook help log --blank` prints a heading to start from, `lodebook check LOG`
reports what is wrong, and `lodebook explain CODE` says what that means.
)";
}

std::string_view blank_log() {
  return R"(# Station log. Remove the # from a line and replace the example by your own.

# area         Quern Ridge
# date         2026-02-14
# observer     initials
# dial         quadrant       # or azimuth: how the dial is marked
# set          0              # the declination turned into the dial, or 0
# declination  24.6E          # the true one, with its E or W
# rule         right          # or left: the side that goes down along a strike

# landmark Cairn 44.6502S 169.0314E elevation 1412

# station Q1 at 44.6891S 169.0144E ±8
#   unit      banded schist
#   bedding   N62E 37NW        # strike, dip, side
#   lineation N50W 35          # trend, plunge
#   sight     Cairn N7.5W
#   note      free text
)";
}

}  // namespace lodebook::cli
