// SPDX-License-Identifier: MIT
// Strict decimal text in, rounded figures out.
#include <lodebook/orientation/decimal.hpp>

#include <catch.hpp>
#include <cstdlib>
#include <limits>
#include <new>
#include <string>

#include "directions.hpp"

using namespace lodebook;
using lodebook::test::Seeded;

namespace {

std::size_t allocations = 0;

std::string figure(std::int64_t units, int decimals, int min_digits = 1) {
  std::string out;
  append_figure(out, units, decimals, min_digits);
  return out;
}

/// More zeros than any finite number needs. (Sums of strings make g++ 12 warn, PR 105651.)
std::string around_zeros(std::string_view before, std::string_view after) {
  std::string text(before);
  text.append(400, '0');
  text.append(after);
  return text;
}

}  // namespace

// Counts what the program allocates, for the tests of the hot path.
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  ++allocations;
  return std::malloc(size > 0 ? size : 1);
}
void* operator new(std::size_t size) {
  if (void* const memory = operator new(size, std::nothrow)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
  std::free(memory);
}

TEST_CASE("digits with at most one point are read") {
  CHECK(read_decimal("7") == 7.0);
  CHECK(read_decimal("007") == 7.0);
  CHECK(read_decimal("7.5") == 7.5);
  CHECK(read_decimal(".5") == 0.5);
  CHECK(read_decimal("7.") == 7.0);
  CHECK(read_decimal("0") == 0.0);
  CHECK(read_decimal("44.6891") == 44.6891);
  CHECK(read_decimal("5052310.123456789") == 5052310.123456789);
}

TEST_CASE("nothing but digits and one point is a number") {
  for (const char* text :
       {"",    ".",     "..",       "1..2", "1.2.3", "12,5",     "1e3",      "1E3", "nan",
        "NaN", "inf",   "infinity", "0x10", "+7",    "-7",       "-0",       " 7",  "7 ",
        "7\t", "1'000", "1 000",    "7d",   "N50W",  "\xc2\xb0", "7\xc2\xb0"}) {
    CAPTURE(text);
    CHECK_FALSE(read_decimal(text));
  }
  CHECK_FALSE(read_decimal(std::string_view("7\0", 2)));
  CHECK_FALSE(read_decimal(around_zeros(".", "1.2")));
}

TEST_CASE("a number that is too long to be finite is no number, however long it is") {
  CHECK_FALSE(read_decimal(std::string(400, '9')));
  CHECK(read_decimal(around_zeros("", "7")) == 7.0);
  CHECK(read_decimal(around_zeros("7.", "")) == 7.0);
  CHECK(read_decimal(around_zeros(".", "1")) == 0.0);
}

TEST_CASE("a view is read to its end and no further") {
  CHECK(read_decimal(std::string_view("12345", 2)) == 12.0);
}

TEST_CASE("rounding is half up, after the dust of sums is shed") {
  CHECK(rounded(12.25, 1) == 123);
  CHECK(rounded(12.35, 1) == 124);
  CHECK(rounded(0.05, 1) == 1);
  CHECK(rounded(0.15, 1) == 2);
  CHECK(rounded(0.25, 1) == 3);
  CHECK(rounded(1.005, 2) == 101);
  CHECK(rounded(0.1 + 0.2 - 0.25, 1) == 1);  // 0.05 and a little
  CHECK(rounded(340.05 - 340.0, 1) == 1);    // 0.05 and a little less
  CHECK(rounded(0.0499999, 1) == 0);
  CHECK(rounded(2.5, 0) == 3);
  CHECK(rounded(1.5, 0) == 2);
  CHECK(rounded(0.4999999999, 0) == 1);
  CHECK(rounded(0.499999999, 0) == 0);
}

TEST_CASE("half up of a negative number is towards zero") {
  CHECK(rounded(-12.25, 1) == -122);
  CHECK(rounded(-12.26, 1) == -123);
  CHECK(rounded(-0.05, 1) == 0);
  CHECK(rounded(-0.06, 1) == -1);
  CHECK(rounded(-2.5, 0) == -2);
  CHECK(rounded(-1e-17, 1) == 0);
  CHECK(rounded(-0.0, 7) == 0);
}

TEST_CASE("rounding takes up to seven places, and large numbers") {
  CHECK(rounded(44.68912345, 7) == 446891235);
  CHECK(rounded(-169.01441234, 7) == -1690144123);
  CHECK(rounded(5052310.125, 2) == 505231013);
  CHECK(rounded(1e11, 7) == 1'000'000'000'000'000'000);
}

TEST_CASE("rounding saturates instead of overflowing") {
  CHECK(rounded(1e12, 7) == 9'000'000'000'000'000'000);
  CHECK(rounded(-1e300, 0) == -9'000'000'000'000'000'000);
  CHECK(rounded(std::numeric_limits<double>::infinity(), 1) == 9'000'000'000'000'000'000);
}

TEST_CASE("an azimuth is wrapped after rounding") {
  CHECK(rounded_azimuth(359.96, 1) == 0);
  CHECK(rounded_azimuth(359.94, 1) == 3599);
  CHECK(rounded_azimuth(360, 1) == 0);
  CHECK(rounded_azimuth(-0.04, 1) == 0);
  CHECK(rounded_azimuth(-0.06, 1) == 3599);
  CHECK(rounded_azimuth(-20, 1) == 3400);
  CHECK(rounded_azimuth(724.6, 0) == 5);
}

TEST_CASE("an axis wraps at half a turn, after rounding") {
  CHECK(rounded_axis(179.96, 1) == 0);
  CHECK(rounded_axis(179.94, 1) == 1799);
  CHECK(rounded_axis(180, 0) == 0);
  CHECK(rounded_axis(359.96, 1) == 0);
  CHECK(rounded_axis(190.25, 2) == 1025);
}

TEST_CASE("a rounded azimuth is in range and as near as its last place allows") {
  Seeded random(21);
  for (int i = 0; i < 2000; ++i) {
    const double degrees = random.between(-720, 720);
    CAPTURE(degrees);
    const std::int64_t tenths = rounded_azimuth(degrees, 1);
    CHECK(tenths >= 0);
    CHECK(tenths < 3600);
    CHECK_THAT(static_cast<double>(tenths) / 10, test::points_to(degrees, 0.05 + 1e-9));
  }
}

TEST_CASE("a figure has exactly its decimals") {
  CHECK(figure(3240, 1) == "324.0");
  CHECK(figure(5, 1) == "0.5");
  CHECK(figure(0, 1) == "0.0");
  CHECK(figure(7, 0) == "7");
  CHECK(figure(0, 0) == "0");
  CHECK(figure(5, 7) == "0.0000005");
  CHECK(figure(446891235, 7) == "44.6891235");
  CHECK(figure(1, 2) == "0.01");
}

TEST_CASE("a negative figure has a minus, zero never") {
  CHECK(figure(-3, 1) == "-0.3");
  CHECK(figure(-246, 1) == "-24.6");
  CHECK(figure(rounded(-0.04, 1), 1) == "0.0");
  CHECK(figure(std::numeric_limits<std::int64_t>::min(), 1) == "-922337203685477580.8");
}

TEST_CASE("a figure is padded with zeros before the point") {
  CHECK(figure(685, 1, 3) == "068.5");
  CHECK(figure(7, 0, 3) == "007");
  CHECK(figure(0, 1, 3) == "000.0");
  CHECK(figure(3400, 1, 3) == "340.0");
  CHECK(figure(12345, 1, 3) == "1234.5");
  CHECK(figure(-5, 1, 2) == "-00.5");
}

TEST_CASE("a figure is appended") {
  std::string out = "strike ";
  append_figure(out, 3400, 1);
  append_figure(out, 7, 0);
  CHECK(out == "strike 340.07");
}

TEST_CASE("a written figure reads back as the number it stands for") {
  Seeded random(22);
  for (int i = 0; i < 2000; ++i) {
    const std::int64_t units = rounded(random.between(0, 1e6), 3);
    CAPTURE(units);
    CHECK(rounded(read_decimal(figure(units, 3)).value(), 3) == units);
  }
}

TEST_CASE("reading, rounding and writing a figure allocate nothing") {
  std::string out;
  out.reserve(64);
  const std::size_t before = allocations;
  const std::optional<double> value = read_decimal("340.25");
  append_figure(out, rounded_azimuth(*value, 1), 1, 3);
  append_figure(out, rounded(-44.6891235, 7), 7);
  const std::size_t after = allocations;
  CHECK(out == "340.3-44.6891235");
  CHECK(after == before);
  CHECK(before > 0);
}

TEST_CASE("a trimmed figure has no zeros at its end") {
  const auto trimmed = [](double value, int decimals) {
    std::string out;
    append_trimmed(out, value, decimals);
    return out;
  };
  CHECK(trimmed(24.6, 2) == "24.6");
  CHECK(trimmed(24.978, 2) == "24.98");
  CHECK(trimmed(20, 2) == "20");
  CHECK(trimmed(100, 0) == "100");
  CHECK(trimmed(0.001, 2) == "0");
  CHECK(trimmed(-0.5, 1) == "-0.5");
}

TEST_CASE("a declination has its letter, unless it rounds to nothing") {
  const auto lettered = [](double degrees_east, int decimals) {
    std::string out;
    append_east_or_west(out, degrees_east, decimals);
    return out;
  };
  CHECK(lettered(24.978, 2) == "24.98E");
  CHECK(lettered(-31.5, 2) == "31.5W");
  CHECK(lettered(0, 2) == "0");
  CHECK(lettered(0.004, 2) == "0");
  CHECK(lettered(-0.004, 2) == "0");
  CHECK(lettered(-0.004, 3) == "0.004W");
}
