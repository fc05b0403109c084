// SPDX-License-Identifier: MIT
// Attitudes in columns.
#include <catch.hpp>

#include "fair_copy/made.hpp"

namespace lodebook::test {
namespace {

const std::string by_azimuth = "dial azimuth\nset 0\ndeclination 0\nstation 7\n";
const std::string in_quadrants = "dial quadrant\nset 0\ndeclination 0\nstation 7\n";

bool holds(const std::string& page, std::string_view text) {
  return copied(page).log.find(text) != std::string::npos;
}

TEST_CASE("an index and columns of other things go into the remark") {
  CHECK(
      holds(by_azimuth + "no\ttype\tdip\tdip dir\tspacing cm\tRQD\n3\tjoint\t71\t118\t10-20\t45\n",
            "  joint 71 > 118  ; no 3, spacing cm 10-20, RQD 45\n"));
  CHECK(holds(in_quadrants +
                  "nr.,kind,strike,dip,side,height ft,remark\nA4,fault,N62E,64,NW,12,open 4 in\n",
              "  fault N62E 64 NW  ; nr. A4, height ft 12, open 4 in\n"));
}

TEST_CASE("one column may hold a pair, in the order of its heading") {
  const auto made = [](const std::string& heading, const std::string& cell) {
    return made_of(by_azimuth + "| type | " + heading + " | note |\n| joint | " + cell +
                   " | - |\n");
  };
  CHECK(made("dip/dd", "38/052") == Made{"joint 38 > 052"});
  CHECK(made("dip dir/dip", "152/38") == Made{"joint 38 > 152"});
  CHECK(made("strike/dip", "N62E/37 NW") == Made{"joint N62E 37 NW"});
  CHECK(made("strike-dip", "152-38 SW") == Made{"joint 152/38 SW"});
  CHECK(made("dip/dd", "vert.").front().starts_with("ask "));
  CHECK(made("dip/dd", "171/74") == Made{"ask joint 74 > 171"});
  CHECK(made("dip/dd", "sub-horizontal") == Made{"ask joint horizontal"});
  CHECK(made("dip/dd", "horizontal") == Made{"joint horizontal"});
}

TEST_CASE("an order of pairs is no heading of a table") {
  CHECK(made_of("planes dip/dip direction, lines trend/plunge\n") ==
        Made{"order dip/direction", "order trend/plunge"});
  CHECK(made_of("strike/dip\n") == Made{"order strike/dip"});
}

TEST_CASE("ditto marks stand for the cell above, also for a part of it") {
  const std::string table = by_azimuth + "set | dip/dd | surface\njoint | 38/052 | rough\n";
  CHECK(made_of(table + "do | 41/055 | do\n") == Made{"joint 41 > 055"});
  CHECK(made_of(table + "id. | \" | smooth\n") == Made{"joint 38 > 052"});
  CHECK(made_of(table + "\" | \"/055 | smooth\n") == Made{"joint 38 > 055"});
  CHECK(made_of(by_azimuth + "type,dip,dip dir\nvein,38,052\n\",\",055\n") ==
        Made{"vein 38 > 055"});
}

TEST_CASE("a kind's cell may have words beside it") {
  const std::string table = in_quadrants + "ID, feature, strike, dip, side\n";
  CHECK(holds(table + "1, W wall joint, N62E, 37, NW\n", "  joint N62E 37 NW  ; W wall, ID 1\n"));
  CHECK(made_of(table + "1, main fault, N62E, 37, NW\n") == Made{"fault N62E 37 NW"});
  CHECK(made_of(table + "1, fault or vein, N62E, 37, NW\n").front().starts_with("ask "));
}

TEST_CASE("a kind that nobody knows is asked once for the page") {
  const std::string page = in_quadrants +
                           "ID, feature, strike, dip, side\n1, old zorble, N62E, 37, NW\n"
                           "2, new zorble, N60E, vert, \n3, zorble, N64E, 97, NW\n";
  CHECK(holds(page, "ask kind zorble plane  ; 2 readings need it\n"));
  CHECK(holds(page, "\n  zorble N62E 37 NW  ; old, ID 1\n"));
  CHECK(holds(page, "\n  zorble vertical N60E  ; new, ID 2\n"));
  CHECK(holds(page, "\n  ask zorble N64E 97 NW  ; "));
  CHECK(copied(page).tally.asked == 3);
}

TEST_CASE("a rake beside its plane is a line in it") {
  const std::string table =
      in_quadrants +
      "fault tables: no | strike | dip | dip side | sense of the fault | rake of striae "
      "| from which end\n";
  CHECK(made_of(table + "1   N62E  71  NW  sinistral  24  NE\n") ==
        Made{"fault N62E 71 NW sinistral", "slickenline rake 24 from NE"});
  CHECK(made_of(table + "1   N62E  71  NW  normal  -  -\n") == Made{"fault N62E 71 NW normal"});
  CHECK(made_of(table + "1   N62E  97  NW  normal  24  NE\n") ==
        Made{"ask fault N62E 97 NW normal", "ask slickenline rake 24 from NE"});
  CHECK(made_of(in_quadrants + "kind;strike;dip;side;rake;rake from\nbedding;N62E;37;NW;24;NE\n") ==
        Made{"bedding N62E 37 NW", "ask slickenline rake 24 from NE"});
}

TEST_CASE("below a row that is out of its columns a ditto mark repeats that row") {
  const std::string table = azimuths + "kind   dip   dip dir   remarks\nS0   36°   73°   clean\n";
  CHECK(made_of(table + "Cleavage   17°   273°\n\"   20°   265°\n") == Made{"cleavage 20 > 265"});
}

TEST_CASE("a size in the remarks is no bearing where that is missing") {
  const std::string table = azimuths + "kind    dip    dip dir    remarks\n";
  CHECK(made_of(table + "jt    44        15 m long\n").front().starts_with("ask "));
  CHECK(made_of(table + "jt    44    079    15 m long\n") == Made{"joint 44 > 079"});
}

TEST_CASE("letters in a column of senses") {
  const auto sense = [](const std::string& above, const std::string& letter) {
    return made_of(in_quadrants + above + "kind;strike;dip;side;sense\nfault;N62E;71;NW;" + letter +
                   "\n");
  };
  CHECK(sense("", "N") == Made{"fault N62E 71 NW normal"});
  CHECK(sense("", "sin.") == Made{"fault N62E 71 NW sinistral"});
  CHECK(sense("", "R") == Made{"ask fault N62E 71 NW"});
  CHECK(sense("sense: N normal, R reverse, D dextral, X not clear\n", "R") ==
        Made{"fault N62E 71 NW reverse"});
  CHECK(sense("L = left lateral, R = right lateral\n", "R") == Made{"fault N62E 71 NW dextral"});
  CHECK(sense("sense: N normal, R reverse, X not clear\n", "X") == Made{"fault N62E 71 NW"});
  CHECK(sense("", "Q") == Made{"ask fault N62E 71 NW"});
}

TEST_CASE("headings in other languages, and words of the page's own") {
  CHECK(made_of(in_quadrants + "nr;type;rumbo;manteo;lado\n1;falla;N12E;74;SE\n") ==
        Made{"fault N12E 74 SE"});
  CHECK(made_of(by_azimuth +
                "Nr\tArt\tEinfallsrichtung\tFallen\tBemerkung\n1\tKluft\t152\t38\t-\n") ==
        Made{"joint 38 > 152"});
}

TEST_CASE("a line in the columns of planes has its trend and plunge there") {
  const std::string table = by_azimuth + "no\tstr\tdip\ttype\n7\t152\t34\tfault\n";
  CHECK(made_of(table + "8\t158\t12\tlineation\n") == Made{"lineation 158/12"});
  CHECK(made_of(table + "8\t158\t12\tslick on 7\n") == Made{"slickenline 158/12 on fault"});
}

TEST_CASE("a word for an upright plane in the place of its dip") {
  const std::string table = in_quadrants + "kind,strike,dip,side\n";
  CHECK(made_of(table + "joint,N62E,vert,\n") == Made{"joint vertical N62E"});
  CHECK(made_of(table + "joint,N62E,vertical,NW\n") == Made{"joint N62E 90 NW"});
  CHECK(made_of(table + "joint,N62E,,NW\n") == Made{"ask joint strike N62E"});
  CHECK(made_of(table + "joint,,horizontal,\n") == Made{"joint horizontal"});
}

TEST_CASE("a heading that nobody can place is one question") {
  const std::string page = in_quadrants + "kind;strike;dip;side;frelk\njoint;N62E;37;NW;N50W\n" +
                           "joint;N60E;35;NW;N52W\n";
  CHECK(holds(page, "  joint N62E 37 NW  ; frelk N50W\n  ask note frelk N50W  ; what does the "));
  CHECK(holds(page, "  joint N60E 35 NW  ; frelk N52W\n"));
  CHECK(copied(page).tally.other_questions == 1);
  CHECK(made_of(in_quadrants + "kind;strike;dip;frelk\njoint;N62E;37;NW\n") ==
        Made{"ask joint N62E 37 NW"});
}

TEST_CASE("a file with quotes, its columns in any order") {
  const std::string file =
      "\"dip_to\",\"remark\",\"station\",\"kind\",\"strike\",\"dip\"\n"
      "\"NW\",\"clean, wavy\",\"Q1\",\"bedding\",\"N62E\",\"37\"\n";
  CHECK(made_of("set 0\ndeclination 0\n" + file) == Made{"station Q1", "bedding N62E 37 NW"});
  CHECK(holds("set 0\ndeclination 0\n" + file, "  ; clean, wavy\n"));
}

TEST_CASE("a table may stand below another separator, and its rows below a station") {
  const std::string page = by_azimuth + "dist m / dip / dip dir / remarks, joints all\n";
  CHECK(made_of(page + "0.8   83  064   planar\n") == Made{"joint 83 > 064"});
  const std::string blanks =
      by_azimuth + "kind   dip   dip dir   remarks\nschistosity   12   152\n";
  CHECK(made_of(blanks + "axial plane   71   118   good\ndo.   72   119\n") ==
        Made{"axial-plane 72 > 119"});
}

TEST_CASE("a heading that is a comment to the language") {
  CHECK(made_of(in_quadrants + "# strike,dip,side,kind\nN62E,37,NW,bedding\n") ==
        Made{"bedding N62E 37 NW"});
  CHECK(holds(in_quadrants + "#,strike,dip,side,kind\nA4,N62E,37,NW,bedding\n", "37 NW  ; # A4\n"));
}

TEST_CASE("where rows are aligned, an empty cell is no other's") {
  const std::string table = in_quadrants +
                            "Fault  Strike  Dip  Dips  Pitch  From  Sense\n"
                            "F3     N70W    50   SW    85     E     N\n";
  CHECK(made_of(table + "F4     N68W    vert        5      SE    S\n") ==
        Made{"fault vertical N68W sinistral", "slickenline rake 5 from SE"});
  CHECK(made_of(table + "F5     N30W    60   SW\n") == Made{"fault N30W 60 SW"});
}

TEST_CASE("a day, the way up, and a rule in a table") {
  const std::string file = "Date,Station,Type,Dip,Dip Dir,Way up,Comments\n";
  CHECK(made_of("set 0\ndeclination 0\n" + file +
                "2026-05-03,GF-01,bedding,32,118,up,\"sandstone, \"\"fine\"\"\"\n") ==
        Made{"date 2026-05-03", "station GF-01", "bedding 32 > 118 upright"});
  CHECK(made_of("set 0\ndeclination 0\n" + file +
                "2026-05-03,GF-01,bedding,32,118,o/t,\n2026-05-03,GF-01,bedding,41,120,,\"iron "
                "stained, \"\"open\"\"\"\n") == Made{"bedding 41 > 120"});
  CHECK(made_of(by_azimuth + "strike, dip (RHR), feature\n120, 45, bedding\n") ==
        Made{"bedding 120/45"});
  CHECK(copied(by_azimuth + "strike, dip (RHR), feature\n120, 45, bedding\n").tally.is_clear());
}

TEST_CASE("sets without a kind are asked, each") {
  const std::string table = by_azimuth + "Set no.  Dip  Dip direction  JRC\n1  78  123  6\n";
  CHECK(made_of(table) == Made{"ask joint 78 > 123"});
  CHECK(made_of(table + "2  45  210  8\n") == Made{"ask joint 45 > 210"});
}

TEST_CASE("a direction beside a side is a strike's") {
  const std::string rows = "faille;045;70;NW;x\n";
  CHECK(made_of(by_azimuth + "type;direction;pendage;sens du pendage;remarques\n" + rows) ==
        Made{"fault 045/70 NW"});
  CHECK(made_of(by_azimuth + "type;direction;dip;side;note\n" + rows) == Made{"fault 045/70 NW"});
  CHECK(made_of(by_azimuth + "type;direction;dip;frelk;note\n" + rows) ==
        Made{"ask fault 70 > 045"});
  CHECK(made_of(by_azimuth + "type;direction;dip\nfault;045;70\n") == Made{"fault 70 > 045"});
}

TEST_CASE("a kind that is left out, or in doubt, is asked") {
  const std::string table =
      by_azimuth + "Ref | Set | Dip | DD | Cont m\n1 | joint | 78 | 045 | 3\n";
  CHECK(made_of(table + "4 | ? | 55 | 300 | 1\n") == Made{"ask joint 55 > 300"});
  CHECK(made_of(table + "4 | | 55 | 300 | 1\n") == Made{"ask joint 55 > 300"});
  CHECK(made_of(table + "4 | joint | 7? | 300 | 1\n") == Made{"ask joint 7 > 300 doubtful"});
  CHECK(made_of(table + "4 | striae on the joint | 55 | 300 | 1\n") ==
        Made{"slickenline 300/55 on joint"});
}

TEST_CASE("a pair with a ditto mark before its stroke") {
  const std::string table = by_azimuth + "Kind  Dip / Dip dir  Comment\nJoint  85 / 240  rough\n";
  CHECK(made_of(table + "  \"  83 / 238\n") == Made{"joint 83 > 238"});
  CHECK(made_of(table + "  \"   \"  / 241\n") == Made{"joint 85 > 241"});
}

TEST_CASE("a mean below its readings is a note") {
  CHECK(made_of(by_azimuth + "Type;Dip;DD\nbedding;41;118\nmean bedding;42;119\n") ==
        Made{"note mean bedding, Dip 42, DD 119"});
}

TEST_CASE("eastings and northings, and the plane of a line, in columns") {
  CHECK(made_of("set 0\ndeclination 0\nStn,Easting,Northing,Zone,Kind,Dip,DipDir\n"
                "B1,345210,5052310,59G,bedding,30,135\n") ==
        Made{"station B1 at 59G 345210 5052310", "bedding 30 > 135"});
  CHECK(made_of(by_azimuth + "type,trend,plunge,on\nlineation,120,30,foliation\n") ==
        Made{"lineation 120/30 on foliation"});
}

TEST_CASE("a sentence below a table is no row") {
  const std::string table =
      "dial quadrant\nset 0\ndeclination 0\nStn 1:\nkind\tstrike\tdip\tside\tremarks\n";
  CHECK(made_of(table + "current N68W  34, photo 12\n") == Made{"current N68W 34"});
}

TEST_CASE("prose states the zone of a table's grid") {
  const Made made = made_of(
      "all UTM 35K\ndial azimuth\nrule right\n\n"
      "stn,east,north,kind,strike,dip\nB1,412310,7712045,bedding,062,45\n");
  CHECK(made == Made{"station B1 at 35K 412310 7712045", "bedding 062/45"});
}

TEST_CASE("prose below a table is none of its rows") {
  const std::string table =
      in_quadrants + "ID, feature, strike, dip, side\n1, joint, N62E, 37, NW\n\n";
  CHECK(made_of(table + "joints N50E 80SE, N48E 82 SE\n") ==
        Made{"joint N50E 80 SE", "joint N48E 82 SE"});
  CHECK(made_of(table + "wet gravel, grey, loose, cold\n") ==
        Made{"note wet gravel, grey, loose, cold"});
}

}  // namespace
}  // namespace lodebook::test
