// SPDX-License-Identifier: MIT
// How well a strike, a trend, a pole and a line are known.
#include <lodebook/orientation/precision.hpp>

#include <cmath>

#include "directions.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

bool near(double a, double b) {
  return std::abs(a - b) < 1e-12;
}

}  // namespace

TEST_CASE("the strike of a wall is as good as the bearing and the levelling") {
  CHECK(near(strike_sigma(0.5, 1, dip(90)), std::sqrt(1.25)));
  CHECK(near(strike_sigma(3, 0, dip(10)), 3));
}

TEST_CASE("the flatter a plane, the worse its strike; a level one has none") {
  CHECK(near(strike_sigma(0, 1, dip(30)), 2));
  CHECK(strike_sigma(0.5, 1, dip(5)) > strike_sigma(0.5, 1, dip(10)));
  CHECK(std::isinf(strike_sigma(0.5, 1, dip(0))));
  CHECK(std::isinf(strike_sigma(0.5, 0, dip(0))));
}

TEST_CASE("the worst strike error ends at 90, where the error reaches the dip") {
  CHECK(worst_strike_error(angle(2), dip(2)) == 90);
  CHECK(worst_strike_error(angle(2), dip(1)) == 90);
  CHECK(worst_strike_error(angle(2), dip(0)) == 90);
  CHECK(worst_strike_error(angle(0), dip(0)) == 90);
  CHECK(worst_strike_error(angle(2), dip(2.001)) < 90);
  CHECK(worst_strike_error(angle(0), dip(20)) == 0);
  CHECK(worst_strike_error(angle(2), dip(90)) < 1e-9);
  CHECK(worst_strike_error(angle(-2), dip(20)) == worst_strike_error(angle(2), dip(20)));
}

TEST_CASE("a small levelling error does in the worst case what the sigma says, over cos dip") {
  // asin(tan e / tan D) tends to e / tan D, and sd(strike) to e / sin D.
  const double slope = 20;
  const double error = 0.001;
  const double worst = worst_strike_error(angle(error), dip(slope));
  const double sigma = strike_sigma(0, error, dip(slope));
  CHECK(std::abs(worst / sigma - cos(angle(slope))) < 1e-6);
}

TEST_CASE("the steeper a line, the worse its trend; a vertical one has none") {
  CHECK(near(trend_sigma(0.5, plunge(0)), 0.5));
  CHECK(near(trend_sigma(0.5, plunge(60)), 1));
  CHECK(std::isinf(trend_sigma(0.5, plunge(90))));
  CHECK(std::isinf(trend_sigma(0, plunge(90))));
}

TEST_CASE("the bearing matters to a pole by the sine of the dip, and wholly to a line") {
  CHECK(near(pole_sigma(0.5, 1, dip(0)), 1));
  CHECK(near(pole_sigma(3, 4, dip(90)), 5));
  CHECK(near(pole_sigma(6, 4, dip(30)), 5));
  CHECK(near(line_sigma(3, 4), 5));
}
