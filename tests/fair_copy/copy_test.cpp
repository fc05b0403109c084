// SPDX-License-Identifier: MIT
#include "made.hpp"

namespace lodebook {
namespace {

using namespace test;

TEST_CASE("attitudes in words are taken") {
  check_all(heading, {
                         {"Beds N62E 37NW", {"bedding N62E 37 NW"}},
                         {"strike N63E dip 55 to the NW, bedding", {"bedding N63E 55 NW"}},
                         {"jts N50E 80SE and N48E 82 SE", {"joint N50E 80 SE", "joint N48E 82 SE"}},
                         {"contact dips 40 to SE, sharp", {"contact 40 > SE"}},
                         {"axis of small fold plunges 12 to N40W", {"fold-axis 12 > N40W"}},
                         {"fold axis trends N37E, plunges 4", {"fold-axis N37E 4"}},
                         {"slicks on this joint, pitch 20 from the NW end",
                          {"slickenline rake 20 from NW on joint"}},
                         {"bedding N24E 16SE right way up", {"bedding N24E 16 SE upright"}},
                         {"flt? N22W 65 NE", {"fault N22W 65 NE doubtful"}},
                         {"vein (calcite 2 cm) N80W dips 70 to the north", {"vein N80W 70 N"}},
                         {"dyke 150/vertical, 60 cm", {"dike vertical 150"}},
                         {"Fault 12 1/2 to N14E", {"fault 12.5 > N14E"}},
                     });
}

TEST_CASE("bare pairs follow the page's order") {
  check_all(azimuths, {
                          {"jt 332/37", {"joint 37 > 332"}},
                          {"jt 332/37; 330/36", {"joint 37 > 332", "joint 36 > 330"}},
                          {"jt 37/332", {"ask joint 37 > 332"}},
                          {"jt 372/37", {"ask joint 37 > 372"}},
                          {"jt 332/97", {"ask joint 97 > 332"}},
                          {"fold hinge 120 -> 35", {"fold-axis 120/35"}},
                          {"fold hinge 35 → 120", {"fold-axis 35 > 120"}},
                      });
}

TEST_CASE("what decides nothing is asked once for the page, and the pairs wait") {
  const std::string log = copied("stn 4\njt 152/34\njt 150/36\n").log;
  CHECK(log.find("ask order direction/dip  ; or strike/dip? 2 pairs need it\n") !=
        std::string::npos);
  CHECK(log.find("\n  joint 152/34\n") != std::string::npos);
  CHECK(log.find("ask joint") == std::string::npos);
}

TEST_CASE("faults of fact are asked, never mended") {
  check_all(heading, {
                         {"bed N98E 37 NW", {"ask bedding N98E 37 NW"}},
                         {"bed N62E 97 NW", {"ask bedding N62E 97 NW"}},
                         {"bed N62E 37 NE", {"ask bedding N62E 37 NE"}},
                         {"beds N62E 16 NW, N60E 61 NW, N61E 17 NW",
                          {"bedding N62E 16 NW", "ask bedding N60E 61 NW", "bedding N61E 17 NW"}},
                     });
}

TEST_CASE("a question holds no bearing that the page does not") {
  check_all(heading, {{"slicks on jt pitch 30", {"ask slickenline rake 30 from ? on joint"}}});
}

TEST_CASE("no figure is left over without a question") {
  for (const std::string line :
       {"bed N62E 37 NW 12", "bed N62E 37 NW and 14", "old wall 12 N62E 37 NW"}) {
    CAPTURE(line);
    for (const std::string& made : made_of(heading + line + "\n"))
      CHECK(made.starts_with("ask "));
  }
}

TEST_CASE("figures with a unit or a word that explains them go into the remark") {
  check_all(heading, {
                         {"jt N62E 37 NW, spacing 20-30 cm", {"joint N62E 37 NW"}},
                         {"jt N62E 37 NW JRC 8-10, set 2", {"joint N62E 37 NW"}},
                         {"limestone beds 20-40 cm", {"note limestone beds 20-40 cm"}},
                     });
}

TEST_CASE("a ditto mark repeats what it stands for") {
  check_all(heading + "Bedding N62E 37 NW o/t\n",
            {
                {"  \"   N60E 35NW", {"bedding N60E 35 NW"}},
                {"ditto N60E 35NW", {"bedding N60E 35 NW"}},
                {"  \"   N60E 35NW  \"", {"bedding N60E 35 NW overturned"}},
            });
  check_all(azimuths + "jts vert., strike 020\n",
            {{"jts ditto, strike 024", {"joint vertical 024"}}});
}

TEST_CASE("traps that were met as silent mistakes") {
  check_all(heading, {
                         {"fault N22W 65 NE, downthrown E", {"fault N22W 65 NE normal"}},
                         {"fault N22W 65 NE, W side down", {"fault N22W 65 NE reverse"}},
                         {"slicks on thrust 30 to N75E", {"slickenline 30 > N75E on fault"}},
                         {"bed N62E 37 NW youngs ?", {"bedding N62E 37 NW facing unknown"}},
                     });
  const std::string log = copied("decl 1°20' W, 0 set\nStop 5\njt N62E 37 NW 12 cm\n").log;
  CHECK(log.find("set 0\ndeclination 1°20'W\n") != std::string::npos);
  CHECK(log.find("station 5\n") != std::string::npos);
}

TEST_CASE("headings in prose become settings") {
  check_all("",
            {
                {"Tues May 19 2026", {"date 2026-05-19"}},
                {"14.05.2026", {"date 2026-05-14"}},
                {"5/6/26", {"ask date 2026-06-05"}},
                {"Sun 5/7/26", {"date 2026-07-05"}},
                {"decl 4 1/2 W, already turned in on the dial", {"set 4.5W", "declination as-set"}},
                {"Degrees 0-360. Nothing set on the dial. Decl 13½ E",
                 {"set 0", "declination 13.5E", "dial azimuth"}},
                {"RIGHT HAND RULE", {"rule right"}},
                {"128 of my paces = 100 m", {"pace 0.78125m"}},
                {"planes = dip direction/dip; lines = trend/plunge",
                 {"order direction/dip", "order trend/plunge"}},
                {"ss bedding, k joint", {"short ss bedding", "short k joint"}},
            });
}

TEST_CASE("stations, positions, heights and times") {
  check_all("", {
                    {"Stop 1   36.2145, -85.3310  (phone says +/- 6 m)",
                     {"station 1 at 36.2145, -85.3310 ±6"}},
                    {"Loc 2  N56°12.402' W004°33.067'", {"station 2 at N56°12.402' W004°33.067'"}},
                });
  check_all("Stop 1\n", {
                            {"9:20 am   elev 497 m", {"time 09:20", "elevation 497 m"}},
                            {"N56°72.530' W004°32.881'", {"ask at N56°72.530' W004°32.881'"}},
                        });
}

TEST_CASE("sights and legs without their words") {
  check_all(
      heading,
      {
          {"Cairn N17W", {"sight Cairn N17W"}},
          {"Cairn 30½, up 6½°", {"sight Cairn 030.5 vertical 6.5"}},
          {"to bridge S38E  120 m  flat  back N37W", {"leg S38E 120m slope 0 back N37W to bridge"}},
          {"leg 200' at 310, back 130, to the sign post", {"leg 310 200ft back 130 to sign-post"}},
          {"water tower N12E", {"ask sight water-tower N12E"}},
      });
}

TEST_CASE("a table with its heading") {
  const std::string table = azimuths + "type\tdip\tdip dir\tremarks\n";
  CHECK(made_of(table + "JN\t37\t332\tclean\n") == Made{"joint 37 > 332"});
  CHECK(made_of(table + "JN\t97\t332\tclean\n") == Made{"ask joint 97 > 332"});
  CHECK(
      made_of("set 0\ndeclination 0\nstation;type;strike;dip;dip to\nQ1;bedding;N62E;37,5;NW\n") ==
      Made{"station Q1", "bedding N62E 37.5 NW"});
}

TEST_CASE("a good log comes out byte for byte, and so does a copy") {
  const std::string log = heading + "  bedding N62E 37NW  ; clean\n\n\n  note two  blanks";
  CHECK(copied(log).log == log);
  CHECK(copied(log).tally.is_clear());
  const std::string page = "Stop 1\njts N50E 80SE and N48E 82 SE\nsomething 12\n";
  const std::string once = copied(page).log;
  CHECK(copied(once).log == once);
  CHECK(copied(page).log == once);
}

TEST_CASE("every line of the page stands in the copy") {
  const std::string page =
      "Callow north rim\n\nStop 1  \tcreek\njts N50E 80SE\n  odd \xC3\xA9 line 7\n";
  const std::string log = copied(page).log;
  for (const std::string line :
       {"Callow north rim", "Stop 1  \tcreek", "jts N50E 80SE", "  odd \xC3\xA9 line 7"}) {
    CAPTURE(line);
    CHECK(log.find(line) != std::string::npos);
  }
}

TEST_CASE("a question that the strict reader raises says why") {
  const std::string log = copied(
                              "dial quadrant\nset 0\ndeclination 24.6E\nstation 7\n"
                              "to 8: S44E 85 paces\nbed as above\n")
                              .log;
  CHECK(log.find("ask leg S44E 85 paces to 8  ; pace length not set") != std::string::npos);
  CHECK(log.find("ask note bed as above  ; which reading is repeated?") != std::string::npos);
}

}  // namespace
}  // namespace lodebook
