// SPDX-License-Identifier: MIT
// Dates: ISO in and out, and the decimal year that the field's models count in.
#include <lodebook/notebook/date.hpp>

#include <catch.hpp>

using namespace lodebook::notebook;

TEST_CASE("a date is read in its ISO form only, and written back the same") {
  for (const char* const text : {"2026-02-14", "1900-01-01", "2000-02-29", "1978-12-31"}) {
    const auto date = read_date(text);
    REQUIRE(date);
    CHECK(iso_date(*date) == text);
  }
  for (const char* const text : {"", "2026-2-14", "2026-02-30", "1900-02-29", "14.02.2026",
                                 "2026-02-14 ", "2026-13-01", "20260214"}) {
    INFO(text);
    CHECK(!read_date(text));
  }
}

TEST_CASE("another order is understood where only one order makes a day") {
  CHECK(meant_date("14.2.2026") == "2026-02-14");
  CHECK(meant_date("2/14/2026") == "2026-02-14");
  CHECK(meant_date("2026/2/14") == "2026-02-14");
  CHECK(meant_date("3/4/2026").empty());
  CHECK(meant_date("5/5/2026") == "2026-05-05");
}

TEST_CASE("a decimal year is four digits, and a fraction if a point stands behind them") {
  CHECK(read_decimal_year("1978") == 1978.0);
  CHECK(read_decimal_year("1978.5") == 1978.5);
  CHECK(read_decimal_year("2029.999") == 2029.999);
  for (const char* const text :
       {"", "197", "1978.", ".5", "19785", "1978.5.1", "1978-5", "-1978", "+1978", "1978 ", " 1978",
        "1978e0", "1978.5E", "0x78", "1978,5"}) {
    INFO(text);
    CHECK(!read_decimal_year(text));
  }
}

TEST_CASE("a decimal year has the fraction that has gone when the day begins") {
  CHECK(decimal_year({2025, 1, 1}) == 2025.0);
  CHECK(decimal_year({2024, 7, 2}) == 2024.5);  // 183 days of 366
  CHECK(decimal_year({2026, 2, 14}) == Approx(2026 + 44.0 / 365));
  CHECK(decimal_year({2029, 12, 31}) == Approx(2029 + 364.0 / 365));
}
