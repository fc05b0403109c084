// SPDX-License-Identifier: MIT
// A log as a page: all of it once, well-formed whatever it says.
#include <lodebook/drawing/sheet.hpp>

#include <catch.hpp>

#include <drawing/mapped.hpp>
#include <set>

#include "../small_log.hpp"

using namespace lodebook;
using drawing::Sheet;

namespace {

std::string sheet_of(const std::string& text, output::PlanesAs planes = output::PlanesAs::strike) {
  const notebook::Notebook book = notebook::read_log(notebook::Source("day.log", text));
  reduction::Reduction reduction(book, {});
  Sheet sheet(test::map_of({text}), planes);
  sheet.begin_log(reduction);
  reduction::Page page;
  while (reduction.next(page))
    sheet.page(book.source, page);
  sheet.end_log();
  std::string out;
  sheet.append_html(out);
  return out;
}

const std::string compass = "set 0\ndeclination 24.6E\n";

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != text.npos;
}

std::size_t count(const std::string& text, std::string_view part) {
  std::size_t found = 0;
  for (auto at = text.find(part); at != text.npos; at = text.find(part, at + part.size()))
    ++found;
  return found;
}

/// The values of an attribute, in order.
std::vector<std::string> values(const std::string& text, std::string_view attribute) {
  const std::string begin = ' ' + std::string(attribute) + "=\"";
  std::vector<std::string> found;
  for (auto at = text.find(begin); at != text.npos; at = text.find(begin, at)) {
    at += begin.size();
    found.push_back(text.substr(at, text.find('"', at) - at));
  }
  return found;
}

/// The row of the table with this place in the log.
std::string row_of(const std::string& text, std::string_view place) {
  const auto at = text.find("data-source=\"day.log:" + std::string(place) + "\" role=\"row\"");
  REQUIRE(at != text.npos);
  return text.substr(at, text.find("</tr>", at) - at);
}

/// Elements that are open at the end, or closed out of turn; empty where all is well.
std::string unbalanced(const std::string& text) {
  std::vector<std::string> open;
  auto at = text.find('>') + 1;  // behind the document type
  for (at = text.find('<', at); at != text.npos; at = text.find('<', at + 1)) {
    const auto end = text.find('>', at);
    if (end == text.npos) return "an open tag";
    const std::string tag = text.substr(at + 1, end - at - 1);
    if (tag.ends_with('/')) continue;
    if (!tag.starts_with('/')) {
      open.push_back(tag.substr(0, tag.find(' ')));
    } else if (open.empty() || open.back() != tag.substr(1)) {
      return tag;
    } else {
      open.pop_back();
    }
  }
  return open.empty() ? "" : open.back();
}

void check_page(const std::string& page) {
  CHECK(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
  CHECK(unbalanced(page) == "");
  CHECK(count(page, "<script>") == 1);
  const std::vector<std::string> ids = values(page, "id");
  const std::set<std::string> distinct(ids.begin(), ids.end());
  CHECK(ids.size() == distinct.size());
  for (const std::string& link : values(page, "href")) {
    INFO(link);
    REQUIRE(link.starts_with('#'));
    CHECK(distinct.contains(link.substr(1)));
  }
}

}  // namespace

TEST_CASE("a sheet says how the compass was set, and how many readings there are") {
  const std::string page = sheet_of(test::small_log);
  check_page(page);
  CHECK(contains(page, "<title>Quern Ridge, 2026-02-14</title>"));
  CHECK(contains(page, "<h1>Quern Ridge, 2026-02-14</h1>"));
  CHECK(contains(page,
                 "<dd>dial set to 0 (log), declination 24.6E ±0.4 (log), so 24.6 is added to every "
                 "bearing</dd>"));
  CHECK(contains(page, "<dt>North</dt><dd>output refers to true north</dd>"));
  CHECK(contains(page, "<dt>Rule</dt><dd>right-hand rule (log)</dd>"));
  CHECK(contains(page,
                 "<dd>12 readings: 12 ok, 0 suspect, 0 rejected; 3 stations; 0 lines not "
                 "understood</dd>"));
  CHECK_FALSE(contains(page, "class=\"alarm\""));
}

TEST_CASE("without a declination a sheet says so before all else") {
  const std::string page = sheet_of("station Q1\n  bedding N78E 41N\n");
  check_page(page);
  CHECK(contains(page,
                 "<p class=\"alarm\"><strong>NO DECLINATION IS KNOWN AT THE FIRST READING: "
                 "BEARINGS STAY MAGNETIC</strong></p>"));
  CHECK(contains(page, "<caption>Readings: 1 ok; azimuths from magnetic north</caption>"));
}

TEST_CASE("every reading has one row, as typed and as corrected side by side") {
  const std::string page = sheet_of(test::small_log);
  CHECK(count(page, " role=\"row\"><th scope=\"row\"") == 12);
  CHECK(count(page, "<table role=\"table\"><caption>") == 3);
  CHECK(count(page, "<th scope=\"col\" role=\"columnheader\">") == 21);
  const std::string plane = row_of(page, "17:3");
  CHECK(contains(plane,
                 "<th scope=\"row\" role=\"rowheader\">17</th><td role=\"cell\">bedding</td>"
                 "<td role=\"cell\"><a href=\"#net\">N62E 37NW</a></td>"
                 "<td role=\"cell\"><b>266.6/37.0 N</b><span>N86.6E 37.0N</span></td>"));
  CHECK(contains(plane, "<td role=\"cell\">+24.60</td><td role=\"cell\"><b>ok</b></td>"));
  const std::string line = row_of(page, "18:3");
  CHECK(contains(line, ">N50W 35 on bedding</a>"));
  CHECK(contains(line, "<b>334.6/35.0</b><span>N25.4W 35.0</span>"));
  const std::string leg = row_of(page, "29:3");
  CHECK(contains(leg, ">S38E 120m back N37W to Q3</a><i>paced</i>"));
  CHECK(contains(leg, "<b>166.6</b><span>S13.4E</span><span>back 347.6, 120.0 m</span>"));
  // The side of a vertical plane was not typed.
  CHECK(contains(row_of(page, "32:3"), "<b>038.6/90.0</b><span>N38.6E 90.0</span>"));
}

TEST_CASE("a sheet shows planes by their direction where asked") {
  const std::string page =
      sheet_of("set 0\ndeclination 0\nstation Q1\nbedding N62E 37NW\nlineation N50W 35\n",
               output::PlanesAs::direction);
  CHECK(contains(row_of(page, "4:1"), "<b>37.0 &gt; 332.0</b><span>37.0 &gt; N28.0W</span>"));
  CHECK(contains(row_of(page, "5:1"), "<b>310.0/35.0</b>"));
  CHECK(
      contains(page, "A corrected plane is its dip and the direction towards which it goes down"));
}

TEST_CASE("repeats have a row each and their remark once") {
  const std::string page = sheet_of(test::small_log);
  CHECK(contains(row_of(page, "19:3"), "<i>another face, three times</i>"));
  for (const char* const place : {"19:24", "19:35"})
    CHECK_FALSE(contains(row_of(page, place), "<i>"));
}

TEST_CASE("what is known of a station stands above its table, what was checked below") {
  const std::string page = sheet_of(test::small_log);
  CHECK(contains(page, "<h3>Q1</h3>"));
  CHECK(contains(page, "<dd>44.68910S 169.01440E given ±8 m, elevation 812 m</dd>"));
  CHECK(contains(page, "<dt>Time</dt><dd>09:40</dd>"));
  CHECK(contains(page, "<dt>Unit</dt><dd>banded schist</dd>"));
  CHECK(contains(page, "<dt>Sample</dt><dd>Q1-a garnet band</dd>"));
  CHECK(contains(page, "<dt>Note</dt><dd>contact is 3 m upslope; float below</dd>"));
  CHECK(contains(page, "<li><span>fore and back bearings 1.0° apart</span></li>"));
}

TEST_CASE("what changes within a station says from which line on") {
  const std::string page = sheet_of(compass +
                                    "date 2026-02-14\nobserver AM\nstation Q1\n  unit schist\n"
                                    "  bedding N78E 41N\n  unit gneiss\n  observer JT\n"
                                    "  bedding N80E 30N\n");
  CHECK(contains(page, "<dt>Unit</dt><dd>schist; from line 10 gneiss</dd>"));
  CHECK(contains(page, "<dt>Observer</dt><dd>AM; from line 10 JT</dd>"));
  CHECK_FALSE(contains(page, "<dt>Date</dt>"));
}

TEST_CASE("a rejected reading shows what was typed and why, and is in no picture") {
  const std::string page = sheet_of(compass + "station Q1\n  bedding N98E 41N\n");
  check_page(page);
  const std::string row = row_of(page, "4:3");
  CHECK(contains(row, "<span>N98E 41N</span></td><td role=\"cell\"><i>none</i></td>"));
  CHECK(contains(row,
                 "<b>rejected</b><a href=\"#fault-4-11-quadrant-angle\">a quadrant bearing "
                 "has an angle over 90</a>"));
  CHECK(contains(page, "There is no net and no rose: no plane and no line was read."));
  CHECK_FALSE(contains(page, "<svg"));
}

TEST_CASE("a fault has its message, its place in the line as typed, and its remedy, once") {
  const std::string page = sheet_of(compass + "station Q1\n  bedding N98E 41N\n");
  CHECK(count(page, "[quadrant-angle]") == 1);
  CHECK(contains(page,
                 "<li class=\"error\" id=\"fault-4-11-quadrant-angle\"><p><strong>error, line "
                 "4:</strong> quadrant angle 98 is over 90 "));
  CHECK(contains(page,
                 "<code>  bedding <mark>N98E</mark> 41N</code>"
                 "<p class=\"help\">S82E is 98 degrees clockwise from north</p></li>"));
}

TEST_CASE("what most deserves a second look comes first and leads to its fault") {
  const std::string page = sheet_of(compass + "station Q1\n  bedding N98E 41N\n");
  const auto look = page.find("<h2>Look here first</h2>");
  REQUIRE(look != page.npos);
  CHECK(look < page.find("<h2>Stations</h2>"));
  CHECK(contains(page,
                 "<li><a href=\"#fault-4-11-quadrant-angle\">Q1, line 4</a>: quadrant angle "
                 "98 is over 90<code>"));
  CHECK(contains(sheet_of(test::small_log), "<p>Nothing stands out for a second look.</p>"));
}

TEST_CASE("pictures show each plane and line by the place that its row has") {
  const std::string page = sheet_of(test::small_log);
  for (const char* const place : {"17:3", "18:3", "19:24", "20:3"}) {
    INFO(place);
    // Its row, the net, and the rose; the map too, but for the second of three repeats.
    CHECK(count(page, "data-source=\"day.log:" + std::string(place) + '"') ==
          (std::string_view(place) == "19:24" ? 3 : 4));
  }
  CHECK(count(page, "<svg ") == 3);
  CHECK(contains(page, "<desc id=\"net-description\">bedding: 4 readings of 2 surfaces"));
  CHECK(contains(page, "<desc id=\"rose-description\">bedding: 2 strikes"));
}

TEST_CASE("a map is shown where there is one, and its readings can be reached") {
  const std::string page = sheet_of(test::small_log);
  CHECK(contains(page, "<title id=\"map-title\">"));
  CHECK(contains(row_of(page, "26:3"), "<a href=\"#map\">Cairn     N17W</a>"));
  CHECK_FALSE(contains(page, "There is no map"));
  CHECK(contains(page, "<p>The map is fitted to screen or paper: measure by its bar"));

  const std::string without = sheet_of(compass + "station Q1\n  sight Cairn N17W\n");
  check_page(without);
  CHECK(contains(without, "<p>There is no map: no position is known.</p>"));
  CHECK(contains(row_of(without, "4:3"), "<span>Cairn N17W</span>"));
  CHECK_FALSE(contains(without, "map-title"));
  CHECK_FALSE(contains(without, "measure by its bar"));
}

TEST_CASE("landmarks alone have a map too") {
  const std::string page =
      sheet_of(compass + "landmark Cairn 44.6502S 169.0314E\nstation Q1\n  joint N14E 80E\n");
  check_page(page);
  CHECK(contains(page, "<title id=\"map-title\">"));
  CHECK_FALSE(contains(page, "There is no map"));
  CHECK(contains(page, "<p>Not on the map: 1 reading without a position: Q1 (1).</p>"));
}

TEST_CASE("a sheet names no ratio of scale, as its size is not ours") {
  const std::string page = sheet_of(test::small_log);
  CHECK(contains(page, "id=\"map\""));
  CHECK_FALSE(contains(page, ">1:"));
  CHECK_FALSE(contains(page, "Map 1:"));
  CHECK(contains(page, "measure by its bar"));
}

TEST_CASE("stations too far apart for one map are said instead of it") {
  const std::string page = sheet_of(compass +
                                    "station Q1 at 44.6891S 169.0144E\nbedding 085/32\n"
                                    "station Q2 at 44.6891N 169.0144E\nbedding 085/32\n");
  CHECK_FALSE(contains(page, "id=\"map\""));
  CHECK(contains(page,
                 "<p>There is no map: station Q1 and station Q2 of day.log lie 9901 km "
                 "apart.</p>"));
}

TEST_CASE("what the map could not draw is said among the cautions") {
  const std::string page =
      sheet_of(std::string(test::small_log) + "station Q9\n  bedding N78E 41N\n");
  CHECK(contains(page, "<p>Not on the map: 1 reading without a position: Q9 (1).</p>"));
}

TEST_CASE("a page that gives positions cautions, one that does not has nothing to caution of") {
  CHECK(contains(sheet_of(test::small_log),
                 "<p>Positions, slopes and bearings here are no substitute for local knowledge or "
                 "licensed survey practice.</p>"));
  CHECK_FALSE(contains(sheet_of(compass + "station Q1\n  bedding N78E 41N\n"), "cautions"));
}

TEST_CASE("what a log says cannot become markup, hide or turn the page round") {
  const std::string hostile = "<script>alert(1)</script>\"'><b>&amp;";
  const std::string page = sheet_of(
      "area " + hostile + "\nobserver " + hostile + "\n" + compass + "station " + hostile +
      "\n  unit " + hostile + "\n  bedding N78E\t41N ; " + hostile +
      "\n  note \x1b[31m\xff \u202E\n" + "  bedding " + hostile + "\n" + hostile + "\nstation " +
      std::string(500, 'Q') + "\n  joint N14E 80E\nstation " + hostile + "\n");
  check_page(page);
  CHECK(contains(page,
                 "<h1>&lt;script&gt;alert(1)&lt;/script&gt;&quot;'&gt;&lt;b&gt;&amp;amp;</h1>"));
  CHECK(contains(page, ">N78E 41N</a>"));
  CHECK(contains(page, "<h3>" + std::string(500, 'Q') + "</h3>"));
  CHECK_FALSE(contains(page, "\x1b"));
  CHECK_FALSE(contains(page, "\xff"));
  CHECK_FALSE(contains(page, "\u202E"));
  CHECK_FALSE(contains(page, "\t"));
}

TEST_CASE("readings before the first station and stations without any are there") {
  const std::string page = sheet_of(compass + "bedding N78E 41N\nstation\nstation Q2\n");
  check_page(page);
  CHECK(contains(page, "<h3>before the first station</h3>"));
  CHECK(contains(page, "<h3>station without a name</h3>"));
  CHECK(contains(page, "<h3>Q2</h3>"));
  CHECK(count(page, "<p>No readings.</p>") == 2);
  CHECK_FALSE(contains(sheet_of(test::small_log), "before the first station"));
}

TEST_CASE("an empty log is a page too") {
  const std::string page = sheet_of("");
  check_page(page);
  CHECK(contains(page, "<h1>day.log</h1>"));
}

TEST_CASE("a sheet asks for nothing from outside and lets one script run") {
  const std::string page = sheet_of(test::small_log);
  CHECK(contains(page,
                 "content=\"default-src 'none'; style-src 'unsafe-inline'; script-src "
                 "'sha256-"));
  CHECK(count(page, "://") == count(page, "xmlns=\"http://www.w3.org/2000/svg\""));
  CHECK(values(page, "src").empty());
  CHECK_FALSE(contains(page, "@import"));
}

TEST_CASE("the same log is the same page, and a hundred stations stay small") {
  std::string log = compass + "rule right\n";
  for (int i = 1; i <= 100; ++i) {
    log += "station R" + std::to_string(i) + "\n  bedding N8" + std::to_string(i % 10) + "E 3" +
           std::to_string(i % 7) + "N, N84E 33N, N82E 31N\n  lineation N2" + std::to_string(i % 9) +
           "W 25\n  cleavage N5" + std::to_string(i % 8) + "W 70SW\n" + "  joint N1" +
           std::to_string(i % 10) + "E 80E\n  joint N98E 80S\n";
  }
  const std::string page = sheet_of(log);
  check_page(page);
  CHECK(page == sheet_of(log));
  CHECK(page.size() < 2'000'000);
  CHECK(count(page, " role=\"row\"><th scope=\"row\"") == 700);
}
