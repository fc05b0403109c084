// SPDX-License-Identifier: MIT
// The log language on one page of 80 columns and 60 lines, and a heading to start from.
#include <lodebook/cli/commands.hpp>

namespace lodebook::cli {

std::string_view log_card() {
  return R"(THE STATION LOG: plain text, one statement a line, capitals or not as you like.

How the compass was set up; each line holds from where it stands to the end.
  dial quadrant              or azimuth: what you read off
  set 0                      the declination turned into the dial: 0, 12E, 3.5W
  declination 24.6E ±0.4     the true one; or model, that of place and date; or
                             as-set, where the dial was right
  rule right                 or left: the side on which a plane goes down, seen
                             along the strike as typed
  order strike/dip           how two bare numbers go; also direction/dip,
                             dip/direction, trend/plunge, plunge/trend
  date 2026-02-14            area, observer, instrument: free text
  pace 0.76m                 accuracy bearing 0.5 dip 1 distance 2%

Places: 44.6891S 169.0144E, 59G 345210 5052310, or MGRS; ±8 behind: in metres.
  landmark Cairn 44.6502S 169.0314E elevation 1412
  station Q1 at 44.6891S 169.0144E ±8

At a station
  elevation 812              time 09:40
  unit banded schist         note, photo: free text
  sample Q1-a garnet band

Bearings: N20W, N20.5W, N20°30'W, S, NE, SSW, 340, 007.5 (azimuths: 3 digits)

Planes: bedding foliation cleavage schistosity joint fault shear vein dike
        contact axial-plane
  bedding N85E 32N           strike, dip, the side that goes down
  bedding 265/32             strike, dip; the side by the rule
  bedding 32 > 355           dip towards; `to` will do for >
  bedding horizontal         or: vertical N20E
  Behind it: overturned, upright, facing unknown, doubtful. 62% is a grade.
  bedding N82E 30N, N84E 31N is one surface measured twice.

Lines:  lineation slickenline fold-axis intersection stretching flute current
  lineation N20W 15          trend, plunge; also 340/15 or 15 > N20W
  lineation rake 40 from N85E    in the plane read last, from that end
  lineation N20W 31 on bedding   the plane it lies in
  fault N10E 60E normal      or reverse, dextral, sinistral; slickenlines too

Sights and legs
  sight Cairn N17W           from here to there; then vertical 4.5, south-end
  leg S45E 120m to Q3        or ft, paces; then slope -6 or 12%, back N44W
  tally 14 stations 63 readings  counts what stands above it

Words of your own
  kind tension-gash plane    or line
  short b bedding            b then stands for bedding

  # starts a comment; ; starts a remark that is kept with the reading.

`lodebook help log --blank` prints a heading to start from, `lodebook check LOG`
reports what is wrong, and `lodebook explain CODE` what that means.
)";
}

std::string_view blank_log() {
  return R"(# Station log. Take the # away from a line and put your own words behind it.

# area         Quern Ridge
# date         2026-02-14
# observer     initials
# dial         quadrant       # or azimuth: what is read off
# set          0              # the declination turned into the dial, or 0
# declination  24.6E          # the true one, with its E or W
# rule         right          # or left: the side that goes down along a strike

# landmark Cairn 44.6502S 169.0314E elevation 1412

# station Q1 at 44.6891S 169.0144E ±8
#   unit      banded schist
#   bedding   N85E 32N         # strike, dip, side
#   lineation N20W 31          # trend, plunge
#   sight     Cairn N7.5W
#   note      free text
)";
}

}  // namespace lodebook::cli
