// SPDX-License-Identifier: MIT
#include <array>
#include <catch.hpp>
#include <lodebook/output/sidecar.hpp>

namespace lodebook {
namespace {

using output::Column;
using output::Type;

TEST_CASE("each column gets a type, in the order given") {
  const auto nothing = [](output::Pen&, const output::RowContext&) {};
  const std::array<Column, 8> columns = {{{"station", Type::text, nothing},
                                          {"longitude", Type::number, nothing},
                                          {"latitude", Type::number, nothing},
                                          {"surface", Type::count, nothing},
                                          {"strike", Type::number, nothing},
                                          {"status", Type::word, nothing},
                                          {"date", Type::date, nothing},
                                          {"time", Type::time, nothing}}};
  CHECK(output::column_types(columns) ==
        "\"String\",\"CoordX\",\"CoordY\",\"Integer\",\"Real\",\"String\",\"Date\",\"Time\"\n");
  CHECK(output::column_types(std::span(columns).first(1)) == "\"String\"\n");
}

TEST_CASE("our own table has one X, one Y and a type for every column") {
  const std::string types = output::column_types(output::columns());
  const auto count = [&](std::string_view word) {
    std::size_t found = 0;
    for (std::size_t at = types.find(word); at != std::string::npos; at = types.find(word, at + 1))
      ++found;
    return found;
  };
  CHECK(count("\"CoordX\"") == 1);
  CHECK(count("\"CoordY\"") == 1);
  CHECK(count(",") + 1 == output::columns().size());
}

TEST_CASE("the coordinate system is one line and names WGS 84") {
  const std::string_view text = output::coordinate_system();
  CHECK(text.starts_with("GEOGCS[\"WGS 84\","));
  CHECK(text.ends_with("AUTHORITY[\"EPSG\",\"4326\"]]\n"));
  CHECK(text.find('\n') == text.size() - 1);
}

}  // namespace
}  // namespace lodebook
