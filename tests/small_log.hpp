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
  bedding   N62E 37NW
  lineation N50W 35 on bedding
  bedding   N58E 34NW, N60E 35NW, 063/36 NW  ; another face, three times
  cleavage  61 > N36W
  sight     Trig-Dome N66W
  sample    Q1-a garnet band
  note      contact is 3 m upslope; float below

station Q2
  sight Cairn     N17W
  sight Trig-Dome N65.5W
  sight Saddle    N87.5E
  leg   S38E 120m back N37W to Q3            ; paced

station Q3
  joint vertical N14E
)";

}  // namespace lodebook::test
