// SPDX-License-Identifier: MIT
// The mean of azimuths, of arrows and of axes, and its statistics.
#include <lodebook/orientation/circular.hpp>

#include <cmath>
#include <vector>

#include "samples.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

// What holds of every mean; azimuths end at `turn`.
CircularMean sound(const CircularMean& mean, double turn) {
  CAPTURE(mean.count, mean.resultant, mean.chance);
  CHECK((mean.resultant >= 0 && mean.resultant <= 1));
  CHECK((mean.chance >= 0 && mean.chance <= 1));
  if (mean.azimuth) CHECK((*mean.azimuth >= 0 && *mean.azimuth < turn));
  if (mean.arc95) CHECK((*mean.arc95 >= 0 && *mean.arc95 <= turn / 4));
  if (mean.arc95) CHECK(mean.azimuth);
  return mean;
}

CircularMean arrows(const std::vector<double>& azimuths) {
  return sound(circular_mean(azimuths), 360);
}

CircularMean axes(const std::vector<double>& azimuths) {
  return sound(axial_mean(azimuths), 180);
}

void check_cancelled(const CircularMean& mean) {
  CHECK_FALSE(mean.azimuth);
  CHECK_FALSE(mean.arc95);
  CHECK(mean.resultant < 1e-12);
  CHECK(mean.chance == 1);
  CHECK_FALSE(mean.is_meaningful());
}

std::vector<double> round_the_horizon(int count, double from) {
  std::vector<double> azimuths;
  for (int i = 0; i < count; ++i)
    azimuths.push_back(from + 360.0 * i / count);
  return azimuths;
}

std::vector<double> von_mises_sample(Seeded& random, int count, double mean, double kappa) {
  std::vector<double> azimuths;
  for (int i = 0; i < count; ++i)
    azimuths.push_back(mean + von_mises_degrees(random, kappa));
  return azimuths;
}

}  // namespace

TEST_CASE("no azimuths have no mean") {
  check_cancelled(arrows({}));
  check_cancelled(axes({}));
  CHECK(arrows({}).count == 0);
}

TEST_CASE("the mean of azimuths about north is north") {
  const CircularMean mean = arrows({350, 10});
  CHECK(mean.count == 2);
  CHECK_THAT(mean.azimuth.value(), points_to(0));
  CHECK(std::abs(mean.resultant - std::cos(std::numbers::pi / 18)) < 1e-15);
  CHECK_FALSE(mean.arc95);
}

TEST_CASE("one azimuth is its own mean, and says nothing of its certainty") {
  for (const double azimuth : {0.0, 45.0, 123.4, 270.0, 359.9}) {
    const CircularMean mean = arrows({azimuth});
    CHECK_THAT(mean.azimuth.value(), points_to(azimuth));
    CHECK(std::abs(mean.resultant - 1) < 1e-15);
    CHECK_FALSE(mean.is_meaningful());
    CHECK_THAT(2 * axes({azimuth}).azimuth.value(), points_to(2 * azimuth));
  }
}

TEST_CASE("azimuths that coincide have an arc of next to nothing") {
  const CircularMean mean = arrows(std::vector<double>(20, 77.7));
  CHECK_THAT(mean.azimuth.value(), points_to(77.7));
  CHECK(std::abs(mean.resultant - 1) < 1e-15);
  CHECK(mean.arc95.value() < 1e-5);  // the root of what rounding leaves
  CHECK(mean.chance < 1e-6);
  CHECK(mean.is_meaningful());
}

TEST_CASE("opposite arrows cancel out, and are one axis") {
  for (const double azimuth : {0.0, 33.3, 90.0, 200.0}) {
    check_cancelled(arrows({azimuth, azimuth + 180, azimuth, azimuth + 180}));
    const CircularMean axis = axes({azimuth, azimuth + 180, azimuth, azimuth + 180});
    CHECK_THAT(2 * axis.azimuth.value(), points_to(2 * azimuth));
    CHECK(std::abs(axis.resultant - 1) < 1e-15);
    CHECK(axis.is_meaningful());
  }
}

TEST_CASE("axes at right angles cancel out") {
  check_cancelled(axes({20, 110}));
  check_cancelled(axes({20, 290, 200, 110}));
}

TEST_CASE("directions evenly round the horizon cancel out, also many") {
  for (const int count : {2, 3, 7, 360, 100001})
    check_cancelled(arrows(round_the_horizon(count, 12.3)));
}

TEST_CASE("a mean never reads 360, nor an axis 180") {
  CHECK(arrows({-1e-17}).azimuth == 0.0);
  CHECK(arrows({360, 720, -360}).azimuth == 0.0);
  CHECK(axes({180, -180, 540}).azimuth == 0.0);
  CHECK(axes({-1e-17}).azimuth == 0.0);
  CHECK(axes({179, 1}).azimuth.value() < 1e-9);
}

TEST_CASE("a mean turns with its azimuths, and mirrors with them") {
  Seeded random(220);
  for (int i = 0; i < 300; ++i) {
    const std::vector<double> azimuths = von_mises_sample(random, 9, random.between(0, 360), 2);
    const double by = random.between(-720, 720);
    std::vector<double> moved = azimuths;
    std::vector<double> mirrored = azimuths;
    for (double& azimuth : moved)
      azimuth += by;
    for (double& azimuth : mirrored)
      azimuth = -azimuth;
    const CircularMean mean = arrows(azimuths);
    CHECK_THAT(arrows(moved).azimuth.value(), points_to(*mean.azimuth + by));
    CHECK_THAT(arrows(mirrored).azimuth.value(), points_to(-*mean.azimuth));
    CHECK(std::abs(arrows(moved).resultant - mean.resultant) < 1e-12);
    CHECK(std::abs(arrows(moved).chance - mean.chance) < 1e-12);
    CHECK_THAT(2 * axes(moved).azimuth.value(), points_to(2 * (*axes(azimuths).azimuth + by)));
  }
}

TEST_CASE("either end of an axis will do") {
  Seeded random(221);
  for (int i = 0; i < 300; ++i) {
    std::vector<double> azimuths;
    std::vector<double> doubled;
    for (int n = 0; n < 8; ++n) {
      azimuths.push_back(random.between(0, 360));
      doubled.push_back(2 * azimuths.back());
    }
    const CircularMean mean = axes(azimuths);
    const CircularMean twice = arrows(doubled);
    CHECK_THAT(2 * mean.azimuth.value(), points_to(*twice.azimuth));
    CHECK(mean.resultant == twice.resultant);
    CHECK(mean.chance == twice.chance);
    CHECK(mean.arc95.has_value() == twice.arc95.has_value());
    if (mean.arc95) CHECK(std::abs(2 * *mean.arc95 - *twice.arc95) < 1e-12);

    for (std::size_t n = 0; n < azimuths.size(); n += 2)
      azimuths[n] += 180;
    CHECK_THAT(2 * axes(azimuths).azimuth.value(), points_to(2 * *mean.azimuth));
    CHECK(std::abs(axes(azimuths).resultant - mean.resultant) < 1e-12);
  }
}

TEST_CASE("the mean of any azimuths is sound") {
  Seeded random(222);
  for (int count = 1; count <= 60; ++count) {
    for (int i = 0; i < 20; ++i) {
      std::vector<double> azimuths;
      const double width = std::pow(10, random.between(-9, 3));
      for (int n = 0; n < count; ++n)
        azimuths.push_back(random.between(-width, width));
      arrows(azimuths);
      axes(azimuths);
    }
  }
}

TEST_CASE("a mean with an arc but a chance of 5 % is none to speak of, and the other way round") {
  CircularMean mean;
  mean.chance = 0.01;
  CHECK_FALSE(mean.is_meaningful());
  mean.arc95 = 20;
  CHECK(mean.is_meaningful());
  mean.chance = 0.05;
  CHECK_FALSE(mean.is_meaningful());
}

TEST_CASE("fewer than three directions, or a short resultant, have no arc") {
  CHECK_FALSE(arrows({10, 11}).arc95);
  CHECK(arrows({10, 11, 12}).arc95);
  CHECK_FALSE(arrows({0, 100, 210, 300}).arc95);
}

TEST_CASE("of many close directions the arc is that of a normal mean") {
  // 1.96 standard errors; the spread of azimuths so close is that of plain numbers.
  Seeded random(223);
  std::vector<double> azimuths;
  double sum = 0;
  double squares = 0;
  constexpr int count = 2000;
  for (int i = 0; i < count; ++i) {
    azimuths.push_back(normal(random, 2));
    sum += azimuths.back();
    squares += azimuths.back() * azimuths.back();
  }
  const double mean = sum / count;
  const double sigma = std::sqrt(squares / count - mean * mean);
  CHECK_THAT(arrows(azimuths).azimuth.value(), points_to(mean, 1e-3));
  CHECK(std::abs(arrows(azimuths).arc95.value() / (1.959964 * sigma / std::sqrt(count)) - 1) <
        2e-3);
}

TEST_CASE("the Rayleigh test rejects one in twenty samples from all round") {
  // 10,000 samples know 5 % to 0.2 %; the formula is an approximation.
  Seeded random(224);
  for (const int count : {5, 10, 50}) {
    CAPTURE(count);
    const auto [all, rejected] = percentages(10000, [&] {
      std::vector<double> azimuths;
      for (int i = 0; i < count; ++i)
        azimuths.push_back(random.between(0, 360));
      return circular_mean(azimuths).chance < 0.05;
    });
    CHECK(rejected > 4);
    CHECK(rejected < 6);
  }
}

// The formula is approximate, so that its true percentages are those of a measurement: 20,000
// samples each, of which the standard error is 0.4 % at most. Where the directions scatter most, a
// third of the samples has no arc.
TEST_CASE("an arc holds the true direction about as often as it says") {
  struct Spread {
    double kappa;
    int count;
    double with_arc;
    double held;
  };
  Seeded random(225);
  for (const auto& [kappa, count, with_arc, held] :
       {Spread{1, 10, 64.4, 92.2}, Spread{1, 40, 99.4, 95.1}, Spread{3, 10, 99.9, 95.7},
        Spread{3, 40, 100, 97.1}, Spread{10, 10, 100, 93.7}, Spread{10, 40, 100, 95.2}}) {
    CAPTURE(kappa, count);
    constexpr int samples = 4000;
    const double truth = random.between(0, 180);
    const Percentages of_arrows = percentages(samples, [&, n = count, k = kappa] {
      const CircularMean mean = circular_mean(von_mises_sample(random, n, truth, k));
      if (!mean.arc95) return std::optional<bool>();
      return std::optional(std::abs(std::remainder(*mean.azimuth - truth, 360)) <= *mean.arc95);
    });
    const Percentages of_axes = percentages(samples, [&, n = count, k = kappa] {
      std::vector<double> azimuths = von_mises_sample(random, n, 2 * truth, k);
      for (double& azimuth : azimuths)
        azimuth = azimuth / 2 + (random.between(0, 1) < 0.5 ? 180 : 0);
      const CircularMean mean = axial_mean(azimuths);
      if (!mean.arc95) return std::optional<bool>();
      return std::optional(std::abs(std::remainder(*mean.azimuth - truth, 180)) <= *mean.arc95);
    });
    for (const Percentages& found : {of_arrows, of_axes}) {
      CAPTURE(found.answered, found.held);
      CHECK(std::abs(found.answered - with_arc) <= 0.4 + chance_of(with_arc, samples));
      CHECK(std::abs(found.held - held) <= 0.4 + chance_of(held, samples * with_arc / 100));
    }
  }
}

TEST_CASE("a meaningful mean of few scattered directions holds the true one less often") {
  // 20,000 samples gave 42.2 % and 89.3 %.
  Seeded random(226);
  constexpr int samples = 4000;
  const Percentages found = percentages(samples, [&] {
    const CircularMean mean = circular_mean(von_mises_sample(random, 10, 0, 1));
    if (!mean.is_meaningful()) return std::optional<bool>();
    return std::optional(std::abs(std::remainder(*mean.azimuth, 360)) <= *mean.arc95);
  });
  CAPTURE(found.answered, found.held);
  CHECK(std::abs(found.answered - 42.2) <= 0.4 + chance_of(42.2, samples));
  CHECK(std::abs(found.held - 89.3) <= 0.4 + chance_of(89.3, samples * 0.422));
}
