// SPDX-License-Identifier: MIT
// Positions one after the other: sights on what is known, then legs from there, until nothing new
// is found.
#include <lodebook/reduction/fixes.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/notebook/wording.hpp>
#include <map>
#include <numbers>
#include <set>

#include "elevations.hpp"
#include "observations.hpp"
#include "sight_fixes.hpp"
#include "slips.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Sights and legs may lead on from each other's results; more often than this they go round.
constexpr int most_rounds = 10;
/// A correction for local attraction over so many sigma of a difference of two readings is told.
constexpr double told_sigmas = 2;

/// At a station with a position a sight may be off by this many sigma, but never under the floor,
/// degrees; and nearer than that, metres, it is not held against anything.
constexpr double stated_sigmas = 3;
constexpr double stated_floor = 3;
constexpr double nearest_checked_m = 50;

/// A point that sights may be taken on.
struct Known {
  std::string_view name;
  earth::Position position;
  Covariance covariance;
  /// In the log itself, which nothing found replaces.
  bool is_stated = false;
  /// Found along legs, or from what was.
  bool along_legs = false;
};

class Locator {
 public:
  Locator(const Notebook& log, Observations seen)
      : notebook_(log), seen_(std::move(seen)), sights_at_(seen_.stations.size()) {
    for (const Observed& sight : seen_.sights) {
      sights_at_[sight.station].push_back(&sight);
      sights_on_[sight.target].push_back(&sight);
    }
    take_legs();
  }

  Fixes run() {
    take_stated();
    for (int round = 0; round < most_rounds; ++round) {
      // Landmarks first, or they would rest on stations that could have rested on them.
      const bool new_landmarks = fix_landmarks();
      const bool new_stations = fix_stations();
      if (!walk_legs() && !new_landmarks && !new_stations) break;
    }
    find_elevations(seen_, found_);
    report();
    return std::move(found_);
  }

 private:
  void take_stated() {
    for (const ObservedStation& station : seen_.stations) {
      LocatedStation one;
      one.name = notebook_.names.shown(station.name);
      one.line = station.line;
      one.stated_elevation_m = station.elevation_m;
      if (station.position) {
        one.position = station.position->position;
        if (station.position->accuracy_m) {
          one.covariance = Covariance::round(*station.position->accuracy_m);
          one.ellipse = ellipse95(*one.covariance);
        }
        know(station.name, one.name, *one.position, one.covariance.value_or(Covariance()));
      }
      found_.stations.push_back(one);
    }
    for (const ObservedLandmark& landmark : seen_.landmarks) {
      LocatedLandmark one;
      one.name = notebook_.names.shown(landmark.name);
      one.stated_elevation_m = landmark.elevation_m;
      if (landmark.position) {
        one.position = landmark.position->position;
        if (landmark.position->accuracy_m)
          one.covariance = Covariance::round(*landmark.position->accuracy_m);
        know(landmark.name, one.name, *one.position, one.covariance.value_or(Covariance()));
      }
      found_.landmarks.push_back(one);
    }
  }

  void know(NameId id, std::string_view name, const earth::Position& position,
            const Covariance& covariance) {
    known_.try_emplace(id, Known{name, position, covariance, true, false});
  }

  /// A landmark and a station may share a name: then the one that the log places is sighted.
  void find(NameId id, const Known& point) {
    const auto [known, is_new] = known_.try_emplace(id, point);
    if (!is_new && !known->second.is_stated) known->second = point;
  }

  static OtherPoint point_of(const Known& known) {
    return {known.name, known.position, circular_sigma(known.covariance)};
  }

  /// Known points that none of `sights` is on.
  std::vector<OtherPoint> others_than(const std::vector<UsableSight>& sights) const {
    std::vector<OtherPoint> others;
    for (const auto& entry : known_) {
      const Known& known = entry.second;
      const bool sighted = std::ranges::any_of(
          sights, [&known](const UsableSight& sight) { return sight.known.name == known.name; });
      if (!sighted) others.push_back(point_of(known));
    }
    return others;
  }

  /// True if a station has got its position.
  bool fix_stations() {
    bool any = false;
    for (std::size_t i = 0; i < seen_.stations.size(); ++i) {
      LocatedStation& station = found_.stations[i];
      if (station.position && station.from == PositionFrom::at) continue;
      if (station.position && station.from == PositionFrom::sights) continue;
      std::vector<UsableSight> sights;
      for (const Observed* sight : sights_at_[i]) {
        const auto known = known_.find(sight->target);
        // What was found along legs that may lead from here would only come back.
        if (sight->doubtful || sight->target == seen_.stations[i].name || known == known_.end() ||
            (has_leg_[i] && known->second.along_legs))
          continue;
        sights.push_back({sight, point_of(known->second)});
      }
      if (sights.size() < 2) continue;
      const SightFix* const fix = try_fix(seen_.stations[i], false, sights);
      if (!fix) continue;
      station.position = fix->position;
      station.covariance = fix->covariance;
      station.ellipse = fix->ellipse;
      station.from = PositionFrom::sights;
      find(seen_.stations[i].name, {station.name, *fix->position, fix->covariance});
      any = true;
    }
    return any;
  }

  bool fix_landmarks() {
    bool any = false;
    for (std::size_t i = 0; i < seen_.landmarks.size(); ++i) {
      LocatedLandmark& landmark = found_.landmarks[i];
      if (landmark.position) continue;
      std::vector<UsableSight> sights;
      std::set<std::size_t> stations;
      bool along_legs = false;
      for (const Observed* sight : sights_on_[seen_.landmarks[i].name]) {
        const auto known = known_.find(seen_.stations[sight->station].name);
        if (sight->doubtful || known == known_.end()) continue;
        sights.push_back({sight, point_of(known->second)});
        stations.insert(sight->station);
        along_legs = along_legs || known->second.along_legs;
      }
      if (stations.size() < 2) continue;
      const SightFix* const fix = try_fix(seen_.landmarks[i], true, sights);
      if (!fix) continue;
      landmark.position = fix->position;
      landmark.covariance = fix->covariance;
      landmark.is_found = true;
      find(seen_.landmarks[i].name,
           {landmark.name, *fix->position, fix->covariance, false, along_legs});
      any = true;
    }
    return any;
  }

  /// Fixes a station or landmark; again only where more sights have become usable. Null where that
  /// gives no position.
  template <class Sought>
  const SightFix* try_fix(const Sought& sought, bool is_landmark,
                          const std::vector<UsableSight>& sights) {
    const auto [earlier, is_new] =
        fix_of_.try_emplace({is_landmark, sought.name}, fixed_at_.size());
    if (is_new) {
      found_.sight_fixes.emplace_back();
      fixed_at_.push_back(sought.place);
    }
    SightFix& fix = found_.sight_fixes[earlier->second];
    if (sights.size() <= fix.sights.size()) return nullptr;
    fix = fix_by_sights(is_landmark, sights, [&] { return others_than(sights); });
    fix.name = notebook_.names.shown(sought.name);
    fix.line = sought.line;
    return fix.position ? &fix : nullptr;
  }

  /// True if a station has got its position along legs.
  bool walk_legs() {
    if (found_.legs.empty()) return false;
    std::vector<TraverseStation> stations;
    for (const LocatedStation& station : found_.stations) {
      TraverseStation one;
      // Without a declination legs close among themselves, but lead nowhere on a map.
      if (legs_are_true_ && station.position && station.from != PositionFrom::legs) {
        one.position = station.position;
        one.covariance = station.covariance.value_or(Covariance());
      }
      stations.push_back(one);
    }
    std::vector<TraverseLeg> legs;
    double declination_sigma = 0;
    for (std::size_t i = 0; i < found_.legs.size(); ++i) {
      const FixLeg& leg = found_.legs[i];
      const Observed& observed = seen_.legs[i].observed;
      legs.push_back({leg.from, leg.to, leg.azimuth, leg.distance_m, observed.sigma,
                      leg.distance_m * observed.accuracy.distance_percent / 100});
      declination_sigma = std::max(declination_sigma, observed.declination_sigma);
    }
    TraverseResult result = adjust(stations, legs, declination_sigma);
    found_.traverses = std::move(result.traverses);
    bool any = false;
    for (std::size_t i = 0; i < found_.stations.size(); ++i) {
      if (!result.placed[i]) continue;
      LocatedStation& station = found_.stations[i];
      any = any || !station.position;
      station.position = result.placed[i]->position;
      station.covariance = result.placed[i]->covariance;
      station.ellipse = ellipse95(*station.covariance);
      station.from = PositionFrom::legs;
      find(seen_.stations[i].name,
           {station.name, *station.position, *station.covariance, false, true});
    }
    return any;
  }

  void take_legs() {
    std::map<NameId, std::size_t> numbers;
    for (std::size_t i = 0; i < seen_.stations.size(); ++i)
      numbers[seen_.stations[i].name] = i;
    has_leg_.resize(seen_.stations.size());
    for (const ObservedLeg& walked : seen_.legs) {
      const Observed& observed = walked.observed;
      FixLeg leg;
      leg.line = observed.line;
      leg.reading = observed.reading;
      leg.from = observed.station;
      leg.to = numbers.at(observed.target);
      leg.fore = observed.azimuth;
      leg.azimuth = observed.azimuth;
      leg.back = walked.back;
      if (leg.back) leg.disagreement = std::abs(std::remainder(*leg.back - leg.fore - 180, 360.0));
      leg.vertical_angle = observed.vertical;
      leg.measured_m = walked.distance_m;
      leg.distance_m = walked.distance_m * cos(*Angle::from_degrees(observed.vertical.value_or(0)));
      legs_are_true_ = legs_are_true_ && observed.is_true;
      has_leg_[leg.from] = has_leg_[leg.to] = true;
      found_.legs.push_back(leg);
    }
    find_attraction();
    if (seen_.attraction_stated && found_.attraction) free_legs();
  }

  void find_attraction() {
    std::vector<ForeAndBack> both;
    std::vector<std::size_t> leg_numbers;
    double sigma = 0;
    for (std::size_t i = 0; i < found_.legs.size(); ++i) {
      const FixLeg& leg = found_.legs[i];
      if (!leg.back) continue;
      both.push_back({leg.from, leg.to, leg.fore, *leg.back});
      leg_numbers.push_back(i);
      sigma = std::max(sigma, seen_.legs[i].observed.sigma);
    }
    attraction_limit_ = told_sigmas * std::sqrt(2) * sigma;
    found_.attraction = local_attraction(both, std::sqrt(2) * sigma);
    if (!found_.attraction) return;
    for (std::size_t i = 0; i < leg_numbers.size(); ++i)
      found_.legs[leg_numbers[i]].corrected = found_.attraction->legs[i];
  }

  /// Every leg read at a station whose correction is known, also those without a back bearing.
  void free_legs() {
    std::map<std::size_t, double> corrections;
    for (const StationAttraction& station : found_.attraction->stations)
      corrections[station.station] = station.correction;
    for (FixLeg& leg : found_.legs) {
      const auto correction = corrections.find(leg.from);
      if (correction != corrections.end())
        leg.azimuth = wrap_degrees(leg.fore + correction->second);
    }
    found_.attraction_applied = true;
  }

  // ---- what is wrong, in words

  void report() {
    for (std::size_t i = 0; i < found_.sight_fixes.size(); ++i)
      report(found_.sight_fixes[i], fixed_at_[i]);
    check_stated_stations();
    if (!legs_are_true_)
      add(seen_.legs.front().observed.place, wording::legs_without_declination());
    for (const Traverse& traverse : found_.traverses) {
      if (!traverse.contradicts) continue;
      const Observed& last = seen_.legs[traverse.legs.back().leg].observed;
      // Of several legs nothing tells which is wrong.
      add(last.place,
          wording::misclosure(traverse.legs.size(), traverse.misclosure_m, traverse.length_m,
                              found_.stations[traverse.stations.back()].name),
          traverse.legs.size() == 1 ? last.reading : no_reading);
    }
    for (std::size_t i = 0; i < found_.stations.size(); ++i)
      report_heights(found_.stations[i].elevation, seen_.stations[i].place);
    for (std::size_t i = 0; i < found_.landmarks.size(); ++i)
      report_heights(found_.landmarks[i].elevation, seen_.landmarks[i].place);
    if (found_.attraction) {
      for (const StationAttraction& station : found_.attraction->stations) {
        if (std::abs(station.correction) <= attraction_limit_) continue;
        add(seen_.stations[station.station].place,
            wording::local_attraction(station.correction, found_.attraction_applied));
      }
    } else if (seen_.attraction_stated) {
      add(*seen_.attraction_stated, wording::attraction_unapplied());
    }
    std::ranges::stable_sort(found_.diagnostics, {}, [](const Diagnostic& one) {
      return std::pair(one.place.line, one.place.column);
    });
  }

  void add(const Place& place, Diagnostic diagnostic, std::uint32_t reading = no_reading) {
    diagnostic.place = place;
    diagnostic.reading = reading;
    found_.diagnostics.push_back(std::move(diagnostic));
  }

  Place place_of(const FixedSight& sight) const {
    const auto found =
        std::ranges::lower_bound(seen_.sights, sight.reading, {}, &Observed::reading);
    assert(found != seen_.sights.end() && found->reading == sight.reading);
    return found->place;
  }

  void report(SightFix& fix, const Place& place) {
    if (fix.without_declination)
      return add(place, wording::no_fix("no declination is known",
                                        "a line such as 'declination 24.6E', or --declination"));
    for (const SightSlip& slip : fix.slips) {
      if (!slip.sight) continue;
      std::string& suspicion = fix.sights[*slip.sight].suspicion;
      suspicion += (suspicion.empty() ? "" : "; or ") + slip.words;
    }
    const bool turned = fix.implied && fix.implied->verdict == ImpliedDeclination::Verdict::differs;
    if (turned) {
      add(place, wording::implied_declination(fix.implied->degrees_east, fix.implied->sigma,
                                              slips_in_words(fix)));
    } else if (!fix.agrees) {
      report_misfit(fix, place);
    }
    if (fix.fault && fix.agrees)
      add(place,
          wording::no_fix(words_for(*fix.fault),
                          *fix.fault == SightFault::behind
                              ? "both read off the other end of the needle?"
                              : "another landmark, well to the side, or 'at' and a position"));
    if (!fix.position) return;
    if (fix.weak_cut) add(place, wording::weak_cut(fix.best_cut));
    if (fix.points < 3) add(place, wording::no_check());
    if (fix.danger_circle) add(place, wording::danger_circle());
  }

  void report_heights(const std::optional<FoundElevation>& found, const Place& place) {
    if (found && !found->agrees)
      add(place, wording::heights_disagree(found->sights, found->lowest_m, found->highest_m));
  }

  static std::string slips_in_words(const SightFix& fix) {
    std::string words;
    for (const SightSlip& slip : fix.slips) {
      words += words.empty() ? "" : "; or ";
      words += slip.words;
      if (slip.sight && slip.sight != fix.slips.front().sight)
        words += fmt::format(" on {}", fix.sights[*slip.sight].name);
      words += fmt::format("? then chi-square {:.1f}", slip.chi_square);
    }
    return words;
  }

  void report_misfit(const SightFix& fix, const Place& place) {
    const std::optional<std::size_t> suspect =
        fix.slips.empty() ? fix.disagrees_most : fix.slips.front().sight;
    Diagnostic misfit =
        wording::sight_misfit(fix.fault ? std::nullopt : std::optional(fix.chi_square), fix.freedom,
                              suspect.has_value(), slips_in_words(fix));
    if (!suspect) return add(place, std::move(misfit));
    add(place_of(fix.sights[*suspect]), std::move(misfit), fix.sights[*suspect].reading);
  }

  /// Sights at stations that state their position are held against it, one by one.
  void check_stated_stations() {
    for (std::size_t i = 0; i < found_.stations.size(); ++i) {
      const LocatedStation& station = found_.stations[i];
      if (!station.position || station.from != PositionFrom::at) continue;
      for (const Observed* sight : sights_at_[i]) {
        const auto known = known_.find(sight->target);
        if (known != known_.end() && known->second.is_stated && sight->is_true &&
            sight->target != seen_.stations[i].name)
          check_stated(*sight, station, known->second);
      }
    }
  }

  void check_stated(const Observed& sight, const LocatedStation& station, const Known& known) {
    const earth::GeodesicLine line = earth::geodesic(*station.position, known.position);
    const double blur_m = std::hypot(circular_sigma(station.covariance.value_or(Covariance())),
                                     circular_sigma(known.covariance));
    // Too near to tell, or so far that it is another landmark of that name.
    if (line.distance_m < nearest_checked_m) return;
    const double sigma = std::hypot(sight.sigma, sight.declination_sigma,
                                    blur_m / line.distance_m * 180 / std::numbers::pi);
    const double limit = std::max(stated_floor, stated_sigmas * sigma);
    const double off = std::abs(std::remainder(sight.azimuth - line.azimuth, 360.0));
    if (off <= limit) return;
    const Azimuth<north::dial> expected =
        Azimuth<north::dial>::clockwise(*Angle::from_degrees(line.azimuth - sight.correction));
    add(sight.place,
        wording::sight_off(
            off, limit, known.name,
            explain_sight(sight.typed, sight.south_end, sight.declination, expected, limit)),
        sight.reading);
  }

  const Notebook& notebook_;
  Observations seen_;
  std::vector<std::vector<const Observed*>> sights_at_;
  std::map<NameId, std::vector<const Observed*>> sights_on_;
  Fixes found_;
  std::map<NameId, Known> known_;
  /// Of a landmark or station, its place among the fixes; and of each fix, where it is reported.
  std::map<std::pair<bool, NameId>, std::size_t> fix_of_;
  std::vector<Place> fixed_at_;
  /// By station: it is at an end of some leg.
  std::vector<bool> has_leg_;
  bool legs_are_true_ = true;
  double attraction_limit_ = 0;
};

}  // namespace

Fixes locate(const Notebook& notebook, const Options& options) {
  Observations seen = observe(notebook, options);
  FoundPlaces places;
  if (seen.by_model) {
    // The model's declination is that of the place, which is found with it: once more from there.
    const Fixes first = Locator(notebook, seen).run();
    for (std::size_t i = 0; i < seen.stations.size(); ++i) {
      const LocatedStation& station = first.stations[i];
      // What a block states is its own, and not that of another block of the same station.
      if (station.position && station.from != PositionFrom::at)
        places[seen.stations[i].name] = *station.position;
    }
    seen = observe(notebook, options, places);
  }
  return Locator(notebook, std::move(seen)).run();
}

}  // namespace lodebook::reduction
