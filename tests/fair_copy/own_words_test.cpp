// SPDX-License-Identifier: MIT
// Words that a page declares for itself, and nouns of the trade that no kind of the language has.
#include "made.hpp"

namespace lodebook::test {
namespace {

const std::string unturned = "dial azimuth\nset 0\ndeclination 0\n";
const std::string dips_first = unturned + "order dip/direction\norder plunge/trend\nrule right\n";

TEST_CASE("words of a page's own are declared with a mark or without one") {
  check_all("area north ridge\n",
            {
                {"be bedding, cl slaty cleavage, int be/cl intersection, xa its axial plane",
                 {"short be bedding", "short cl cleavage", "short int intersection",
                  "short xa axial-plane"}},
                {"S1 early foliation; L4 stretching lineation; sb shear band.",
                 {"short S1 foliation", "short L4 stretching", "short sb shear"}},
                {"J1 J2 J3 = joint sets", {"short J1 joint", "short J2 joint", "short J3 joint"}},
                {"FO foreset, TA trough axis, CR ripple crest (two ended)",
                 {"kind FO plane", "kind TA line", "short CR crest"}},
                {"IM = imbrication, PL = parting lineation, ML = mineral lineation (two ends)",
                 {"kind IM plane", "kind PL axis", "kind ML axis"}},
                {"xs = splay surface plane, rw = rib axis", {"kind xs plane", "kind rw axis"}},
                {"qtz veins and joints", {"note qtz veins and joints"}},
            });
  check_all(dips_first + "station 1\n",
            {{"qtz vein, felsic dike", {"note qtz vein, felsic dike"}}});
}

TEST_CASE("words of a page's own stand for their kinds") {
  const std::string page =
      "area cove\nfo foreset, pl parting lineation, L1 fold axis\n" + dips_first;
  check_all(page + "station 1\n", {
                                      {"fo 24@115, 27@108", {"fo 24 > 115", "fo 27 > 108"}},
                                      {"pl 105-285", {"pl 105/285"}},
                                      {"L1 12 > 140", {"fold-axis 12 > 140"}},
                                  });
}

TEST_CASE("a noun of the trade becomes a kind before its first reading") {
  check_all(
      dips_first + "station 1\n",
      {
          {"crevasses strike 065 and vertical", {"kind crevasse plane", "crevasse vertical 065"}},
          {"foresets 24@115", {"kind foreset plane", "foreset 24 > 115"}},
          {"clast 12 > 048", {"kind clast line", "clast 12 > 048"}},
          {"parting lineation 100/280",
           {"kind parting-lineation axis", "parting-lineation 100/280"}},
          {"drumlin long axis 044", {"alignment 044"}},
      });
  check_all(dips_first + "station 1\ncrevasses 70@160\n",
            {{"crevasse 72@158", {"crevasse 72 > 158"}}});
}

TEST_CASE("a noun that is only talk of the rock takes no reading") {
  check_all(dips_first + "station 1\nbedding 22@118\n",
            {
                {"20@121, clasts well rounded", {"bedding 20 > 121"}},
                {"bedding 20@121, scarp above", {"bedding 20 > 121"}},
            });
  check_all(dips_first + "station 1\nbedding 22@118\nclasts are small and well rounded\n",
            {{"20@121", {"bedding 20 > 121"}}});
  check_all(dips_first + "station 1\nbedding 22@118\nbig sets, foresets:\n",
            {{"20@121", {"kind foreset plane", "foreset 20 > 121"}}});
}

TEST_CASE("the page says what its letter O stands for") {
  const std::string quadrants = "dial quadrant\nset 0\ndeclination 0\n";
  const Made west = {"vein N30W 71 SW"};
  for (const std::string said : {"I write O for west", "O = W", "SO = SW, N30O = N30W"}) {
    CAPTURE(said);
    CHECK(made_of("area mine\n" + said + "\n" + quadrants + "station 1\nvein N30O 71 SO\n") ==
          west);
  }
  CHECK(made_of("area Grube\nO = Ost, O is east\n" + quadrants + "station 1\nvein N30O 71 SO\n") ==
        Made{"vein N30E 71 SE"});
  for (const std::string& made : made_of(quadrants + "station 1\nvein N30O 71 SO\n"))
    CHECK(made.starts_with("ask "));
}

TEST_CASE("several words before one '=' are no word of the page's own") {
  CHECK(made_of("dial azimuth\nset 0\ndeclination 0\nnor rev sin = normal, reverse, sinistral\n"
                "station 3\nflt 010/90 sin\n") == Made{"fault 010/90 sinistral"});
}

TEST_CASE("an order of pairs is no word of the page's own") {
  CHECK(made_of("dial azimuth\nOrientation = dip / dip direction\n") ==
        Made{"order dip/direction"});
}

TEST_CASE("a point of the compass as a page's own word") {
  const std::string page =
      "dial quadrant\nset 0\ndeclination 24.6E\nS = sandstone bed, C = contact\n";
  CHECK(made_of(page) == Made{"note S", "short C contact"});
  check_all(page + "station 7\n",
            {
                {"S  N52E 31 SE", {"bedding N52E 31 SE"}},
                {"to 8: S44E 85 paces, up 4", {"ask leg S44E 85 paces slope 4 to 8"}},
            });
}

}  // namespace
}  // namespace lodebook::test
