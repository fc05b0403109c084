// SPDX-License-Identifier: MIT
// Planted slips in sights are found, and none is claimed where there is none.
#include "../../src/reduction/sight_slips.hpp"

#include <catch.hpp>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/reduction/chi_square.hpp>
#include <random>

namespace {

using namespace lodebook;
using earth::Position;
using notebook::Bearing;
using notebook::Notation;
using reduction::SightFit;
using reduction::SightSlip;
using reduction::TypedSight;

/// The quadrant bearing of an azimuth on the dial.
Bearing quadrant(double azimuth) {
  azimuth = wrap_degrees(azimuth);
  Bearing bearing;
  bearing.notation = Notation::quadrant;
  const bool north = azimuth <= 90 || azimuth >= 270;
  const bool east = azimuth <= 180;
  bearing.pole = north ? QuadrantBearing::Pole::north : QuadrantBearing::Pole::south;
  bearing.side = east ? QuadrantBearing::Side::east : QuadrantBearing::Side::west;
  bearing.angle = north ? (east ? azimuth : 360 - azimuth) : std::abs(180 - azimuth);
  bearing.digits = 2;
  return bearing;
}

constexpr double declination = 12;
constexpr double reading_sigma = 0.5;
constexpr double declination_sigma = 0.4;

TypedSight typed(const Position& landmark, double dial) {
  TypedSight sight;
  sight.typed = quadrant(dial);
  sight.correction = declination;
  sight.line = {landmark, 0, true, wrap_degrees(dial + declination), reading_sigma};
  sight.name = "Peak";
  return sight;
}

class Stations {
 public:
  explicit Stations(unsigned seed) : random_(seed) {}

  /// Four sights with errors, each pair of which crosses at over 30 degrees.
  std::vector<TypedSight> four() {
    const Position station{uniform(-60, 60), uniform(-180, 180)};
    std::vector<double> azimuths;
    do {
      azimuths.clear();
      for (int i = 0; i < 4; ++i)
        azimuths.push_back(uniform(0, 360));
    } while (!cross_well(azimuths));
    std::vector<TypedSight> sights;
    const double off = normal(declination_sigma);
    for (const double azimuth : azimuths) {
      sights.push_back(typed(earth::travelled(station, azimuth, uniform(500, 8000)),
                             azimuth - declination + off + normal(reading_sigma)));
    }
    return sights;
  }
  std::size_t one_of_four() { return std::uniform_int_distribution<std::size_t>(0, 3)(random_); }
  bool coin() { return one_of_four() < 2; }

 private:
  static bool cross_well(const std::vector<double>& azimuths) {
    for (std::size_t i = 0; i < azimuths.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (reduction::cut(azimuths[i], azimuths[j]) <= 30) return false;
      }
    }
    return true;
  }
  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double normal(double sigma) { return std::normal_distribution<double>(0, sigma)(random_); }

  std::mt19937 random_;
};

bool disagree(const std::vector<TypedSight>& sights) {
  std::vector<reduction::SightLine> lines;
  for (const TypedSight& sight : sights)
    lines.push_back(sight.line);
  const auto result = reduction::fit(lines, declination_sigma);
  const auto* const found = std::get_if<SightFit>(&result);
  return !found ||
         reduction::chance_of(found->chi_square, found->freedom) < reduction::least_chance;
}

std::vector<SightSlip> explained(const std::vector<TypedSight>& sights) {
  if (!disagree(sights)) return {};
  return reduction::explain_sights(sights, declination_sigma, {}, {});
}

/// In how many of 1,000 stations the sight with the slip is named first.
template <class Plant>
int named(Plant plant) {
  constexpr unsigned seed = 11;
  Stations stations(seed);
  int right = 0;
  for (int i = 0; i < 1000; ++i) {
    std::vector<TypedSight> sights = stations.four();
    const std::size_t wrong = stations.one_of_four();
    const double dial = sights[wrong].typed.azimuth().degrees();
    const auto planted = plant(dial, stations);
    if (!planted) {
      --i;
      continue;
    }
    sights[wrong] = typed(sights[wrong].line.known, *planted);
    const auto slips = explained(sights);
    if (!slips.empty() && slips.front().sight == wrong) ++right;
  }
  return right;
}

}  // namespace

TEST_CASE("a sight read off the other end of the needle is named") {
  CHECK(named([](double dial, Stations&) { return std::optional(dial + 180); }) >= 990);
}

TEST_CASE("east for west is named, where it makes more than ten degrees") {
  CHECK(named([](double dial, Stations&) -> std::optional<double> {
          if (std::abs(std::remainder(2 * dial, 360.0)) <= 10) return std::nullopt;
          return -dial;
        }) >= 980);
}

TEST_CASE("ten degrees misread are named") {
  CHECK(named([](double dial, Stations& stations) {
          return std::optional(dial + (stations.coin() ? 10 : -10));
        }) >= 920);
}

TEST_CASE("no slip is claimed where there is none") {
  Stations stations(12);
  int claimed = 0;
  for (int i = 0; i < 1000; ++i) {
    if (!explained(stations.four()).empty()) ++claimed;
  }
  CHECK(claimed <= 20);
}

TEST_CASE("another landmark, and a slip of all, are offered") {
  Stations stations(13);
  std::vector<TypedSight> sights = stations.four();
  // The second sight was on another point than the one that was named.
  const Position meant = sights[1].line.known;
  sights[1].line.known = earth::travelled(meant, 90, 1500);
  const reduction::OtherPoint other{"Cairn", meant, 0};
  auto slips = reduction::explain_sights(sights, declination_sigma, std::span(&other, 1), {});
  REQUIRE(!slips.empty());
  CHECK(slips.front().sight == 1u);
  CHECK(std::ranges::any_of(
      slips, [](const SightSlip& slip) { return slip.words == "Cairn sighted, not Peak"; }));

  sights = stations.four();
  for (TypedSight& sight : sights)
    sight.line.azimuth = wrap_degrees(sight.line.azimuth + 12);
  const reduction::CommonSlip twice{"declination applied twice", -12};
  slips = reduction::explain_sights(sights, declination_sigma, {}, std::span(&twice, 1));
  REQUIRE(!slips.empty());
  CHECK(!slips.front().sight);
  CHECK(slips.front().words == "declination applied twice");
}
