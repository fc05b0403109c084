// SPDX-License-Identifier: MIT
#include "sight_slips.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/reduction/chi_square.hpp>

#include "slips.hpp"

namespace lodebook::reduction {

namespace {

using notebook::Bearing;
using notebook::Notation;

/// Slips that fit as well, within this of the best chi-square, are named beside it.
constexpr double also_fits = 4;
/// Another point may have been sighted if it lies so near to the bearing, degrees.
constexpr double near_bearing = 5;

/// More sights than that are not all tried.
constexpr std::size_t most_suspects = 12;

/// An azimuth that may have been meant, on the dial.
struct MeantAzimuth {
  std::string words;
  double dial = 0;
};

std::vector<MeantAzimuth> meant_azimuths(const TypedSight& sight) {
  std::vector<MeantAzimuth> meant;
  const double dial = sight.typed.azimuth().degrees();
  meant.push_back({"the other end of the needle", dial + 180});
  for (const MeantBearing& slip : bearing_slips(sight.typed))
    meant.push_back({slip.words, slip.bearing.azimuth().degrees()});
  // A quadrant bearing has its letters; a circle may be numbered the other way round.
  if (sight.typed.notation == Notation::azimuth)
    meant.push_back({"counted the other way round, east for west", -dial});
  meant.push_back({"ten degrees misread", dial + 10});
  meant.push_back({"ten degrees misread", dial - 10});
  return meant;
}

double chi_square_of(const SightResult& result) {
  const auto* const found = std::get_if<SightFit>(&result);
  return found ? found->chi_square : std::numeric_limits<double>::infinity();
}

class Trial {
 public:
  Trial(std::span<const TypedSight> sights, double common_sigma)
      : sights_(sights), common_sigma_(common_sigma), freedom_(sights.size() - 2) {
    for (const TypedSight& sight : sights)
      lines_.push_back(sight.line);
  }

  /// All, or of very many those that are furthest off.
  std::vector<std::size_t> suspects() const {
    std::vector<std::size_t> all(sights_.size());
    std::iota(all.begin(), all.end(), 0);
    if (all.size() <= most_suspects) return all;
    const std::vector<double> misfits = rough_misfits(lines_);
    std::ranges::partial_sort(all, all.begin() + most_suspects, std::ranges::greater(),
                              [&misfits](std::size_t i) { return misfits[i]; });
    all.resize(most_suspects);
    std::ranges::sort(all);
    return all;
  }

  void try_azimuth(std::size_t i, const MeantAzimuth& meant) {
    SightLine line = lines_[i];
    const double turned = sights_[i].south_end ? 180 : 0;
    line.azimuth = wrap_degrees(meant.dial + turned + sights_[i].correction);
    try_line(i, line, meant.words);
  }

  /// Points that lie near the sight's bearing from where the other sights meet.
  void try_others(std::size_t i, std::span<const OtherPoint> others) {
    std::vector<SightLine> rest = lines_;
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
    const SightResult without = fit(rest, common_sigma_);
    const auto* const found = std::get_if<SightFit>(&without);
    if (!found) return;
    for (const OtherPoint& other : others) {
      const auto seen = earth::geodesic(found->position, other.position);
      if (std::abs(std::remainder(seen.azimuth - lines_[i].azimuth, 360.0)) > near_bearing)
        continue;
      SightLine line = lines_[i];
      line.known = other.position;
      line.known_sigma_m = other.sigma_m;
      try_line(i, line, fmt::format("{} sighted, not {}", other.name, sights_[i].name));
    }
  }

  void try_common(const CommonSlip& slip) {
    std::vector<SightLine> lines = lines_;
    for (SightLine& line : lines)
      line.azimuth = wrap_degrees(line.azimuth + slip.turn);
    add({std::nullopt, slip.words, chi_square_of(fit(lines, common_sigma_))});
  }

  std::vector<SightSlip> best() {
    std::ranges::stable_sort(slips_, {}, &SightSlip::chi_square);
    if (!slips_.empty()) {
      const double limit = slips_.front().chi_square + also_fits;
      std::erase_if(slips_, [limit](const SightSlip& slip) { return slip.chi_square > limit; });
    }
    return std::move(slips_);
  }

 private:
  void try_line(std::size_t i, const SightLine& line, std::string words) {
    std::vector<SightLine> lines = lines_;
    lines[i] = line;
    add({i, std::move(words), chi_square_of(fit(lines, common_sigma_))});
  }
  void add(SightSlip slip) {
    if (chance_of(slip.chi_square, freedom_) >= least_chance_explained)
      slips_.push_back(std::move(slip));
  }

  std::span<const TypedSight> sights_;
  double common_sigma_;
  std::size_t freedom_;
  std::vector<SightLine> lines_;
  std::vector<SightSlip> slips_;
};

}  // namespace

std::vector<SightSlip> explain_sights(std::span<const TypedSight> sights, double common_sigma,
                                      std::span<const OtherPoint> others,
                                      std::span<const CommonSlip> common) {
  if (sights.size() < 3) return {};
  Trial trial(sights, common_sigma);
  for (const std::size_t i : trial.suspects()) {
    for (const MeantAzimuth& meant : meant_azimuths(sights[i]))
      trial.try_azimuth(i, meant);
    if (sights[i].line.from_sought) trial.try_others(i, others);
  }
  for (const CommonSlip& slip : common)
    trial.try_common(slip);
  return trial.best();
}

}  // namespace lodebook::reduction
