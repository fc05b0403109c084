// SPDX-License-Identifier: MIT
// Logs that several tests read.
#pragma once

#include "small_log.hpp"

namespace lodebook::test {

/// Something wrong of every severity, readings outside stations, a setting that changes, spellings
/// of all sorts.
inline constexpr const char* rough = R"(# first day
  # indented comment

instrument old compass with a "sticky" needle
short b bedding
kind Stylolite plane
order trend/plunge
pace 0.76m
b N78E 41N
rule left
accuracy bearing 1 dip 2 distance 3%


station 12 at 59G 345210 5052310 ± 30 ft
at 44.0S 169.0E
b n78e/41, 088/33 ; one, then "another"
 Stylolite 5 > 7.5 overturned doubtful
 fault 020/60 E reverse facing unknown
 slickenline rake 40 from N20E dextral
 lineation 310/-35 on bedding, 85 12, N -5
 bedding N98E 41N, N78E 40N
 bedding N 38 W
 schistosty N78E 41N
 what is this
 bedding vertical 020, 200 90, N20E/90 E, horizontal, E 41 N, N78E 62%
 lineation vertical, horizontal n50°30'w, rake 200 from N
declination 12°30'W
 leg 7 40 paces slope -14% back 186 south-end to nowhere
 leg N 120ft slope 50
 sight Peak S20E vertical +12 south-end
 elevation 400 ft
 note   = a note,  with  spaces
 unit
 ; a remark alone
station
station q12
 bedding N78E 41N # aside
 photo 0412 looking north
tally 3 stations 4 readings)";

}  // namespace lodebook::test
