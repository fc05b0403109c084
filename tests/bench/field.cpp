// SPDX-License-Identifier: MIT
// What one evaluation of the geomagnetic field costs, beside reading the position it is wanted for.
#include <lodebook/earth/geomagnetic.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <random>
#include <vector>

namespace {

using namespace lodebook;

constexpr int evaluations = 100'000;
constexpr int rounds = 15;

/// The median over the rounds of one call's time in microseconds.
template <class Call>
double median_us(Call call) {
  std::vector<double> times;
  for (int round = 0; round < rounds; ++round) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < evaluations; ++i)
      call(i);
    const std::chrono::duration<double, std::micro> taken =
        std::chrono::steady_clock::now() - start;
    times.push_back(taken.count() / evaluations);
  }
  std::ranges::nth_element(times, times.begin() + rounds / 2);
  return times[rounds / 2];
}

}  // namespace

int main() {
  std::mt19937 random(1);
  std::uniform_real_distribution<double> latitudes(-80, 80);
  std::uniform_real_distribution<double> longitudes(-180, 180);
  std::uniform_real_distribution<double> years(1900, 2030);
  struct Place {
    earth::Position position;
    double year;
  };
  std::vector<Place> places;
  for (int i = 0; i < evaluations; ++i)
    places.push_back({{latitudes(random), longitudes(random)}, years(random)});

  double sum = 0;  // printed, so that nothing is left out
  const double field = median_us([&](int i) {
    const Place& place = places[static_cast<std::size_t>(i)];
    sum += earth::magnetic_field(place.position, 0, place.year)->north_nt();
  });
  const double reading = median_us([&](int) {
    const auto read = earth::read_position("44.6891S 169.0144E");
    sum += std::get<earth::WrittenPosition>(read).position->latitude;
  });
  std::printf("field %.2f us, position read %.2f us, ratio %.1f (checksum %g)\n", field, reading,
              field / reading, sum);
}
