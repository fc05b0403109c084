// SPDX-License-Identifier: MIT
// Legs in columns.
#include <catch.hpp>

#include "fair_copy/made.hpp"

namespace lodebook::test {
namespace {

const std::string by_azimuth = "dial azimuth\nset 0\ndeclination 0\n";
const std::string in_quadrants = "dial quadrant\nset 0\ndeclination 0\n";

TEST_CASE("legs stand in columns, whatever parts them") {
  const Made made = {"station B1", "leg 118 8.3m slope -4 back 297 to B2"};
  for (const std::string table : {
           "from\tto\ttape (m)\tFS\tBS\tclino\nB1\tB2\t8,3\t118\t297\t-4\n",
           "From;To;Dist m;Bearing;Back;Incl\nB1;B2;8,3;118;297;-4\n",
           "From | To | Bearing | Back | Dist m | Clino\nB1 | B2 | 118 | 297 | 8.3 | -4\n",
           "| sta | to | brg | back | dist m | incl |\n| B1 | B2 | 118 | 297 | 8.3 | -4 |\n",
           "from,to,bearing,length m,va,bs\nB1,B2,118,8.3,-4,297\n",
           "Sta   To   Azimuth  Dist m  Clino  Back\nB1    B2   118      8.3     -4     297\n",
           "from to tape FS BS clino\nB1 B2 8.3m 118 297 -4\n",
           "von;nach;Azimut;Länge m;Neigung;back\nB1;B2;118;8,3;-4;297\n",
           "Traverse: from | to | brg | dist m | clino | back\nB1   B2   118   8.3   -4   297\n",
       }) {
    CAPTURE(table);
    CHECK(made_of(by_azimuth + table) == made);
  }
}

TEST_CASE("units of a table of legs stand in its heading, in a cell, or above it") {
  const auto leg = [](const std::string& above, const std::string& heading,
                      const std::string& row) {
    return made_of(in_quadrants + above + "station 1\n" + heading + "\n" + row + "\n");
  };
  const std::string plain = "from;to;brg;dist;slope;back";
  const Made feet = {"leg S42W 64.5ft slope -9% back N43E to 2"};
  CHECK(leg("tape ft, slope pct\n", plain, "1;2;S42W;64.5;-9;N43E") == feet);
  CHECK(leg("Distances in feet, slopes in percent.\n", plain, "1;2;S42W;64.5;-9;N43E") == feet);
  CHECK(leg("", "from;to;brg;dist ft;slope %;back", "1;2;S42W;64.5;-9;N43E") == feet);
  CHECK(leg("", plain, "1;2;S42W;64.5 ft;-9%;N43E") == feet);
  const Made metres = {"leg S42W 9.5m slope 2 back N43E to 2"};
  CHECK(leg("Tape survey (dist in m, incl in degrees)\n", plain, "1;2;S42W;9,5;+2;N43E") == metres);
  CHECK(leg("", "from;to;brg;dist m;incl;back", "1;2;S42W;9.5;up 2;N43E") == metres);
  CHECK(leg("", plain, "1;2;S42W;9.5;0;N43E") == Made{"ask leg S42W 9.5m slope 0 back N43E to 2"});
  CHECK(leg("tape m\n", plain, "1;2;S42W;9.5;-7;N43E") ==
        Made{"ask leg S42W 9.5m slope -7 back N43E to 2"});
}

TEST_CASE("what was not read in a row of a leg, and what cannot be") {
  const std::string table = by_azimuth + "station A\nfrom\tto\tdist m\tFS\tBS\tclino\tL\tR\n";
  for (const auto& [row, made] : std::vector<Example>{
           {"A\tB\t7.2\t118\t-\tlevel\t1.2\t0.8", {"leg 118 7.2m slope 0 to B"}},
           {"A\tB\t7.2\t118\tnone\t\t", {"leg 118 7.2m to B"}},
           {"A\tB\t7.2\t018\t\t+3", {"leg 018 7.2m slope 3 to B"}},
           {"A\tB\t7.2 or 7.7\t118\t298\t0", {"ask leg 118 7.2m slope 0 back 298 to B"}},
           {"A\tB\t7.2\t418\t298\t0", {"ask leg 418 7.2m slope 0 back 298 to B"}},
           {"A\tB\t7.2\t118\t298\t91", {"ask leg 118 7.2m slope 91 back 298 to B"}},
           {"A\tB\t7.2\t118\t289\t0", {"ask leg 118 7.2m slope 0 back 289 to B"}},
           {"\tB\t7.2\t118\t298\t0", {"ask leg 118 7.2m slope 0 back 298 to B"}},
           {"A\tA\t7.2\t118\t298\t0", {"ask leg 118 7.2m slope 0 back 298 to A"}},
       }) {
    CAPTURE(row);
    CHECK(made_of(table + row + "\n") == made);
  }
  CHECK(copied(table + "A\tB\t7.2\t118\t289\t0\n").log.find("digits swapped? 298") !=
        std::string::npos);
  CHECK(copied(table + "A\tB\t7.2\t118\t-\t0\t1.2\t0.8\n").log.find("; L 1.2, R 0.8\n") !=
        std::string::npos);
}

TEST_CASE("a leg from a station that was left is typed at its other end") {
  const std::string table = in_quadrants + "From  To  Brg   Dist m  Clino\n";
  const std::string rows = "P1    P2  N30E  12.5    +2\nP2    P3  N34E  11      0\n";
  CHECK(made_of(table + rows + "P1    Q   S60E  4.5     -1\n") ==
        Made{"station Q", "leg from P1 S60E 4.5m slope -1"});
  CHECK(made_of(table + rows + "  \"   P4  N50E  6       0\n") ==
        Made{"leg N50E 6m slope 0 to P4"});
  CHECK(made_of(table + rows + "P3    P1  S32W  23      -1\n") ==
        Made{"station P3", "leg S32W 23m slope -1 to P1"});
}

TEST_CASE("units may stand in a row of their own") {
  CHECK(made_of(by_azimuth + "from\tto\tdist\tFS\tBS\tslope\n\t\tft\tdeg\tdeg\t%\n"
                             "A\tB\t12.5\t118\t298\t-4\n") ==
        Made{"station A", "leg 118 12.5ft slope -4% back 298 to B"});
}

TEST_CASE("bearings with minutes, and points of the compass, in a table") {
  const std::string table = in_quadrants + "station A\nTo;Bearing;Back;Dist ft\n";
  CHECK(made_of(table + "B;N 45 30 E;-;88\n") == Made{"ask leg N45°30'E 88ft to B"});
  CHECK(made_of(table + "B;N 45°30' E;-;88\n") == Made{"leg N45°30'E 88ft to B"});
  CHECK(made_of(table + "B;due E;W;88\n") == Made{"leg E 88ft back W to B"});
}

TEST_CASE("sights in columns") {
  const std::string table = by_azimuth + "Stn   To          Bearing   Back\n";
  const std::string row = "K1    Mast        118       298\n";
  CHECK(made_of(table + row) == Made{"station K1", "sight Mast 118 back 298"});
  CHECK(made_of(table + row + "K1    Old chimney 214.5\n") == Made{"sight Old-chimney 214.5"});
  CHECK(made_of(table + row + "K1    Mast        418       298\n") ==
        Made{"ask sight Mast 418 back 298"});
}

TEST_CASE("both ends of a leg in one column") {
  for (const std::string ends : {"P1-P2", "P1 to P2", "P1 > P2"}) {
    CAPTURE(ends);
    CHECK(made_of(by_azimuth + "Leg;Bearing;Back;Dist m\n" + ends + ";118;298;7.5\n") ==
          Made{"station P1", "leg 118 7.5m back 298 to P2"});
  }
  CHECK(made_of(by_azimuth + "From-to;Bearing;Dist m;Clino\nP7-1 to P7-2;118;7.5;0\n") ==
        Made{"station P7-1", "leg 118 7.5m slope 0 to P7-2"});
}

TEST_CASE("a cell that is short of its column, and the words below a table of legs") {
  const std::string table = in_quadrants + "station P1\n" +
                            "From    To       Brg    Dist ft  Clino\n"
                            "P1      gate     N30E   12.5     +2\n";
  CHECK(made_of(table + "P1      old well N34E   11       0\n") ==
        Made{"leg N34E 11ft slope 0 to old-well"});
  for (const std::string& made : made_of(table + "crack along the crest N30E, 2 m deep  P1  \n"))
    CHECK_FALSE(made.starts_with("leg "));
}

}  // namespace
}  // namespace lodebook::test
