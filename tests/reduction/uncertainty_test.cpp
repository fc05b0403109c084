// SPDX-License-Identifier: MIT
// How well a strike, trend or bearing is known: by its own law, and against simulated errors.
#include "reduced.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>
#include <random>

using namespace lodebook;
using namespace lodebook::test;

namespace {

constexpr double radian = 180 / std::numbers::pi;

std::optional<double> sigma_of_last(const std::string& readings) {
  const Reduced log(on_true_dial(readings));
  INFO(readings << log.codes());
  REQUIRE(log.row_count() > 0);
  const Row& row = log.row(log.row_count() - 1);
  REQUIRE(row.status != Status::rejected);
  return row.uncertainty;
}

double joined(double a, double b) {
  return std::sqrt(a * a + b * b);
}

/// The half-width about nothing that holds as many errors as one sigma does.
double one_sigma_of(std::vector<double> errors) {
  for (double& error : errors)
    error = std::abs(std::remainder(error, 360.0));
  const auto at = errors.begin() + static_cast<std::ptrdiff_t>(0.682689 * double(errors.size()));
  std::nth_element(errors.begin(), at, errors.end());
  return *at;
}

/// Readings with errors, by their own geometry: the plane strikes north and dips east.
class Simulated {
 public:
  explicit Simulated(double bearing, double dip) : bearing_(bearing), dip_(dip) {}

  /// A compass read on a plate that is not level along the strike, on a dip that is not quite it.
  double strike_error(double slope) {
    const double aside = drawn(dip_) / radian;
    const double down = (slope + drawn(dip_)) / radian;
    const double east = std::sin(down) * std::cos(aside);
    return std::atan2(std::sin(aside), east) * radian + drawn(bearing_);
  }
  double trend_error(double plunge) {
    const double aside = drawn(bearing_) / radian;
    return std::atan2(std::tan(aside), std::cos(plunge / radian)) * radian;
  }
  double rake_error(double slope, double rake) {
    const double strike = drawn(joined(bearing_, dip_ / std::sin(slope / radian)));
    return strike + rake_trend(slope + drawn(dip_), rake + drawn(dip_)) - rake_trend(slope, rake);
  }

  template <class One>
  double sigma(One error) {
    std::vector<double> errors(40'000);
    std::ranges::generate(errors, error);
    return one_sigma_of(std::move(errors));
  }

 private:
  static double rake_trend(double slope, double rake) {
    return std::atan2(std::sin(rake / radian) * std::cos(slope / radian), std::cos(rake / radian)) *
           radian;
  }
  double drawn(double sigma) { return sigma * normal_(random_); }

  double bearing_;
  double dip_;
  std::mt19937 random_{20260214};
  std::normal_distribution<double> normal_;
};

/// First-order laws are asked for up to this sigma, and within a twentieth.
constexpr double largest_sigma = 20;
constexpr double allowed = 0.05;

}  // namespace

TEST_CASE("the trend of a rake has the errors of its plane, the strike's before all") {
  const std::string heading = "accuracy bearing 1 dip 2\njoint N62E 31NW\n";
  // 4.01 of the strike, 0.10 of the dip, 2.33 of the rake.
  const auto sigma = sigma_of_last(heading + "lineation rake 86 from N62E\n");
  CHECK(miss(sigma, 4.64) < 0.005);
  // Along the strike it is the strike's and the dip's share of the rake.
  CHECK(miss(sigma_of_last(heading + "lineation rake 0 from N62E\n"),
             joined(joined(1, 2 / std::sin(31 / radian)), 2 * std::cos(31 / radian))) < exact);
  // Down the dip the dip's own error does nothing.
  CHECK(miss(sigma_of_last(heading + "lineation rake 90 from N62E\n"),
             joined(joined(1, 2 / std::sin(31 / radian)), 2 / std::cos(31 / radian))) < exact);
}

TEST_CASE("a rake takes its plane's errors as they were where the plane was read") {
  const auto rough_plane = sigma_of_last(
      "accuracy dip 4\njoint N62E 31NW\naccuracy dip 1\nlineation rake 40 from N62E\n");
  const auto fine_plane = sigma_of_last(
      "accuracy dip 1\njoint N62E 31NW\naccuracy dip 1\nlineation rake 40 from N62E\n");
  REQUIRE(rough_plane);
  REQUIRE(fine_plane);
  CHECK(*rough_plane > 2 * *fine_plane);
}

TEST_CASE("the declination's error joins that of a rake's trend once") {
  const std::string readings = "station Q1\njoint N62E 31NW\nlineation rake 40 from N62E\n";
  const Reduced without("set 0\ndeclination 24.6E\n" + readings);
  const Reduced with("set 0\ndeclination 24.6E ±2\n" + readings);
  REQUIRE(without.row(1).uncertainty);
  CHECK(miss(with.row(1).uncertainty, joined(*without.row(1).uncertainty, 2)) < exact);
}

TEST_CASE("a rake down a wall has no trend, and any other has its plane's strike") {
  const Reduced log(
      on_true_dial("joint N62E 90NW\nlineation rake 90 from N62E\nlineation rake 45 from N62E\n"));
  CHECK_FALSE(log.row(1).trend);
  CHECK_FALSE(log.row(1).uncertainty);
  CHECK(miss(log.row(2).uncertainty, joined(joined(0.5, 1), 1)) < exact);
}

TEST_CASE("repeats of a rake average its error, not their plane's") {
  const Reduced log(on_true_dial("accuracy bearing 1 dip 2\njoint N62E 31NW\n"
                                 "lineation rake 90 from N62E, rake 90 from N62E, "
                                 "rake 90 from N62E, rake 90 from N62E\n"),
                    means());
  REQUIRE(log.row_count() == 2);
  CHECK(miss(log.row(1).uncertainty,
             joined(joined(1, 2 / std::sin(31 / radian)), 1 / std::cos(31 / radian))) < 1e-6);
}

TEST_CASE("the laws hold against simulated errors") {
  for (const auto& [bearing, dip] :
       {std::pair{0.5, 1.0}, std::pair{1.0, 2.0}, std::pair{2.0, 5.0}, std::pair{5.0, 0.5}}) {
    Simulated simulated(bearing, dip);
    const std::string heading = fmt::format("accuracy bearing {} dip {}\n", bearing, dip);
    const auto check = [&](const std::string& readings, auto error) {
      const auto sigma = sigma_of_last(heading + readings);
      if (!sigma || *sigma > largest_sigma) return 0;
      INFO(heading << readings << *sigma);
      CHECK(std::abs(simulated.sigma(error) / *sigma - 1) < allowed);
      return 1;
    };
    int checked = 0;
    for (const double slope : {3, 7, 15, 31, 45, 60, 75, 85, 89}) {
      checked += check(fmt::format("bedding 000 {} E\n", slope),
                       [&] { return simulated.strike_error(slope); });
      checked += check(fmt::format("lineation 000/{}\n", slope),
                       [&] { return simulated.trend_error(slope); });
      for (const double rake : {0, 20, 45, 70, 86, 90}) {
        checked += check(fmt::format("fault 000 {} E\nlineation rake {} from 000\n", slope, rake),
                         [&] { return simulated.rake_error(slope, rake); });
      }
    }
    CHECK(checked > 40);
  }
}

TEST_CASE("a point of the rose is as good as the letters said") {
  const double by_three = 22.5 / std::sqrt(12.0);
  const double by_two = 45 / std::sqrt(12.0);
  const double by_one = 90 / std::sqrt(12.0);
  const std::string still = "accuracy bearing 1 dip 0.001\n";
  const auto check = [&](const std::string& readings, double point) {
    INFO(readings);
    CHECK(miss(sigma_of_last(still + readings), joined(1, point)) < 1e-4);
  };
  check("joint vertical NNW\n", by_three);
  check("joint vertical NW\n", by_two);
  check("joint vertical N\n", 0);
  check("joint vertical due N\n", 0);
  check("joint NW 90 NE\n", by_two);
  check("bedding 90 > WNW\n", by_three);
  check("bedding 90 > NW\n", by_two);
  check("bedding 90 > N\n", by_one);
  check("lineation NW 0\n", by_two);
  check("lineation horizontal SSW\n", by_three);
  check("lineation 0 > S\n", 0);
  check("sight Peak WNW\n", by_three);
  check("sight Peak W\n", 0);
  check("sight Peak NW south-end\n", by_two);
  check("leg SE 120m\n", by_two);
  check("leg due E 120m\n", 0);
  check("leg S38E 120m\n", 0);
  check("sight Peak 090\n", 0);
}

TEST_CASE("a side in letters is no bearing, nor is the end that a rake is counted from") {
  CHECK(sigma_of_last("bedding N62E 37NW\n") == sigma_of_last("rule left\nbedding N62E 37\n"));
  CHECK(sigma_of_last("fault N62E 37NW\nlineation rake 40 from NE\n") ==
        sigma_of_last("fault N62E 37NW\nlineation rake 40 from N62E\n"));
}

TEST_CASE("the mean of points and figures has the errors of both") {
  const Reduced log(on_true_dial("accuracy bearing 1 dip 0.001\njoint NW 90 NE, N44W 90 NE\n"),
                    means());
  REQUIRE(log.row_count() == 1);
  CHECK(miss(log.row().uncertainty, joined(joined(1, 45 / std::sqrt(12.0)), 1) / 2) < 1e-4);
}

TEST_CASE("checks allow for a point of the rose") {
  // 13 degrees of a point: three sigma are 39.
  CHECK(Reduced(on_true_dial("bedding NW 80 NE, N19W 80 NE\n")).count(Code::repeat_spread) == 0);
  CHECK(Reduced(on_true_dial("leg SE 120m back N19W\n")).count(Code::back_bearing) == 0);
  CHECK(Reduced(on_true_dial("leg S19E 120m back NW\n")).count(Code::back_bearing) == 0);
  CHECK(Reduced(on_true_dial("leg S19E 120m back N46W\n")).count(Code::back_bearing) == 1);
  CHECK(Reduced(on_true_dial("fault NW 80 NE\nslickenline N17W 5\n")).count(Code::line_off_plane) ==
        0);
  CHECK(
      Reduced(on_true_dial("fault N46W 80 NE\nslickenline N17W 5\n")).count(Code::line_off_plane) ==
      1);
}

TEST_CASE("a position found by a point of the rose is as good as the point") {
  const auto by_sight = [](const std::string& bearing) {
    const Reduced log(
        "set 0\ndeclination 0\nlandmark East 44.65S 169.10E\nlandmark North 44.60S 169.03E\n"
        "station Q1\nsight East " +
        bearing + "\nsight North 000\n");
    const auto& position = log.pages().back().position;
    REQUIRE(position);
    return position->accuracy_m.value();
  };
  CHECK(by_sight("NE") > 10 * by_sight("045"));
  const auto by_leg = [](const std::string& bearing) {
    const Reduced log("set 0\ndeclination 0\nstation Q1 at 44.65S 169.10E\nleg " + bearing +
                      " 1000m to Q2\nstation Q2\n");
    const auto& position = log.pages().back().position;
    REQUIRE(position);
    return position->accuracy_m.value();
  };
  CHECK(by_leg("NE") > 5 * by_leg("045"));
}

TEST_CASE("what is uncertain is said with its cause") {
  const auto said = [](const std::string& readings, Code code) {
    return Reduced(on_true_dial(readings)).only(code).message;
  };
  CHECK(said("bedding NW 60 NE\n", Code::strike_uncertain) ==
        "a point of the compass rose leaves the strike uncertain by 13 degrees");
  CHECK(said("bedding N62E 5NW\n", Code::strike_uncertain) ==
        "a dip of 5 leaves the strike uncertain by 11 degrees");
  CHECK(said("bedding N62E 5NW\nlineation rake 40 from N62E\n", Code::trend_uncertain) ==
        "the errors of its plane leave the trend uncertain by 12 degrees");
  CHECK(said("accuracy bearing 12\nlineation N50W 5\n", Code::trend_uncertain) ==
        "the accuracy of the bearing leaves the trend uncertain by 12 degrees");
  CHECK(said("lineation N50W 88\n", Code::trend_uncertain) ==
        "a plunge of 88 leaves the trend uncertain by 14 degrees");
  CHECK(Reduced("set 0\ndeclination 24.6E ±11\nstation Q1\nbedding N62E 37NW\n")
            .only(Code::strike_uncertain)
            .message == "the declination leaves the strike uncertain by 11 degrees");
}
