// SPDX-License-Identifier: MIT
// Repeat readings of one sight: whether they agree, and their mean as one row.
#include <algorithm>
#include <cmath>

#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/precision.hpp>

#include "repeats.hpp"
#include "station.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Under this, degrees, two bearings on one mark agree, as fore and back bearings do.
constexpr double sight_floor = 2;

double sigma_of(const Row& row, const Settings& settings) {
  return accuracy_of(std::get<Sight>(row.reading->what).bearing, Told::direction, settings.accuracy)
      .bearing;
}

/// The mean of directions near to each other, degrees.
double mean_direction(std::span<const double> degrees) {
  double turned = 0;
  for (const double one : degrees)
    turned += std::remainder(one - degrees.front(), 360.0);
  return wrap_degrees(degrees.front() + turned / static_cast<double>(degrees.size()));
}

}  // namespace

void Station::check_sight_repeats(std::size_t first_row, const Settings& settings) {
  std::vector<Row*> rows;
  std::vector<Repeat> repeats;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    Row& row = page_->rows[i];
    if (row.status == Status::rejected || (!rows.empty() && row.north != rows.front()->north))
      continue;
    rows.push_back(&row);
    repeats.push_back({direction_of(*row.bearing, 0), sigma_of(row, settings)});
  }
  const auto agreed = agreement(repeats, Ends::one, sight_floor);
  if (!agreed) return;
  const Agreement::Member& worst = *std::ranges::max_element(
      agreed->members, {},
      [](const Agreement::Member& member) { return std::pair(member.apart, member.off); });
  Check check;
  check.what = Check::What::repeats;
  check.line = rows.front()->entry->line;
  check.kind = rows.front()->kind;
  check.count = repeats.size();
  check.figure = worst.off;
  check.limit = worst.limit;
  check.passed = !worst.apart;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Agreement::Member& member = agreed->members[i];
    if (member.apart)
      report(*rows[i], wording::repeat_spread("the bearing", member.off, member.limit, {}));
  }
  if (agreed->mean) {
    const Vector mean = agreed->mean->axis;
    check.mean_azimuth = line_of_arrow(mean).trend;
  }
  page_->checks.push_back(check);
}

void Station::take_sight_mean(std::size_t first_row, const Settings& settings) {
  std::vector<double> bearings;
  std::vector<double> backs;
  std::vector<double> verticals;
  double sigma = 0;
  double by_declination = 0;
  Row* first = nullptr;
  const Row* last = nullptr;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    Row& row = page_->rows[i];
    if (row.status == Status::rejected || (first && row.north != first->north)) continue;
    const auto& sight = std::get<Sight>(row.reading->what);
    bearings.push_back(*row.bearing);
    if ((sight.back || sight.is_back) && row.back_bearing) backs.push_back(*row.back_bearing);
    if (row.vertical_angle) verticals.push_back(*row.vertical_angle);
    sigma = combined_sigma(sigma, sigma_of(row, settings));
    by_declination += correction_of(row, settings).sigma;
    if (!first) first = &row;
    last = &row;
  }
  const auto count = static_cast<double>(bearings.size());
  if (bearings.size() < 2) return;
  Row& mean = *first;
  mean.repeats = bearings.size();
  const char* const begin = mean.written.data();
  mean.written = {begin,
                  static_cast<std::size_t>(last->written.data() + last->written.size() - begin)};
  mean.bearing = mean_direction(bearings);
  mean.as_read = wrap_degrees(*mean.bearing - *mean.correction);
  mean.back_bearing = backs.empty() ? wrap_degrees(*mean.bearing + 180) : mean_direction(backs);
  const double total = combined_sigma(sigma / count, by_declination / count);
  mean.uncertainty = mean.uncertainty ? std::optional(total) : std::nullopt;
  if (!verticals.empty()) {
    double sum = 0;
    for (const double vertical : verticals)
      sum += vertical;
    mean.vertical_angle = sum / static_cast<double>(verticals.size());
  }
  const auto rest = page_->rows.begin() + (first - page_->rows.data()) + 1;
  page_->rows.erase(std::remove_if(rest, page_->rows.end(),
                                   [&mean](const Row& row) {
                                     return row.status != Status::rejected &&
                                            row.north == mean.north;
                                   }),
                    page_->rows.end());
}

}  // namespace lodebook::reduction
