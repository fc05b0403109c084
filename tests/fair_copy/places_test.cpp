// SPDX-License-Identifier: MIT
// Stations, positions and names as people write them, and the sights and legs between them.
#include "made.hpp"

namespace lodebook {
namespace {

using namespace test;

TEST_CASE("names in a series head their stations") {
  const std::string page = heading + "\nL1  burn below the ford\nbedding N62E 37NW\n\n";
  CHECK(made_of(page + "L2  60 m up the burn, alt 325 m\n") ==
        Made{"station L2", "elevation 325 m"});
  CHECK(made_of(page + "L2  crag\n\nL1: joint N14E 62SE\n") ==
        Made{"station L1", "joint N14E 62 SE"});
  // A kind that begins any line is no station.
  CHECK(made_of(heading + "\nS1 N62E 37NW\nS2 N40E 30SE\n\nS2 N41E 31SE\n") ==
        Made{"foliation N41E 31 SE"});
}

TEST_CASE("a whole reading as a ditto, and a range, are asked") {
  check_all(azimuths + "bdg 332/37\n", {
                                           {"bedding ditto", {"ask bedding 37 > 332"}},
                                           {"bdg as above", {"ask bedding 37 > 332"}},
                                           {"current S55E to S70E", {"ask current 117.5"}},
                                       });
}

TEST_CASE("positions are taken as receivers and maps show them") {
  const std::vector<Example> places = {
      {"Site 3   moraine N of the creek   N51 49.62 W116 49.31",
       {"station 3 at N51 49.62 W116 49.31"}},
      {"Stop 4  quarry wall   39 12 44 N / 30 41 10 E   1105 m",
       {"station 4 at 39 12 44 N 30 41 10 E", "elevation 1105 m"}},
      {"Loc 2   31 15.71S 138 52.33E  acc 3", {"station 2 at 31 15.71S 138 52.33E ±3"}},
      {"Loc 2   31 15.71S 138 52.33E  GDA2020",
       {"datum GDA2020", "station 2 at 31 15.71S 138 52.33E"}},
      {"Site 5   knob 200 m off the ice   51 49.62 N 116 49.31 W",
       {"station 5 at 51 49.62 N 116 49.31 W"}},
      {"Spring A   44 41.402 S  169 03.511 E  RL 431   0840",
       {"station Spring-A at 44 41.402 S 169 03.511 E", "time 08:40", "elevation 431 m"}},
  };
  for (const auto& [line, made] : places) {
    CAPTURE(line);
    CHECK(made_of("dial quadrant\nset 0\ndeclination 24.6E\nJoints today.\n\n" + line +
                  "\njt N14E 62SE\nbed ? 40\n\n" + line.substr(0, line.find(' ')) + "\n") !=
          Made{});
    const std::string log =
        copied("dial azimuth\nset 0\ndeclination 24.6E\nstation 1\nbdg 062/37 SE\n\n" + line +
               "\njts 014/62 SE\n")
            .log;
    for (const std::string& statement : made) {
      CAPTURE(statement, log);
      CHECK(log.find(statement + "\n") + log.find(statement + "  ; ") != 2 * std::string::npos);
    }
  }
}

TEST_CASE("a name with a number is no figure") {
  const std::string bores =
      "dial azimuth\nset 0\ndeclination 24.6E\nlandmark Bore-3\nlandmark Bore-7\nstation 7\n";
  check_all(bores, {
                       {"Bore 3 033.5, Bore 7 091", {"sight Bore-3 033.5", "sight Bore-7 091"}},
                       {"Bore 7 090 back 270", {"sight Bore-7 090 back 270"}},
                       {"bore 3 026, poor", {"sight Bore-3 026 doubtful"}},
                   });
}

TEST_CASE("a leg names its two ends") {
  const std::string before = "dial azimuth\nset 0\ndeclination 24.6E\nstation 7\n";
  check_all(before, {
                        {"stake 4 to stake 5: 118, 50 m tape, down 6, back 298",
                         {"station stake-4", "leg 118 50m slope -6 back 298 to stake-5"}},
                        {"E10>E11: 7.75 m @ 190 / -2 (BS 010)",
                         {"station E10", "leg 190 7.75m slope -2 back 010 to E11"}},
                        {"7 to S1   25.0 m   195   -6   back 015",
                         {"leg 195 25.0m slope -6 back 015 to S1"}},
                        {"7 to 8: 40 m on 062, no back", {"leg 062 40m to 8"}},
                    });
}

TEST_CASE("a chainage and a time are no readings") {
  check_all(azimuths, {
                          {"Loc 2   Ch 12+615, left side    27.91402 N 84.60690 E",
                           {"station 2 at 27.91402 N 84.60690 E"}},
                          {"wind too strong, down 17h20", {"time 17:20"}},
                      });
}

TEST_CASE("the word station before the end of a sight or leg") {
  check_all(azimuths + "landmark Spire\n",
            {{"Spire 149.5, Stn 2 273", {"sight Spire 149.5", "sight 2 273"}},
             {"to Stn 5:  055  31 m tape  back 235", {"leg 055 31m back 235 to 5"}}});
}

TEST_CASE("what is said to be rough") {
  check_all(azimuths + "landmark Spire\n",
            {{"Spire about 330", {"sight Spire ~330"}},
             {"bdg about N60E 70 SE", {"bedding ~N60E ~70 SE"}},
             {"bdg N60E 70 SE, approx.", {"bedding N60E 70 SE about"}},
             {"flt N15W 65 NE, throw 2 m approx.", {"fault N15W 65 NE"}},
             {"leg 220ish 300 m", {"leg 220 300m doubtful"}}});
}

TEST_CASE("a placed name above readings is a station") {
  const Made made = made_of(
      "dial azimuth\n\nQ2 bench    39.81250 N  31.40210 E\nfaults in limestone:\n082/64 S\n");
  CHECK(made.at(0).starts_with("ask fault 082/64 S") == false);
  CHECK(copied("dial azimuth\n\nQ2 bench    39.81250 N  31.40210 E\nfaults in limestone:\n"
               "082/64 S\n")
            .log.find("station Q2-bench at 39.81250 N 31.40210 E") != std::string::npos);
}

TEST_CASE("a level below the casing is no height, a code no reading") {
  check_all(azimuths,
            {{"Static level 4.32 m below casing", {"note Static level 4.32 m below casing"}},
             {"Spec. no. RV/26/101", {"note Spec. no. RV/26/101"}}});
}

TEST_CASE("a heading lists landmarks by what they are called") {
  CHECK(made_of("dial azimuth\npeaks we shoot at: Bighorn, Kettle\n") ==
        Made{"landmark Bighorn", "landmark Kettle"});
  CHECK(made_of("dial azimuth\nPeaks used: Tarr Knob (24.3360 N 34.2391 E), Old Nob, not on map\n")
            .at(1)
            .starts_with("landmark Old-Nob"));
}

TEST_CASE("sights may say from where they are") {
  const std::string before = "dial azimuth\nset 0\ndeclination 24.6E\nlandmark Cairn\nstation 7\n";
  check_all(before,
            {
                {"sights from the outflow: Cairn 287", {"sight Cairn 287"}},
                {"Cairn again, off the south end of the needle, 51", {"sight Cairn 051 south-end"}},
            });
}

TEST_CASE("north and east with an azimuth between them") {
  const std::string before = "dial azimuth\nset 0\ndeclination 24.6E\nrule right\nstation 7\n";
  const std::string azimuths_said =
      "whole circle bearings, right hand rule\nset 0\ndeclination 24.6E\nstation 7\n";
  // Several lines of the form, on a page of azimuths.
  CHECK(made_of(azimuths_said + "bdg N 125 E / 22\nbdg N 062 E / 25\nbdg N 131 E / 20\n") ==
        Made{"bedding 131/20"});
  // One alone is a slip of the pen.
  CHECK(made_of(before + "bdg N112E / 22\n").front().starts_with("ask "));
  check_all(before, {
                        {"fault NS 70W", {"fault N/70 W"}},
                        {"small fault EW/75N, dextral", {"fault E 75 N dextral"}},
                    });
}

}  // namespace
}  // namespace lodebook
