// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/cli/arrange.hpp>

using namespace lodebook::cli;
using Words = std::vector<std::string>;

namespace {

Arranged arranged(const Words& arguments) {
  auto result = arrange(arguments);
  REQUIRE(std::holds_alternative<Arranged>(result));
  return std::get<Arranged>(result);
}

std::string refusal(const Words& arguments) {
  auto result = arrange(arguments);
  REQUIRE(std::holds_alternative<UsageError>(result));
  return std::get<UsageError>(result).text;
}

}  // namespace

TEST_CASE("options stand before or after the command") {
  const Words orders[] = {{"reduce", "a.txt", "--north", "true", "-o", "b.csv"},
                          {"--north", "true", "-o", "b.csv", "reduce", "a.txt"},
                          {"--north", "true", "reduce", "-o", "b.csv", "a.txt"}};
  for (const Words& order : orders) {
    const Arranged sorted = arranged(order);
    REQUIRE(sorted.command != nullptr);
    CHECK(sorted.command->command == Command::reduce);
    CHECK(sorted.options == Words{"--north", "true", "-o", "b.csv"});
    CHECK(sorted.words == Words{"a.txt"});
  }
}

TEST_CASE("a value that is a command's name is still a value") {
  const Arranged sorted = arranged({"-o", "check", "reduce", "a.txt"});
  CHECK(sorted.command->command == Command::reduce);
  CHECK(sorted.options == Words{"-o", "check"});
}

TEST_CASE("a value may stand in its option's own argument") {
  const Arranged sorted = arranged({"reduce", "-qob.csv", "--north=true", "a.txt"});
  CHECK(sorted.options == Words{"-qob.csv", "--north=true"});
  CHECK(sorted.words == Words{"a.txt"});
}

TEST_CASE("a letter that takes a value ends a group of letters") {
  const Arranged sorted = arranged({"reduce", "-qo", "b.csv", "a.txt"});
  CHECK(sorted.options == Words{"-qo", "b.csv"});
  CHECK(sorted.words == Words{"a.txt"});
}

TEST_CASE("a negative number is a reading behind convert, and an option elsewhere") {
  const Words readings = {"-15", "- 35 > N50W", "-.5", "-35 > N50W"};
  Words arguments = {"convert", "--as", "line"};
  arguments.insert(arguments.end(), readings.begin(), readings.end());
  CHECK(arranged(arguments).words == readings);
  CHECK(arranged({"reduce", "-15"}).words.empty());
}

TEST_CASE("a negative latitude is a word behind declination, and a negative height a value") {
  const Arranged sorted = arranged({"declination", "-44.65", "--elevation", "-430", "-169.03"});
  CHECK(sorted.words == Words{"-44.65", "-169.03"});
  CHECK(sorted.options == Words{"--elevation", "-430"});
  CHECK(arranged({"declination", "-q", "-.5 169"}).words == Words{"-.5 169"});
}

TEST_CASE("two dashes end the options") {
  const Arranged sorted = arranged({"reduce", "-q", "--", "-o", "--north", "--"});
  CHECK(sorted.options == Words{"-q"});
  CHECK(sorted.words == Words{"-o", "--north", "--"});
  CHECK(arranged({"--", "check", "-q"}).words == Words{"-q"});
}

TEST_CASE("a lone dash is a word") {
  CHECK(arranged({"reduce", "-"}).words == Words{"-"});
}

TEST_CASE("a missing value is refused and not taken from the next option") {
  const Words lines[] = {{"reduce", "-o"},        {"reduce", "-o", "--strict", "a.txt"},
                         {"reduce", "-o", "-q"},  {"reduce", "-o", "--", "a.txt"},
                         {"reduce", "--output="}, {"reduce", "--output", "", "a.txt"},
                         {"reduce", "-qo"}};
  for (const Words& line : lines)
    CHECK(refusal(line) == "lodebook: --output needs a value\nhelp: --output FILE\n");
}

TEST_CASE("a value may begin with a dash where it is no option of ours") {
  CHECK(arranged({"convert", "--declination", "-5"}).options == Words{"--declination", "-5"});
}

TEST_CASE("a flag with a value is refused") {
  CHECK(refusal({"reduce", "--strict=no"}) ==
        "lodebook: --strict takes no value\nhelp: --strict alone\n");
}

TEST_CASE("an unknown command gets the nearest one") {
  CHECK(refusal({"redcue", "a.txt"}) ==
        "lodebook: 'redcue' is not a command\nhelp: lodebook reduce?\n");
  CHECK(refusal({"exp"}) == "lodebook: 'exp' is not a command\nhelp: lodebook explain?\n");
  CHECK(refusal({"xyzzy"}) ==
        "lodebook: 'xyzzy' is not a command\n"
        "help: the commands are reduce, check, convert, declination, fix, fair-copy, summary, net, "
        "rose, "
        "map, sheet, register, explain, help\n");
}

TEST_CASE("nothing at all is no command") {
  CHECK(arranged({}).command == nullptr);
  CHECK(arranged({"-q"}).command == nullptr);
}
