// SPDX-License-Identifier: MIT
// Traverses: which runs legs form, how they close, and where stations come to lie.
#include <lodebook/reduction/traverse.hpp>

#include <algorithm>
#include <catch.hpp>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <numbers>
#include <random>
#include <string>

#include "references/rows.hpp"

using namespace lodebook::reduction;
using namespace lodebook::test;
using lodebook::earth::geodesic;
using lodebook::earth::LocalPlane;
using lodebook::earth::Position;
using Kind = Traverse::Kind;
using Numbers = std::vector<std::size_t>;

namespace {

constexpr double millimetre = 1e-3;
const Position hut{-43.5, 170.2};

double metres(const Position& a, const Position& b) {
  return lodebook::earth::distance_m(a, b);
}

/// From `from` to `to`, without error.
TraverseLeg leg_between(const std::vector<Position>& places, std::size_t from, std::size_t to) {
  const auto line = geodesic(places[from], places[to]);
  return {from, to, line.azimuth, line.distance_m, 0.5, 1};
}

std::vector<TraverseLeg> legs_between(
    const std::vector<Position>& places,
    const std::vector<std::pair<std::size_t, std::size_t>>& ends) {
  std::vector<TraverseLeg> legs;
  for (const auto& [from, to] : ends)
    legs.push_back(leg_between(places, from, to));
  return legs;
}

/// So many, of which these are known to one metre.
std::vector<TraverseStation> known_of(const std::vector<Position>& places, const Numbers& known) {
  std::vector<TraverseStation> stations(places.size());
  for (const std::size_t station : known)
    stations[station] = {places[station], Covariance::round(1)};
  return stations;
}

/// At these eastings and northings from the origin, metres.
std::vector<Position> places_at(const Position& origin,
                                const std::vector<std::pair<double, double>>& points) {
  const LocalPlane plane(origin);
  std::vector<Position> places;
  for (const auto& [east, north] : points)
    places.push_back(plane.to_position({east, north}));
  return places;
}

Numbers legs_of(const Traverse& traverse) {
  Numbers legs;
  for (const TraversedLeg& leg : traverse.legs)
    legs.push_back(leg.leg);
  return legs;
}

/// Whether the ellipse around the computed place holds the true one.
bool holds(const TraversePlace& place, const Position& truth) {
  const ErrorEllipse ellipse = ellipse95(place.covariance);
  const auto off = LocalPlane(place.position).to_plane(truth);
  const double azimuth = ellipse.major_azimuth * std::numbers::pi / 180;
  const double along = off.east_m * std::sin(azimuth) + off.north_m * std::cos(azimuth);
  const double across = off.east_m * std::cos(azimuth) - off.north_m * std::sin(azimuth);
  return std::hypot(along / ellipse.semi_major_m, across / ellipse.semi_minor_m) <= 1;
}

void check_finite(const TraverseResult& result) {
  for (const Traverse& traverse : result.traverses) {
    CHECK(std::isfinite(traverse.length_m));
    CHECK(std::isfinite(traverse.misclosure_m));
    if (traverse.precision) CHECK(std::isfinite(*traverse.precision));
    for (const TraversedLeg& leg : traverse.legs) {
      CHECK(std::isfinite(leg.departure_m + leg.latitude_m));
      CHECK(std::isfinite(leg.departure_correction_m + leg.latitude_correction_m));
    }
  }
  for (const auto& place : result.placed) {
    if (!place) continue;
    CHECK(std::isfinite(place->position.latitude + place->position.longitude));
    const ErrorEllipse ellipse = ellipse95(place->covariance);
    CHECK(std::isfinite(ellipse.semi_major_m + ellipse.semi_minor_m + ellipse.major_azimuth));
  }
}

/// `0d42'` or `N26d10'E`.
double azimuth_of(const std::string& word) {
  if (word.front() != 'N' && word.front() != 'S') return number(word);
  const double angle = number(word.substr(1, word.size() - 2));
  const bool is_east = word.back() == 'E';
  if (word.front() == 'N') return is_east ? angle : 360 - angle;
  return is_east ? 180 - angle : 180 + angle;
}

}  // namespace

TEST_CASE("published traverses misclose and balance as printed") {
  int rows = 0;
  for (const ReferenceRow& row : reference_rows("traverses.txt")) {
    if (row.check.find("traverse ") != 0) continue;
    INFO(row.at << " (" << row.source << ")");
    ++rows;
    std::vector<TraverseLeg> legs;
    const auto written = split(row.input, ',');
    for (std::size_t i = 0; i < written.size(); ++i) {
      const auto words = split(written[i], ' ');
      legs.push_back(
          {i, (i + 1) % written.size(), azimuth_of(words.at(0)), number(words.at(1)), 0.1, 0.1});
    }
    const std::vector<TraverseStation> stations(legs.size());
    const TraverseResult result = adjust(stations, legs, 0);
    REQUIRE(result.traverses.size() == 1);
    const Traverse& loop = result.traverses.front();
    REQUIRE(loop.kind == Kind::loop);
    REQUIRE(loop.legs.size() == legs.size());
    CHECK(!loop.contradicts);
    const auto expected = split(row.expected, ' ');
    if (row.check == "traverse misclosure") {
      CHECK(std::abs(loop.departure_misclosure_m - number(expected.at(0))) <= row.tolerance);
      CHECK(std::abs(loop.latitude_misclosure_m - number(expected.at(1))) <= row.tolerance);
    } else if (row.check == "traverse precision") {
      REQUIRE(loop.precision);
      CHECK(std::abs(*loop.precision - number(expected.at(0))) <= row.tolerance);
    } else {
      const bool departures = row.check == "traverse balanced departures";
      REQUIRE((departures || row.check == "traverse balanced latitudes"));
      REQUIRE(expected.size() == legs.size());
      for (std::size_t i = 0; i < legs.size(); ++i) {
        const TraversedLeg& leg = loop.legs[i];
        CHECK(leg.leg == i);
        CHECK(std::abs((departures ? leg.departure_m + leg.departure_correction_m
                                   : leg.latitude_m + leg.latitude_correction_m) -
                       number(expected[i])) <= row.tolerance);
      }
    }
  }
  CHECK(rows == 6);
}

TEST_CASE("perfect legs close, and place stations where they are, anywhere on the ellipsoid") {
  constexpr unsigned seed = 3;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> metres_aside(-1500, 1500);
  for (const Position origin : {Position{0, 10}, Position{46, -7}, Position{-43, 179.9999},
                                Position{80, 15}, Position{-80, -180}, Position{89, 100}}) {
    for (int trial = 0; trial < 20; ++trial) {
      INFO(origin.latitude << ' ' << origin.longitude << ", trial " << trial);
      std::vector<std::pair<double, double>> points(7);
      for (auto& point : points)
        point = {metres_aside(random), metres_aside(random)};
      const std::vector<Position> places = places_at(origin, points);
      // A loop from 0, a run from it to another known station, and an open leg from that run.
      std::vector<std::pair<std::size_t, std::size_t>> ends = {{0, 1}, {1, 2}, {2, 0}, {2, 3},
                                                               {3, 4}, {4, 5}, {4, 6}};
      for (auto& [from, to] : ends) {
        if (random() % 2 == 0) std::swap(from, to);
      }
      const TraverseResult result =
          adjust(known_of(places, {0, 5}), legs_between(places, ends), 0.5);
      REQUIRE(result.traverses.size() == 3);
      CHECK(result.traverses[0].kind == Kind::loop);
      CHECK(result.traverses[1].kind == Kind::between);
      CHECK(result.traverses[2].kind == Kind::open);
      for (const Traverse& traverse : result.traverses) {
        CHECK(traverse.misclosure_m < millimetre);
        CHECK(!traverse.contradicts);
      }
      for (std::size_t i = 0; i < places.size(); ++i) {
        REQUIRE(result.placed[i].has_value() == (i != 0 && i != 5));
        if (result.placed[i]) CHECK(metres(result.placed[i]->position, places[i]) < millimetre);
      }
    }
  }
}

TEST_CASE("corrections sum to the misclosure, in proportion to the lengths") {
  constexpr unsigned seed = 17;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::normal_distribution<double> normal;
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {400, 300}, {900, 100}, {700, -500}, {1200, -700}});
  for (int trial = 0; trial < 50; ++trial) {
    std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}, {2, 1}, {2, 3}, {3, 0}, {3, 4}});
    for (TraverseLeg& leg : legs) {
      leg.azimuth += normal(random);
      leg.distance_m += 5 * normal(random);
    }
    const TraverseResult result = adjust(known_of(places, {0, 4}), legs, 0);
    REQUIRE(result.traverses.size() == 2);
    for (const Traverse& traverse : result.traverses) {
      double departures = 0;
      double latitudes = 0;
      double length = 0;
      for (const TraversedLeg& leg : traverse.legs) {
        const double share = legs[leg.leg].distance_m / traverse.length_m;
        CHECK(std::abs(leg.departure_correction_m + share * traverse.departure_misclosure_m) <
              1e-9);
        CHECK(std::abs(leg.latitude_correction_m + share * traverse.latitude_misclosure_m) < 1e-9);
        CHECK(std::abs(std::hypot(leg.departure_m, leg.latitude_m) - legs[leg.leg].distance_m) <
              1e-9);
        departures += leg.departure_correction_m;
        latitudes += leg.latitude_correction_m;
        length += legs[leg.leg].distance_m;
      }
      CHECK(std::abs(departures + traverse.departure_misclosure_m) < 1e-9);
      CHECK(std::abs(latitudes + traverse.latitude_misclosure_m) < 1e-9);
      CHECK(std::abs(length - traverse.length_m) < 1e-9);
      REQUIRE(traverse.precision);
      CHECK(std::abs(*traverse.precision * traverse.misclosure_m - length) < 1e-6);
    }
  }
}

TEST_CASE("a run goes the way that most of its legs go") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {400, 300}, {900, 100}, {900, -90}});
  const TraverseResult result =
      adjust(known_of(places, {0, 3}), legs_between(places, {{1, 0}, {1, 2}, {2, 3}}), 0);
  REQUIRE(result.traverses.size() == 1);
  const Traverse& run = result.traverses.front();
  CHECK(run.stations == Numbers{0, 1, 2, 3});
  CHECK(legs_of(run) == Numbers{0, 1, 2});
  CHECK(run.legs[0].reversed);
  CHECK(!run.legs[1].reversed);
  // Against the leg, so to the north-east.
  CHECK(std::abs(run.legs[0].departure_m - 400) < 0.01);
  CHECK(std::abs(run.legs[0].latitude_m - 300) < 0.01);
}

TEST_CASE("open legs are carried on, and branches begin anew") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {100, 0}, {200, 0}, {300, 0}, {100, 100}, {200, 100}, {0, 50}});
  const TraverseResult result =
      adjust(known_of(places, {0}),
             legs_between(places, {{0, 1}, {1, 2}, {1, 4}, {3, 2}, {4, 5}, {6, 0}}), 0.5);
  REQUIRE(result.traverses.size() == 3);
  CHECK(result.traverses[0].stations == Numbers{0, 1, 2, 3});
  CHECK(legs_of(result.traverses[0]) == Numbers{0, 1, 3});
  CHECK(result.traverses[1].stations == Numbers{1, 4, 5});
  CHECK(result.traverses[2].stations == Numbers{0, 6});
  CHECK(result.traverses[2].legs[0].reversed);
  double before = 1;
  for (const std::size_t station : Numbers{1, 2, 3}) {
    REQUIRE(result.placed[station]);
    const double sigma = circular_sigma(result.placed[station]->covariance);
    CHECK(sigma > before);
    before = sigma;
  }
  for (const Traverse& traverse : result.traverses) {
    CHECK(traverse.kind == Kind::open);
    CHECK(traverse.misclosure_m == 0);
    CHECK(!traverse.precision);
    CHECK(!traverse.contradicts);
  }
  CHECK(std::abs(result.traverses[0].length_m - 300) < 0.01);
}

TEST_CASE("an open leg is as uncertain as its parts") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {1000, 0}});
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}});
  legs[0].distance_sigma_m = 20;
  legs[0].azimuth_sigma = 0.3;
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0.4);
  REQUIRE(result.placed[1]);
  const Covariance& covariance = result.placed[1]->covariance;
  const double aside = 1000 * 0.5 * std::numbers::pi / 180;  // 0.3 and 0.4 degrees together
  CHECK(std::abs(covariance.east - (1 + 400)) < 0.1);
  CHECK(std::abs(covariance.north - (1 + aside * aside)) < 0.1);
}

TEST_CASE("two loops that share a leg close, the shorter one first") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {500, 0}, {500, 400}, {0, 400}, {900, 0}, {900, 500}, {600, 700}});
  std::vector<TraverseLeg> legs =
      legs_between(places, {{1, 4}, {4, 5}, {5, 6}, {6, 2}, {0, 1}, {1, 2}, {2, 3}, {3, 0}});
  legs[5].distance_m += 4;
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0);
  REQUIRE(result.traverses.size() == 2);
  const Traverse& loop = result.traverses[0];
  const Traverse& other = result.traverses[1];
  CHECK(loop.kind == Kind::loop);
  CHECK(loop.stations == Numbers{0, 1, 2, 3, 0});
  CHECK(std::abs(loop.misclosure_m - 4) < 0.01);
  // The second one leans on the shared leg as adjusted.
  CHECK(other.kind == Kind::between);
  CHECK(other.stations == Numbers{1, 4, 5, 6, 2});
  CHECK(other.misclosure_m > 0.5);
  CHECK(other.misclosure_m < 4);
  for (std::size_t i = 1; i < places.size(); ++i) {
    REQUIRE(result.placed[i]);
    CHECK(metres(result.placed[i]->position, places[i]) < 4);
  }
}

TEST_CASE("of equally short runs that with the first leg comes first") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {100, 50}, {100, -50}, {200, 0}});
  const TraverseResult result =
      adjust(known_of(places, {0, 3}), legs_between(places, {{0, 2}, {0, 1}, {1, 3}, {2, 3}}), 0);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[0].stations == Numbers{0, 2, 3});
  CHECK(result.traverses[1].stations == Numbers{0, 1, 3});
}

TEST_CASE("a leg between known stations agrees with them or contradicts them") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {600, 800}});
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}, {1, 0}});
  legs[1].azimuth += 10;
  TraverseResult result = adjust(known_of(places, {0, 1}), legs, 0.5);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[0].kind == Kind::between);
  CHECK(!result.traverses[0].contradicts);
  CHECK(!result.traverses[0].precision);  // nothing is misclosed
  CHECK(result.traverses[1].contradicts);
  CHECK(std::abs(result.traverses[1].misclosure_m - 2000 * std::sin(std::numbers::pi / 36)) < 0.01);
  CHECK(std::none_of(result.placed.begin(), result.placed.end(),
                     [](const auto& place) { return place.has_value(); }));
  // A rough compass, a doubtful declination or a doubtful position each allow it.
  legs[1].distance_sigma_m = 10;
  CHECK(adjust(known_of(places, {0, 1}), legs, 0.5).traverses[1].contradicts);
  legs[1].azimuth_sigma = 6;
  CHECK(!adjust(known_of(places, {0, 1}), legs, 0.5).traverses[1].contradicts);
  legs[1].azimuth_sigma = 0.5;
  CHECK(!adjust(known_of(places, {0, 1}), legs, 6).traverses[1].contradicts);
  std::vector<TraverseStation> stations = known_of(places, {0, 1});
  stations[0].covariance = Covariance::round(100);
  CHECK(!adjust(stations, legs, 0.5).traverses[1].contradicts);
}

TEST_CASE("a doubtful origin is no excuse for a leg between stations that hang on it") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {300, 0}, {300, 300}, {0, 300}});
  std::vector<TraverseLeg> legs =
      legs_between(places, {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}});
  legs[5].distance_m += 30;
  std::vector<TraverseStation> stations = known_of(places, {0});
  stations[0].covariance = Covariance::round(1000);
  const TraverseResult result = adjust(stations, legs, 0.5);
  int contradicting = 0;
  for (const Traverse& traverse : result.traverses) {
    if (!traverse.contradicts) continue;
    ++contradicting;
    CHECK(legs_of(traverse).back() == 5);
  }
  CHECK(contradicting == 1);
  for (std::size_t i = 1; i < 4; ++i) {
    REQUIRE(result.placed[i]);
    CHECK(circular_sigma(result.placed[i]->covariance) > 1000);
  }
}

TEST_CASE("repeated legs meet in the middle") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {0, 1000}});
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}, {1, 0}, {0, 1}});
  legs[0].distance_m += 2;
  legs[1].distance_m -= 2;
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[0].stations == Numbers{0, 1, 0});
  CHECK(!result.traverses[0].legs[0].reversed);
  CHECK(!result.traverses[0].legs[1].reversed);
  CHECK(std::abs(result.traverses[0].misclosure_m - 4) < millimetre);
  CHECK(result.traverses[1].kind == Kind::between);
  REQUIRE(result.placed[1]);
  CHECK(metres(result.placed[1]->position, places[1]) < 0.01);
  // One metre of the origin, and two readings of one metre.
  CHECK(std::abs(result.placed[1]->covariance.north - 1.5) < 0.01);
}

TEST_CASE("a loop at the end of open legs closes from where they lead") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {100, 0}, {200, 0}, {300, 100}, {300, -100}, {100, 100}, {400, 200}});
  std::vector<TraverseLeg> legs =
      legs_between(places, {{1, 5}, {0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 2}, {3, 6}});
  legs[4].distance_m += 3;
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0);
  REQUIRE(result.traverses.size() == 4);
  CHECK(result.traverses[0].stations == Numbers{0, 1, 2});
  CHECK(result.traverses[0].kind == Kind::open);
  CHECK(result.traverses[1].stations == Numbers{2, 3, 4, 2});
  CHECK(result.traverses[1].kind == Kind::loop);
  CHECK(std::abs(result.traverses[1].misclosure_m - 3) < 0.01);
  CHECK(result.traverses[2].stations == Numbers{1, 5});
  CHECK(result.traverses[3].stations == Numbers{3, 6});
  for (std::size_t i = 1; i < places.size(); ++i)
    CHECK(result.placed[i]);
}

TEST_CASE("a rough way to a loop is in its stations' errors, and no excuse for its misclosure") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {900, 0}, {1200, 0}, {1200, 400}});
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}, {1, 2}, {2, 3}, {3, 1}});
  legs[0].distance_sigma_m = 300;
  legs[2].distance_m += 30;
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[1].kind == Kind::loop);
  CHECK(result.traverses[1].contradicts);
  for (const std::size_t station : Numbers{1, 2, 3}) {
    REQUIRE(result.placed[station]);
    // The misclosure that it does not excuse is in them too.
    CHECK(std::abs(std::sqrt(result.placed[station]->covariance.east) - 300) < 1);
  }
}

TEST_CASE("loops without a known station close, and place nothing") {
  const std::vector<Position> places = places_at(
      {0, 0},
      {{0, 0}, {100, 0}, {50, 80}, {300, 0}, {400, 0}, {350, 80}, {10, 5}, {20, 9}, {50, 200}});
  // A triangle, a way to another triangle, a loop that hangs on the first one's side; and known
  // stations elsewhere.
  std::vector<TraverseLeg> legs = legs_between(
      places, {{2, 0}, {1, 2}, {0, 1}, {1, 3}, {3, 4}, {4, 5}, {5, 3}, {6, 7}, {2, 8}, {8, 0}});
  legs[2].distance_m += 1;
  legs[9].distance_m += 2;
  const TraverseResult result = adjust(known_of(places, {6}), legs, 0.5);
  REQUIRE(result.traverses.size() == 5);
  CHECK(result.traverses[0].stations == Numbers{2, 0, 1, 2});
  CHECK(legs_of(result.traverses[0]) == Numbers{0, 2, 1});
  CHECK(std::abs(result.traverses[0].misclosure_m - 1) < millimetre);
  CHECK(result.traverses[1].stations == Numbers{2, 8, 0});
  CHECK(result.traverses[1].kind == Kind::between);
  CHECK(result.traverses[1].misclosure_m > 1.5);
  CHECK(result.traverses[1].misclosure_m < 2.5);
  CHECK(result.traverses[2].kind == Kind::open);
  CHECK(result.traverses[2].stations == Numbers{1, 3});
  CHECK(result.traverses[3].kind == Kind::loop);
  CHECK(result.traverses[3].misclosure_m < millimetre);
  CHECK(result.traverses[4].stations == Numbers{6, 7});
  for (std::size_t i = 0; i < places.size(); ++i)
    CHECK(result.placed[i].has_value() == (i == 7));
}

TEST_CASE("the shortest loop is closed first, also where none is known") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {100, 0}, {200, 0}, {200, 100}, {100, 100}, {0, 100}, {150, 150}});
  const TraverseResult result =
      adjust(std::vector<TraverseStation>(places.size()),
             legs_between(places,
                          {{0, 1}, {1, 4}, {4, 5}, {5, 0}, {1, 2}, {2, 3}, {3, 6}, {6, 4}, {3, 4}}),
             0);
  REQUIRE(result.traverses.size() == 3);
  CHECK(legs_of(result.traverses[0]) == Numbers{6, 7, 8});
  CHECK(legs_of(result.traverses[1]).size() == 3);
  CHECK(legs_of(result.traverses[2]).size() == 3);
}

TEST_CASE("of two loops that meet in a station the shorter one is closed first") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {100, 0}, {100, 100}, {0, 100}, {-100, 0}, {-50, -80}});
  const TraverseResult result =
      adjust(std::vector<TraverseStation>(places.size()),
             legs_between(places, {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 4}, {4, 5}, {5, 0}}), 0);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[0].stations == Numbers{0, 4, 5, 0});
  CHECK(result.traverses[1].stations == Numbers{0, 1, 2, 3, 0});
}

TEST_CASE("legs that hang on nothing are open and place nothing") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {100, 0}, {200, 0}, {100, 100}});
  const TraverseResult result =
      adjust(std::vector<TraverseStation>(5), legs_between(places, {{0, 1}, {1, 2}, {1, 3}}), 0.5);
  REQUIRE(result.traverses.size() == 2);
  CHECK(result.traverses[0].stations == Numbers{0, 1, 2});
  CHECK(result.traverses[1].stations == Numbers{1, 3});
  CHECK(std::abs(result.traverses[1].legs[0].latitude_m - 100) < 0.01);
  REQUIRE(result.placed.size() == 5);
  for (const auto& place : result.placed)
    CHECK(!place);
}

TEST_CASE("no legs, no traverses; no stations, no places") {
  const TraverseResult result = adjust(known_of({hut}, {0}), {}, 0.5);
  CHECK(result.traverses.empty());
  REQUIRE(result.placed.size() == 1);
  CHECK(!result.placed[0]);
  CHECK(adjust({}, {}, 0.5).placed.empty());
}

TEST_CASE("a leg from a station to itself is left out") {
  const std::vector<Position> places = places_at(hut, {{0, 0}, {100, 0}, {200, 0}});
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 1}});
  legs.insert(legs.begin(), {{0, 0, 10, 50, 0.5, 1}, {2, 2, 10, 50, 0.5, 1}});
  const TraverseResult result = adjust(known_of(places, {0}), legs, 0.5);
  REQUIRE(result.traverses.size() == 1);
  CHECK(legs_of(result.traverses[0]) == Numbers{2});
  CHECK(result.placed[1]);
  CHECK(!result.placed[2]);
}

TEST_CASE("no length and no sigma do no harm") {
  const std::vector<Position> places =
      places_at(hut, {{0, 0}, {0, 0}, {0, 0}, {0, 0}, {100, 0}, {100, 0}});
  for (const double sigma : {0.0, 0.5}) {
    INFO("sigma " << sigma);
    std::vector<TraverseLeg> legs =
        legs_between(places, {{0, 1}, {1, 2}, {2, 0}, {2, 3}, {3, 4}, {4, 5}, {0, 4}});
    for (TraverseLeg& leg : legs) {
      leg.azimuth_sigma = leg.distance_sigma_m = sigma;
      if (leg.to < 4) leg.distance_m = 0;
    }
    std::vector<TraverseStation> stations(places.size());
    check_finite(adjust(stations, legs, sigma));
    stations[0].position = places[0];
    const TraverseResult tied = adjust(stations, legs, sigma);
    check_finite(tied);
    for (const Traverse& traverse : tied.traverses)
      CHECK(!traverse.contradicts);
    // Two known stations apart, and between them legs without length.
    const std::vector<TraverseStation> apart = {{places[0], {}}, {}, {places[4], {}}, {}, {}, {}};
    const std::vector<TraverseLeg> none = {{0, 1, 0, 0, sigma, sigma}, {1, 2, 0, 0, sigma, sigma}};
    const TraverseResult result = adjust(apart, none, sigma);
    check_finite(result);
    REQUIRE(result.traverses.size() == 1);
    CHECK(result.traverses[0].contradicts);
    CHECK(!result.traverses[0].precision);
    REQUIRE(result.placed[1]);
    CHECK(std::abs(metres(result.placed[1]->position, places[0]) - 50) < millimetre);
  }
  // Without any sigma a centimetre is too much.
  std::vector<TraverseLeg> legs = legs_between(places, {{0, 4}, {4, 0}});
  for (TraverseLeg& leg : legs)
    leg.azimuth_sigma = leg.distance_sigma_m = 0;
  legs[0].distance_m += 0.01;
  CHECK(adjust(std::vector<TraverseStation>(6), legs, 0).traverses[0].contradicts);
}

TEST_CASE("the truth lies in the ellipses 95 times in 100, and contradicts once") {
  constexpr unsigned seed = 41;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::normal_distribution<double> normal;
  // Known: 0 and 4. A run between them over 1 to 3; a loop on 4; a run from the loop to the first
  // run; open legs from the loop, and from 0.
  const std::vector<Position> places = places_at(hut, {{0, 0},
                                                       {500, 200},
                                                       {900, -100},
                                                       {1500, 200},
                                                       {2000, 0},
                                                       {2300, 500},
                                                       {1900, 800},
                                                       {1400, 900},
                                                       {900, 600},
                                                       {2500, 900},
                                                       {2900, 1000},
                                                       {-300, 400},
                                                       {-800, 500}});
  const std::vector<std::pair<std::size_t, std::size_t>> ends = {
      {0, 1}, {1, 2}, {3, 2}, {3, 4}, {4, 5},  {5, 6},  {6, 4},
      {6, 7}, {7, 8}, {8, 2}, {5, 9}, {9, 10}, {11, 0}, {11, 12}};
  const std::vector<TraverseLeg> perfect = legs_between(places, ends);
  constexpr int trials = 4000;
  constexpr double declination_sigma = 0.7;
  std::vector<int> held(places.size());
  std::vector<int> contradicted(3);
  for (int trial = 0; trial < trials; ++trial) {
    std::vector<TraverseStation> stations(places.size());
    for (const std::size_t known : Numbers{0, 4}) {
      const double sigma = known == 0 ? 3 : 6;
      stations[known].position =
          LocalPlane(places[known]).to_position({sigma * normal(random), sigma * normal(random)});
      stations[known].covariance = Covariance::round(sigma);
    }
    std::vector<TraverseLeg> legs = perfect;
    const double declination_error = declination_sigma * normal(random);
    for (TraverseLeg& leg : legs) {
      leg.azimuth_sigma = 0.8;
      leg.distance_sigma_m = 0.02 * leg.distance_m;
      leg.azimuth += declination_error + leg.azimuth_sigma * normal(random);
      leg.distance_m += leg.distance_sigma_m * normal(random);
    }
    const TraverseResult result = adjust(stations, legs, declination_sigma);
    REQUIRE(result.traverses.size() == 5);
    for (std::size_t i = 0; i < 3; ++i)
      contradicted[i] += result.traverses[i].contradicts ? 1 : 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (result.placed[i] && holds(*result.placed[i], places[i])) ++held[i];
    }
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    INFO("station " << i);
    if (i == 0 || i == 4) {
      CHECK(held[i] == 0);
    } else {
      CHECK(held[i] >= 0.93 * trials);
      CHECK(held[i] <= 0.98 * trials);
    }
  }
  for (const int count : contradicted) {
    CHECK(count >= 0.003 * trials);
    CHECK(count <= 0.02 * trials);
  }
}

namespace {

/// The fewest legs between two known stations or around a loop at one, by trying all ways.
class AllWays {
 public:
  AllWays(const std::vector<TraverseStation>& stations, const std::vector<TraverseLeg>& legs)
      : stations_(stations), legs_(legs), met_(stations.size()), used_(legs.size()) {
    for (std::size_t i = 0; i < stations.size(); ++i) {
      if (stations[i].position) go_on(i, 0);
    }
  }
  std::size_t fewest() const { return fewest_; }

 private:
  void go_on(std::size_t station, std::size_t count) {
    for (std::size_t i = 0; i < legs_.size(); ++i) {
      const TraverseLeg& leg = legs_[i];
      if (used_[i] || leg.from == leg.to || (leg.from != station && leg.to != station)) continue;
      const std::size_t next = leg.from == station ? leg.to : leg.from;
      if (stations_[next].position) {
        fewest_ = std::min(fewest_, count + 1);
      } else if (!met_[next]) {
        used_[i] = met_[next] = true;
        go_on(next, count + 1);
        used_[i] = met_[next] = false;
      }
    }
  }

  const std::vector<TraverseStation>& stations_;
  const std::vector<TraverseLeg>& legs_;
  std::vector<bool> met_;
  std::vector<bool> used_;
  std::size_t fewest_ = 1000;
};

}  // namespace

TEST_CASE("any legs: each is used once, runs hang together, and the shortest is closed") {
  constexpr unsigned seed = 29;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  for (int trial = 0; trial < 2000; ++trial) {
    INFO("trial " << trial);
    const std::size_t count = 2 + random() % 8;
    std::vector<TraverseStation> stations(count);
    for (TraverseStation& station : stations) {
      if (random() % 4 == 0) station.position = hut;
    }
    std::vector<TraverseLeg> legs(random() % 12);
    std::size_t proper = 0;
    for (TraverseLeg& leg : legs) {
      leg = {random() % count,
             random() % count,
             static_cast<double>(random() % 360),
             static_cast<double>(random() % 100),
             0.5,
             1};
      if (leg.from != leg.to) ++proper;
    }
    const TraverseResult result = adjust(stations, legs, 0.5);
    check_finite(result);
    std::vector<bool> used(legs.size());
    std::vector<bool> tied(count);
    std::vector<bool> known_group(count);
    std::size_t used_count = 0;
    for (std::size_t i = 0; i < count; ++i)
      tied[i] = known_group[i] = stations[i].position.has_value();
    for (const Traverse& run : result.traverses) {
      REQUIRE(run.stations.size() == run.legs.size() + 1);
      for (std::size_t i = 0; i < run.legs.size(); ++i) {
        const TraverseLeg& leg = legs[run.legs[i].leg];
        CHECK(!used[run.legs[i].leg]);
        used[run.legs[i].leg] = true;
        ++used_count;
        const bool reversed = run.legs[i].reversed;
        CHECK((reversed ? leg.to : leg.from) == run.stations[i]);
        CHECK((reversed ? leg.from : leg.to) == run.stations[i + 1]);
        if (i > 0) CHECK(!tied[run.stations[i]]);
      }
      const std::size_t first = run.stations.front();
      const std::size_t last = run.stations.back();
      CHECK((run.kind == Kind::loop) == (first == last));
      if (run.kind == Kind::between) CHECK((tied[first] && tied[last]));
      if (run.kind == Kind::open) CHECK(!tied[last]);
      for (const std::size_t station : run.stations) {
        tied[station] = true;
        if (known_group[first]) known_group[station] = true;
      }
    }
    CHECK(used_count == proper);
    for (std::size_t i = 0; i < count; ++i)
      CHECK(result.placed[i].has_value() == (known_group[i] && !stations[i].position));
    // Groups follow each other; the shortest of all is the shortest of what is closed from known
    // stations before anything else is.
    const AllWays all(stations, legs);
    std::size_t fewest = 1000;
    for (const Traverse& run : result.traverses) {
      if (run.kind != Kind::open && stations[run.stations.front()].position &&
          stations[run.stations.back()].position)
        fewest = std::min(fewest, run.legs.size());
    }
    CHECK(fewest == all.fewest());
  }
}

TEST_CASE("long chains, meshes and stars are no trouble") {
  SECTION("2000 legs into the open, and back") {
    constexpr std::size_t count = 2001;
    std::vector<TraverseStation> stations(count);
    stations[0] = {hut, Covariance::round(1)};
    std::vector<TraverseLeg> legs;
    for (std::size_t i = 0; i + 1 < count; ++i)
      legs.push_back({i, i + 1, static_cast<double>(i * 360) / 2000, 10, 0.5, 0.1});
    const TraverseResult open = adjust(stations, legs, 0.5);
    REQUIRE(open.traverses.size() == 1);
    REQUIRE(open.placed[2000]);
    CHECK(metres(open.placed[1000]->position, hut) > 6000);
    CHECK(metres(open.placed[2000]->position, hut) < 20);
    legs.back().to = 0;
    const TraverseResult loop = adjust(stations, legs, 0.5);
    REQUIRE(loop.traverses.size() == 1);
    CHECK(loop.traverses[0].kind == Kind::loop);
    stations[0] = {};
    CHECK(adjust(stations, legs, 0.5).traverses[0].kind == Kind::loop);
  }
  SECTION("a mesh of 30 by 30 stations, known at a corner or not at all") {
    constexpr std::size_t side = 30;
    std::vector<TraverseLeg> legs;
    for (std::size_t i = 0; i < side * side; ++i) {
      if (i % side + 1 < side) legs.push_back({i, i + 1, 90, 10, 0.5, 0.1});
      if (i + side < side * side) legs.push_back({i, i + side, 0, 10, 0.5, 0.1});
    }
    std::vector<TraverseStation> stations(side * side);
    for (const bool is_known : {false, true}) {
      if (is_known) stations[0].position = Position{0, 0};
      const TraverseResult mesh = adjust(stations, legs, 0.5);
      CHECK(mesh.traverses.size() == (side - 1) * (side - 1));
      for (const Traverse& traverse : mesh.traverses)
        CHECK(!traverse.contradicts);
      CHECK(mesh.placed.back().has_value() == is_known);
    }
  }
  SECTION("a chain of 2000 squares, each hung on the last by one leg") {
    std::vector<TraverseLeg> legs;
    for (std::size_t i = 0; i < 8000; i += 4) {
      for (const auto& [from, to] : {std::pair(i, i + 1), std::pair(i + 1, i + 2),
                                     std::pair(i, i + 3), std::pair(i + 3, i + 2)})
        legs.push_back({from, to, to == from + 1 ? 90.0 : 0.0, 10, 0.5, 0.1});
      if (i > 0) legs.push_back({i - 2, i, 90, 10, 0.5, 0.1});
    }
    std::vector<TraverseStation> stations(8000);
    stations[0] = {hut, Covariance::round(1)};
    const TraverseResult chain = adjust(stations, legs, 0.5);
    CHECK(chain.traverses.size() == 2 * 2000 - 1);
    CHECK(chain.placed[7999]);
  }
  SECTION("a wheel of 4000 stations, known nowhere") {
    constexpr std::size_t spokes = 4000;
    std::vector<TraverseLeg> legs;
    for (std::size_t i = 1; i <= spokes; ++i)
      legs.push_back({0, i, static_cast<double>(i) * 360 / spokes, 100, 0.5, 1});
    for (std::size_t i = 1; i <= spokes; ++i)
      legs.push_back({i, i % spokes + 1, static_cast<double>(i) * 360 / spokes + 90, 0.2, 0.5, 1});
    const TraverseResult wheel = adjust(std::vector<TraverseStation>(spokes + 1), legs, 0.5);
    REQUIRE(wheel.traverses.size() == spokes);
    CHECK(legs_of(wheel.traverses.front()).size() == 3);
    CHECK(legs_of(wheel.traverses.back()).size() <= 3);
  }
  SECTION("a star") {
    std::vector<TraverseLeg> legs;
    for (std::size_t i = 1; i <= 2000; ++i)
      legs.push_back({i, 0, static_cast<double>(i) / 10, 100, 0.5, 1});
    std::vector<TraverseStation> stations(2001);
    stations[2000].position = hut;
    const TraverseResult star = adjust(stations, legs, 0.5);
    CHECK(star.traverses.size() == 1999);
    CHECK(star.placed[0]);
    CHECK(star.placed[1]);
  }
}
