// SPDX-License-Identifier: MIT
// Advice is a promise: what a help offers is accepted, with the meaning that it claims.
#include "notebook/advice.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <lodebook/notebook/catalogue.hpp>
#include <random>

namespace lodebook::test {
namespace {

using notebook::Diagnostic;
using notebook::Severity;

constexpr std::uint64_t seed = 20260214;

int rounds() {
  const char* const asked = std::getenv("LODEBOOK_ROUNDS");
  const int count = asked ? std::atoi(asked) : 0;
  return count > 0 ? count : 6000;
}

const std::string_view headings[] = {
    "",
    "rule right",
    "rule left\norder strike/dip",
    "order direction/dip",
    "order direction/dip\nrule right",
    "order dip/direction plunge/trend",
    "rule left\norder dip/strike",
    "order trend/plunge\npace 0.76m",
};

const std::string_view readings[] = {
    "bedding N62E 37NW",
    "bedding N62E/37 NW",
    "bedding 242 37 NW",
    "bedding 242/37 NW overturned",
    "joint 37 > 332",
    "joint 37 to N28W doubtful",
    "cleavage 61 > N36W",
    "bedding N58E 34NW, N60E 35NW, 063/36 NW",
    "bedding N62E 37",
    "bedding 062/37",
    "bedding N14.5E 62% SE",
    "joint vertical N14E",
    "vein E 37 N",
    "fault S62°30'W 88SE reverse",
    "lineation N50W 35",
    "lineation 310/35",
    "lineation 35 > 310",
    "lineation 310.5/-16",
    "lineation horizontal N50W",
    "slickenline rake 40 from N62E dextral",
    "stretching NNW 16",
    "sight Cairn N17W vertical -4",
    "sight Cairn 343 south-end",
    "leg S38E 120m back N37W",
    "leg 142 80m slope 14% to Q3",
};

/// The slips of a tired hand, each at a place of its own.
class Slips {
 public:
  explicit Slips() : engine_(seed) {
    std::cout << "seed " << seed << ": " << Catch::getResultCapture().getCurrentTestName() << '\n';
  }
  std::size_t below(std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(engine_);
  }
  template <std::size_t Size>
  std::string_view one_of(const std::string_view (&texts)[Size]) {
    return texts[below(Size)];
  }

  std::string slip(std::string line) {
    const std::size_t words = line.find(' ') + 1;  // the kind stays
    const auto where = [&](std::string_view of) {
      std::vector<std::size_t> places;
      for (std::size_t at = words; at < line.size(); ++at) {
        if (of.find(line[at]) != std::string_view::npos) places.push_back(at);
      }
      return places.empty() ? std::string::npos : places[below(places.size())];
    };
    const std::size_t digit = where("0123456789");
    const std::size_t letter = where("NESW");
    const std::size_t space = where(" ");
    const auto at = [&](std::size_t place, auto change) {
      if (place != std::string::npos) change(place);
    };
    switch (below(14)) {
      case 0:
        at(digit, [&](std::size_t i) { line.insert(i, 1, static_cast<char>('0' + below(10))); });
        break;
      case 1:
        at(digit, [&](std::size_t i) { line.erase(i, 1); });
        break;
      case 2:
        at(digit, [&](std::size_t i) { line[i] = static_cast<char>('0' + below(10)); });
        break;
      case 3:
        at(letter, [&](std::size_t i) { line.erase(i, 1); });
        break;
      case 4:
        at(letter, [&](std::size_t i) { line[i] = "NESW"[below(4)]; });
        break;
      case 5:
        at(digit, [&](std::size_t i) { line.insert(i, "-"); });
        break;
      case 6:
        at(space, [&](std::size_t i) { line[i] = "-,/>"[below(4)]; });
        break;
      case 7:
        at(space, [&](std::size_t i) { line.erase(i, 1); });
        break;
      case 8:
        at(digit, [&](std::size_t i) { line.insert(i + 1, one_of(marks_)); });
        break;
      case 9:
        at(where("."), [&](std::size_t i) { line[i] = ','; });
        break;
      case 10:
        at(where("0"), [&](std::size_t i) { line[i] = 'O'; });
        break;
      case 11:
        at(space, [&](std::size_t i) { line.insert(i, ","); });
        break;
      case 12:
        at(line.find_last_of(' '), [&](std::size_t i) { line.erase(i); });
        break;
      default:
        swap_two_words(line, words);
    }
    return line;
  }

 private:
  void swap_two_words(std::string& line, std::size_t words) {
    const std::size_t first = line.find_first_of(" />", words);
    if (first == std::string::npos) return;
    const std::size_t begin = line.find_first_not_of(" />", first);
    if (begin == std::string::npos) return;
    const std::size_t end = std::min(line.find(' ', begin), line.size());
    line = line.substr(0, words) + line.substr(begin, end - begin) +
           line.substr(first, begin - first) + line.substr(words, first - words) + line.substr(end);
  }

  static constexpr std::string_view marks_[] = {"'", "°", "%", "\"", ".", "..", ",5"};
  std::mt19937_64 engine_;
};

/// The azimuth of `N62E` or `242`, read by no reader of the program; below 0 for anything else.
double azimuth_of(const std::string& word) {
  char pole[2] = "";
  char side[2] = "";
  double angle = 0;
  int end = 0;
  const auto is_all = [&] { return static_cast<std::size_t>(end) == word.size(); };
  if (std::sscanf(word.c_str(), "%lf%n", &angle, &end) == 1 && is_all()) return angle;
  if (std::sscanf(word.c_str(), "%1[NS]%lf%1[EW]%n", pole, &angle, side, &end) != 3 || !is_all())
    return -1;
  const double from_pole = (pole[0] == 'N') == (side[0] == 'E') ? angle : -angle;
  return std::fmod((pole[0] == 'N' ? 360 : 180) + from_pole, 360.0);
}

double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

/// Whether a mended line of a plain form (`37 > 332`, `N62E 37NW`, `310/35`) means what it says to
/// a geologist; nothing is asked of any other line.
bool means_what_it_says(const std::string& line, const std::string& heading) {
  std::string plain = line.substr(line.find(' ') + 1);
  std::ranges::replace(plain, '/', ' ');
  char first[16] = "";
  char second[16] = "";
  double figure = 0;
  char side[4] = "";
  int end = 0;
  const auto is_all = [&] { return static_cast<std::size_t>(end) == plain.size(); };
  const Book book = read_line(line, heading);
  const auto reading = last<notebook::Reading>(book);
  const auto* plane = std::get_if<notebook::PlaneAttitude>(&reading.what);
  const auto* straight = std::get_if<notebook::LineAttitude>(&reading.what);
  if (plane && plane->dip_first) {
    const std::size_t dip_end = plain.find(' ');
    const std::size_t strike_end = std::min(plain.find(' ', dip_end + 1), plain.size());
    plain = plain.substr(dip_end + 1, strike_end - dip_end - 1) + ' ' + plain.substr(0, dip_end) +
            plain.substr(strike_end);
  }
  if (std::sscanf(plain.c_str(), "%lf > %15s%n", &figure, second, &end) == 2 && is_all() &&
      azimuth_of(second) >= 0) {
    const double azimuth = azimuth_of(second);
    if (plane && figure > 0)
      return apart(plane->plane()->strike().degrees() + 90, azimuth) < 1e-9 &&
             plane->plane()->dip().degrees() == figure;
    if (straight && figure > 0)
      return apart(straight->line()->trend().degrees(), azimuth) < 1e-9 &&
             straight->line()->plunge().degrees() == figure;
    return true;
  }
  if (plane &&
      std::sscanf(plain.c_str(), "%15s %lf%*1[ ]%3[NESW]%n", first, &figure, side, &end) < 3)
    std::sscanf(plain.c_str(), "%15s %lf%3[NESW]%n", first, &figure, side, &end);
  const auto point = point_named(side);
  const double strike = azimuth_of(first);
  if (!plane || !point || !is_all() || strike < 0 || figure == 0) return true;
  const double down = plane->plane()->strike().degrees() + 90;
  return std::abs(std::remainder(plane->plane()->strike().degrees() - strike, 180.0)) < 1e-9 &&
         apart(down, degrees_of(*point)) <= 67.5 && plane->plane()->dip().degrees() == figure;
}

void check_promises(const Book& book) {
  for (const Diagnostic& fault : book.diagnostics) {
    if (fault.severity != Severity::error || fault.code == notebook::Code::trailing_text) continue;
    CAPTURE(fault.message, fault.help);
    CHECK(broken_promise(book, fault) == "");
  }
}

TEST_CASE("what a help offers for a slip in a reading is accepted") {
  Slips slips;
  std::size_t faults = 0;
  std::size_t offered = 0;
  for (int round = 0; round < rounds(); ++round) {
    std::string line(slips.one_of(readings));
    for (std::size_t i = 0, count = 1 + slips.below(2); i < count; ++i)
      line = slips.slip(std::move(line));
    const std::string heading(slips.one_of(headings));
    CAPTURE(heading, line);
    const Book book = read_line("fault N62E 37NW\n" + line, heading);
    check_promises(book);
    for (const Diagnostic& fault : book.diagnostics) {
      if (fault.severity != Severity::error) continue;
      for (const std::string& mended : lines_with_fixes(book, fault)) {
        CAPTURE(mended);
        if (mended.find(',') == std::string::npos) CHECK(means_what_it_says(mended, heading));
      }
      ++faults;
      if (!fault.fixes.empty()) ++offered;
    }
  }
  std::cout << faults << " faults, " << offered << " with something to type\n";
  // Else the test would say nothing.
  CHECK(faults > static_cast<std::size_t>(rounds()) / 3);
  CHECK(offered > faults / 3);
}

/// What a fault's fixes make of its line, in their order.
std::vector<std::string> mended(std::string_view line, std::string_view heading) {
  const Book book = read_line(line, heading);
  std::vector<std::string> lines;
  for (const Diagnostic& fault : book.diagnostics) {
    for (std::string& mended : lines_with_fixes(book, fault))
      lines.push_back(std::move(mended));
  }
  return lines;
}

struct Meant {
  std::string_view line;
  std::vector<std::string> mended;
  std::string_view help;  ///< a part of it
  std::string_view heading = "";
};

TEST_CASE("a help names what was meant, the likeliest first") {
  const Meant rows[] = {
      // bearings
      {"bedding N98E 37N", {"bedding S82E 37N"}, "S82E is 98 degrees clockwise from north"},
      {"bedding N98E 37", {"bedding S82E 37 S", "bedding S82E 37 N"}, "'S82E 37 S'"},
      {"lineation E25N 35", {"lineation N65E 35"}, "N65E? type 'N65E 35'"},
      {"lineation N50 35",
       {"lineation N50E 35", "lineation N50W 35"},
       "N50E or N50W? type 'N50E 35' or 'N50W 35'"},
      {"bedding N62 37SE",
       {"bedding N62E 37SE", "bedding N62W 37NE", "bedding N62W 37SW"},
       "'N62E 37SE'"},
      {"sight Cairn N50 30W", {"sight Cairn N50°30'W"}, "N50°30'W?"},
      {"lineation 365/35", {"lineation 005/35"}, "005? type '005/35'"},
      {"lineation 365.5/35", {"lineation 005.5/35"}, "005.5? type '005.5/35'"},
      {"sight Cairn -50", {"sight Cairn 310"}, "310?"},
      {"lineation N5OW 35", {"lineation N50W 35", "lineation N5W 35"}, "'N50W 35'"},
      {"lineation NO5E 20", {"lineation N05E 20"}, "'N05E 20'"},
      {"lineation N50W35", {"lineation N50W 35"}, "'N50W 35'"},
      {"bedding NE62 37NW", {"bedding N62E 37NW"}, "N62E?"},
      {"sight Cairn 17NW", {"sight Cairn N17W"}, "N17W?"},
      {"bedding N62EE 37NW", {"bedding N62E 37NW"}, "N62E?"},
      {"bedding N6 2E 37NW", {"bedding N62E 37NW", "bedding N6°2'E 37NW"}, "N62E or "},
      // a dash
      {"lineation N50W-35",
       {"lineation N50W 35", "lineation N50W -35"},
       "35, or minus 35? 'N50W 35' or 'N50W -35'"},
      {"bedding N62E-37NW", {"bedding N62E 37NW"}, "'N62E 37NW'"},
      // planes
      {"bedding N62E 95NW", {"bedding N62E 85SE overturned"}, "if overturned, type"},
      {"bedding 95 > 332", {"bedding 85 > 152 overturned"}, "if overturned, type"},
      {"bedding 100 > N20E", {"bedding 80 > S20W overturned"}, "if overturned, type"},
      {"bedding N62E -37NW", {"bedding N62E 37NW"}, "a dip has no sign"},
      {"bedding N62E 37",
       {"bedding N62E 37 SE", "bedding N62E 37 NW"},
       "'N62E 37 SE' or 'N62E 37 NW'; or a line above: 'rule right' or 'rule left'"},
      {"bedding 242/37",
       {"bedding 242/37 NW", "bedding 242/37 SE"},
       "a line above says how pairs are written: 'order direction/dip', 'rule right' or 'rule "
       "left'; for this one alone '242/37 NW' or '242/37 SE'"},
      {"bedding N62E 37NE",
       {"bedding N62E 37SE", "bedding N62E 37NW", "bedding N62W 37NE"},
       "'N62W 37NE'"},
      {"bedding N62E 37 NN", {"bedding N62E 37 SE", "bedding N62E 37 NW"}, "'N62E 37 NW'"},
      {"bedding N 38 W", {"bedding N/38 W"}, "'N/38 W' for strike N, dip 38 to W"},
      {"bedding N62E NW 37", {"bedding N62E 37 NW"}, "'N62E 37 NW'"},
      {"bedding 37 NW", {"bedding 37 > NW"}, "'37 > NW'"},
      {"bedding 37/242 NW", {"bedding 242/37 NW"}, "'242/37 NW'"},
      {"bedding N62E / 37 / NW", {"bedding N62E / 37 NW"}, "'N62E / 37 NW'"},
      {"bedding N62E 37 to NW", {"bedding N62E 37 NW"}, "'N62E 37 NW'"},
      {"bedding 242/37/332", {"bedding 37 > 332"}, "'37 > 332'"},
      {"bedding N62E 37 N28W", {"bedding 37 > N28W"}, "'37 > N28W'"},
      {"bedding N62E 3 7NW", {"bedding N62E 37NW"}, "'N62E 37NW'"},
      {"bedding 242 at 37 NW", {"bedding 242 37 NW"}, "'242 37 NW'"},
      {"bedding 37 towards 332", {"bedding 37 > 332"}, "'37 > 332'"},
      {"bedding 37 -> 332", {"bedding 37 > 332"}, "'37 > 332'"},
      // a doubt, which is no slip
      {"bedding N62E 37NW ?", {"bedding N62E 37NW doubtful"}, "'N62E 37NW doubtful'"},
      {"bedding N62E 37? NW", {"bedding N62E 37 NW doubtful"}, "'N62E 37 NW doubtful'"},
      {"sight Cairn N17W?", {"sight Cairn N17W doubtful"}, "doubtful"},
      // pairs
      {"lineation 5.5/32", {"lineation 005.5/32", "lineation 5.5 > 032"}, "'order plunge/trend'"},
      {"bedding 62 37",
       {"bedding 062/37", "bedding 62 > 037"},
       "'order dip/direction'",
       "rule left"},
      {"bedding 37 332", {"bedding 37 > 332", "bedding 332/37"}, "'37 > 332'", "rule left"},
      {"lineation 35/310", {"lineation 35 > 310", "lineation 310/35"}, "'35 > 310'"},
      {"bedding 37 N62E",
       {"bedding 37 > N62E", "bedding N62E 37 SE", "bedding N62E 37 NW"},
       "'37 > N62E'"},
      {"bedding 037 > 332", {"bedding 37 > 332"}, "'37 > 332'"},
      {"lineation 310 > 35", {"lineation 35 > 310", "lineation 310/35"}, "'35 > 310'"},
      {"bedding 240/37", {"bedding 37 > 240"}, "'37 > 240'", "order dip/direction"},
      {"bedding 62 37 NW",
       {"bedding 62/037 NW", "bedding 062/37 NW"},
       "'62/037 NW' or '062/37 NW'",
       "order dip/strike"},
      {"bedding 37/242",
       {"bedding 37/242 NW", "bedding 37/242 SE"},
       "'37/242 NW'",
       "order dip/strike"},
      {"bedding 37/242 N28W", {"bedding 37 > N28W"}, "'37 > N28W'", "order dip/strike"},
      {"bedding 37/242 / NW", {"bedding 37/242 NW"}, "'37/242 NW'", "order dip/strike"},
      // rakes
      {"slickenline rake 120 from N62E", {"slickenline rake 60 from S62W"}, "the nearer end"},
      {"slickenline rake 40 N62E", {"slickenline rake 40 from N62E"}, "'rake 40 from N62E'"},
      {"slickenline pitch 40 from N62E", {"slickenline rake 40 from N62E"}, "'rake 40 from N62E'"},
      {"slickenline 40 from N62E", {"slickenline rake 40 from N62E"}, "'rake 40 from N62E'"},
      {"lineation 310 > 035", {"lineation 35 > 310", "lineation 310/35"}, "'35 > 310'"},
      // commas
      {"bedding N52E, 62 NW", {"bedding N52E 62 NW"}, "without the comma: 'N52E 62 NW'"},
      {"bedding N52E 62, NW", {"bedding N52E 62 NW"}, "without the comma"},
      {"bedding 62, > 332", {"bedding 62 > 332"}, "without the comma"},
      {"joint vertical, N14E", {"joint vertical N14E"}, "without the comma"},
      {"bedding N62E 37NW, overturned", {"bedding N62E 37NW overturned"}, "without the comma"},
      {"lineation N50W, 35", {"lineation N50W 35"}, "without the comma"},
      {"bedding N62E 37,5NW", {"bedding N62E 37.5NW"}, "'N62E 37.5NW'"},
      {"bedding 063/36,064/37", {"bedding 063/36, 064/37"}, "'063/36, 064/37'", "rule right"},
      {"lineation 310,35", {"lineation 310/35"}, "'310/35'"},
      // legs
      {"leg S38E 120", {"leg S38E 120m", "leg S38E 120ft"}, "'120m' or '120ft'"},
      {"leg S38E 120'", {"leg S38E 120ft", "leg S38E 120m"}, "minute of arc"},
      {"leg S38E 120 metres", {"leg S38E 120m"}, "'120m'"},
      {"leg S38E, 120m", {"leg S38E 120m"}, "'S38E 120m'?"},
      {"leg S38E 8Om", {"leg S38E 80m"}, "'S38E 80m'?"},
      {"leg S38E 120m slope 95", {"leg S38E 120m slope 95%"}, "percent scale"},
      // stray marks
      {"bedding 242/37/NW", {"bedding 242/37 NW"}, "'242/37 NW'"},
      {"sight Cairn, N17W", {"sight Cairn N17W"}, "'Cairn N17W'?"},
  };
  for (const Meant& row : rows) {
    CAPTURE(row.line, row.heading);
    CHECK(mended(row.line, row.heading) == row.mended);
    const Book book = read_line(row.line, row.heading);
    REQUIRE(errors_in(book) == 1);
    CAPTURE(book.diagnostics.front().help);
    CHECK(book.diagnostics.front().help.find(row.help) != std::string::npos);
  }
}

TEST_CASE("a comma within a reading makes no two of it") {
  for (const char* line : {"bedding N52E, 62 NW", "bedding N52E, 62, NW", "lineation N50W, 35",
                           "joint 61 >, N36W, 60 > N34W"}) {
    CAPTURE(line);
    const Book book = read_line(line);
    CHECK(book.reading_count == (std::string(line).starts_with("joint") ? 2 : 1));
    CHECK(codes(book) == "incomplete");
  }
  CHECK(read_line("bedding N58E 34NW, N60E 35NW, 063/36 NW, 37 > 332").diagnostics.empty());
  CHECK(read_line("bedding N58E 34NW, horizontal, vertical N14E").reading_count == 3);
}

TEST_CASE("an order leaves alone what is no pair of bare figures") {
  using notebook::LineAttitude;
  using notebook::PlaneAttitude;
  for (const char* order :
       {"order strike/dip", "order direction/dip", "order dip/direction", "order dip/strike"}) {
    CAPTURE(order);
    const auto strike = [&](const char* line, const char* rule) {
      const auto plane =
          good<PlaneAttitude>(read_line(line, std::string(order) + "\n" + rule)).plane();
      REQUIRE(plane);
      return plane->strike().degrees();
    };
    CHECK(same_direction(strike("bedding N62E 37", "rule right"), 62));
    CHECK(same_direction(strike("bedding N62E/37", "rule left"), 242));
    CHECK(same_direction(strike("bedding N62E 37NW", "rule right"), 242));
    CHECK(same_direction(strike("bedding 242/37 NW", "rule left"), 242));
    CHECK(same_direction(strike("bedding 37 > 332", "rule left"), 242));
    CHECK(same_direction(strike("bedding E 37", "rule right"), 90));
    CHECK(codes(read_line("bedding N62E 37", order)) == "dip-side-missing");
  }
  for (const char* order : {"order trend/plunge", "order plunge/trend"}) {
    CAPTURE(order);
    for (const char* line : {"lineation N50W 35", "lineation N50W/35", "lineation 35 > 310"}) {
      const auto read = good<LineAttitude>(read_line(line, order)).line();
      REQUIRE(read);
      CHECK(same_direction(read->trend().degrees(), 310));
      CHECK(read->plunge().degrees() == 35);
    }
  }
}

TEST_CASE("what a help of the explained examples offers is accepted") {
  for (const notebook::CodePage& page : notebook::catalogue()) {
    CAPTURE(page.name);
    check_promises(read(std::string(page.example)));
  }
}

}  // namespace
}  // namespace lodebook::test
