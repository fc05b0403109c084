// SPDX-License-Identifier: MIT
#include <lodebook/orientation/tensor.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include "dust.hpp"

namespace lodebook {
namespace {

Eigen::Matrix3d product(const Vector& axis) {
  const Eigen::Vector3d v(axis.north, axis.east, axis.down);
  return v * v.transpose();
}

Vector downward(const Eigen::Vector3d& v) {
  const Vector axis = {v[0], v[1], v[2]};
  return axis.down < 0 ? -axis : axis;
}

/// The pole of the best great circle of a sum of products.
Vector pole_of_best_circle(const Eigen::Matrix3d& sum) {
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(sum);  // increasing
  return downward(solver.eigenvectors().col(0));
}

}  // namespace

bool OrientationTensor::has_best_circle() const {
  return eigenvalues[1] - eigenvalues[2] > dust;
}

std::optional<double> OrientationTensor::shape() const {
  if (!strength() || !has_best_circle()) return std::nullopt;
  return std::log(eigenvalues[0] / eigenvalues[1]) / std::log(eigenvalues[1] / eigenvalues[2]);
}

std::optional<double> OrientationTensor::strength() const {
  if (eigenvalues[2] <= 0) return std::nullopt;
  return std::log(eigenvalues[0] / eigenvalues[2]);
}

std::optional<OrientationTensor> orientation_tensor(std::span<const Vector> axes) {
  Eigen::Matrix3d sum = Eigen::Matrix3d::Zero();
  for (const Vector& axis : axes)
    sum += product(axis);
  const double squares = sum.trace();
  if (!(squares > 0 && std::isfinite(squares))) return std::nullopt;
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(sum / squares);
  OrientationTensor tensor;
  for (int i = 0; i < 3; ++i) {
    const auto place = static_cast<std::size_t>(2 - i);  // ours decrease
    const double value = solver.eigenvalues()[i];
    tensor.eigenvalues[place] = value < dust ? 0 : value;
    tensor.axes[place] = downward(solver.eigenvectors().col(i));
  }
  return tensor;
}

std::optional<double> girdle_pole_cone95(std::span<const Vector> axes) {
  constexpr std::size_t fewest = 5;
  const std::optional<OrientationTensor> tensor = orientation_tensor(axes);
  if (axes.size() < fewest || !tensor || !tensor->has_best_circle()) return std::nullopt;
  // As many draws in all for any number of axes, but never too few samples for a 95th percentile.
  constexpr std::size_t most_samples = 1000;
  constexpr std::size_t fewest_samples = 200;
  constexpr std::size_t draws = 10'000'000;
  const std::size_t samples = std::clamp(draws / axes.size(), fewest_samples, most_samples);

  std::vector<Eigen::Matrix3d> products;
  products.reserve(axes.size());
  for (const Vector& axis : axes)
    products.push_back(product(axis));

  std::mt19937 random(1);  // its numbers are the same on every machine
  std::vector<double> off;
  off.reserve(samples);
  for (std::size_t sample = 0; sample < samples; ++sample) {
    Eigen::Matrix3d sum = Eigen::Matrix3d::Zero();
    for (std::size_t i = 0; i < products.size(); ++i)
      sum += products[(std::uint64_t{random()} * products.size()) >> 32];
    off.push_back(angle_between_axes(pole_of_best_circle(sum), tensor->axes[2]).degrees());
  }
  const auto percentile = off.begin() + static_cast<std::ptrdiff_t>(samples * 95 / 100);
  std::nth_element(off.begin(), percentile, off.end());
  return *percentile;
}

}  // namespace lodebook
