// SPDX-License-Identifier: MIT
// Facing and sense as people write them, once or twice.
#include "made.hpp"

namespace lodebook::test {
namespace {

const std::string facing_page =
    "dial azimuth\nset 0\ndeclination 0\norder strike/dip\nrule right\nstation 1\n";

TEST_CASE("facing said twice is said once where both agree") {
  check_all(facing_page,
            {
                {"bedding 032/71, youngs NW so o/t", {"bedding 032/71 overturned"}},
                {"bedding 032/71 right way up, yng SE", {"bedding 032/71 upright"}},
                {"beds 032/71 youngs NW", {"bedding 032/71 youngs NW"}},
                {"bedding 032/71 o/t, youngs SE", {"ask bedding 032/71 SE overturned"}},
                {"bedding 032/71 o/t, youngs SW", {"ask bedding 032/71 SE overturned"}},
            });
}

TEST_CASE("a facing that was not seen is unknown") {
  for (const std::string said :
       {"cannae see which way up", "can't see which way up", "way up not clear", "no way up",
        "could not see which way it youngs", "facing?", "way up?"}) {
    CAPTURE(said);
    CHECK(made_of(facing_page + "bedding 029/79, " + said + "\n") ==
          Made{"bedding 029/79 facing unknown"});
  }
  CHECK(made_of(facing_page + "bedding 029/79, way up by grading\n") ==
        Made{"ask bedding 029/79 SE"});
}

TEST_CASE("a sense before the kind is its readings', behind a comma the fault's") {
  check_all("rule right\nset 0\ndeclination 0\nstation 4\n",
            {
                {"normal fault 123/56", {"fault 123/56 normal"}},
                {"normal faults: 105/61, 098/64", {"fault 105/61 normal", "fault 098/64 normal"}},
                {"flt 100/50, striae 150/40, nor", {"fault 100/50 normal", "slickenline 150/40"}},
                {"flt 65->170, slicks 20->085 dextral",
                 {"fault 65 > 170", "slickenline 20 > 085 dextral"}},
            });
}

TEST_CASE("a side against the page's rule is asked") {
  check_all("rule right\nset 0\ndeclination 0\nstation 4\n",
            {{"bdg 045/33 NW", {"ask bedding 045/33 NW"}},
             {"bdg 045/33 SE", {"bedding 045/33 SE"}},
             {"jt 121/89 NE", {"joint 121/89 NE"}},
             {"bdg N45E 33 NW", {"bedding N45E 33 NW"}}});
}

TEST_CASE("polarity says the way up") {
  check_all(heading, {{"S0 N45E 36SE polarity normal", {"bedding N45E 36 SE upright"}},
                      {"S0 N45E 36SE, reversed polarity", {"bedding N45E 36 SE overturned"}}});
}

TEST_CASE("the block that went down says the sense") {
  const std::string dips = "dial azimuth\nset 0\ndeclination 0\norder dip/direction\nstation 1\n";
  check_all(dips, {
                      {"fault 48 twd 290, west side dropped", {"fault 48 > 290 normal"}},
                      {"fault 48 twd 290, W block raised", {"fault 48 > 290 reverse"}},
                  });
}

TEST_CASE("a dash below a facing may repeat it") {
  check_all(facing_page + "S0 256/21, o/t\n- 250/20  -\n",
            {{"- 252/20  -", {"ask bedding 252/20 N overturned"}}});
}

TEST_CASE("a question spells out the side that the rule gives") {
  check_all(facing_page, {
                             {"bedding 043/61 or 44", {"ask bedding 043/61 SE"}},
                             {"bedding 223/61 or 44", {"ask bedding 223/61 NW"}},
                         });
}

TEST_CASE("blocks beside a fault and its striae are the fault's") {
  check_all(heading, {{"flt N20W 70E, E side down, slicks pitch 80 from S",
                       {"fault N20W 70 E normal", "slickenline rake 80 from S"}}});
}

}  // namespace
}  // namespace lodebook::test
