// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <cmath>
#include <lodebook/cli/command_line.hpp>

using namespace lodebook;
using namespace lodebook::cli;
using Words = std::vector<std::string>;

namespace {

CommandLine read(const Words& arguments) {
  auto result = read_command_line(arguments);
  REQUIRE(std::holds_alternative<CommandLine>(result));
  return std::get<CommandLine>(result);
}

std::string refusal(const Words& arguments) {
  auto result = read_command_line(arguments);
  REQUIRE(std::holds_alternative<UsageError>(result));
  return std::get<UsageError>(result).text;
}

}  // namespace

TEST_CASE("every option reaches its field") {
  const CommandLine line = read({"reduce",
                                 "a.txt",
                                 "-o",
                                 "t.json",
                                 "--format",
                                 "geojson",
                                 "--north",
                                 "magnetic",
                                 "--declination",
                                 "24.6E",
                                 "--set",
                                 "12W",
                                 "--rule",
                                 "left",
                                 "--repeats",
                                 "mean",
                                 "--report",
                                 "r.txt",
                                 "--report-format",
                                 "json",
                                 "--jobs",
                                 "12",
                                 "--strict",
                                 "--encoding",
                                 "windows-1252",
                                 "--color",
                                 "never",
                                 "-q"});
  CHECK(line.command == Command::reduce);
  CHECK(line.words == Words{"a.txt"});
  CHECK(line.output == "t.json");
  CHECK(line.format == Format::geojson);
  CHECK(line.north == reduction::North::magnetic);
  CHECK(line.declination->declination == *Declination::east(24.6));
  CHECK(line.set == Declination::west(12));
  CHECK(line.rule == HandRule::left);
  CHECK(line.jobs == 12U);
  CHECK(line.repeats == reduction::Repeats::mean);
  CHECK(line.report == "r.txt");
  CHECK(line.report_format == ReportFormat::json);
  CHECK(line.strict);
  CHECK(line.encoding == Encoding::windows_1252);
  CHECK(line.color == Color::never);
  CHECK(line.quiet);
  CHECK(read({"reduce", "a.txt", "--sidecar"}).sidecar);
  CHECK(read({"check", "a.txt", "--report-format=lines"}).report_format == ReportFormat::lines);
}

TEST_CASE("options of convert reach their fields") {
  const CommandLine line = read({"convert", "--to", "quadrant", "--as", "line", "--column", "trend",
                                 "--column=strike", "a.csv"});
  CHECK(line.to == notebook::Notation::quadrant);
  CHECK(line.as == notebook::ReadAs::line);
  CHECK(line.columns == Words{"trend", "strike"});
  CHECK(read({"convert", "--as", "bearing", "--to", "azimuth"}).as == notebook::ReadAs::bearing);
  CHECK(read({"convert", "--as", "plane"}).as == notebook::ReadAs::plane);
}

TEST_CASE("planes by their direction, and the orders of pairs, reach their fields") {
  for (const std::string command : {"reduce", "check", "summary", "net", "sheet", "convert"}) {
    CHECK(read({command, "a"}).planes == output::PlanesAs::strike);
    CHECK(read({command, "--notation", "direction", "a"}).planes == output::PlanesAs::direction);
  }
  CHECK(refusal({"rose", "--notation", "direction", "a"}).find("--notation") != std::string::npos);
  const CommandLine line =
      read({"convert", "--order", "dip/direction", "--order", "trend/plunge", "a"});
  CHECK(line.order.planes == notebook::PlaneOrder::dip_direction);
  CHECK(line.order.lines == notebook::LineOrder::trend_plunge);
  CHECK(read({"convert", "a"}).order.planes == notebook::PlaneOrder::unstated);
  CHECK(refusal({"convert", "--order", "strike/dip", "--order", "dip/direction", "a"}) ==
        "lodebook: --order says twice how planes are written\n"
        "help: one order for planes, one for lines\n");
  CHECK(refusal({"convert", "--order", "dip/strke", "a"}).find("--order does not take") !=
        std::string::npos);
}

TEST_CASE("options of fix reach their fields") {
  const CommandLine line =
      read({"fix", "a.txt", "b.txt", "--rays", "r.geojson", "-o", "f.json", "--declination",
            "24.6E", "--set", "12W", "--rule", "left", "--encoding", "windows-1252", "--strict"});
  CHECK(line.command == Command::fix);
  CHECK(line.words == Words{"a.txt", "b.txt"});
  CHECK(line.rays == "r.geojson");
  CHECK(line.output == "f.json");
  CHECK(line.declination->declination == *Declination::east(24.6));
  CHECK(line.set == Declination::west(12));
  CHECK(line.rule == HandRule::left);
  CHECK(line.encoding == Encoding::windows_1252);
  CHECK(line.strict);
  CHECK_FALSE(read({"fix", "a.txt"}).rays);
}

TEST_CASE("what is not typed is missing") {
  const CommandLine line = read({"check", "a.txt"});
  CHECK_FALSE(line.output);
  CHECK_FALSE(line.sidecar);
  CHECK_FALSE(line.north);
  CHECK_FALSE(line.declination);
  CHECK_FALSE(line.set);
  CHECK_FALSE(line.rule);
  CHECK_FALSE(line.report);
  CHECK(line.report_format == ReportFormat::text);
  CHECK_FALSE(line.watch);
  CHECK(read({"check", "--watch", "a.txt"}).watch);
  CHECK_FALSE(line.strict);
  CHECK(line.encoding == Encoding::utf_8);
}

TEST_CASE("values pass through the parser as they are") {
  for (const std::string value : {"%%", "[a,b]", "{x}", "a b", "\xC3\xA4", "=", "true"}) {
    CAPTURE(value);
    CHECK(read({"convert", "--column", value, "f.csv"}).columns == Words{value});
    CHECK(read({"check", value, "-o", value}).output == value);
    CHECK(read({"check", value}).words == Words{value});
  }
}

TEST_CASE("an unknown option gets the nearest one of its command") {
  CHECK(refusal({"reduce", "--nroth", "true", "a.txt"}) ==
        "lodebook: unknown option --nroth\nhelp: --north?\n");
  CHECK(refusal({"reduce", "--out=x", "a.txt"}) ==
        "lodebook: unknown option --out\nhelp: --output?\n");
  CHECK(refusal({"reduce", "-z", "a.txt"}) ==
        "lodebook: unknown option -z\nhelp: lodebook help reduce lists the options\n");
  CHECK(refusal({"reduce", "-qz", "a.txt"}) ==
        "lodebook: unknown option -z\nhelp: lodebook help reduce lists the options\n");
}

TEST_CASE("an option of another command is named as one") {
  CHECK(refusal({"check", "--column", "strike", "a.txt"}) ==
        "lodebook: check does not take --column\nhelp: --column is an option of convert\n");
  CHECK(refusal({"explain", "-o", "x"}) ==
        "lodebook: explain does not take --output\n"
        "help: --output is an option of reduce, check, convert, fix, fair-copy, summary, net, "
        "rose, map, "
        "sheet, register\n");
}

TEST_CASE("an unknown value gets the nearest one or all") {
  CHECK(refusal({"reduce", "--format", "jason", "a"}) ==
        "lodebook: --format does not take 'jason'\nhelp: --format json?\n");
  CHECK(refusal({"reduce", "--north", "east", "a"}) ==
        "lodebook: --north does not take 'east'\nhelp: --north true|magnetic|grid\n");
}

TEST_CASE("an option that stands twice is refused, but for columns") {
  CHECK(refusal({"check", "--rule", "left", "--rule", "right", "a"}) ==
        "lodebook: --rule is given twice\nhelp: give it once\n");
  CHECK(read({"check", "-q", "-q", "a"}).quiet);
}

TEST_CASE("angles are read by the reader of logs") {
  for (const std::string option : {"--declination", "--set"}) {
    CAPTURE(option);
    CHECK(refusal({"reduce", option, "24.6", "a"}).find("[declination-side]") != std::string::npos);
    for (const std::string value : {"nan", "inf", "0x10", "1e1E", "24,6E", "east"}) {
      CAPTURE(value);
      CHECK(refusal({"reduce", option, value, "a"}).starts_with(option + ":1:1: error: "));
    }
  }
  CHECK(read({"reduce", "--declination", "12°30'W", "a"}).declination->declination ==
        *Declination::west(12.5));
  CHECK(read({"reduce", "--declination", "as-set", "a"}).declination->from ==
        notebook::DeclinationSetting::From::as_set);
  CHECK(read({"reduce", "--declination", "model", "a"}).declination->from ==
        notebook::DeclinationSetting::From::model);
}

TEST_CASE("--set is an angle alone") {
  for (const std::string value : {"as-set", "12E ±0.5"})
    CHECK(refusal({"reduce", "--set", value, "a"}).starts_with("lodebook: --set does not take "));
}

TEST_CASE("a large declination is taken with a warning") {
  const CommandLine line = read({"check", "--declination", "75W", "a"});
  CHECK(line.declination->declination == *Declination::west(75));
  CHECK(line.warning_count == 1);
  CHECK(line.warnings.find("[declination-large]") != std::string::npos);
}

TEST_CASE("control characters of the command line do not reach the terminal") {
  CHECK(refusal({"a\x1b[31mb"}).find('\x1b') == std::string::npos);
}

TEST_CASE("help lists every option in the order of the table") {
  for (const CommandSpec& command : commands()) {
    const std::string text = help_of(command.command);
    std::size_t at = 0;
    for (const OptionSpec& option : options()) {
      const std::size_t found = text.find("--" + std::string(option.long_name) + ' ');
      CAPTURE(command.name, option.long_name);
      if (option.belongs_to(command.command)) {
        CHECK(found != std::string::npos);
        CHECK(found > at);
        at = found;
      } else {
        CHECK(found == std::string::npos);
      }
    }
  }
}

TEST_CASE("a format is of its command") {
  CHECK(read({"declination", "--format", "json", "0 0"}).answer_format == AnswerFormat::json);
  CHECK(read({"declination", "--format=text", "0 0"}).answer_format == AnswerFormat::text);
  CHECK(!read({"declination", "--format", "json", "0 0"}).format);
  CHECK(read({"reduce", "--format", "json", "a.txt"}).format == Format::json);
  CHECK(!read({"reduce", "--format", "json", "a.txt"}).fix_format);
  for (const auto& [word, format] : {std::pair{"text", FixFormat::text},
                                     {"json", FixFormat::json},
                                     {"csv", FixFormat::csv},
                                     {"geojson", FixFormat::geojson}}) {
    const CommandLine line = read({"fix", "--format", word, "a.txt"});
    CHECK(line.fix_format == format);
    CHECK(!line.format);
  }
  CHECK(!read({"fix", "a.txt"}).fix_format);
  CHECK(
      refusal({"fix", "a.txt", "--format", "log"}).find("help: --format text|json|csv|geojson\n") !=
      std::string::npos);
  CHECK(refusal({"fix", "a.txt", "--format"}).find("help: --format text|json|csv|geojson\n") !=
        std::string::npos);
  CHECK(refusal({"declination", "--format", "csv", "0 0"}).find("help: --format text|json\n") !=
        std::string::npos);
  CHECK(refusal({"declination", "0 0", "--format"}).find("help: --format text|json\n") !=
        std::string::npos);
  CHECK(refusal({"reduce", "--format", "text", "a.txt"}).find("csv|json|geojson|log\n") !=
        std::string::npos);
}

TEST_CASE("attributes are keys that the table has no column of") {
  CHECK(read({"reduce", "a.txt"}).attributes.empty());
  CHECK(read({"reduce", "--attributes", "spacing, infill", "a.txt"}).attributes ==
        std::vector<std::string>{"spacing", "infill"});
  for (const char* const typed : {"Spacing", "2nd", "a,,b", "a b", "a=b"}) {
    CAPTURE(typed);
    CHECK(refusal({"reduce", "--attributes", typed, "a.txt"}).find("--attributes does not take") !=
          std::string::npos);
  }
  for (const char* const typed :
       {"strike", "spacing,zone", "spacing,infill,spacing", "attributes,dip"}) {
    CAPTURE(typed);
    CHECK(refusal({"reduce", "--attributes", typed, "a.txt"}).find("already has a column") !=
          std::string::npos);
  }
}

TEST_CASE("an elevation is in metres, within what the models are for") {
  const auto elevation = [](const std::string& typed) {
    return read({"declination", "0 0", "--elevation", typed}).elevation_m;
  };
  CHECK(read({"declination", "0 0"}).elevation_m == 0);
  CHECK(elevation("812") == 812);
  CHECK(elevation("-430") == -430);
  CHECK(elevation("-.5") == -0.5);
  CHECK(elevation("812 m") == 812);
  CHECK(std::abs(elevation("1000 ft") - 304.8) < 1e-9);
  CHECK(elevation("850000") == 850000);
  CHECK(elevation("-100000") == -100000);
  for (const char* const typed : {"850001", "-100000.5", "2800000ft", "high", "8x", "nan"}) {
    CAPTURE(typed);
    CHECK(refusal({"declination", "0 0", "--elevation", typed}).find("elevation") !=
          std::string::npos);
  }
  CHECK(refusal({"reduce", "a.txt", "--elevation", "5"}).find("option of declination\n") !=
        std::string::npos);
}
