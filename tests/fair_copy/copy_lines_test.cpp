// SPDX-License-Identifier: MIT
#include "fair_copy/copy_lines.hpp"

#include <catch.hpp>

namespace lodebook::test {
namespace {

using Lines = std::vector<std::uint32_t>;

constexpr std::string_view page = "St. 4\n\njts N62E 37NW\njoint N62E 37 NW\nrain\n";

TEST_CASE("a copy's lines lead back to the page") {
  const auto lines = copy_lines(page,
                                "# page 1: St. 4\nstation 4\n\n# page 3: jts N62E 37NW\n"
                                "joint N62E 37 NW\njoint N62E 37 NW\n# page 5: rain\nnote rain\n");
  REQUIRE(lines.has_value());
  CHECK(*lines == Lines{0, 1, 1, 2, 3, 3, 4, 5, 5});
}

TEST_CASE("questions about the heading belong to no line") {
  const auto lines = copy_lines("field day\n\nstation 1\n",
                                "# page 0: the heading\nask rule right\nfield day\n\nstation 1\n");
  REQUIRE(lines.has_value());
  CHECK(*lines == Lines{0, 0, 0, 1, 2, 3});
}

TEST_CASE("a copy without a line of the page is noticed") {
  CHECK_FALSE(copy_lines(page, "# page 1: St. 4\nstation 4\n"));
  CHECK_FALSE(
      copy_lines(page, "# page 1: St. 5\nstation 4\n\njts N62E 37NW\njoint N62E 37 NW\nrain\n"));
  CHECK_FALSE(copy_lines(page, "# page 1: St. 4\n\njts N62E 37NW\nrain\n"));
  CHECK_FALSE(copy_lines(page, ""));
}

}  // namespace
}  // namespace lodebook::test
