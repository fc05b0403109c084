// SPDX-License-Identifier: MIT
#include <catch.hpp>
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

TEST_CASE("a reading keeps the north that it names, unless a correction turns it") {
  CHECK(converted("N62E 37NW grid overturned") == "242/37 NW grid overturned");
  CHECK(converted("N50W true") == "310 true");
  CHECK(converted("310/35 magnetic") == "310/35 magnetic");
  const Words corrected = {"--declination", "24.9E"};
  CHECK(converted("N50W magnetic", corrected) == "334.9");
  CHECK(converted("N50W true", corrected) == "310");
  CHECK(converted("N50W", corrected) == "334.9");
  CHECK(converted("N62E 37NW grid", corrected) == "242/37 NW grid");
  CHECK(converted("N50W true", {"--declination", "24.9E", "--north", "magnetic"}) == "285.1");
}

TEST_CASE("a bearing keeps its decimals, two for minutes and four for seconds") {
  CHECK(converted("N50W") == "310");
  CHECK(converted("N68.5E") == "068.5");
  CHECK(converted("N68°32'E") == "068.53");
  CHECK(converted("S28°41'30\"E") == "151.3083");
  CHECK(converted("310", {"--to", "quadrant"}) == "N50W");
  CHECK(converted("310.50", {"--to", "quadrant"}) == "N49.50W");
  CHECK(converted("NNE") == "022.5");
  CHECK(converted("NE") == "045");
  CHECK(converted("360") == "000");
}

TEST_CASE("a reading's own form decides what it is") {
  CHECK(converted("N78E 41N") == "258/41 N");
  CHECK(converted("N50W 35") == "310/35");
  CHECK(converted("N78E 41", {"--rule", "left"}) == "258/41 N");
  CHECK(converted("41 > 348") == "?attitude-ambiguous");
  CHECK(converted("41 > 348", {"--as", "plane"}) == "258/41 N");
  CHECK(converted("41 > 348", {"--as", "line"}) == "348/41");
  CHECK(converted("bedding 41 > 348") == "258/41 N");
  CHECK(converted("258/41 N", {"--to", "quadrant"}) == "N78E 41N");
  CHECK(converted("310/35", {"--to", "quadrant"}) == "N50W 35");
}

TEST_CASE("planes by their direction are asked for by --notation") {
  const Words direction = {"--notation", "direction"};
  CHECK(converted("N62E 37NW", direction) == "37 > 332");
  CHECK(converted("242/37 NW", {"--notation", "direction", "--to", "quadrant"}) == "37 > N28W");
  CHECK(converted("N62E 37NW", {"--notation", "strike"}) == "242/37 NW");
  CHECK(converted("bedding 37.5 > 332.25", direction) == "37.5 > 332.25");
  CHECK(converted("joint vertical N14E", direction) == "vertical 014");
  CHECK(converted("N50W 35", direction) == "310/35");
  CHECK(converted("N50W", direction) == "310");
}

TEST_CASE("the order of pairs is that of logs") {
  CHECK(converted("37/332") == "?pair-order");
  CHECK(converted("37/332", {"--order", "dip/direction"}) == "242/37 NW");
  CHECK(converted("332/37", {"--order", "direction/dip"}) == "242/37 NW");
  CHECK(converted("62/37", {"--order", "strike/dip", "--rule", "left"}) == "242/37 NW");
  CHECK(converted("37/242", {"--order", "dip/strike", "--rule", "right"}) == "242/37 NW");
  CHECK(converted("37/242 NW", {"--order", "dip/strike"}) == "242/37 NW");
  CHECK(converted("35/310", {"--order", "plunge/trend"}) == "310/35");
  // A reading's own kind, or --as, says which of the two orders it is under.
  const Words both = {"--order", "dip/direction", "--order", "plunge/trend"};
  CHECK(converted("37/332", both) == "332/37");
  CHECK(converted("bedding 37/332", both) == "242/37 NW");
  CHECK(converted("37/332", {both[0], both[1], both[2], both[3], "--as", "plane"}) == "242/37 NW");
}

TEST_CASE("a grade becomes degrees with one decimal") {
  CHECK(converted("N78E 62%N") == "258/31.8 N");
}

TEST_CASE("horizontal and vertical readings say so") {
  CHECK(converted("bedding horizontal") == "horizontal");
  CHECK(converted("bedding vertical N20E") == "020/90");
  CHECK(converted("lineation vertical") == "vertical");
}

TEST_CASE("words behind an attitude stay behind it") {
  CHECK(converted("bedding N78E 41N overturned doubtful") == "258/41 N overturned doubtful");
  CHECK(converted("bedding N78E 41N facing unknown") == "258/41 N facing unknown");
  CHECK(converted("fault N78E 41N reverse", {"--to", "quadrant"}) == "N78E 41N reverse");
  CHECK(converted("lineation N50W 35 on bedding") == "310/35 on bedding");
}

TEST_CASE("a negative plunge is the other end") {
  CHECK(converted("-35 > N50W", {"--as", "line"}) == "130/35");
}

TEST_CASE("nothing is corrected unless an option asks") {
  CHECK(converted("N50W", {"--declination", "24E"}) == "334");
  CHECK(converted("N50W", {"--declination", "24E", "--set", "10E"}) == "324");
  CHECK(converted("N50W", {"--set", "10E"}) == "300");
  CHECK(converted("N50W", {"--declination", "24E", "--set", "10E", "--north", "magnetic"}) ==
        "300");
  CHECK(converted("N50W", {"--declination", "as-set", "--set", "10E"}) == "310");
  CHECK(converted("N78E 41N", {"--declination", "10W"}) == "248/41 N");
  CHECK(converted("bedding horizontal", {"--declination", "10W"}) == "horizontal");
}

TEST_CASE("a correction brings its own decimals") {
  CHECK(converted("N50W", {"--declination", "24.6E"}) == "334.6");
  CHECK(converted("N50W", {"--declination", "12°20'E"}) == "322.33");
  CHECK(converted("N50W", {"--declination", "24.6E", "--set", "0.25E"}) == "334.35");
  CHECK(converted("N50W", {"--declination", "24.6E", "--north", "magnetic"}) == "310");
  CHECK(converted("N50.125W", {"--declination", "24.6E"}) == "334.475");
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
  CHECK(converted("N98E") == "?quadrant-angle");
  CHECK(converted("rake 40 from N78E") == "?rake-no-plane");
  for (const std::string text : {"N20", "-15", "spam", "N78E 41N 5", "nan"}) {
    CAPTURE(text);
    CHECK(converted(text).size() > 1);
    CHECK(converted(text).starts_with('?'));
  }
}
