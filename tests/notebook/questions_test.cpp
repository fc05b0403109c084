// SPDX-License-Identifier: MIT
// What readings wait for is asked once, with their number; the readings are rejected all the same.
#include <random>

#include "notebook/reading_one.hpp"
#include "notebook/whole.hpp"

namespace lodebook::test {
namespace {

using notebook::Diagnostic;
using notebook::Reading;

std::size_t waiting(const Book& book) {
  std::size_t count = 0;
  for (const Reading& reading : all<Reading>(book))
    count += reading.rejected && reading.waits_for ? 1U : 0U;
  return count;
}

/// The message of a log's only diagnostic.
std::string asked(const std::string& log) {
  const Book book = read(log);
  REQUIRE(book.diagnostics.size() == 1);
  return book.diagnostics[0].message;
}

/// How many of the readings that wait a diagnostic speaks of.
std::size_t said_to_wait(const Book& book, const Diagnostic& diagnostic) {
  // A declination, or what was set, does not reject.
  if (diagnostic.code == notebook::Code::declination_side ||
      diagnostic.severity != notebook::Severity::error)
    return 0;
  const std::string& message = diagnostic.message;
  if (message.find(" for this ") != std::string::npos)
    return std::stoul(message.substr(message.rfind("; ") + 2));
  if (message.find(" wait for ") != std::string::npos) return std::stoul(message);
  if (diagnostic.reading == notebook::no_reading) return 0;
  return all<Reading>(book)[diagnostic.reading].waits_for ? 1 : 0;
}

TEST_CASE("planes without side or order are one question with their number") {
  const std::string log =
      "station A\njoint 242/37\njoint 242 85, 240/84\nstation B\nbedding 100/20\n";
  const Book book = read(log);
  REQUIRE(places(book) == "2:7-13 dip-side-missing");
  CHECK(book.diagnostics[0].message ==
        "4 planes wait for 'order direction/dip', or 'order strike/dip' with a rule");
  CHECK(book.diagnostics[0].reading == 0);
  CHECK(waiting(book) == 4);
}

TEST_CASE("a single one is asked for by itself") {
  CHECK(asked("station A\njoint 242/37\n").starts_with("which side"));
}

TEST_CASE("each answer is a question of its own") {
  CHECK(asked("station A\njoint N62E 37\njoint N60E 35\n") ==
        "2 planes wait for a side, or a rule");
  CHECK(asked("rule right\nstation A\njoint 37/332\njoint 35 330\njoint 35 N28W\n") ==
        "3 planes wait for 'order dip/direction', or 'order dip/strike' with a rule");
  CHECK(asked("station A\njoint 62/37\njoint 60 35\n") == "2 planes wait for an order");
  CHECK(asked("station A\nlineation 35/310\nflute 30 300\n") ==
        "2 lines wait for 'order plunge/trend'");
  CHECK(asked("station A\nlineation 35/31\nlineation 30 30\n") == "2 lines wait for an order");
  CHECK(asked("station A\nleg N62E 30 paces\nleg N62E 40 paces\n") ==
        "2 legs wait for the length of a pace");
  CHECK(codes(read("order strike/dip\nstation A\njoint 242/37\njoint N62E 37\njoint 37/332\n")) ==
        "dip-side-missing pair-order");
}

TEST_CASE("an answer that was typed is no question") {
  CHECK(codes(read("order direction/dip\nstation A\njoint 332/37\njoint 330/35\n")) == "");
  CHECK(codes(read("rule left\nstation A\njoint 242/37\njoint N62E 37\n")) == "");
}

TEST_CASE("a void statement is the cause, and what waits for it is counted there") {
  CHECK(asked("rule left hand\nstation A\njoint 242/37\njoint N62E 37, 063/36\n")
            .ends_with("; 3 readings wait for this rule"));
  CHECK(asked("rule right\norder direction dip\nstation A\njoint 332/37\nshear 310/35\n")
            .ends_with("; 2 readings wait for this order"));
  CHECK(asked("pace 0.76\nstation A\nleg N62E 30 paces\n")
            .ends_with("; 1 reading waits for this pace"));
  CHECK(asked("declination -24.6E\nstation A\njoint vertical N14E\nlineation 310/35\n")
            .ends_with("; 2 readings wait for this declination"));
  CHECK(asked("station A\njoint vertical N14E\nset 24.6\njoint vertical N14E\nset 0\njoint "
              "vertical N14E\n")
            .ends_with("; 1 reading waits for this set"));
  const Book good = read("rule left hand\nrule left\nstation A\njoint 242/37\n");
  CHECK(good.diagnostics.at(0).message.find("wait") == std::string::npos);
  CHECK(waiting(good) == 0);
}

TEST_CASE("where the order is void no bare pair is read by itself") {
  const Book book = read(
      "rule right\norder dip direction\nstation A\njoint 242/37 NW\njoint 242/37\n"
      "joint N62E 37\njoint 37 > 332\nlineation N50W 35\n");
  CHECK(codes(book) == "unknown-word");
  CHECK(waiting(book) == 1);
}

TEST_CASE("random logs: every rejected reading has an error or is counted by a question") {
  constexpr std::uint64_t seed = 20260214;
  CAPTURE(seed);
  std::mt19937_64 random(seed);
  const std::vector<std::string> lines = {
      "joint 242/37",
      "joint 242 37 NW",
      "joint 37/332",
      "joint 37 > 332",
      "joint N62E 37",
      "joint 62/37",
      "joint 62 N28W",
      "joint 242/37 overturned",
      "joint 242/37 foo SE",
      "joint 242/37, 37/332, N62E 37NW",
      "lineation 310/35",
      "lineation 35/310",
      "lineation 35 31",
      "lineation N50W 35",
      "leg N62E 30 paces",
      "rule right",
      "rule up",
      "order direction/dip",
      "order direction dip",
      "order trend/plunge",
      "pace 0.76m",
      "pace 1",
      "station S",
      "stn B",
      "joint 240\u00B0 37",
      "joint",
      "joint 242/37 ?",
      "set 24.6",
      "declination 24.6",
      "joint 37/33\u00A0",
      "ask kind wall plane",
      "kind wall plane",
      "ask short r rule",
      "ask short w joint",
      "wall N62E 37NW, 242/37",
      "w N62E 37NW",
  };
  for (int log = 0; log < 2000; ++log) {
    std::string typed;
    for (auto left = random() % 25; left > 0; --left)
      typed += lines[random() % lines.size()] + '\n';
    const Book book = read(typed);
    CAPTURE(typed);
    REQUIRE(diagnostic_fault(book) == "");
    std::size_t said = 0;
    for (const Diagnostic& diagnostic : book.diagnostics)
      said += said_to_wait(book, diagnostic);
    CHECK(said == waiting(book));
  }
}

}  // namespace
}  // namespace lodebook::test
