// SPDX-License-Identifier: MIT
// A small complete log that several rooms read.
#pragma once

namespace lodebook::test {

/// Most kinds of statement, and nothing wrong; one azimuth on a quadrant dial.
inline constexpr const char* small_log = R"(area         Quern Ridge
date         2026-02-14
observer     AM
dial         quadrant
set          0              # nothing turned into the dial
declination  24.6E ±0.4     # what was true
rule         right

landmark Cairn      44.6502S 169.0314E  elevation 1412
landmark Trig-Dome  44.6711S 168.9920E  elevation 1630
landmark Saddle     44.7033S 169.0467E

station Q1 at 44.6891S 169.0144E ±8
  time      09:40
  elevation 812
  unit      banded schist
  bedding   N85E 32N
  lineation N20W 31 on bedding
  bedding   N82E 30N, N84E 31N, 088/33 N     ; another face, three times
  cleavage  61 > N12W
  sight     Trig-Dome N66W
  sample    Q1-a garnet band
  note      contact is 3 m upslope; float below

station Q2
  sight Cairn     N17W
  sight Trig-Dome N65.5W
  sight Saddle    N87.5E
  leg   S45E 120m back N44W to Q3            ; paced

station Q3
  joint vertical N10E
)";

}  // namespace lodebook::test
