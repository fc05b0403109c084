// SPDX-License-Identifier: MIT
// Prints the statistics of data sets, for comparison with another program's: a line of JSON in, an
// array of unit vectors [north, east, down] or of azimuths in degrees; a line of JSON out.
#include <cstdlib>
#include <iostream>
#include <optional>
#include <string>
#include <vector>

#include <lodebook/orientation/circular.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/tensor.hpp>
#include <nlohmann/json.hpp>

using namespace lodebook;
using nlohmann::json;

namespace {

template <class T>
json optional(const std::optional<T>& value) {
  return value ? json(*value) : json();
}

json array(Vector v) {
  return {v.north, v.east, v.down};
}

json described(const std::optional<DirectionMean>& mean) {
  if (!mean) return {};
  return {{"axis", array(mean->axis)},
          {"resultant", mean->resultant},
          {"precision", optional(mean->precision)},
          {"cone95", optional(mean->cone95)}};
}

json described(const OrientationTensor& tensor) {
  json axes;
  for (const Vector& axis : tensor.axes)
    axes.push_back(array(axis));
  return {{"eigenvalues", tensor.eigenvalues},
          {"axes", axes},
          {"shape", optional(tensor.shape())},
          {"strength", optional(tensor.strength())}};
}

json described(const CircularMean& mean) {
  return {{"azimuth", optional(mean.azimuth)},
          {"resultant", mean.resultant},
          {"chance", mean.chance},
          {"arc95", optional(mean.arc95)}};
}

json statistics_of(const json& data) {
  if (data.at(0).is_number()) {
    const auto azimuths = data.get<std::vector<double>>();
    return {{"arrows", described(circular_mean(azimuths))},
            {"axes", described(axial_mean(azimuths))}};
  }
  std::vector<Vector> directions;
  for (const json& v : data)
    directions.push_back({v.at(0), v.at(1), v.at(2)});
  return {{"arrows", described(mean_of_arrows(directions))},
          {"axes", described(mean_of_axes(directions))},
          {"tensor", described(orientation_tensor(directions).value())}};
}

}  // namespace

int main() {
  for (std::string line; std::getline(std::cin, line);)
    std::cout << statistics_of(json::parse(line)) << '\n';  // the digits that a double needs
  return std::cout.flush() ? EXIT_SUCCESS : EXIT_FAILURE;
}
