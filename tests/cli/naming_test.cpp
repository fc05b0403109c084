// SPDX-License-Identifier: MIT
#include <array>
#include <catch.hpp>
#include <lodebook/cli/message.hpp>
#include <lodebook/cli/naming.hpp>
#include <lodebook/cli/option_table.hpp>

using namespace lodebook::cli;

namespace {

constexpr std::array<std::string_view, 2> extensions = {"csv", "geojson"};

std::string refusal(std::string_view file, bool any_other = false,
                    const Writes& writes = {"reduce", extensions, "lodebook", true}) {
  const auto error = refuse_extension(file, writes, any_other);
  return error ? error->text : std::string();
}

}  // namespace

TEST_CASE("an extension stands behind the last point of the name itself, in any case") {
  CHECK(extension_of("day.csv") == "csv");
  CHECK(extension_of("maps.d/day.v2.KML") == "kml");
  CHECK(extension_of(".csv") == "csv");
  for (const std::string_view none : {"", "-", "day", "day.", "maps.d/day", "..", "/dev/stdout"})
    CHECK(extension_of(none).empty());
}

TEST_CASE("another extension takes the place of the one that is there") {
  CHECK(with_extension("maps.d/day.v2.KML", "csv") == "maps.d/day.v2.csv");
  CHECK(with_extension("maps.d/day", "csv") == "maps.d/day.csv");
  CHECK(with_extension("day.", "csv") == "day.csv");
}

TEST_CASE("what is written, and what has no extension, is no fault") {
  for (const std::string_view name :
       {"day.csv", "day.GeoJSON", "day", "-", "maps.kml/day", "day.txt"})
    CHECK(refusal(name).empty());
}

TEST_CASE("a format that others make of ours comes with the command for it") {
  CHECK(refusal("my day.kml") ==
        "lodebook: reduce does not write .kml\n"
        "help: reduce writes .csv and .geojson; first -o 'my day.geojson', then: ogr2ogr -f KML "
        "-nln lodebook -mapFieldType Date=String,Time=String 'my day.kml' 'my day.geojson'\n");
  CHECK(refusal("A.PNG").find("; net, rose and map write .svg: rsvg-convert ") !=
        std::string::npos);
}

TEST_CASE("an extension that says nothing asks for the format, where one can be stated") {
  CHECK(refusal("day.tab") ==
        "lodebook: reduce does not write .tab\n"
        "help: reduce writes .csv and .geojson; a file with another extension needs --format\n");
  CHECK(refusal("day.tab", false, {"net", extensions}).ends_with("net writes .csv and .geojson\n"));
}

TEST_CASE("a stated format may have any name but that of a format it is not") {
  CHECK(refusal("day.tab", true).empty());
  CHECK_FALSE(refusal("day.xlsx", true).empty());
}

TEST_CASE("a way that needs a layer is not shown where there is none") {
  CHECK(refusal("r.gpx", false, {"--rays", extensions}).find("first --rays") == std::string::npos);
  CHECK(refusal("r.kml", false, {"--rays", extensions}).find("; first --rays r.geojson, then: ") !=
        std::string::npos);
}

TEST_CASE("no conversion leads to what is ours, and each starts from what is") {
  for (const Conversion& conversion : conversions()) {
    bool is_ours = false;
    for (const CommandSpec& command : commands()) {
      for (const std::string_view extension : command.extensions) {
        CHECK(extension != conversion.extension);
        is_ours = is_ours || extension == conversion.from;
      }
    }
    CHECK(is_ours);
  }
}

TEST_CASE("the extensions of a command with formats are those of its formats, in their order") {
  for (const CommandSpec& command : commands()) {
    const OptionSpec format = as_taken_by(command.command, spec_of(Option::format));
    if (!format.belongs_to(command.command) || !spec_of(Option::output).belongs_to(command.command))
      continue;
    REQUIRE(command.extensions.size() == format.choices.size());
    for (std::size_t i = 0; i < format.choices.size(); ++i)
      CHECK(command.extensions[i] == (format.choices[i] == "text" ? "txt" : format.choices[i]));
  }
}
