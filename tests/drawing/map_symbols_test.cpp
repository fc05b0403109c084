// SPDX-License-Identifier: MIT
// A map's symbols: each reading once, turned by its azimuth on the grid, in the form of its kind.
#include <lodebook/drawing/map.hpp>

#include <drawing/mapped.hpp>
#include <lodebook/earth/grid.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <random>
#include <set>
#include <small_log.hpp>

namespace earth = lodebook::earth;
using lodebook::append_figure;
using lodebook::rounded;
using namespace lodebook::test;

namespace {

constexpr earth::Position somewhere{-44.6891, 169.0144};
const std::string station = "station Q1 at 44.6891S 169.0144E\n";

Drawn only(const std::string& reading) {
  std::vector<Drawn> readings = drawn(mapped(station + reading + '\n').picture);
  INFO(reading);
  REQUIRE(readings.size() == 1);
  return readings.front();
}

/// What a symbol is made of, without where it is: two forms differ where this does.
std::string form_of(const Drawn& symbol) {
  std::string form;
  for (const Shape& shape : symbol.shapes) {
    if (shape.role == Role::halo) continue;
    form += std::to_string(static_cast<int>(shape.role));
    if (const auto* const path = std::get_if<Path>(&shape.form)) {
      // The strike line is the same in all; other parts by their size.
      double length = 0;
      for (std::size_t i = 1; i < path->parts.front().size(); ++i)
        length += distance(path->parts.front()[i - 1], path->parts.front()[i]);
      form += 'p' + std::to_string(path->parts.front().size()) + ':' +
              std::to_string(rounded(length, 2));
    } else if (const auto* const circle = std::get_if<Circle>(&shape.form)) {
      form += 'c' + std::to_string(rounded(circle->radius, 2));
    }
    form += ' ';
  }
  return form;
}

}  // namespace

TEST_CASE("every reading with a place and a direction is on the map once") {
  const Mapped map = mapped(std::vector<std::string>{small_log});
  std::multiset<std::string> titles;
  std::set<std::string> sources;
  for (const Drawn& one : drawn(map.picture)) {
    titles.insert(one.reading.title);
    sources.insert(one.reading.source);
    CHECK_FALSE(one.shapes.empty());
  }
  // The declination is 24.6 east.
  const std::multiset<std::string> expected = {
      "Q1, bedding: N62E 37NW as typed, N86.6E 37.0N from true north",
      "Q1, lineation: N50W 35 on bedding as typed, N25.4W 35.0 from true north",
      "Q1, bedding: N58E 34NW, N60E 35NW, 063/36 NW as typed, N85.0E 35.0N from true north",
      "Q1, cleavage: 61 > N36W as typed, N78.6E 61.0N from true north",
      "Q1, sight: Trig-Dome N66W as typed, N41.4W from true north",
      "Q2, sight: Cairn     N17W as typed, N7.6E from true north",
      "Q2, sight: Trig-Dome N65.5W as typed, N40.9W from true north",
      "Q2, sight: Saddle    N87.5E as typed, S67.9E from true north",
      "Q2, leg: S38E 120m back N37W to Q3 as typed, S13.4E from true north",
      "Q3, joint: vertical N14E as typed, N38.6E 90.0 from true north"};
  CHECK(titles == expected);
  CHECK(sources.contains("day.log:17:3"));
  CHECK(sources.size() == expected.size());
  CHECK(map.remarks.empty());
}

TEST_CASE("only the kinds that are asked for are drawn") {
  const Mapped map = mapped({small_log}, {.kinds = {"Bedding", "leg"}, .without_suspect = false});
  CHECK(drawn(map.picture).size() == 3);
  CHECK(says(text_of(map.picture), "Only these kinds: bedding, leg."));
}

TEST_CASE("suspect readings can be left out, and are counted") {
  const std::string log = on_the_map +
                          "station Q1 at 46.5N 9.6E\n  bedding 010/30 E\n"
                          "  bedding 200/40 W doubtful\n";
  CHECK(drawn(mapped({log}).picture).size() == 2);
  const Mapped map = mapped({log}, {.kinds = {}, .without_suspect = true});
  CHECK(drawn(map.picture).size() == 1);
  CHECK(says(text_of(map.picture), "Left out as suspect: 1 reading."));
}

TEST_CASE("strike lines lie along the strike less the convergence, ticks down dip") {
  constexpr unsigned seed = 13;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const double convergence = earth::grid_position(somewhere).convergence.degrees_east();
  REQUIRE(convergence > 1.3);
  for (int i = 0; i < 60; ++i) {
    const auto strike = static_cast<int>(random() % 360);
    const auto dip = static_cast<int>(random() % 89 + 1);
    std::string figure;
    append_figure(figure, strike, 0, 3);
    const std::string dip_figure = std::to_string(dip);
    const Drawn symbol = only("bedding " + figure + (dip < 10 ? "/0" : "/") + dip_figure);
    INFO(symbol.reading.title);
    CHECK(symbol.words() == dip_figure);
    const auto lines = symbol.paths(Role::symbol);
    REQUIRE(lines.size() == 2);
    CHECK(apart(azimuth(lines[0][0], lines[0][1]), strike - convergence) < 0.01);
    CHECK(distance(0.5 * (lines[0][0] + lines[0][1]), lines[1][0]) < 1e-9);
    CHECK(apart(azimuth(lines[1][0], lines[1][1]), strike + 90 - convergence) < 0.01);
    CHECK(distance(lines[0][0], lines[0][1]) > 2 * distance(lines[1][0], lines[1][1]));
  }
}

TEST_CASE("arrows point along the trend less the convergence") {
  const double convergence = earth::grid_position(somewhere).convergence.degrees_east();
  const Drawn symbol = only("lineation 220/35");
  CHECK(symbol.words() == "35");
  const auto shaft = symbol.paths(Role::symbol).front();
  CHECK(apart(azimuth(shaft[0], shaft[1]), 220 - convergence) < 0.01);
}

TEST_CASE("titles are as pictures of groups have them") {
  CHECK(only("bedding 078/41").reading.title ==
        "Q1, bedding: 078/41 as typed, 078.0/41.0 S from true north");
  CHECK(only("current 220/-12").reading.title ==
        "Q1, current: 220/-12 as typed, 220.0/-12.0 from true north");
  CHECK(only("bedding horizontal").reading.title ==
        "Q1, bedding: horizontal as typed, horizontal from true north");
}

TEST_CASE("a mean says where all of its readings stand, rejected ones left out") {
  const Drawn mean = drawn(mapped(station + "bedding N75E 39N, N98E 40N, N77E 40N, 081/42 N\n"
                                            "bedding N78E 41N\n")
                               .picture)
                         .front();
  CHECK(mean.reading.source == "day.log:5:1");
  CHECK(mean.reading.repeats == "5:29 5:39");
  CHECK(only("bedding N75E 39N").reading.repeats.empty());
  std::string svg;
  lodebook::drawing::append_svg_file(svg, mapped(station + "bedding N75E 39N, N77E 40N\n").picture);
  CHECK(says(svg, "data-source=\"day.log:5:1\" data-repeats=\"5:19\">"));
}

TEST_CASE("a current that rises points where it was typed") {
  const double convergence = earth::grid_position(somewhere).convergence.degrees_east();
  const Drawn symbol = only("current 220/-12");
  CHECK(symbol.words() == "-12");
  const auto shaft = symbol.paths(Role::symbol).front();
  CHECK(apart(azimuth(shaft[0], shaft[1]), 220 - convergence) < 0.01);
}

TEST_CASE("a line whose plunge was not read is an arrow without a figure") {
  for (const std::string kind : {"current", "lineation"}) {
    const Drawn alone = only(kind + " 118");
    const Drawn whole = only(kind + " 118/20");
    CHECK(alone.words() == (kind == "current" ? "" : "()"));
    CHECK(whole.words() == "20");
    CHECK(alone.paths(Role::symbol).size() == whole.paths(Role::symbol).size());
    CHECK(alone.paths(Role::symbol).front() == whole.paths(Role::symbol).front());
  }
}

TEST_CASE("a two-ended line has two heads, a strike alone no mark") {
  const auto strokes = [](const std::string& reading) {
    return only(reading).paths(Role::symbol).size();
  };
  CHECK(strokes("lineation horizontal 118") == strokes("lineation 118/20") + 1);
  CHECK(strokes("alignment 118") == strokes("lineation horizontal 118"));
  CHECK(only("alignment 118").words().empty());
  CHECK(only("alignment 118/20").words() == "20");
  CHECK(strokes("joint strike 118") == 1);
  CHECK(only("joint strike 118").words().empty());
  CHECK(only("bedding 078/41 upright facing doubtful").words() == "41?");
}

TEST_CASE("a dip alone is not on the map, which says so") {
  const Mapped map = mapped(station + "joint dip 13\n");
  CHECK(drawn(map.picture).empty());
  const auto notes = map.remarks;
  REQUIRE(notes.size() == 1);
  CHECK(notes.front().starts_with("1 reading of a dip alone"));
}

TEST_CASE("a level line has two ends, a level flute one") {
  const auto strokes = [](const std::string& reading) {
    const Drawn symbol = only(reading);
    return symbol.paths(Role::symbol).size() + symbol.paths(Role::solid).size();
  };
  CHECK(strokes("lineation horizontal 030") > strokes("lineation 030/20"));
  CHECK(strokes("flute horizontal 030") == strokes("flute 030/20"));
}

TEST_CASE("horizontal, vertical, overturned and upright bedding have their own forms") {
  const std::vector<std::string> readings = {
      "bedding 078/41",         "bedding horizontal",
      "bedding vertical N14E",  "bedding 078/41 overturned",
      "bedding 078/41 upright", "bedding horizontal overturned"};
  std::set<std::string> forms;
  for (const std::string& reading : readings)
    forms.insert(form_of(only(reading)));
  CHECK(forms.size() == readings.size());
  CHECK(only("bedding 078/41 facing unknown").words() == "41?");
  CHECK(only("bedding 078/41 doubtful").words() == "(41)");
  CHECK(only("bedding horizontal").words().empty());
  CHECK(only("bedding vertical N14E").words().empty());
}

TEST_CASE("the form follows the figure that is printed") {
  CHECK(form_of(only("bedding 078 89.7 S")) == form_of(only("bedding vertical N78E")));
  CHECK(form_of(only("bedding 078 0.3 S")) == form_of(only("bedding horizontal")));
  CHECK(only("bedding 078 89.4 S").words() == "89");
}

TEST_CASE("every kind of plane and of line has its own form") {
  std::set<std::string> forms;
  std::size_t kinds = 0;
  for (const std::string kind : {"bedding", "foliation", "cleavage", "schistosity", "joint",
                                 "fault", "shear", "vein", "dike", "contact", "axial-plane"}) {
    for (const std::string attitude : {" 078/41", " vertical N78E"}) {
      forms.insert(form_of(only(kind + attitude)));
      ++kinds;
    }
  }
  for (const std::string kind :
       {"lineation", "slickenline", "fold-axis", "intersection", "stretching", "flute", "current",
        "striation", "groove", "crest", "alignment"}) {
    for (const std::string attitude : {" 078/41", " horizontal 078", " vertical"}) {
      forms.insert(form_of(only(kind + attitude)));
      ++kinds;
    }
  }
  const Mapped own =
      mapped("kind striae line\nkind vug plane\n" + station + "striae 078/41\nvug 078/41\n");
  for (const Drawn& symbol : drawn(own.picture)) {
    forms.insert(form_of(symbol));
    ++kinds;
  }
  CHECK(kinds == 57);
  CHECK(forms.size() == kinds);
}

TEST_CASE("a fault's ball lies on the side that went down, arrows go with its sense") {
  const double convergence = earth::grid_position(somewhere).convergence.degrees_east();
  // Strike 000, dip to the east: the hanging wall is in the east.
  const auto ball_side = [&](const std::string& sense) {
    const Drawn symbol = only("fault 000/60 " + sense);
    const auto strike = symbol.paths(Role::symbol).front();
    for (const Shape& shape : symbol.shapes) {
      if (const auto* const ball = std::get_if<Circle>(&shape.form))
        return std::remainder(azimuth(strike[0], ball->center) + convergence, 360.0);
    }
    return 0.0;
  };
  CHECK(ball_side("normal") > 0);
  CHECK(ball_side("reverse") < 0);
  // Across a dextral fault the far side goes to the right: the eastern block goes south.
  const auto eastern_way = [&](const std::string& sense) {
    const auto lines = only("fault 000/60 " + sense).paths(Role::symbol);
    for (const auto& line : lines) {
      // Half arrows have three points and no end on the strike line.
      if (line.size() == 3 && line[0].x > lines[0][0].x + 0.3 && line[1].x > lines[0][0].x + 0.3 &&
          distance(line[0], line[1]) > 1.5)
        return azimuth(line[0], line[1]);
    }
    return 90.0;
  };
  CHECK(apart(eastern_way("dextral"), 180 - convergence) < 0.01);
  CHECK(apart(eastern_way("sinistral"), -convergence) < 0.01);
  CHECK(only("fault vertical N14E normal").words() == "n");
  CHECK(only("slickenline 078/41 dextral").words() == "41d");
}

TEST_CASE("the legend explains the letters of senses that symbols cannot show") {
  const std::string text =
      text_of(mapped(station + "fault vertical N14E normal\nslickenline 078/41 dextral\n").picture);
  CHECK(says(text, "34n\n"));
  CHECK(says(text, "movement: normal\n"));
  CHECK(says(text, "34d\n"));
  CHECK(says(text, "movement: dextral\n"));
  CHECK_FALSE(says(text, "movement: reverse\n"));
}

TEST_CASE("a plane and a line of one name have each their row in the legend") {
  const std::string text =
      text_of(mapped({on_the_map + "kind rib plane\n" + station + "rib 078/41\n",
                      on_the_map + "kind rib line\n" + station + "rib 078/41\n"})
                  .picture);
  const auto first = text.find("\nrib\n");
  REQUIRE(first != text.npos);
  CHECK(text.find("\nrib\n", first + 1) != text.npos);
}

TEST_CASE("the legend explains what is used, and says which symbols follow the standard") {
  const std::string text = text_of(mapped(station + "bedding 078/41\nvein 078/41\n").picture);
  const auto standard = text.find("Symbols after FGDC-STD-013-2006\n");
  const auto own = text.find("Our own symbols\n");
  CHECK(standard != text.npos);
  CHECK(own != text.npos);
  CHECK(says(text, "\nbedding\n"));
  CHECK(says(text, "\nvein\n"));
  CHECK_FALSE(says(text, "\njoint\n"));
  CHECK_FALSE(says(text_of(mapped(station + "bedding 078/41\n").picture), "Our own symbols"));
}
