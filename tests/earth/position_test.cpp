// SPDX-License-Identifier: MIT
// Every writing of a position gives the same point, and every fault says where and what was meant.
#include <fmt/format.h>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/earth/position.hpp>

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <array>
#include <catch.hpp>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <random>
#include <sstream>
#include <vector>

namespace {

using lodebook::earth::distance_m;
using lodebook::earth::Position;
using lodebook::earth::PositionError;
using lodebook::earth::PositionFault;
using lodebook::earth::read_position;
using lodebook::earth::WrittenPosition;

WrittenPosition read(std::string_view text) {
  INFO("text: " << text);
  const auto result = read_position(text);
  if (const auto* const error = std::get_if<PositionError>(&result)) {
    FAIL("fault " << static_cast<int>(error->fault) << " at " << error->offset << " length "
                  << error->length << " meant " << error->meant);
  }
  return std::get<WrittenPosition>(result);
}

Position plain(std::string_view text) {
  const WrittenPosition written = read(text);
  INFO("text: " << text);
  REQUIRE(written.position);
  return *written.position;
}

PositionError fault(std::string_view text) {
  INFO("text: " << text);
  const auto result = read_position(text);
  REQUIRE(std::holds_alternative<PositionError>(result));
  return std::get<PositionError>(result);
}

void check_near(std::string_view text, const Position& expected, double tolerance_m) {
  const Position read_back = plain(text);
  INFO("text: " << text << ", read as " << read_back.latitude << " " << read_back.longitude);
  CHECK(distance_m(read_back, expected) <= tolerance_m);
}

struct FaultCase {
  std::string_view text;
  PositionFault fault;
  std::string_view at;  // the bytes at fault
  std::size_t offset;
  std::string_view meant = {};
};

void check_faults(const std::vector<FaultCase>& cases) {
  for (const FaultCase& expected : cases) {
    const PositionError error = fault(expected.text);
    INFO("text: " << expected.text);
    CHECK(static_cast<int>(error.fault) == static_cast<int>(expected.fault));
    CHECK(error.offset == expected.offset);
    CHECK(expected.text.substr(error.offset, error.length) == expected.at);
    CHECK(error.meant == expected.meant);
  }
}

}  // namespace

TEST_CASE("published positions are read within their tolerance", "[position]") {
  std::ifstream file(LODEBOOK_REFERENCES "/positions.csv");
  REQUIRE(file);
  std::string line;
  std::getline(file, line);
  REQUIRE(line == "input,latitude,longitude,tolerance_m,source");
  int rows = 0;
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::array<std::string, 5> row;
    for (std::string& cell : row) {
      REQUIRE(std::getline(cells, cell, ','));
    }
    REQUIRE(cells.eof());
    INFO(row[4]);
    check_near(row[0], {std::stod(row[1]), std::stod(row[2])}, std::stod(row[3]));
    ++rows;
  }
  CHECK(rows >= 13);
}

TEST_CASE("distances are geodesic", "[position]") {
  // The WGS 84 quarter meridian and equator: 10001965.729 m (Moritz 2000, rounded) and pi/2 a.
  CHECK(std::abs(distance_m({0, 10}, {90, 10}) - 10'001'965.729) < 0.001);
  CHECK(std::abs(distance_m({0, 0}, {0, 90}) - 6'378'137.0 * std::acos(-1.0) / 2) < 0.001);
  CHECK(distance_m({-45, -180}, {-45, 179.999}) < 80);
  CHECK(distance_m({12, 34}, {12, 34}) == 0);
}

TEST_CASE("latitude and longitude in decimals", "[position]") {
  for (const std::string_view text : {
           "44.6891S 169.0144E",
           "44.6891s 169.0144e",
           "44.6891S,169.0144E",
           "44.6891S, 169.0144E",
           "44.6891S , 169.0144E",
           "44.6891S169.0144E",
           "S44.6891 E169.0144",
           "S44.6891E169.0144",
           "S 44.6891, E 169.0144",
           "44.6891 S E 169.0144",
           "44.6891 south 169.0144 East",
           "169.0144E 44.6891S",
           "E169.0144, S44.6891",
           "-44.6891 169.0144",
           "-44.6891,169.0144",
           "-44.6891, +169.0144",
           "-44.6891 +169.0144",
           "\u221244.6891 169.0144",
           "\u201344.6891 169.0144",
           "44.6891\u00B0S 169.0144\u00B0E",
           "44.6891\u00BA S 169.0144\u00BA E",
           "44.6891\u02DAS 169.0144\u02DAE",
           "44.6891deg S 169.0144deg E",
           "44.6891degS 169.0144degE",
           "44.6891DEG S 169.0144Deg E",
           "-44.6891\u00B0 169.0144\u00B0",
           "  44.6891S\t169.0144E \t",
           "\u00A044.6891S\u2007169.0144E\u202F",
           "044.6891S 169.0144E",
       }) {
    CHECK(plain(text) == Position{-44.6891, 169.0144});
  }
}

TEST_CASE("degrees and minutes, with or without seconds", "[position]") {
  const Position expected{-(44 + (41 + 20.75 / 60) / 60), 169 + (0 + 51.5 / 60) / 60};
  for (const std::string_view text : {
           "44 41 20.75 S 169 0 51.5 E",
           "44 41 20.75S, 169 00 51.5E",
           "S 44 41 20.75 E 169 0 51.5",
           "-44 41 20.75 169 0 51.5",
           "-44 41 20.75, 169 0 51.5",
           "-44 41 20.75,169 0 51.5",
           "44:41:20.75S 169:00:51.5E",
           "-44:41:20.75 169:00:51.5",
           "44\u00B041'20.75\"S 169\u00B000'51.5\"E",
           "44\u00B041\u203220.75\u2033S 169\u00B000\u203251.5\u2033E",
           "44\u00B041\u201920.75\u201DS 169\u00B000\u201951.5\u201DE",
           "44\u00B0 41' 20.75'' S, 169\u00B0 0' 51.5'' E",
           "44\u00B041'20.75\u2032\u2032S 169\u00B000'51.5\u2019\u2019E",
           "S44\u00B041'20.75\" E169\u00B000'51.5\"",
           "-44\u00B041'20.75\" 169\u00B000'51.5\"",
           "44 41 20.75 S\t169 0 51.5 E",
           "169 0 51.5 E 44 41 20.75 S",
           "44deg41'20.75\"S 169deg0'51.5\"E",
           "44 41.345833333333333 S 169 0.858333333333333 E",
           "44\u00B041.345833333333333'S 169\u00B00.858333333333333'E",
           "-44 41.345833333333333 +169 0.858333333333333",
           "44:41.345833333333333 S 169:0.858333333333333 E",
       }) {
    check_near(text, expected, 1e-6);
  }
  check_near("44\u00B030' 169\u00B0", {44.5, 169}, 1e-6);  // marks divide what counting cannot
  check_near("44 30 S, 169 E", {-44.5, 169}, 1e-6);
  check_near("-44\u00B0 -169\u00B030'", {-44, -169.5}, 1e-6);
  check_near("44 S 169 30 E", {-44, 169.5}, 1e-6);  // not zone 44
}

TEST_CASE("the ends of the ranges", "[position]") {
  CHECK(plain("90N 180E") == Position{90, -180});
  CHECK(plain("90S 180W") == Position{-90, -180});
  CHECK(plain("-90 180.0") == Position{-90, -180});
  CHECK(plain("0 179.9999999") == Position{0, 179.9999999});
  CHECK(plain("89 59 59.999N 0 0 0W").longitude == 0);
  CHECK_FALSE(std::signbit(plain("0S 0W").latitude));
  CHECK_FALSE(std::signbit(plain("-0 -0").longitude));
  CHECK(plain("1 2") == Position{1, 2});
  CHECK(plain("1,2") == Position{1, 2});
  CHECK(plain(".5 7.") == Position{0.5, 7});
}

TEST_CASE("UTM and MGRS in all their spacings", "[position]") {
  const Position expected = plain("59 south 345210 5052310");
  for (const std::string_view text : {
           "59G 345210 5052310",
           "59g 345210 5052310",
           "59 G 345210 5052310",
           "59G 345210.0 5052310.0",
           "59G 345210, 5052310",
           "59G 345210,5052310",
           "59G, 345210, 5052310",
           "59G 345210E 5052310N",
           "59G 345210mE 5052310mN",
           "59G 345210 mE, 5052310 mN",
           "59G 345210m 5052310m",
           "59 G 345210.00 m E 5052310.00 m S",
           "59G 5052310mN 345210mE",
           "59G\t345210\u00A05052310",
           "59 SOUTH 345210 5052310",
           "59south 345210 5052310",
           "59 South 345210mE 5052310mN",
       }) {
    CHECK(plain(text) == expected);
    CHECK_FALSE(read(text).if_south);
    CHECK(read(text).zone == 0);
  }
  const Position centre = plain("59 south 345210.5 5152310.5");
  for (const std::string_view text : {
           "59G LM 45210 52310",
           "59GLM4521052310",
           "59GLM 45210 52310",
           "59 G LM 45210 52310",
           "59 GLM 4521052310",
           "59glm4521052310",
           "59G L M 45210, 52310",
       }) {
    check_near(text, centre, 1e-6);
  }
  check_near("59GLM4 5", plain("59 south 345000 5155000"), 1e-6);
  check_near("59GLM4552", plain("59 south 345500 5152500"), 1e-6);
  check_near("59GLM 45210123 52310456", plain("59 south 345210.1235 5152310.4565"), 1e-6);
  check_near("5N 345210 0", plain("5 north 345210 0"), 0);
  check_near("BAN 00000 00000", {-90, 0}, 1);  // the pole, in the polar grid
  check_near("31DEG 45210 52310", plain("31DEG4521052310"), 0);
}

TEST_CASE("the zone letter S is the band, the south, or both", "[position]") {
  const WrittenPosition both = read("38S 444140.54 3684706.36");
  REQUIRE(both.position);
  REQUIRE(both.if_south);
  CHECK(both.zone == 38);
  CHECK(*both.position == plain("38 north 444140.54 3684706.36"));
  CHECK(*both.if_south == plain("38 south 444140.54 3684706.36"));

  const WrittenPosition south = read("59S 345210 5052310");
  CHECK_FALSE(south.position);
  REQUIRE(south.if_south);
  CHECK(*south.if_south == plain("59G 345210 5052310"));
  CHECK(south.zone == 59);

  CHECK(read("38S 444140 mE 3684706 mS").position == plain("38 south 444140 3684706"));
  CHECK_FALSE(read("38SMB4414084706").if_south);
  check_faults({
      {"38S 444140 500000", PositionFault::band, "S", 2, "38N 444140 500000"},
      {"38S 44414 500000", PositionFault::outside_grid, "44414", 4},
  });
}

TEST_CASE("a band letter that contradicts the northing", "[position]") {
  check_faults({
      {"38N 444140 3684706", PositionFault::band, "N", 2, "38 north 444140 3684706"},
      {"59H 345210 5052310", PositionFault::band, "H", 2, "59G 345210 5052310"},
      {"59 h 345210.5mE 5052310mN", PositionFault::band, "h", 3, "59G 345210.5 5052310"},
      {"38T 444140 3684706", PositionFault::band, "T", 2, "38S 444140 3684706"},
  });
  // Latitude 40 lies near 4427757 m on the central meridian: 1 km of grace on either side.
  CHECK(read("38S 500000 4428500").position);
  CHECK(read("38T 500000 4427000").position);
  CHECK(fault("38T 500000 4426000").meant == "38S 500000 4426000");
  CHECK(fault("38R 500000 4430000").meant == "38T 500000 4430000");
  CHECK(read("38M 500000 10000000").position);
}

TEST_CASE("faults of latitude and longitude", "[position]") {
  using enum PositionFault;
  check_faults({
      {"", unreadable, "", 0},
      {"  ", unreadable, "  ", 0},
      {"hello", unreadable, "hello", 0},
      {"44.65S 169.03E here", unreadable, "here", 15},
      {"44.65S 169.03E;", unreadable, ";", 14},
      {"44.65S \u20AC 169.03E", unreadable, "\u20AC", 7},
      {"'\"\u00B0", unreadable, "'\"\u00B0", 0},
      {"44' 41\u00B0 S 169 E", unreadable, "'", 2},
      {"44\u00B020\"S 169E", unreadable, "\"", 6},
      {"44.65,", uneven, "44.65,", 0},
      {"44.65S 169.03E,", unreadable, ",", 14},
      {"1e3 5", number, "1e3", 0},
      {"5 1e3", number, "1e3", 2},
      {"1e3", number, "1e3", 0},
      {"nan nan", unreadable, "nan", 0},
      {"--5 6", number, "-", 0},
      {"- 5 6", number, "-", 0},
      {"5-6", number, "-", 1},
      {"44-41-20 169-00-51", number, "-", 2},
      {"1.2.3 4", number, "1.2.3", 0},
      {". 4", number, ".", 0},
      {"44,65S 169,03E", decimal_comma, "44,65", 0, "44.65S 169.03E"},
      {"44,65S 169.03E", decimal_comma, "44,65", 0, "44.65S 169.03E"},
      {"44,65, 169,03", decimal_comma, "44,65", 0, "44.65, 169.03"},
      {"-44,65 169.03", decimal_comma, "44,65", 1, "-44.65 169.03"},
      {"44 30,5S 169 20.5E", decimal_comma, "30,5", 3, "44 30.5S 169 20.5E"},
      {"91N 5E", latitude_range, "91N", 0},
      {"5E 90.1S", latitude_range, "90.1S", 3},
      {"91 92", latitude_range, "91", 0},
      {"190 44", latitude_range, "190", 0},
      {"44S 181E", longitude_range, "181E", 4},
      {"-44 190", longitude_range, "190", 4},
      {"44 60 S 169 0 E", minutes_range, "60", 3},
      {"44 10 60 S 169 0 0 E", minutes_range, "60", 6},
      {"44.5 30 S 169 0 E", minutes_range, "44.5", 0},
      {"44 30.5 10 S 169 0 0 E", minutes_range, "30.5", 3},
      {"169.03 -44.65", swapped, "169.03 -44.65", 0, "-44.65, 169.03"},
      {" 169 0 51.5,-44 41 20 ", swapped, "169 0 51.5,-44 41 20", 1, "-44 41 20, 169 0 51.5"},
      {"44.65S 169.03", hemisphere, "S", 5},
      {"44.65 169.03E", hemisphere, "E", 12},
      {"44.65S -169.03", hemisphere, "S", 5},
      {"-44.65S 169.03E", hemisphere, "-44.65S", 0},
      {"44.65S 169.03S", hemisphere, "S", 13},
      {"44.65E 69.03W", hemisphere, "W", 12},
      {"44S 20N 169E", hemisphere, "E", 11},
      {"44.65", uneven, "44.65", 0},
      {"44.65S", uneven, "44.65S", 0},
      {"44 41 169", uneven, "44 41 169", 0},
      {"-44 41 20 169 0", uneven, "-44 41 20 169 0", 0},
      {"44:41:20 169:00", uneven, "44:41:20 169:00", 0},
      {"44:41", uneven, "44:41", 0},
      {"-44\u00B041", uneven, "-44\u00B041", 0},
      {"44deg 169.03", uneven, "44deg 169.03", 0},
      {"44 1 2 3 S 169 E", uneven, "3", 7},
      {"S 44 169 E", uneven, "S 44 169 E", 0},
      {"44S 169E 8", loose_figure, "8", 9, "44S 169E"},
      {"44S, 169E, 8", loose_figure, "8", 11, "44S, 169E"},
      {"-44.65 169.03 8", loose_figure, "8", 14, "-44.65 169.03"},
  });
}

TEST_CASE("faults of the grids", "[position]") {
  using enum PositionFault;
  check_faults({
      {"0G 345210 5052310", zone, "0", 0},
      {"61S 345210 5052310", zone, "61", 0},
      {"99 south 345210 5052310", zone, "99", 0},
      {"59I 345210 5052310", zone, "I", 2},
      {"59O 345210 5052310", zone, "O", 2},
      {"59A 345210 5052310", zone, "A", 2},
      {"61GLM4521052310", zone, "61", 0},
      {"59ILM4521052310", zone, "ILM", 2},
      {"59G 3452100 5052310", outside_grid, "3452100", 4},
      {"59G 345210 50523100", outside_grid, "50523100", 11},
      {"59 north 345210 9600000", outside_grid, "9600000", 16},
      {"59G 5052310 345210", outside_grid, "5052310", 4, "59G 345210 5052310"},
      {"59 south 5052310 345210", outside_grid, "5052310", 9, "59 south 345210 5052310"},
      {"59G 345210", uneven, "59G 345210", 0},
      {"32X 500000 8700000", zone, "32X", 0},
      {"34X 500000 8700000", zone, "34X", 0},
      {"36 X 500000 8700000", zone, "36 X", 0},
      {"32XNH 00000 00000", zone, "32XNH", 0},
      {"59G 345210 5052310 812", loose_figure, "812", 19, "59G 345210 5052310"},
      {"59 345210 5052310", uneven, "59 345210 5052310", 0},
      {"59G 345,210 5,052,310", decimal_comma, "345,210", 4, "59G 345210 5052310"},
      {"59G 345,210 5052310", decimal_comma, "345,210", 4, "59G 345210 5052310"},
      {"59G 345210.0,5052310,0", decimal_comma, "345210.0,5052310", 4},
      {"59G -345210 5052310", unreadable, "-", 4},
      {"59G 345210E 5052310E", unreadable, "345210E 5052310E", 4},
      {"59G 345210W 5052310N", unreadable, "W", 10},
      {"59G 345210 5052310 there", unreadable, "there", 19},
      {"38T 444140 mE 4684706 mS", hemisphere, "mS", 22},
      {"59GLM 4521 52310", uneven, "4521 52310", 6},
      {"59GLM 452", uneven, "452", 6},
      {"59GLM 452100000000 523100000000", uneven, "452100000000 523100000000", 6},
      {"59GLM 45 52 1", loose_figure, "1", 12, "59GLM 45 52"},
      {"59GLM 45.5 52.5", number, "45.5", 6},
      {"59GLM 45,,52", unreadable, ",", 8},
      {"59GLM 45 52 E", unreadable, "E", 12},
      {"59GIM 45210 52310", outside_grid, "GIM", 2},
      {"59GAM 45210 52310", outside_grid, "GAM", 2},
      {"59HLM 45210 52310", outside_grid, "HLM", 2},
      {"59LM 45210 52310", unreadable, "LM", 2},
  });
}

TEST_CASE("positions survive every writing", "[position]") {
  constexpr std::uint64_t seed = 20260214;
  CAPTURE(seed);
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> latitudes(-79.9, 83.9);
  std::uniform_real_distribution<double> longitudes(-180, 179.9999);
  for (int round = 0; round < 2000; ++round) {
    const Position point{latitudes(random), longitudes(random)};
    const double lat = std::abs(point.latitude);
    const double lon = std::abs(point.longitude);
    const char ns = point.latitude < 0 ? 'S' : 'N';
    const char ew = point.longitude < 0 ? 'W' : 'E';
    check_near(fmt::format("{:.7f} {:.7f}", point.latitude, point.longitude), point, 0.01);
    check_near(fmt::format("{:.7f}{}, {:.7f}{}", lat, ns, lon, ew), point, 0.01);
    check_near(fmt::format("{}{:.7f} {}{:.7f}", ew, lon, ns, lat), point, 0.01);

    const auto sexagesimal = [](double degrees) {
      const auto units = std::llround(degrees * 3600 * 1000);
      return std::array{units / 3'600'000, units / 60'000 % 60, units / 1000 % 60, units % 1000};
    };
    const auto a = sexagesimal(lat);
    const auto o = sexagesimal(lon);
    check_near(fmt::format("{} {} {}.{:03} {} {} {} {}.{:03} {}", a[0], a[1], a[2], a[3], ns, o[0],
                           o[1], o[2], o[3], ew),
               point, 0.03);
    check_near(fmt::format("{}{}:{}:{}.{:03} {}{}:{}:{}.{:03}", ns == 'S' ? "-" : "", a[0], a[1],
                           a[2], a[3], ew == 'W' ? "-" : "+", o[0], o[1], o[2], o[3]),
               point, 0.03);

    int zone = 0;
    bool north = false;
    double easting = 0;
    double northing = 0;
    std::string square;
    GeographicLib::UTMUPS::Forward(point.latitude, point.longitude, zone, north, easting, northing);
    GeographicLib::MGRS::Forward(zone, north, easting, northing, point.latitude, 5, square);
    const std::size_t letter = square.size() - 13;
    check_near(
        fmt::format("{} {} {:.3f} {:.3f}", zone, north ? "north" : "south", easting, northing),
        point, 0.002);
    check_near(fmt::format("{}{} {:.3f} {:.3f}", zone, square[letter], easting, northing), point,
               0.002);
    check_near(square, point, 0.75);
    check_near(
        fmt::format("{} {} {} {}", square.substr(0, letter + 1), square.substr(letter + 1, 2),
                    square.substr(letter + 3, 5), square.substr(letter + 8)),
        point, 0.75);
  }
}

TEST_CASE("no text can break the reader", "[position]") {
  constexpr std::uint64_t seed = 8128;
  CAPTURE(seed);
  std::mt19937_64 random(seed);
  const std::vector<std::string> pieces = {
      " ",      ",",         "-",   "+",      "44",     "169.03",  "38",     "59",    "60",
      "345210", "S",         "N",   "e",      "W",      "G",       "m",      "LM",    "GLM",
      "'",      "\"",        ":",   "deg",    "\u00B0", "5052310", "\u00A0", "\xFF",  "\xC2",
      "\u2212", "0x10",      "1e3", "..",     "nan",    "south",   "99999",  "north", "INV",
      "/",      "3684706.2", "DEG", "",       "0",      "90",      "180",    "BAN",   " ",
      " ",      "4552 ",     "mE",  "\u2032", ".",
  };
  std::vector<std::string> texts = {
      std::string(100, '7'),
      std::string(500, '9'),
      std::string(100, '7') + " " + std::string(100, '7'),
      "59G " + std::string(100, '7') + " " + std::string(300, '7'),
      "59GLM" + std::string(100, '7'),
      std::string(70'000, '-'),
      std::string(70'000, ' '),
      std::string(70'000, 'S'),
      std::string("\0\0", 2),
      std::string("44S\0 169E", 9),
      "44S 169E\n",
      "\xF0\x9F",
      "\xE2\x80",
  };
  for (int i = 0; i < 100'000; ++i) {
    std::string text;
    for (auto left = random() % 12; left > 0; --left)
      text += pieces[random() % pieces.size()];
    texts.push_back(std::move(text));
  }
  const auto is_sound = [](const Position& p) {
    return p.latitude >= -90 && p.latitude <= 90 && p.longitude >= -180 && p.longitude < 180;
  };
  int positions = 0;
  for (const std::string& text : texts) {
    const auto result = read_position(text);
    bool sound = false;
    if (const auto* const written = std::get_if<WrittenPosition>(&result)) {
      ++positions;
      sound = (written->position || written->if_south) &&
              (!written->position || is_sound(*written->position)) &&
              (!written->if_south || is_sound(*written->if_south)) &&
              (written->zone != 0) == written->if_south.has_value();
    } else {
      const auto& error = std::get<PositionError>(result);
      sound = error.offset + error.length <= text.size() && (error.length > 0 || text.empty()) &&
              (error.meant.empty() ||
               std::holds_alternative<WrittenPosition>(read_position(error.meant)));
    }
    if (!sound) FAIL("unsound for: " << text);
  }
  CHECK(positions > 100);
  CHECK(std::holds_alternative<PositionError>(read_position(texts[0])));
}
