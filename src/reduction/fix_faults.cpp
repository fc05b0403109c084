// SPDX-License-Identifier: MIT
#include "fix_faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <map>
#include <numbers>

#include "repeats.hpp"
#include "slips.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// A correction for local attraction over so many sigma of a difference of two readings is told.
constexpr double told_sigmas = 2;
/// At a station with a position a sight may be off by its errors, but never under this, degrees;
/// and nearer than that, metres, it is not held against anything.
constexpr double stated_floor = 3;
constexpr double nearest_checked_m = 50;

/// A point that the log itself places.
struct StatedPoint {
  std::string_view name;
  earth::Position position;
  double sigma_m = 0;
};

template <class Located>
StatedPoint stated(const Located& point) {
  return {point.name, *point.position, circular_sigma(point.covariance.value_or(Covariance()))};
}

std::string slips_in_words(const SightFix& fix) {
  std::string words;
  for (const SightSlip& slip : fix.slips) {
    words += words.empty() ? "" : "; or ";
    words += slip.words;
    if (slip.sight && slip.sight != fix.slips.front().sight)
      words += fmt::format(" on {}", fix.sights[*slip.sight].name);
    words += fmt::format("? then chi-square {}", figure_text(slip.chi_square, 1));
  }
  return words;
}

class FaultFinder {
 public:
  FaultFinder(const Observations& seen, const Fixes& found) : seen_(seen), found_(found) {
    for (std::size_t i = 0; i < seen.stations.size(); ++i)
      place_of_[{false, found.stations[i].name}] = seen.stations[i].place;
    for (std::size_t i = 0; i < seen.landmarks.size(); ++i)
      place_of_[{true, found.landmarks[i].name}] = seen.landmarks[i].place;
  }

  std::vector<Diagnostic> run() {
    for (const SightFix& fix : found_.sight_fixes)
      check(fix, place_of_.at({fix.is_landmark, fix.name}));
    check_stated_stations();
    check_legs();
    for (std::size_t i = 0; i < found_.stations.size(); ++i)
      check(found_.stations[i].elevation, seen_.stations[i].place);
    for (std::size_t i = 0; i < found_.landmarks.size(); ++i)
      check(found_.landmarks[i].elevation, seen_.landmarks[i].place);
    check_attraction();
    std::ranges::stable_sort(diagnostics_, {},
                             [](const Diagnostic& one) { return in_order(one.place); });
    return std::move(diagnostics_);
  }

 private:
  void add(const Place& place, Diagnostic diagnostic, std::uint32_t reading = no_reading) {
    diagnostic.place = place;
    diagnostic.reading = reading;
    diagnostics_.push_back(std::move(diagnostic));
  }

  void check(const SightFix& fix, const Place& place) {
    if (fix.without_declination) {
      if (!seen_.declination_void)
        add(place, wording::no_fix("no declination is known",
                                   "add 'declination 24.6E', or pass --declination 24.6E"));
      return;
    }
    const bool turned = fix.implied && fix.implied->verdict == ImpliedDeclination::Verdict::differs;
    if (turned) {
      add(place, wording::implied_declination(fix.implied->degrees_east, fix.implied->sigma,
                                              slips_in_words(fix)));
    } else if (!fix.agrees) {
      tell_misfit(fix, place);
    }
    if (fix.fault && fix.agrees)
      add(place, wording::no_fix(
                     words_for(*fix.fault),
                     *fix.fault == SightFault::behind
                         ? "both read off the other end of the needle?"
                         : "sight a landmark well to the side, or give the position with 'at'"));
    if (!fix.position) return;
    if (fix.weak_cut) add(place, wording::weak_cut(fix.best_cut));
    if (fix.points < 3) add(place, wording::no_check());
    if (fix.danger_circle) add(place, wording::danger_circle());
  }

  void tell_misfit(const SightFix& fix, const Place& place) {
    const std::optional<std::size_t> suspect =
        fix.slips.empty() ? fix.disagrees_most : fix.slips.front().sight;
    Diagnostic misfit =
        wording::sight_misfit(fix.fault ? std::nullopt : std::optional(fix.chi_square), fix.freedom,
                              suspect.has_value(), slips_in_words(fix));
    if (!suspect) return add(place, std::move(misfit));
    const FixedSight& sight = fix.sights[*suspect];
    const auto observed =
        std::ranges::lower_bound(seen_.sights, sight.reading, {}, &Observed::reading);
    assert(observed != seen_.sights.end() && observed->reading == sight.reading);
    add(observed->place, std::move(misfit), sight.reading);
  }

  void check_stated_stations() {
    std::map<NameId, StatedPoint> points;
    for (std::size_t i = 0; i < found_.stations.size(); ++i) {
      if (is_stated(found_.stations[i]))
        points.try_emplace(seen_.stations[i].name, stated(found_.stations[i]));
    }
    for (std::size_t i = 0; i < found_.landmarks.size(); ++i) {
      const LocatedLandmark& landmark = found_.landmarks[i];
      if (landmark.position && !landmark.is_found)
        points.try_emplace(seen_.landmarks[i].name, stated(landmark));
    }
    for (const Observed& sight : seen_.sights) {
      const LocatedStation& station = found_.stations[sight.station];
      const auto target = points.find(sight.target);
      if (is_stated(station) && target != points.end() && sight.is_true() &&
          sight.target != seen_.stations[sight.station].name)
        check(sight, stated(station), target->second);
    }
  }

  static bool is_stated(const LocatedStation& station) {
    return station.position && station.from == PositionFrom::at;
  }

  void check(const Observed& sight, const StatedPoint& station, const StatedPoint& target) {
    const earth::GeodesicLine line = earth::geodesic(station.position, target.position);
    // Too near to tell.
    if (line.distance_m < nearest_checked_m) return;
    const double blur_m = std::hypot(station.sigma_m, target.sigma_m);
    const double sigma = std::hypot(sight.sigma, sight.declination_sigma,
                                    blur_m / line.distance_m * 180 / std::numbers::pi);
    const double limit = limit_of(sigma, stated_floor);
    const double off = std::abs(std::remainder(sight.azimuth - line.azimuth, 360.0));
    if (off <= limit) return;
    const Azimuth<north::dial> expected =
        Azimuth<north::dial>::clockwise(*Angle::from_degrees(line.azimuth - sight.correction));
    add(sight.place,
        wording::sight_off(
            off, limit, target.name,
            explain_sight(sight.typed, sight.south_end, sight.declination, expected, limit)),
        sight.reading);
  }

  void check_legs() {
    const ObservedLeg* const leg = seen_.leg_without_declination();
    if (leg && !seen_.declination_void)
      add(leg->observed.place, wording::legs_without_declination());
    for (const Traverse& traverse : found_.traverses) {
      if (!traverse.contradicts) continue;
      const Observed& last = seen_.legs[traverse.legs.back().leg].observed;
      // Of several legs nothing tells which is wrong.
      add(last.place,
          wording::misclosure(traverse.legs.size(), traverse.misclosure_m, traverse.length_m,
                              found_.stations[traverse.stations.back()].name),
          traverse.legs.size() == 1 ? last.reading : no_reading);
    }
  }

  void check(const std::optional<FoundElevation>& height, const Place& place) {
    if (height && !height->agrees)
      add(place, wording::heights_disagree(height->sights, height->lowest_m, height->highest_m));
  }

  void check_attraction() {
    if (found_.attraction) {
      const double least_told = told_sigmas * seen_.back_bearing_sigma();
      for (const StationAttraction& station : found_.attraction->stations) {
        if (std::abs(station.correction) <= least_told) continue;
        add(seen_.stations[station.station].place,
            wording::local_attraction(station.correction, found_.attraction_applied));
      }
    } else if (seen_.attraction_stated) {
      add(*seen_.attraction_stated, wording::attraction_unapplied());
    }
  }

  const Observations& seen_;
  const Fixes& found_;
  /// Where a landmark (true) or station of that name is spoken of.
  std::map<std::pair<bool, std::string_view>, Place> place_of_;
  std::vector<Diagnostic> diagnostics_;
};

}  // namespace

void find_faults(const Observations& seen, Fixes& found) {
  found.diagnostics = FaultFinder(seen, found).run();
}

}  // namespace lodebook::reduction
