// SPDX-License-Identifier: MIT
// Names of codes and severities.
#include <algorithm>
#include <catch.hpp>
#include <lodebook/notebook/diagnostic.hpp>
#include <set>

namespace lodebook::notebook {
namespace {

TEST_CASE("severities have the names that are shown") {
  CHECK(name_of(Severity::error) == "error");
  CHECK(name_of(Severity::warning) == "warning");
  CHECK(name_of(Severity::note) == "note");
}

TEST_CASE("every code has a kebab-case name of its own") {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < code_count; ++i) {
    const std::string_view name = name_of(static_cast<Code>(i));
    CAPTURE(name);
    CHECK_FALSE(name.empty());
    CHECK(std::all_of(name.begin(), name.end(),
                      [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; }));
    CHECK(name.front() != '-');
    CHECK(name.back() != '-');
    CHECK(names.insert(name).second);
  }
  CHECK(names.size() == code_count);
}

TEST_CASE("the codes of the published list exist") {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < code_count; ++i)
    names.insert(name_of(static_cast<Code>(i)));
  for (const std::string_view name : {"quadrant-angle",
                                      "quadrant-letters",
                                      "azimuth-range",
                                      "dip-range",
                                      "dip-side-missing",
                                      "dip-side-impossible",
                                      "attitude-ambiguous",
                                      "pair-order",
                                      "rake-no-plane",
                                      "decimal-comma",
                                      "number",
                                      "unknown-word",
                                      "trailing-text",
                                      "declination-side",
                                      "date",
                                      "encoding",
                                      "control-character",
                                      "name",
                                      "position",
                                      "repeat-spread",
                                      "line-off-plane",
                                      "back-bearing",
                                      "percent-or-degrees",
                                      "landmark-unknown",
                                      "doubtful",
                                      "station-repeated",
                                      "reading-outside-station",
                                      "declination-missing",
                                      "set-missing",
                                      "declination-large",
                                      "tally",
                                      "date-order",
                                      "strike-uncertain",
                                      "trend-uncertain",
                                      "notation-mixed",
                                      "other-end"}) {
    CAPTURE(name);
    CHECK(names.count(name) == 1);
  }
}

TEST_CASE("a diagnostic belongs to no reading unless told") {
  CHECK(Diagnostic().reading == no_reading);
  CHECK(Place().end_column == Place().column + 1);
}

}  // namespace
}  // namespace lodebook::notebook
