// SPDX-License-Identifier: MIT
#include <catch.hpp>

#include "logs.hpp"
#include "reduced.hpp"

namespace lodebook {
namespace {

/// The table without the columns that a rewritten log may change.
std::vector<std::vector<std::string>> comparable(const std::string& text,
                                                 const reduction::Options& options = {}) {
  std::vector<std::vector<std::string>> rows;
  for (const std::string& line : test::lines_of(test::csv(text, options))) {
    std::vector<std::string> cells = test::cells_of(line);
    REQUIRE(cells.size() == 37);
    cells.erase(cells.begin() + 36);  // source
    cells.erase(cells.begin() + 34);  // written
    rows.push_back(std::move(cells));
  }
  return rows;
}

/// The clean log means the same and is a fixed point.
void check_round_trip(const std::string& text, const reduction::Options& options = {}) {
  const std::string once = test::clean(text, options);
  CAPTURE(once);
  CHECK(comparable(text, options) == comparable(once));
  CHECK(test::clean(once) == once);
  CHECK(test::clean(once, options) == once);
}

TEST_CASE("a clean log is written in canonical notation") {
  CHECK(test::clean(test::small_log) == R"(area Quern Ridge
date 2026-02-14
observer AM
dial quadrant
set 0  # nothing turned into the dial
declination 24.6E ±0.4  # what was true
rule right

landmark Cairn 44.6502S 169.0314E elevation 1412
landmark Trig-Dome 44.6711S 168.992E elevation 1630
landmark Saddle 44.7033S 169.0467E

station Q1 at 44.6891S 169.0144E ±8
  time 09:40
  elevation 812
  unit banded schist
  bedding N62E 37NW
  lineation N50W 35 on bedding
  bedding N58E 34NW, N60E 35NW, 063/36 NW  ; another face, three times
  cleavage 61 > N36W
  sight Trig-Dome N66W
  sample Q1-a garnet band
  note contact is 3 m upslope; float below

station Q2
  sight Cairn N17W
  sight Trig-Dome N65.5W
  sight Saddle N87.5E
  leg S38E 120m back N37W to Q3  ; paced

station Q3
  joint vertical N14E
)");
}

TEST_CASE("a clean log reduces to the same table, and a second pass changes nothing") {
  check_round_trip(test::small_log);
  check_round_trip(test::rough);
}

TEST_CASE("lines with an error, comments and unknown words come out verbatim") {
  const std::string clean = test::clean(test::rough);
  for (const char* line :
       {"# first day\n", "\n  # indented comment\n", "\n bedding N98E 41N, N78E 40N\n",
        "\n bedding N 38 W\n", "\n schistosty N78E 41N\n", "\n what is this\n",
        "\n ; a remark alone\n", "\nat 44.0S 169.0E\n", "\nstation\n"}) {
    CAPTURE(line);
    CHECK(("\n" + clean).find(line) != std::string::npos);
  }
}

TEST_CASE("spellings become canonical") {
  const std::string clean = test::clean(test::rough);
  for (const char* line :
       {"short b bedding\n",
        "kind Stylolite plane\n",
        "pace 0.76m\n",
        "order trend/plunge\n",
        "accuracy bearing 1 dip 2 distance 3%\n",
        "instrument old compass with a \"sticky\" needle\n",
        "bedding N78E 41N\n",
        "  bedding N78E 41, 088/33  ; one, then \"another\"\n",
        "  Stylolite 5 > 007.5 overturned doubtful\n",
        "  fault 020/60 E facing unknown reverse\n",
        "  slickenline rake 40 from N20E dextral\n",
        "  lineation 310/-35 on bedding, 085/12, N/-5\n",
        "  bedding vertical 020, 200/90, N20E 90E, horizontal, E/41 N, N78E 62%\n",
        "  lineation vertical, horizontal N50.5W, rake 200 from N\n",
        "declination 12.5W\n",
        "  leg 007 40 paces south-end slope -14% back 186 to nowhere\n",
        "  leg N 120ft slope 50\n",
        "  sight Peak S20E south-end vertical 12\n",
        "  elevation 400 ft\n",
        "  note = a note,  with  spaces\n",
        "  unit\n",
        "  bedding N78E 41N  # aside\n",
        "tally 3 stations 4 readings\n"}) {
    CAPTURE(line);
    const bool rejected = std::string_view(line).find("rake 200") != std::string_view::npos;
    // A rake over 90 is an error, so that its line is not touched.
    CHECK((clean.find(std::string("\n") + line) != std::string::npos) != rejected);
  }
}

TEST_CASE("a blank line stands before each station, and runs of them become one") {
  CHECK(test::clean("\n\n# one\n\n\n# two\nstation A\nstation B\n\n  joint vertical N\n\n\n") ==
        "# one\n\n# two\n\nstation A\n\nstation B\n\n  joint vertical N\n");
  CHECK(test::clean("station A") == "station A\n");
  CHECK(test::clean("").empty());
}

TEST_CASE("a remark that begins with # stays a remark") {
  for (const std::string remark : {"# sample", "#", "#12", "# a # b", "a #b"}) {
    CAPTURE(remark);
    const std::string log = "station A\n  joint vertical N14E ;" + remark + "\n";
    check_round_trip(log);
  }
}

TEST_CASE("a reading's own north stands behind its bearing, or behind a plane's side") {
  const std::string head = "set 2E\ndeclination 24.6E\nrule right\n";
  const std::string log =
      head +
      "station A at 44.6891S 169.0144E\n"
      "  bedding N62E grid 37NW, 219/36 NW, 242 true 37 overturned doubtful\n"
      "  joint 37 > 332 GRID, vertical N14E magnetic, N/38 W true, N62E/0 grid\n"
      "  joint strike N66W grid\n"
      "  lineation N50W 35 true on joint, 310/35 grid, rake 40 from S14W grid\n"
      "  current from S60W grid, 118 true\n"
      "  sight Peak 044 true back 224 magnetic, 045 grid\n"
      "  leg S38E grid 120m back N37W true to B\nstation B\n";
  check_round_trip(log);
  const std::string clean = test::clean(log);
  for (const std::string line :
       {"  bedding N62E 37NW grid, 219/36 NW, 242 true 37 overturned doubtful\n",
        "  joint 37 > 332 grid, vertical N14E magnetic, N/38 W true, N62E grid 0\n",
        "  lineation N50W true 35 on joint, 310 grid 35, rake 40 from S14W grid\n",
        "  sight Peak 044 true back 224 magnetic, 045 grid\n",
        "  leg S38E grid 120m back N37W true to B\n"}) {
    CAPTURE(clean, line);
    CHECK(clean.find(line) != std::string::npos);
  }
  for (const char* order :
       {"strike/dip", "dip/strike", "dip/direction trend/plunge", "direction/dip plunge/trend"}) {
    CAPTURE(order);
    check_round_trip(head + "order " + order +
                     "\nstation A\njoint 62 true 37, 242/37 NW true\nlineation 31 true 35\n"
                     "groove 125/305 true\n");
  }
}

TEST_CASE("parts of a statement may have been typed in any order") {
  const std::string log = "station A\n  leg N 30m to nowhere back 80\n";
  CHECK(comparable(log)[1][23] == "station-unknown back-bearing");
  check_round_trip(log);
}

TEST_CASE("a line that would become too long to be read stays as it was typed") {
  std::string line = "bedding 7>7";
  while (line.size() < 60'000)
    line += ", 7>7";
  const std::string log = "station A\n" + line + '\n';
  CHECK(test::clean(log) == log);
  check_round_trip(log);
}

TEST_CASE("options become settings before the first statement") {
  reduction::Options options;
  options.declination = notebook::DeclinationSetting{};
  options.declination->declination = *Declination::east(24.6);
  options.declination->sigma = 0.4;
  options.set = *Declination::west(2);
  options.rule = HandRule::left;
  const std::string log = "# a page\n\nstation A\n  bedding 078/41\n";
  CHECK(test::clean(log, options) ==
        "# a page\n\nset 2W\ndeclination 24.6E ±0.4\nrule left\n\nstation A\n  bedding 078/41\n");
  check_round_trip(log, options);
  check_round_trip("date 2026-02-14\n" + log, options);
}

TEST_CASE("a log's own settings replace the option from where they stand") {
  reduction::Options options;
  options.declination = notebook::DeclinationSetting{};
  options.declination->declination = *Declination::east(20);
  options.rule = HandRule::left;
  const std::string first = "declination 24.6E\nrule right\nstation A\n  bedding 078/41\n";
  CHECK(test::clean(first, options) ==
        "declination 24.6E\nrule right\n\nstation A\n  bedding 078/41\n");
  check_round_trip(first, options);
  const std::string later =
      "station A\n  bedding 078/41\nrule right\ndeclination 24.6E\n"
      "  bedding 078/41\n";
  CHECK(test::clean(later, options).starts_with("declination 20E\nrule left\n\nstation A\n"));
  check_round_trip(later, options);
  options.declination->from = notebook::DeclinationSetting::From::as_set;
  check_round_trip(later, options);
}

TEST_CASE("behind a void statement the option stands again") {
  reduction::Options options;
  options.set = *Declination::west(12.5);
  options.declination = notebook::DeclinationSetting{};
  options.declination->from = notebook::DeclinationSetting::From::as_set;
  options.rule = HandRule::left;
  const std::string log = "set 3E\nrule right\nset\nrule up\nsight 040 Cairn\n  bedding 078/41\n";
  CHECK(test::clean(log, options).find("rule up\nset 12.5W\nrule left\n") != std::string::npos);
  check_round_trip(log, options);
  check_round_trip("set\nrule up\nset 2E\nrule right\nsight 040 Cairn\n", options);
}

TEST_CASE("an open question stays as it was typed") {
  const std::string log =
      "set 0\ndeclination 24.6E\nobserver AM\nask observer JT\nask  declination 23.9E ; which?\n"
      "rule right\nask rule left\ndate 2026-02-14\nask date 2026-06-05\n\n"
      "ask   station P1 at 44.6891S 169.0144E  # or P2\n"
      "  bedding N62E 37, N60E 35NW\n  ask   bedding N62E 37, N60E 35NW ; 37?\n"
      "ask landmark Cairn 44.65S 169.03E\n  sight Cairn N17W\n  ask leg N14E 40 paces to P1\n";
  const std::string clean = test::clean(log);
  for (const char* line :
       {"\nask  declination 23.9E ; which?\n",
        "\nask   station P1 at 44.6891S 169.0144E  # or P2\n",
        "\n  ask   bedding N62E 37, N60E 35NW ; 37?\n", "\n  ask leg N14E 40 paces to P1\n"})
    CHECK(clean.find(line) != std::string::npos);
  check_round_trip(log);
  reduction::Options options;
  options.rule = HandRule::right;
  options.declination = notebook::DeclinationSetting{};
  check_round_trip(log, options);
}

TEST_CASE("a log's own kind of a newer word survives") {
  check_round_trip("kind ask plane\nstation A\n  ask N62E 37NW\n");
}

TEST_CASE("names keep their quotes where they need them") {
  const std::string log =
      "set 0\ndeclination 24.6E\nlandmark \"Tarr Knob\" 44.6502S 169.0314E ; a \"knob\"\n"
      "landmark \"Mast\" 44.6711S 168.9920E\nlandmark \"#7; east, or > 3\" 44.7033S 169.0467E\n"
      "station \" Camp 2 \" # of May\n  sight \"tarr knob\" N17W ; seen \"well\"\n"
      "  sight Mast N65.5W\n  sight \"#7; east, or > 3\" N87.5E\n"
      "  leg S38E 120m to \"Pt 1,5; # upper\" back N37W ; paced\n"
      "  sample \"A 1\" garnet; \"red\"\n  sample \"A2\"\nstation \"Pt 1,5; # upper\"\n";
  const std::string clean = test::clean(log);
  CAPTURE(clean);
  for (const char* line : {"landmark Mast 44.6711S", "\nstation \"Camp 2\"  # of May\n",
                           "\n  sight \"Tarr Knob\" N17W  ; seen \"well\"\n",
                           "\n  leg S38E 120m back N37W to \"Pt 1,5; # upper\"  ; paced\n",
                           "\n  sample \"A 1\" garnet; \"red\"\n  sample A2\n"})
    CHECK(clean.find(line) != std::string::npos);
  check_round_trip(log);
  const auto rows = comparable(log);
  REQUIRE(rows.size() == 5);
  CHECK(rows[1][0] == "Camp 2");
  CHECK(rows[4][16] == "Pt 1,5; # upper");
  for (const auto& row : rows)
    CHECK(row[23].empty() == (&row != &rows[0]));
}

TEST_CASE("sights from the mark, repeats and readings of other stations survive") {
  const std::string log =
      "date 2026-02-14\nset 0\ndeclination model\nlandmark Mast 44.6711S 168.9920E\n"
      "landmark \"Old, Peak\" 44.6502S 169.0314E\n"
      "station Q1 at 44.6891S 169.0144E ±8\n  sight mast N66W back S67E vertical level\n"
      "  sight Mast back S66E doubtful\nstation Q2\n"
      "  sight \"Old, Peak\" 343, 342.5, N16.5W doubtful vertical 4, 412 ; three times\n"
      "  sight \"old, peak\" 343, N16.5W from Q1 back S17E, 344 # aside\n"
      "  leg from Q1 S38E 120m back N37W slope level\n  leg S38E 40ft from \"Q 9\"\n"
      "  sight Mast from Q2 294.5\n  leg N14E 30m from q2\n";
  check_round_trip(log);
  reduction::Options means;
  means.repeats = reduction::Repeats::mean;
  CHECK(comparable(log, means) == comparable(test::clean(log), means));
  const std::string clean = test::clean(log);
  CAPTURE(clean);
  for (const char* line :
       {"\n  sight Mast N66W back S67E vertical 0\n", "\n  sight Mast back S66E doubtful\n",
        "\n  leg from Q1 S38E 120m slope 0 back N37W\n",
        "\n  sight \"Old, Peak\" from Q1 343, N16.5W back S17E, 344  # aside\n",
        "\n  leg from \"Q 9\" S38E 40ft\n"})
    CHECK(clean.find(line) != std::string::npos);
}

TEST_CASE("where a position came from survives") {
  const std::string log =
      "landmark Mast 44.7S 169E ±30 estimated elevation 1412 map\n"
      "station Q1 at 44.6891S 169.0144E from phone ±8 ; here\n  elevation 812 m barometer\n"
      "station Q2\n  at 59G 345210 5052310 from sketch\n";
  const std::string clean = test::clean(log);
  CHECK(clean.starts_with(
      "landmark Mast 44.7S 169E ±30 from estimated elevation 1412 from map\n\n"
      "station Q1 at 44.6891S 169.0144E ±8 from phone  ; here\n  elevation 812 from barometer\n"));
  check_round_trip(log);
}

TEST_CASE("every order of pairs survives") {
  for (const char* order : {"strike/dip", "direction/dip", "dip/direction", "dip/strike"}) {
    const bool dip_first = std::string_view(order).starts_with("dip/");
    const std::string log =
        "rule right\norder " + std::string(order) + "\nstation A\n bedding " +
        (dip_first ? "41 78, 41 N78E, 90/78, 41/78" : "78 41, N78E 41, 78/90, 78/41") +
        (std::string_view(order) == "dip/strike" ? ", 41/078 N, 078 41 N" : ", 78 41 N, 78/41 N") +
        ", N78E 41N, 41 > 78\n joint vertical 20, 020 90 E, horizontal\n";
    CAPTURE(log);
    for (const std::string& line : test::lines_of(test::csv(log))) {
      CHECK(line.find("rejected") == std::string::npos);
    }
    check_round_trip(log);
  }
  check_round_trip("order plunge/trend\nstation A\n lineation 35 310, 15 85, -35 N50W, 15/N\n");
  check_round_trip("order trend/plunge\nstation A\n lineation 310 35, 85 15, N50W -35, N/15\n");
}

TEST_CASE("trends alone keep their form") {
  const std::string log =
      "kind striae line\nstation A\n  current 7, from s60w, NE, 005 12\n  flute due E\n"
      "  lineation 035 on bedding, NNE, N50.5W 35\n  striae 310 doubtful\n";
  CHECK(test::clean(log).ends_with(
      "\n  current 007, from S60W, NE, 005/12\n  flute E\n"
      "  lineation 035 on bedding, NNE, N50.5W 35\n  striae 310 doubtful\n"));
  check_round_trip(log);
}

TEST_CASE("halves, two ends and facings keep their meaning") {
  const std::string log =
      "kind wall axis\nkind crest line\nrule left\nstation A\n"
      "  wall 290/110, N55W, 122/27\n  groove 35\n  crest 125\n"
      "  joint strike n66w, strike NE doubtful\n  bedding dip 13.5 overturned, dip 20%, dip 0\n"
      "  bedding strike N62E dip 37 NW, dip 37 strike 62, dip 90\n"
      "  bedding N62E 37NW youngs SE facing doubtful, vertical N14E youngs W, 37 > 332 youngs N\n";
  CHECK(test::clean(log).ends_with(
      "\n  wall 290, N55W, 122/27\n  groove 035\n  crest 125\n"
      "  joint strike N66W, strike NE doubtful\n"
      "  bedding dip 13.5 overturned, dip 20%, horizontal\n"
      "  bedding N62E 37NW, 062/37, dip 90\n"
      "  bedding N62E 37NW overturned facing doubtful, N14E 90W upright, 37 > 332 upright\n"));
  check_round_trip(log);
}

TEST_CASE("own errors and how often a reading was had come out again") {
  const std::string log =
      "station A\n  elevation ~790 ft\n  joint ~N37W ~85SW x3\n"
      "  bedding N62E±5 37±2.5 NW, 37 > ~NW, N62E 62%±3 NW doubtful X2\n"
      "  lineation N50W 35 about, 310/~-5\n  leg S38E±2 120m±10 slope ~-5 about\n"
      "  joint N37W 95SW x2\n  joint N37W 85SW by JT x2\n  sight Peak N17W by JT\n";
  CHECK(test::clean(log).ends_with(
      "\n  elevation ~790 ft\n  joint ~N37W ~85SW x3\n"
      "  bedding N62E±5 37±2.5 NW, 37 > ~NW, N62E 62%±3 NW doubtful x2\n"
      "  lineation ~N50W ~35, 310/~-5\n  leg ~S38E±2 ~120m±10 slope ~-5\n"
      "  joint N37W 95SW x2\n  joint N37W 85SW by JT x2\n  sight Peak N17W by JT\n"));
  check_round_trip(log);
}

TEST_CASE("figures read back to the identical value") {
  check_round_trip(
      "declination 11°7'E ±0.35\nset 0°13'W\nrule left\n"
      "station A at 44°41'20.8\"S 169°00'51.9\"E ±33ft\n elevation 1234.5 ft\n"
      " bedding N68°32'17\"E 12°41'S, 68°32' 41, 33.3% > 12.345678\n"
      "station B at 59G 345210.4 5052310.7\n leg 0.1 1000.01ft slope 3.3%\n"
      "station C at 0N 180E\nstation D at 89.9999999N 0.0000001W\n joint vertical 359.99\n");
}

TEST_CASE("bytes that cannot be read stay as they are") {
  const std::string log = "station A\n  note gr\xFCn\n  bedding N78E 41N\n\tbedding \x01 N\n";
  CHECK(test::clean(log) == log);
  check_round_trip(log);
}

TEST_CASE("line ends and a byte-order mark are made plain") {
  CHECK(test::clean("\xEF\xBB\xBFstation A\r\n  bedding N78E 41N\r\n  what is this\r\n") ==
        "station A\n  bedding N78E 41N\n  what is this\n");
}

TEST_CASE("a byte-order mark that was typed is not taken off") {
  for (const char* const typed : {"\r\uFEFFl\n", "\uFEFF\uFEFFl\n", "\n\uFEFFstation A\n"})
    check_round_trip(typed);
  CHECK(test::clean("\r\uFEFFl\n") == "\n\uFEFFl\n");
}

TEST_CASE("a line that would be too long to be read again stays as typed") {
  // In canonical notation there is a space behind each comma.
  std::string line = "b N78E 41N";
  while (line.size() + 11 < 64 * 1024)
    line += ",N78E 41N";
  const std::string text =
      "set 0\nshort b bedding\nstation Q1\n" + line + "\nb N80E 30N,N81E 31N\n";
  check_round_trip(text);
  CHECK(test::clean(text) ==
        "set 0\nshort b bedding\n\nstation Q1\n" + line + "\n  bedding N80E 30N, N81E 31N\n");
}

}  // namespace
}  // namespace lodebook
