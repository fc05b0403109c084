// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <lodebook/cli/converter.hpp>

using namespace lodebook;
using namespace lodebook::cli;
using Words = std::vector<std::string>;

namespace {

/// The result of one reading, or `?` and the code of the first error.
std::string converted(const std::string& reading, Words options = {}) {
  options.insert(options.begin(), "convert");
  const auto line = read_command_line(options);
  REQUIRE(std::holds_alternative<CommandLine>(line));
  const auto converter = Converter::from(std::get<CommandLine>(line));
  REQUIRE(std::holds_alternative<Converter>(converter));
  std::string out;
  std::vector<notebook::Diagnostic> diagnostics;
  if (std::get<Converter>(converter).convert(notebook::Source("reading", reading), out,
                                             diagnostics))
    return out;
  CHECK(out.empty());
  for (const notebook::Diagnostic& diagnostic : diagnostics) {
    if (diagnostic.severity == notebook::Severity::error)
      return '?' + std::string(name_of(diagnostic.code));
  }
  return "?";
}

}  // namespace

TEST_CASE("a bearing keeps its decimals, two for minutes and four for seconds") {
  CHECK(converted("N20W") == "340");
  CHECK(converted("N68.5E") == "068.5");
  CHECK(converted("N68°32'E") == "068.53");
  CHECK(converted("S28°41'30\"E") == "151.3083");
  CHECK(converted("340", {"--to", "quadrant"}) == "N20W");
  CHECK(converted("340.50", {"--to", "quadrant"}) == "N19.50W");
  CHECK(converted("NNE") == "022.5");
  CHECK(converted("NE") == "045");
  CHECK(converted("360") == "000");
}

TEST_CASE("a reading's own form decides what it is") {
  CHECK(converted("N85E 32N") == "265/32 N");
  CHECK(converted("N20W 15") == "340/15");
  CHECK(converted("N85E 32", {"--rule", "left"}) == "265/32 N");
  CHECK(converted("32 > 355") == "?attitude-ambiguous");
  CHECK(converted("32 > 355", {"--as", "plane"}) == "265/32 N");
  CHECK(converted("32 > 355", {"--as", "line"}) == "355/32");
  CHECK(converted("bedding 32 > 355") == "265/32 N");
  CHECK(converted("265/32 N", {"--to", "quadrant"}) == "N85E 32N");
  CHECK(converted("340/15", {"--to", "quadrant"}) == "N20W 15");
}

TEST_CASE("a grade becomes degrees with one decimal") {
  CHECK(converted("N85E 62%N") == "265/31.8 N");
}

TEST_CASE("horizontal and vertical readings say so") {
  CHECK(converted("bedding horizontal") == "horizontal");
  CHECK(converted("bedding vertical N20E") == "020/90");
  CHECK(converted("lineation vertical") == "vertical");
}

TEST_CASE("words behind an attitude stay behind it") {
  CHECK(converted("bedding N85E 32N overturned doubtful") == "265/32 N overturned doubtful");
  CHECK(converted("bedding N85E 32N facing unknown") == "265/32 N facing unknown");
  CHECK(converted("fault N85E 32N reverse", {"--to", "quadrant"}) == "N85E 32N reverse");
  CHECK(converted("lineation N20W 31 on bedding") == "340/31 on bedding");
}

TEST_CASE("a negative plunge is the other end") {
  CHECK(converted("-15 > N20W", {"--as", "line"}) == "160/15");
}

TEST_CASE("nothing is corrected unless an option asks") {
  CHECK(converted("N20W", {"--declination", "24E"}) == "004");
  CHECK(converted("N20W", {"--declination", "24E", "--set", "10E"}) == "354");
  CHECK(converted("N20W", {"--set", "10E"}) == "330");
  CHECK(converted("N20W", {"--declination", "24E", "--set", "10E", "--north", "magnetic"}) ==
        "330");
  CHECK(converted("N20W", {"--declination", "as-set", "--set", "10E"}) == "340");
  CHECK(converted("N85E 32N", {"--declination", "10W"}) == "255/32 N");
  CHECK(converted("bedding horizontal", {"--declination", "10W"}) == "horizontal");
}

TEST_CASE("a correction brings its own decimals") {
  CHECK(converted("N20W", {"--declination", "24.6E"}) == "004.6");
  CHECK(converted("N20W", {"--declination", "12°20'E"}) == "352.33");
  CHECK(converted("N20W", {"--declination", "24.6E", "--set", "0.25E"}) == "004.35");
  CHECK(converted("N20W", {"--declination", "24.6E", "--north", "magnetic"}) == "340");
  CHECK(converted("N20.125W", {"--declination", "24.6E"}) == "004.475");
}

TEST_CASE("true north cannot be asked for without a declination") {
  for (const Words& options :
       {Words{"convert", "--north", "true"}, Words{"convert", "--north", "true", "--set", "10E"}}) {
    const auto line = std::get<CommandLine>(read_command_line(options));
    CHECK(std::holds_alternative<UsageError>(Converter::from(line)));
  }
  const auto line = std::get<CommandLine>(read_command_line(Words{"convert", "--set", "10E"}));
  CHECK(std::get<Converter>(Converter::from(line)).only_magnetic());
}

TEST_CASE("what is no reading has no result and a reason") {
  CHECK(converted("N95E") == "?quadrant-angle");
  CHECK(converted("rake 40 from N85E") == "?rake-no-plane");
  for (const std::string text : {"N20", "-15", "spam", "N85E 32N 5", "nan"}) {
    CAPTURE(text);
    CHECK(converted(text).size() > 1);
    CHECK(converted(text).starts_with('?'));
  }
}
