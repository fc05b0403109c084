// SPDX-License-Identifier: MIT
// The orientation tensor, what it says of clusters and girdles, and the girdle's cone.
#include <lodebook/orientation/tensor.hpp>

#include <cmath>
#include <vector>

#include "samples.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

// What holds of every tensor.
OrientationTensor sound_tensor(const std::vector<Vector>& axes) {
  const OrientationTensor tensor = orientation_tensor(axes).value();
  const auto& [s1, s2, s3] = tensor.eigenvalues;
  CAPTURE(s1, s2, s3);
  CHECK(s1 >= s2);
  CHECK(s2 >= s3);
  CHECK(s3 >= 0);
  CHECK(std::abs(s1 + s2 + s3 - 1) < 3e-12);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(std::abs(norm(tensor.axes[i]) - 1) < 1e-14);
    CHECK(std::abs(dot(tensor.axes[i], tensor.axes[(i + 1) % 3])) < 1e-14);
    CHECK(tensor.axes[i].down >= 0);
  }
  if (tensor.strength()) CHECK((std::isfinite(*tensor.strength()) && *tensor.strength() >= 0));
  if (tensor.shape()) CHECK((std::isfinite(*tensor.shape()) && *tensor.shape() >= 0));
  return tensor;
}

void check_eigenvalues(const OrientationTensor& tensor, double s1, double s2, double s3) {
  CHECK(std::abs(tensor.eigenvalues[0] - s1) < 1e-12);
  CHECK(std::abs(tensor.eigenvalues[1] - s2) < 1e-12);
  CHECK(std::abs(tensor.eigenvalues[2] - s3) < 1e-12);
}

// So many axes along each of three at right angles.
std::vector<Vector> along_three(std::size_t north, std::size_t east, std::size_t down) {
  std::vector<Vector> axes(north, Vector{1, 0, 0});
  axes.insert(axes.end(), east, Vector{0, 1, 0});
  axes.insert(axes.end(), down, Vector{0, 0, 1});
  return axes;
}

// Evenly round a cone of that half-angle about an axis.
std::vector<Vector> ring(int count, Vector axis, double half_angle) {
  std::vector<Vector> axes;
  const Vector first = turned(axis, beside(axis), half_angle);
  for (int i = 0; i < count; ++i)
    axes.push_back(turned(first, axis, 360.0 * i / count));
  return axes;
}

}  // namespace

TEST_CASE("nothing, and what is no direction, has no tensor") {
  CHECK_FALSE(orientation_tensor({}));
  CHECK_FALSE(orientation_tensor(std::vector<Vector>{{0, 0, 0}}));
  CHECK_FALSE(orientation_tensor(std::vector<Vector>{{std::nan(""), 0, 1}, {0, 0, 1}}));
  CHECK_FALSE(orientation_tensor(std::vector<Vector>{{0, INFINITY, 0}}));
  CHECK_FALSE(girdle_pole_cone95({}));
  CHECK_FALSE(girdle_pole_cone95(std::vector<Vector>(5, Vector{})));
}

TEST_CASE("axes that coincide gather about one direction, and along no great circle") {
  for (const Vector axis : {pole_of(258, 41), direction_of(10, 0), Vector{0, 0, 1}}) {
    for (const std::size_t count : {std::size_t{1}, std::size_t{2}, std::size_t{1000}}) {
      CAPTURE(count);
      const std::vector<Vector> axes(count, axis);
      const OrientationTensor tensor = sound_tensor(axes);
      check_eigenvalues(tensor, 1, 0, 0);
      CHECK(tensor.eigenvalues[2] == 0);
      CHECK_THAT(tensor.axes[0], lies_along(axis));
      CHECK_FALSE(tensor.has_best_circle());
      CHECK_FALSE(tensor.shape());
      CHECK_FALSE(tensor.strength());
      CHECK_FALSE(girdle_pole_cone95(axes));
    }
  }
}

TEST_CASE("axes in one plane have its pole for their third axis, known exactly") {
  Seeded random(210);
  for (const Vector pole : {Vector{0, 0, 1}, Vector{1, 0, 0}, pole_of(123, 45)}) {
    std::vector<Vector> axes;
    for (int i = 0; i < 8; ++i)
      axes.push_back(turned(beside(pole), pole, random.between(0, 100)));
    const OrientationTensor tensor = sound_tensor(axes);
    CHECK(tensor.eigenvalues[2] == 0);
    CHECK_THAT(tensor.axes[2], lies_along(pole));
    CHECK(tensor.has_best_circle());
    CHECK_FALSE(tensor.shape());
    CHECK_FALSE(tensor.strength());
    CHECK(girdle_pole_cone95(axes).value() < 1e-9);
  }
}

TEST_CASE("two axes at right angles share the tensor between them") {
  const OrientationTensor tensor = sound_tensor(along_three(1, 0, 1));
  check_eigenvalues(tensor, 0.5, 0.5, 0);
  CHECK_THAT(tensor.axes[2], lies_along({0, 1, 0}));
}

TEST_CASE("three axes at right angles gather nowhere") {
  const OrientationTensor tensor = sound_tensor(along_three(2, 2, 2));
  check_eigenvalues(tensor, 1 / 3.0, 1 / 3.0, 1 / 3.0);
  CHECK_FALSE(tensor.has_best_circle());
  CHECK_FALSE(tensor.shape());
  CHECK(std::abs(tensor.strength().value()) < 1e-12);
}

TEST_CASE("shape is over 1 of a cluster and under 1 of a girdle") {
  const OrientationTensor cluster = sound_tensor(along_three(1, 8, 2));
  check_eigenvalues(cluster, 8 / 11.0, 2 / 11.0, 1 / 11.0);
  CHECK_THAT(cluster.axes[0], lies_along({0, 1, 0}));
  CHECK(std::abs(cluster.shape().value() - 2) < 1e-12);  // ln 4 / ln 2
  CHECK(std::abs(cluster.strength().value() - std::log(8)) < 1e-12);

  const OrientationTensor girdle = sound_tensor(along_three(1, 8, 4));
  CHECK(std::abs(girdle.shape().value() - 0.5) < 1e-12);  // ln 2 / ln 4
  CHECK(std::abs(girdle.strength().value() - std::log(8)) < 1e-12);
}

TEST_CASE("a round cluster has a strength by its radius, and no best circle however tight") {
  Seeded random(211);
  for (const double radius : {0.01, 0.1, 1.0, 10.0, 30.0}) {
    CAPTURE(radius);
    const Vector axis = any_direction(random);
    const std::vector<Vector> axes = ring(12, axis, radius);
    const OrientationTensor tensor = sound_tensor(axes);
    const double sine = std::sin(radius * std::numbers::pi / 180);
    check_eigenvalues(tensor, 1 - sine * sine, sine * sine / 2, sine * sine / 2);
    CHECK_THAT(tensor.axes[0], lies_along(axis));
    CHECK_FALSE(tensor.has_best_circle());
    CHECK_FALSE(tensor.shape());
    CHECK(std::abs(tensor.strength().value() - std::log(2 * (1 / (sine * sine) - 1))) < 1e-7);
    CHECK_FALSE(girdle_pole_cone95(axes));
  }
}

TEST_CASE("the tensor turns with its axes, whichever end they have") {
  Seeded random(212);
  for (int i = 0; i < 200; ++i) {
    const std::vector<Vector> axes = fold_poles(random, any_direction(random), 10, 7);
    const Vector about = any_direction(random);
    const double by = random.between(0, 360);
    const OrientationTensor tensor = sound_tensor(axes);
    const OrientationTensor moved =
        sound_tensor(with_ends_turned(random, all_turned(axes, about, by)));
    for (std::size_t k = 0; k < 3; ++k) {
      CHECK(std::abs(moved.eigenvalues[k] - tensor.eigenvalues[k]) < 1e-13);
      CHECK_THAT(moved.axes[k], lies_along(turned(tensor.axes[k], about, by)));
    }
    CHECK(std::abs(moved.shape().value() - tensor.shape().value()) < 1e-9);
    CHECK(std::abs(moved.strength().value() - tensor.strength().value()) < 1e-9);
  }
}

TEST_CASE("the tensor of any axes is sound") {
  Seeded random(213);
  for (int count = 1; count <= 60; ++count) {
    sound_tensor(any_directions(random, count));
    const Vector centre = any_direction(random);
    std::vector<Vector> cluster;
    for (int i = 0; i < count; ++i)
      cluster.push_back(fisher_direction(random, centre, std::pow(10, random.between(0, 12))));
    sound_tensor(cluster);
  }
}

TEST_CASE("fewer than five axes have no girdle cone") {
  Seeded random(214);
  const std::vector<Vector> axes = fold_poles(random, {0, 1, 0}, 5, 5);
  CHECK_FALSE(girdle_pole_cone95(std::span(axes).first(4)));
  CHECK(girdle_pole_cone95(axes));
}

TEST_CASE("the girdle cone is the same each time, in any frame and of either end") {
  Seeded random(215);
  for (int i = 0; i < 5; ++i) {
    const std::vector<Vector> axes = fold_poles(random, any_direction(random), 8, 15);
    const double cone = girdle_pole_cone95(axes).value();
    CHECK(girdle_pole_cone95(axes) == cone);
    CHECK(std::abs(girdle_pole_cone95(with_ends_turned(random, axes)).value() - cone) < 1e-9);
    const std::vector<Vector> moved =
        all_turned(axes, any_direction(random), random.between(0, 360));
    CHECK(std::abs(girdle_pole_cone95(moved).value() - cone) < 1e-9);
  }
}

TEST_CASE("the girdle cone widens with the scatter, and narrows with the number of axes") {
  Seeded random(216);
  const auto cone = [&](double sigma, int count) {
    return girdle_pole_cone95(fold_poles(random, {0.6, 0.8, 0}, sigma, count)).value();
  };
  const double narrow = cone(2, 40);
  const double wide = cone(8, 40);
  CHECK(narrow > 0);
  CHECK(wide > 2 * narrow);
  CHECK(wide < 20);
  CHECK(cone(8, 640) < wide / 2);
}

TEST_CASE("axes all over the sphere leave the pole of their girdle unknown") {
  Seeded random(217);
  for (int i = 0; i < 5; ++i) {
    const double cone = girdle_pole_cone95(any_directions(random, 30)).value();
    CHECK(cone > 30);
    CHECK(cone <= 90);
  }
}

// A bootstrap of few axes holds the truth less often than it says: it takes their own scatter for
// that of all, and the scatter of few is mostly too small. The percentages are those of a
// measurement: 10,000 folds each, of which the standard error is 0.3 % at most.
TEST_CASE("the girdle cone of folds holds their axis about as often as it says") {
  struct Fold {
    int count;
    double sigma;
    double held;
  };
  Seeded random(218);
  for (const auto& [count, sigma, held] :
       {Fold{20, 3, 92.1}, Fold{20, 8, 92.2}, Fold{60, 3, 93.8}, Fold{60, 8, 94.0}}) {
    CAPTURE(count, sigma);
    constexpr int folds = 300;
    const Percentages found = percentages(folds, [&, n = count, off = sigma] {
      const Vector axis = any_direction(random);
      const std::vector<Vector> poles = fold_poles(random, axis, off, n);
      const Vector pole = orientation_tensor(poles).value().axes[2];
      return angle_between_axes(pole, axis).degrees() <= girdle_pole_cone95(poles).value();
    });
    CAPTURE(found.held);
    CHECK(std::abs(found.held - held) <= 0.3 + chance_of(held, folds));
  }
}
