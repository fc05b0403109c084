// SPDX-License-Identifier: MIT
// Local attraction from fore and back bearings.
#include <lodebook/reduction/attraction.hpp>

#include <catch.hpp>
#include <cmath>
#include <random>
#include <stdexcept>
#include <string>

#include "references/rows.hpp"

using namespace lodebook::reduction;
using namespace lodebook::test;

namespace {

double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

std::size_t station_named(char letter) {
  return static_cast<std::size_t>(letter - 'A');
}

/// `AB 44d40' 225d20', BC ...`.
std::vector<ForeAndBack> legs_of(const std::string& text) {
  std::vector<ForeAndBack> legs;
  for (const std::string& leg : split(text, ',')) {
    const std::vector<std::string> words = split(leg, ' ');
    legs.push_back({station_named(words.at(0).at(0)), station_named(words.at(0).at(1)),
                    number(words.at(1)), number(words.at(2))});
  }
  return legs;
}

double correction_at(const Attraction& attraction, std::size_t station) {
  for (const StationAttraction& found : attraction.stations) {
    if (found.station == station) return found.correction;
  }
  throw std::out_of_range("not reached");
}

}  // namespace

TEST_CASE("local attraction comes out as printed") {
  int rows = 0;
  for (const ReferenceRow& row : reference_rows("traverses.txt")) {
    if (row.check.find("traverse") == 0) continue;
    INFO(row.at << " (" << row.source << ")");
    const std::vector<ForeAndBack> legs = legs_of(row.input);
    const auto attraction = local_attraction(legs, 0.5);
    REQUIRE(attraction);
    ++rows;
    if (row.check == "free of attraction") {
      const auto names = split(row.expected, ' ');
      for (std::size_t i = 0; i < attraction->stations.size(); ++i) {
        CHECK(attraction->stations[i].is_free == (i < names.size()));
        if (i >= names.size()) continue;
        CHECK(attraction->stations[i].station == station_named(names[i].at(0)));
        CHECK(attraction->stations[i].correction == 0);
      }
    } else if (row.check == "attraction corrections") {
      std::size_t at = 2;  // after the two free ones
      for (const std::string& station : split(row.expected, ',')) {
        const auto words = split(station, ' ');
        CHECK(apart(correction_at(*attraction, station_named(words.at(0).at(0))),
                    number(words.at(1))) <= row.tolerance);
        CHECK(attraction->stations.at(at++).station == station_named(words.at(0).at(0)));
      }
    } else if (row.check == "corrected bearings") {
      const std::vector<ForeAndBack> expected = legs_of(row.expected);
      for (std::size_t i = 0; i < expected.size(); ++i) {
        REQUIRE(legs[i].from == expected[i].from);
        REQUIRE(attraction->legs.at(i));
        CHECK(apart(attraction->legs[i]->fore, expected[i].fore) <= row.tolerance);
        CHECK(apart(attraction->legs[i]->back, expected[i].back) <= row.tolerance);
      }
    } else {
      REQUIRE(row.check == "attraction left over");
      for (const auto& leg : attraction->legs) {
        REQUIRE(leg);
        CHECK(apart(leg->back - leg->fore - 180, number(row.expected)) <= row.tolerance);
      }
    }
  }
  CHECK(rows == 6);
}

TEST_CASE("attraction put on true bearings is found again") {
  constexpr unsigned seed = 23;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> bearings(0, 360);
  std::uniform_real_distribution<double> attractions(1, 180);
  for (int trial = 0; trial < 200; ++trial) {
    // A tree; stations 0 and 1 are free.
    std::vector<double> attracted = {0, 0};
    std::vector<ForeAndBack> legs;
    std::vector<double> truths;
    for (std::size_t to = 1; to < 12; ++to) {
      if (to > 1) attracted.push_back(attractions(random) * (to % 2 == 0 ? 1 : -1));
      const std::size_t from = to == 1 ? 0 : random() % to;
      const double fore = bearings(random);
      truths.push_back(fore);
      legs.push_back({from, to, fore + attracted[from], fore + 180 + attracted[to]});
      if (to % 3 == 0) {
        std::swap(legs.back().from, legs.back().to);
        std::swap(legs.back().fore, legs.back().back);
        truths.back() += 180;
      }
    }
    const auto attraction = local_attraction(legs, 0.5);
    REQUIRE(attraction);
    REQUIRE(attraction->stations.size() == 12);
    for (const StationAttraction& station : attraction->stations) {
      CHECK(apart(station.correction, -attracted[station.station]) < 1e-9);
      CHECK(station.correction > -180);
      CHECK(station.correction <= 180);
    }
    for (std::size_t i = 0; i < legs.size(); ++i) {
      REQUIRE(attraction->legs[i]);
      CHECK(apart(attraction->legs[i]->fore, truths[i]) < 1e-9);
      CHECK(apart(attraction->legs[i]->back, truths[i] + 180) < 1e-9);
      CHECK(attraction->legs[i]->fore >= 0);
      CHECK(attraction->legs[i]->fore < 360);
    }
  }
}

TEST_CASE("nothing is known without two legs, or without one that agrees") {
  CHECK(!local_attraction({}, 0.5));
  const std::vector<ForeAndBack> one = {{0, 1, 10, 190}};
  CHECK(!local_attraction(one, 0.5));
  const std::vector<ForeAndBack> bad = {{0, 1, 10, 191}, {1, 2, 20, 198}};
  CHECK(!local_attraction(bad, 0.5));
  CHECK(local_attraction(bad, 1));
  CHECK(!local_attraction(bad, 0.999));
}

TEST_CASE("legs within a tenth of a degree of the best are free too") {
  const std::vector<ForeAndBack> legs = {
      {0, 1, 10, 190.3}, {2, 3, 20, 200.2}, {4, 5, 30, 210.31}, {5, 3, 0.2, 179.6}};
  const auto attraction = local_attraction(legs, 0.5);
  REQUIRE(attraction);
  REQUIRE(attraction->stations.size() == 6);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(attraction->stations[i].is_free);
    CHECK(attraction->stations[i].station == i);
  }
  // Over north: 179.6 is right, so 0.2 is 0.6 too much.
  CHECK(attraction->stations[4].station == 5);
  CHECK(!attraction->stations[4].is_free);
  CHECK(std::abs(attraction->stations[4].correction + 0.6) < 1e-9);
  CHECK(apart(attraction->legs[3]->fore, 359.6) < 1e-9);
}

TEST_CASE("what hangs on no free leg stays unknown") {
  const std::vector<ForeAndBack> legs = {{0, 1, 10, 190}, {1, 2, 20, 205}, {7, 8, 30, 215}};
  const auto attraction = local_attraction(legs, 0.5);
  REQUIRE(attraction);
  CHECK(attraction->stations.size() == 3);
  REQUIRE(attraction->legs.size() == 3);
  CHECK(attraction->legs[1]);
  CHECK(!attraction->legs[2]);
}

TEST_CASE("a leg from a station to itself is not counted") {
  const std::vector<ForeAndBack> legs = {{0, 0, 10, 190}, {0, 1, 10, 193}, {1, 2, 20, 200.2}};
  const auto attraction = local_attraction(legs, 0.5);
  REQUIRE(attraction);
  CHECK(!attraction->legs[0]);
  CHECK(attraction->stations.front().station == 1);
  CHECK(std::abs(correction_at(*attraction, 0) - 3) < 1e-9);
  const std::vector<ForeAndBack> alone = {{0, 0, 10, 190}, {0, 1, 10, 190}};
  CHECK(!local_attraction(alone, 0.5));
}

TEST_CASE(
    "a station is corrected along the fewest legs, of equals from the station reached first") {
  const std::vector<ForeAndBack> around = {
      {0, 1, 10, 190}, {1, 2, 20, 201}, {2, 3, 30, 212}, {3, 4, 40, 223}, {4, 0, 50, 234}};
  const auto found = local_attraction(around, 0.5);
  REQUIRE(found);
  CHECK(std::abs(correction_at(*found, 2) + 1) < 1e-9);
  CHECK(std::abs(correction_at(*found, 4) - 4) < 1e-9);
  CHECK(std::abs(correction_at(*found, 3) - 7) <
        1e-9);  // from 4, reached from 0, before 2 is from 1
}
