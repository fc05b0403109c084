// SPDX-License-Identifier: MIT
// The room against published values: every row of its reference files, and the reading of them.
#include "references/rows.hpp"

#include <cctype>
#include <functional>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <lodebook/orientation/circular.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/precision.hpp>
#include <lodebook/orientation/quadrant.hpp>
#include <lodebook/orientation/tensor.hpp>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

using Check = std::function<void(const ReferenceRow&)>;

// Every row must have its check, and every check a row, so that none can be lost unnoticed.
void check_rows(const std::string& file, const std::map<std::string, Check>& checks) {
  std::set<std::string> seen;
  for (const ReferenceRow& row : reference_rows(file)) {
    INFO(row.at << ": " << row.check << ": " << row.input << " (" << row.source << ")");
    const auto check = checks.find(row.check);
    REQUIRE(check != checks.end());
    check->second(row);
    seen.insert(row.check);
  }
  for (const auto& [name, check] : checks) {
    INFO(file << ": " << name);
    CHECK(seen.contains(name));
  }
}

/// The two parts of `a SEPARATOR b`.
std::pair<std::string, std::string> two(const std::string& text, const std::string& separator) {
  const std::size_t at = text.find(separator);
  if (at == std::string::npos) throw std::invalid_argument("no '" + separator + "' in " + text);
  return {text.substr(0, at), text.substr(at + separator.size())};
}

std::pair<double, double> two_numbers(const std::string& text, const std::string& separator) {
  const auto [a, b] = two(text, separator);
  return {number(a), number(b)};
}

/// `N50W`.
QuadrantBearing quadrant(const std::string& text) {
  const char pole = text.front();
  const char side = text.back();
  REQUIRE((pole == 'N' || pole == 'S'));
  REQUIRE((side == 'E' || side == 'W'));
  return QuadrantBearing::from(
             pole == 'N' ? QuadrantBearing::Pole::north : QuadrantBearing::Pole::south,
             number(text.substr(1, text.size() - 2)),
             side == 'E' ? QuadrantBearing::Side::east : QuadrantBearing::Side::west)
      .value();
}

double bearing(const std::string& text) {
  return std::isdigit(static_cast<unsigned char>(text.front())) ? number(text)
                                                                : quadrant(text).degrees();
}

/// `9E`.
Declination declination(const std::string& text) {
  const double degrees = number(text.substr(0, text.size() - 1));
  REQUIRE((text.back() == 'E' || text.back() == 'W'));
  return (text.back() == 'E' ? Declination::east(degrees) : Declination::west(degrees)).value();
}

/// `075/46SE`.
TruePlane plane_with_side(const std::string& text) {
  const auto [strike, rest] = two(text, "/");
  const std::size_t digits = rest.find_first_not_of("0123456789.");
  const Point side = point_named(std::string_view(rest).substr(digits)).value();
  return TruePlane::from_strike_and_side(azimuth(number(strike)),
                                         dip(number(rest.substr(0, digits))),
                                         azimuth(degrees_of(side)))
      .value();
}

/// `12 to 282`: plunge to trend.
TrueLine line(const std::string& text) {
  const auto [down, trend] = two_numbers(text, " to ");
  return TrueLine(azimuth(trend), plunge(down));
}

/// What is made of each of some pairs `a/b`, which are separated by spaces.
std::vector<Vector> vectors(const std::string& text, Vector of(double, double)) {
  std::vector<Vector> all;
  for (const std::string& word : split(text, ' ')) {
    const auto [a, b] = two_numbers(word, "/");
    all.push_back(of(a, b));
  }
  return all;
}

/// Numbers, separated by spaces.
std::vector<double> numbers(const std::string& text) {
  std::vector<double> all;
  for (const std::string& word : split(text, ' '))
    all.push_back(number(word));
  return all;
}

void check_bearing(const QuadrantBearing& found, const ReferenceRow& row) {
  const QuadrantBearing expected = quadrant(row.expected);
  CHECK(found.pole() == expected.pole());
  CHECK(found.side() == expected.side());
  CHECK_THAT(found.angle(), points_to(expected.angle(), row.tolerance));
}

void check_line(Vector axis, const ReferenceRow& row) {
  const TrendAndPlunge found = line_of_axis(axis);
  const TrueLine expected = line(row.expected);
  CHECK_THAT(found.plunge, points_to(expected.plunge().degrees(), row.tolerance));
  CHECK_THAT(found.trend, points_to(expected.trend().degrees(), row.tolerance));
}

void check_plane(Vector pole, const TruePlane& expected, double tolerance) {
  const StrikeAndDip found = plane_of_pole(pole);
  CHECK_THAT(found.strike, points_to(expected.strike().degrees(), tolerance));
  CHECK_THAT(found.dip, points_to(expected.dip().degrees(), tolerance));
}

void check_mean_plane(Vector pole, const ReferenceRow& row) {
  const auto [strike, slope] = two_numbers(row.expected, "/");
  check_plane(pole, TruePlane::from_strike(azimuth(strike), dip(slope), HandRule::right),
              row.tolerance);
}

void check_number(double found, const ReferenceRow& row) {
  CAPTURE(found, row.expected, row.tolerance);
  CHECK(std::abs(found - number(row.expected)) <= row.tolerance);
}

DirectionMean mean_of(const ReferenceRow& row) {
  return mean_of_axes(vectors(row.input, direction_of)).value();
}

}  // namespace

TEST_CASE("a reference file that is missing, empty or broken is an error") {
  CHECK_THROWS(reference_rows("no_such_file.txt"));
  const auto read = [](const std::string& text) {
    std::istringstream in(text);
    return read_reference_rows(in, "text");
  };
  CHECK_THROWS(read(""));
  CHECK_THROWS(read("# only a comment\n\n"));
  CHECK_THROWS(read("check | 1 | 2 | source\n"));
  CHECK_THROWS(read("check | 1 | | 0.1 | source\n"));
  CHECK_THROWS(read("check | 1 | 2 | about | source\n"));
  CHECK_THROWS(read("check | 1 | 2 | 0.1 | \n"));
  const std::vector<ReferenceRow> rows = read("# comment\ncheck | a, b | 2 | 0d30' | source\n");
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].check == "check");
  CHECK(rows[0].input == "a, b");
  CHECK(rows[0].expected == "2");
  CHECK(rows[0].tolerance == 0.5);
  CHECK(rows[0].source == "source");
  CHECK(rows[0].at == "text:2");
}

TEST_CASE("a number in a reference is read whole") {
  CHECK(number("7.5") == 7.5);
  CHECK(number("-0.6") == -0.6);
  CHECK(number("136d45'") == 136.75);
  CHECK(number("-0d30'") == -0.5);
  CHECK(number("1d30'36\"") == 1.51);
  for (const char* text : {"", "x", "7x", "7d", "7d30", "7d30'6", "7d30'6\"x"}) {
    CAPTURE(text);
    CHECK_THROWS(number(text));
  }
}

TEST_CASE("bearings agree with published ones") {
  check_rows("bearings.txt", {{"quadrant to azimuth",
                               [](const ReferenceRow& row) {
                                 CHECK_THAT(quadrant(row.input).degrees(),
                                            points_to(number(row.expected), row.tolerance));
                               }},
                              {"azimuth to quadrant",
                               [](const ReferenceRow& row) {
                                 check_bearing(QuadrantBearing::of_degrees(number(row.input)), row);
                               }},
                              {"back azimuth",
                               [](const ReferenceRow& row) {
                                 CHECK_THAT(azimuth(number(row.input)).opposite().degrees(),
                                            points_to(number(row.expected), row.tolerance));
                               }},
                              {"back bearing", [](const ReferenceRow& row) {
                                 const True there = azimuth(quadrant(row.input).degrees());
                                 check_bearing(
                                     QuadrantBearing::of_degrees(there.opposite().degrees()), row);
                               }}});
}

TEST_CASE("declinations applied agree with published corrections") {
  check_rows(
      "declination_by_hand.txt",
      {{"magnetic to true",
        [](const ReferenceRow& row) {
          const auto [magnetic, offset] = two(row.input, ", ");
          CHECK_THAT(
              to_geographic(Magnetic::from_degrees(bearing(magnetic)).value(), declination(offset))
                  .degrees(),
              points_to(number(row.expected), row.tolerance));
        }},
       {"true to magnetic",
        [](const ReferenceRow& row) {
          const auto [geographic, offset] = two(row.input, ", ");
          CHECK_THAT(to_magnetic(azimuth(bearing(geographic)), declination(offset)).degrees(),
                     points_to(number(row.expected), row.tolerance));
        }},
       {"dial to true", [](const ReferenceRow& row) {
          const auto [read, offsets] = two(row.input, ", ");
          const auto [set, offset] = two(offsets, ", ");
          const Magnetic magnetic =
              to_magnetic(Dial::from_degrees(bearing(read)).value(), declination(set));
          CHECK_THAT(to_geographic(magnetic, declination(offset)).degrees(),
                     points_to(number(row.expected), row.tolerance));
        }}});
}

TEST_CASE("percent grades agree with published ones") {
  check_rows("percent_grade.txt", {{"percent grade", [](const ReferenceRow& row) {
                                      check_number(degrees_from_percent(number(row.input)), row);
                                    }}});
}

TEST_CASE("planes and lines agree with published ones") {
  check_rows(
      "planes_and_lines.txt",
      {{"pole of plane",
        [](const ReferenceRow& row) { check_line(plane_with_side(row.input).pole(), row); }},
       {"plane of pole",
        [](const ReferenceRow& row) {
          check_plane(line(row.input).direction(), plane_with_side(row.expected), row.tolerance);
        }},
       {"pole of plane through two lines",
        [](const ReferenceRow& row) {
          const auto [a, b] = two(row.input, ", ");
          check_line(unit(cross(line(a).direction(), line(b).direction())).value(), row);
        }},
       {"plane of two apparent dips",
        [](const ReferenceRow& row) {
          const auto [a, b] = two(row.input, ", ");
          check_plane(unit(cross(line(a).direction(), line(b).direction())).value(),
                      plane_with_side(row.expected), row.tolerance);
        }},
       {"apparent dip at angle from strike",
        [](const ReferenceRow& row) {
          const auto [slope, section] = two_numbers(row.input, ", ");
          check_number(apparent_dip(dip(slope), angle(section)).degrees(), row);
        }},
       {"intersection of planes dip/direction",
        [](const ReferenceRow& row) {
          const auto pole = [](const std::string& text) {
            const auto [slope, direction] = two_numbers(text, "/");
            return TruePlane::from_dip_direction(azimuth(direction), dip(slope)).pole();
          };
          const auto [a, b] = two(row.input, ", ");
          check_line(intersection(pole(a), pole(b)).value(), row);
        }},
       {"untilted by bedding",
        [](const ReferenceRow& row) {
          const auto [bed, cross_bed] = two(row.input, ", ");
          const TruePlane tilted = plane_with_side(bed);
          // Turning against the clock, seen along the strike, lifts the low side.
          const Vector strike = direction_of(tilted.strike().degrees(), 0);
          const double back = -tilted.dip().degrees();
          CHECK_THAT(turned(tilted.pole(), strike, back), lies_along({0, 0, 1}));
          const auto [slope, direction] = two_numbers(row.expected, " to ");
          check_plane(turned(plane_with_side(cross_bed).pole(), strike, back),
                      TruePlane::from_dip_direction(azimuth(direction), dip(slope)), row.tolerance);
        }},
       {"strike sigma of dip sigma at dip",
        [](const ReferenceRow& row) {
          const auto [sigma, slope] = two_numbers(row.input, ", ");
          check_number(strike_sigma(0, sigma, dip(slope)), row);
        }},
       {"worst strike error of levelling error at dip", [](const ReferenceRow& row) {
          const auto [error, slope] = two_numbers(row.input, ", ");
          check_number(worst_strike_error(angle(error), dip(slope)), row);
        }}});
}

TEST_CASE("means of directions agree with published ones") {
  check_rows(
      "orientation_statistics.txt",
      {{"mean direction cosines",
        [](const ReferenceRow& row) {
          const std::vector<double> expected = numbers(row.expected);
          REQUIRE(expected.size() == 3);
          const Vector axis = mean_of(row).axis;
          CAPTURE(axis.north, axis.east, axis.down);
          CHECK(std::abs(axis.north - expected[0]) <= row.tolerance);
          CHECK(std::abs(axis.east - expected[1]) <= row.tolerance);
          CHECK(std::abs(axis.down - expected[2]) <= row.tolerance);
        }},
       {"resultant", [](const ReferenceRow& row) { check_number(mean_of(row).resultant, row); }},
       {"precision",
        [](const ReferenceRow& row) { check_number(mean_of(row).precision.value(), row); }},
       {"precision by N",
        [](const ReferenceRow& row) {
          const DirectionMean mean = mean_of(row);
          const auto count = static_cast<double>(mean.count);
          check_number(count / (count - mean.resultant), row);
          check_number(mean.precision.value() * count / (count - 1), row);
        }},
       {"cone of 95 percent",
        [](const ReferenceRow& row) { check_number(mean_of(row).cone95.value(), row); }},
       {"mean plane by poles",
        [](const ReferenceRow& row) {
          check_mean_plane(mean_of_axes(vectors(row.input, pole_of)).value().axis, row);
        }},
       {"mean plane by dip vectors",
        [](const ReferenceRow& row) {
          const std::vector<Vector> dips = vectors(row.input, [](double strike, double slope) {
            return direction_of(strike + 90, slope);
          });
          const auto [trend, plunge] = line_of_axis(mean_of_axes(dips).value().axis);
          check_mean_plane(pole_of(trend - 90, plunge), row);
        }},
       {"circular mean",
        [](const ReferenceRow& row) {
          CHECK_THAT(circular_mean(numbers(row.input)).azimuth.value(),
                     points_to(number(row.expected), row.tolerance));
        }},
       {"circular resultant",
        [](const ReferenceRow& row) {
          check_number(circular_mean(numbers(row.input)).resultant, row);
        }},
       {"arc of 95 percent",
        [](const ReferenceRow& row) {
          check_number(circular_mean(numbers(row.input)).arc95.value(), row);
        }},
       {"axial mean",
        [](const ReferenceRow& row) {
          CHECK_THAT(2 * axial_mean(numbers(row.input)).azimuth.value(),
                     points_to(2 * number(row.expected), 2 * row.tolerance));
        }},
       {"eigenvalues of level axes",
        [](const ReferenceRow& row) {
          const std::vector<double> expected = numbers(row.expected);
          REQUIRE(expected.size() == 2);
          std::vector<Vector> axes;
          for (const double azimuth : numbers(row.input))
            axes.push_back(direction_of(azimuth, 0));
          const OrientationTensor tensor = orientation_tensor(axes).value();
          // In the level plane they are those of the doubled angles, too.
          const double resultant = axial_mean(numbers(row.input)).resultant;
          CAPTURE(tensor.eigenvalues[0], tensor.eigenvalues[1], resultant);
          CHECK(std::abs(tensor.eigenvalues[0] - expected[0]) <= row.tolerance);
          CHECK(std::abs(tensor.eigenvalues[1] - expected[1]) <= row.tolerance);
          CHECK(std::abs((1 + resultant) / 2 - tensor.eigenvalues[0]) < 1e-12);
          CHECK(std::abs((1 - resultant) / 2 - tensor.eigenvalues[1]) < 1e-12);
        }},
       {"fold axis of planes", [](const ReferenceRow& row) {
          const std::vector<Vector> poles = vectors(row.input, [](double direction, double slope) {
            return pole_of(direction - 90, slope);
          });
          check_line(orientation_tensor(poles).value().axes[2], row);
        }}});
}
