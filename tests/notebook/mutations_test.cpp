// SPDX-License-Identifier: MIT
// Properties of any text at all: lines damaged at random, with a fixed seed that is printed.
#include <cstdlib>
#include <iostream>
#include <random>

#include "notebook/reading_one.hpp"
#include "notebook/whole.hpp"

namespace lodebook::test {
namespace {

using notebook::Diagnostic;
using notebook::Source;

constexpr std::uint64_t seed = 20260214;

/// Rounds of each property; LODEBOOK_ROUNDS asks for more, such as under the sanitizers.
int rounds() {
  const char* const asked = std::getenv("LODEBOOK_ROUNDS");
  const int count = asked ? std::atoi(asked) : 0;
  return count > 0 ? count : 3000;
}

const std::string_view valid[] = {
    "area Quern Ridge",
    "date 2026-02-14",
    "dial quadrant",
    "set 12°30'W",
    "declination 24.6E ±0.4",
    "rule left",
    "order dip/direction plunge/trend",
    "order dip/strike",
    "pace 0.76m",
    "datum NZGD2000",
    "accuracy bearing 0.5 dip 1 distance 2%",
    "attraction correct",
    "kind gneissosity plane",
    "short b bedding",
    "landmark Cairn 44.6502S 169.0314E ±5 elevation 1412 ft",
    "station Q1 at 59G 345210 5052310 ±8",
    "at 44°41'20.8\"S 169°00'51.8\"E",
    "at 59S 342600 5049100",
    "time 09:40",
    "elevation 812 m",
    "unit banded schist",
    "bedding N78E 41N overturned doubtful, 081/42 N, 41 > 348 ; remark # comment",
    "joint vertical N14E, horizontal, E 41 N, N78E/62% N",
    "slickenline rake 40 from N78E dextral on fault",
    "lineation 310/-35, 35 > N50°30′W, horizontal N50W, vertical on bedding",
    "sight Trig-Dome N66W south-end vertical -12 doubtful",
    "leg S38E 50 paces slope -14% back N37W south-end to Q3",
    "sample Q1-a garnet; band",
    "note contact is 3 m upslope; float below",
    "tally 14 stations 63 readings",
    "# a comment",
};
const std::string_view pieces[] = {
    " ",          ",",      ", ",          ";",  "#",  " # ",    ">",    "/",
    "-",          "+",      "±",           "°",  "'",  "\"",     "%",    ".",
    "N",          "W",      "e",           "0",  "9",  "999999", "1e9",  "nan",
    "–",          "−",      "\t",          "\n", "\r", "\x80",   "\xC2", "\xE2\x82",
    "\x01",       "\u00A0", "to",          "on", "at", "rake",   ":",    "\xED\xA0\x80",
    "\U0001F9ED", "(",      "\xEF\xBB\xBF"};

class Damage {
 public:
  Damage() : engine_(seed) {
    std::cout << "seed " << seed << ": " << Catch::getResultCapture().getCurrentTestName() << '\n';
  }
  std::size_t below(std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(engine_);
  }
  std::string_view line() { return valid[below(std::size(valid))]; }

  std::string damaged(std::string line) {
    for (std::size_t change = 0, changes = 1 + below(4); change < changes; ++change) {
      const std::size_t at = below(line.size() + 1);
      switch (below(4)) {
        case 0:
          line.insert(at, pieces[below(std::size(pieces))]);
          break;
        case 1:
          line.erase(at, 1 + below(3));
          break;
        case 2:
          if (at < line.size()) line[at] = static_cast<char>(below(256));
          break;
        default: {
          const std::string_view other = this->line();
          const std::size_t from = below(other.size());
          line.insert(at, other.substr(from, below(8)));
        }
      }
    }
    return line;
  }

 private:
  std::mt19937_64 engine_;
};

void check_whole(const Book& book) {
  REQUIRE(entry_fault(book) == "");
  REQUIRE(diagnostic_fault(book) == "");
}

TEST_CASE("damaged logs are read whole") {
  Damage damage;
  for (int round = 0; round < rounds(); ++round) {
    std::string text;
    for (std::size_t i = 0, lines = 1 + damage.below(5); i < lines; ++i) {
      const std::string line(damage.line());
      text += damage.below(3) == 0 ? line : damage.damaged(line);
      text += '\n';
    }
    CAPTURE(text);
    check_whole(read(text));
  }
}

TEST_CASE("a damaged line gives at most one error a reading") {
  Damage damage;
  for (int round = 0; round < rounds(); ++round) {
    const std::string line = damage.damaged(std::string(damage.line()));
    if (line.find_first_of("\r\n") != std::string::npos) continue;
    CAPTURE(line);
    const auto book = read_line(line);
    check_whole(book);
    std::size_t errors = 0;
    for (const Diagnostic& diagnostic : book.diagnostics)
      errors += diagnostic.severity == notebook::Severity::error ? 1 : 0;
    // A landmark's position and its height are two causes.
    const std::size_t causes = all<notebook::Landmark>(book).empty() ? 1 : 2;
    REQUIRE(errors <= std::max<std::size_t>(book.reading_count, causes));
  }
}

TEST_CASE("a damaged reading is read alone without harm") {
  Damage damage;
  const std::string_view readings[] = {"N50°30'W",       "N78E 41N",
                                       "41 > 348",       "310/35",
                                       "rake 40 from E", "bedding 078/41 N doubtful",
                                       "vertical N20E"};
  for (int round = 0; round < rounds(); ++round) {
    const std::string typed =
        damage.damaged(std::string(readings[damage.below(std::size(readings))]));
    CAPTURE(typed);
    const Source source("reading", typed);
    for (const auto as : {notebook::ReadAs::own_form, notebook::ReadAs::bearing,
                          notebook::ReadAs::plane, notebook::ReadAs::line}) {
      const auto read = notebook::read_single(source, as);
      bool error = false;
      for (const Diagnostic& diagnostic : read.diagnostics) {
        REQUIRE(inside(source, diagnostic.place));
        error = error || diagnostic.severity == notebook::Severity::error;
      }
      REQUIRE(std::holds_alternative<std::monostate>(read.what) == error);
    }
    std::vector<Diagnostic> diagnostics;
    const auto setting = notebook::read_declination(source, diagnostics);
    std::size_t errors = 0;
    for (const Diagnostic& diagnostic : diagnostics) {
      REQUIRE(inside(source, diagnostic.place));
      errors += diagnostic.severity == notebook::Severity::error ? 1 : 0;
    }
    REQUIRE(errors == (setting ? 0 : 1));
  }
}

TEST_CASE("any bytes at all are read") {
  Damage damage;
  for (int round = 0; round < rounds(); ++round) {
    std::string text(damage.below(200), ' ');
    for (char& c : text)
      c = static_cast<char>(damage.below(256));
    CAPTURE(round);
    check_whole(read(text));
  }
}

}  // namespace
}  // namespace lodebook::test
