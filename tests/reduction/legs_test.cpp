// SPDX-License-Identifier: MIT
// Legs: how well their level part is known, and which of them place nothing.
#include <lodebook/reduction/fixes.hpp>

#include <fmt/format.h>

#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <numbers>
#include <random>

#include "reduced.hpp"

namespace {

using namespace lodebook;
using earth::Position;
using notebook::Code;
using reduction::Fixes;
using reduction::LeftOut;
using reduction::LocatedStation;
using test::Reduced;

constexpr Position hut{-44.70, 169.00};
constexpr double radians = std::numbers::pi / 180;
const std::string head = "set 0\ndeclination 0\n";
const std::string at_hut = " at 44.7S 169.0E";

const LocatedStation& station(const Fixes& fixes, std::string_view name) {
  const auto found = std::ranges::find(fixes.stations, name, &LocatedStation::name);
  REQUIRE(found != fixes.stations.end());
  return *found;
}

/// Degrees as a percent grade, which no steepness makes doubtful.
std::string grade(double degrees) {
  return fmt::format("{:.6f}%", 100 * std::tan(degrees * radians));
}

/// One leg of 120 m, straight up the slope.
Reduced one_leg(double slope, double dip_sigma) {
  return Reduced(head + fmt::format("accuracy dip {}\n", dip_sigma) + "station A" + at_hut +
                 "\nleg 030 120m slope " + grade(slope) + " to B\nstation B\n");
}

/// Whether the ellipse around a station holds the true point.
bool holds(const LocatedStation& found, const Position& truth) {
  const auto off = earth::LocalPlane(*found.position).to_plane(truth);
  const double azimuth = found.ellipse->major_azimuth * radians;
  const double along = off.east_m * std::sin(azimuth) + off.north_m * std::cos(azimuth);
  const double across = off.east_m * std::cos(azimuth) - off.north_m * std::sin(azimuth);
  return std::hypot(along / found.ellipse->semi_major_m, across / found.ellipse->semi_minor_m) <= 1;
}

TEST_CASE("the error of a slope moves a leg's end") {
  const Reduced log = one_leg(45, 5);
  const LocatedStation& end = station(log.reduction().fixes(), "B");
  // 2 % of 84.85 m and 120 m sin 45 in 5 degrees along, 84.85 m in half a degree across.
  CHECK(std::abs(circular_sigma(*end.covariance) - 5.4) < 0.05);
  // The slope's share falls away on the level.
  const Reduced level = one_leg(0, 5);
  CHECK(std::abs(level.reduction().fixes().legs.front().distance_sigma_m - 2.4) < 1e-9);
}

TEST_CASE("the level part of a leg is as uncertain as simulation says") {
  constexpr unsigned seed = 41;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::normal_distribution<double> normal;
  constexpr int trials = 20'000;
  for (const double dip_sigma : {1.0, 5.0}) {
    for (int slope = 0; slope <= 80; slope += 10) {
      INFO("slope " << slope << ", dip sigma " << dip_sigma);
      const Reduced log = one_leg(slope, dip_sigma);
      const double told = log.reduction().fixes().legs.front().distance_sigma_m;
      double sum = 0;
      double squares = 0;
      for (int i = 0; i < trials; ++i) {
        const double read = 120 * (1 + 0.02 * normal(random));
        const double level = read * std::cos((slope + dip_sigma * normal(random)) * radians);
        sum += level;
        squares += level * level;
      }
      const double spread = std::sqrt(squares / trials - sum / trials * (sum / trials));
      CHECK(std::abs(told / spread - 1) < 0.05);
    }
  }
}

/// Chains of one to eight legs from one station, all of one slope, read with errors.
class Chains {
 public:
  explicit Chains(double slope) : slope_(slope) {}

  /// How many of the chains' ends lie in their ellipses.
  int count_held(std::mt19937& random) {
    std::string text = head + "accuracy dip 5\nstation A" + at_hut + "\n";
    std::string ends;
    std::vector<Position> truths;
    for (int chain = 1; chain <= longest; ++chain) {
      Position here = hut;
      for (int leg = 1; leg <= chain; ++leg) {
        const double azimuth = std::uniform_real_distribution<double>(0, 360)(random);
        const std::string name = fmt::format("{}-{}", chain, leg);
        (leg == 1 ? text : ends) += read(azimuth, name, random);
        ends += "station " + name + "\n";
        here = earth::travelled(here, azimuth, 120 * std::cos(slope_ * radians));
      }
      truths.push_back(here);
    }
    const Reduced log(text + ends);
    int held = 0;
    for (int chain = 1; chain <= longest; ++chain) {
      const auto& end = station(log.reduction().fixes(), fmt::format("{0}-{0}", chain));
      REQUIRE(end.position);
      if (holds(end, truths[static_cast<std::size_t>(chain) - 1])) ++held;
    }
    return held;
  }

  static constexpr int longest = 8;

 private:
  std::string read(double azimuth, const std::string& to, std::mt19937& random) {
    return fmt::format("leg {:09.5f} {:.5f}m slope {} to {}\n",
                       wrap_degrees(azimuth + 0.5 * normal_(random)),
                       120 * (1 + 0.02 * normal_(random)), grade(slope_ + 5 * normal_(random)), to);
  }

  double slope_;
  std::normal_distribution<double> normal_;
};

TEST_CASE("nineteen ellipses of twenty hold the end of a run of legs, at any slope") {
  constexpr unsigned seed = 43;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  constexpr int trials = 300;
  for (int slope = 0; slope <= 60; slope += 15) {
    INFO("slope " << slope);
    Chains chains(slope);
    int held = 0;
    for (int i = 0; i < trials; ++i)
      held += chains.count_held(random);
    const double share = static_cast<double>(held) / (trials * Chains::longest);
    CHECK(share > 0.93);
    CHECK(share < 0.97);
  }
}

TEST_CASE("a leg that is doubtful, may be a percent grade or leads home places nothing") {
  const Reduced log(head + "station A" + at_hut +
                    "\nleg N62E 120m to B doubtful\nleg N62E 120m slope 62 to C\n"
                    "leg N62E 120m to A\nleg N62E 120m slope 44 to D\n"
                    "station B\nstation C\nstation D\n");
  const Fixes& fixes = log.reduction().fixes();
  CHECK(!station(fixes, "B").position);
  CHECK(!station(fixes, "C").position);
  CHECK(station(fixes, "D").position);
  REQUIRE(fixes.legs.size() == 4);
  CHECK(fixes.legs[0].left_out == LeftOut::doubtful);
  CHECK(fixes.legs[1].left_out == LeftOut::percent_or_degrees);
  CHECK(fixes.legs[2].left_out == LeftOut::own_station);
  CHECK(!fixes.legs[3].left_out);
  REQUIRE(fixes.traverses.size() == 1);
  REQUIRE(fixes.traverses.front().legs.size() == 1);
  CHECK(fixes.traverses.front().legs.front().leg == 3);
  // The report says so at each.
  for (const Code code : {Code::doubtful, Code::percent_or_degrees, Code::own_station}) {
    const auto& told = log.only(code);
    CHECK(told.message.find("places nothing") != std::string::npos);
    CHECK(told.severity == test::Severity::warning);
  }
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(log.row(i).status == test::Status::suspect);
  CHECK(log.row(3).status == test::Status::ok);
}

TEST_CASE("a loop does not close over a leg that places nothing") {
  const Reduced log(head + "station A" + at_hut +
                    "\nleg 090 100m to B\nstation B\nleg 000 100m to C\n"
                    "station C\nleg 225 190m doubtful to A\n");
  const Fixes& fixes = log.reduction().fixes();
  REQUIRE(fixes.traverses.size() == 1);
  CHECK(fixes.traverses.front().kind == reduction::Traverse::Kind::open);
  CHECK(log.count(Code::misclosure) == 0);
}

TEST_CASE("a sight is still usable where the only leg places nothing") {
  const Position b = earth::travelled(hut, 60, 3000);
  const Position c = earth::travelled(hut, 120, 4000);
  const auto dial = [](const Position& from, const Position& to) {
    return fmt::format("{:06.2f}", earth::geodesic(from, to).azimuth);
  };
  const Reduced log(head + "station A" + at_hut + "\nleg " + dial(hut, b) + " 3000m to B\n" +
                    "station B\nstation C\nsight A " + dial(c, hut) + "\nsight B " + dial(c, b) +
                    "\nleg 090 50m doubtful to A\n");
  CHECK(station(log.reduction().fixes(), "C").from == reduction::PositionFrom::sights);
}

TEST_CASE("a doubtful leg, and one to no station of the log, show no local attraction") {
  const std::string legs =
      "station A" + at_hut +
      "\nleg N62E 100m back S62W to B\nstation B\nleg N14E 100m back S24W to C\nstation C\n";
  const Reduced without(head + legs);
  REQUIRE(without.reduction().fixes().attraction);
  CHECK(without.reduction().fixes().attraction->stations.size() == 3);
  const Reduced with(head + legs +
                     "leg N30E 100m back S30W to E\nleg N40E 100m back S55W to D doubtful\n"
                     "station D\n");
  const auto& attraction = with.reduction().fixes().attraction;
  REQUIRE(attraction);
  CHECK(attraction->stations.size() == 3);
  CHECK(std::abs(attraction->stations.back().correction + 10) < 1e-9);
  // Two legs that agree would show that both ends are free; these are none.
  const Reduced alone(head + "station A" + at_hut +
                      "\nleg N62E 100m back S62W to E\nleg N14E 100m back S14W to F\n");
  CHECK(!alone.reduction().fixes().attraction);
}

}  // namespace
