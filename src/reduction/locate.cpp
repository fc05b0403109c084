// SPDX-License-Identifier: MIT
// Positions one after the other: sights on what is known, then legs from there, until nothing new
// is found.
#include <lodebook/reduction/fixes.hpp>

#include <algorithm>
#include <map>
#include <set>

#include "elevations.hpp"
#include "fix_faults.hpp"
#include "fix_legs.hpp"
#include "observations.hpp"
#include "sight_fixes.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Sights and legs may lead on from each other's results; more often than this they go round.
constexpr int most_rounds = 10;

/// Of more known points than that only those that the log names first are tried as the one that was
/// sighted: a landmark of the heading comes before a station.
constexpr std::size_t most_others = 250;

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
  Locator(const Notebook& log, const Observations& seen)
      : notebook_(log),
        seen_(seen),
        sights_at_(seen.stations.size()),
        has_leg_(seen.stations.size()) {
    for (const Observed& sight : seen_.sights) {
      sights_at_[sight.station].push_back(&sight);
      sights_on_[sight.target].push_back(&sight);
    }
    take_legs(seen_, found_);
    for (std::size_t i = 0; i < found_.legs.size(); ++i) {
      const FixLeg& leg = found_.legs[i];
      if (leg.left_out) continue;
      used_legs_.push_back(i);
      has_leg_[leg.from] = has_leg_[leg.to] = true;
    }
  }

  Fixes run() {
    take_stated();
    for (int round = 0; round < most_rounds; ++round) {
      // Landmarks first, or they would rest on stations that could have rested on them.
      const bool new_landmarks = fix_landmarks();
      const bool new_stations = fix_stations();
      const bool new_legs = (round == 0 || new_stations) && walk_legs();
      if (!new_landmarks && !new_stations && !new_legs) break;
    }
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

  /// Known points that none of `sights` is on, not all of very many.
  std::vector<OtherPoint> others_than(const std::vector<UsableSight>& sights) const {
    std::vector<OtherPoint> others;
    for (const auto& entry : known_) {
      const Known& known = entry.second;
      const bool sighted = std::ranges::any_of(
          sights, [&known](const UsableSight& sight) { return sight.known.name == known.name; });
      if (!sighted) others.push_back(point_of(known));
      if (others.size() == most_others) break;
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
      keep_true(sights);
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

  /// Where some sights are from true north, those that nothing known turns to it are of no use.
  static void keep_true(std::vector<UsableSight>& sights) {
    const auto is_true = [](const UsableSight& sight) { return sight.observed->is_true(); };
    if (std::ranges::none_of(sights, is_true)) return;
    std::erase_if(sights, [&](const UsableSight& sight) { return !is_true(sight); });
  }

  bool fix_landmarks() {
    bool any = false;
    for (std::size_t i = 0; i < seen_.landmarks.size(); ++i) {
      LocatedLandmark& landmark = found_.landmarks[i];
      if (landmark.position) continue;
      std::vector<UsableSight> sights;
      bool along_legs = false;
      for (const Observed* sight : sights_on_[seen_.landmarks[i].name]) {
        const auto known = known_.find(seen_.stations[sight->station].name);
        if (sight->doubtful || known == known_.end()) continue;
        sights.push_back({sight, point_of(known->second)});
        along_legs = along_legs || known->second.along_legs;
      }
      keep_true(sights);
      std::set<std::size_t> stations;
      for (const UsableSight& sight : sights)
        stations.insert(sight.observed->station);
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
        fix_of_.try_emplace({is_landmark, sought.name}, found_.sight_fixes.size());
    if (is_new) found_.sight_fixes.emplace_back();
    SightFix& fix = found_.sight_fixes[earlier->second];
    if (sights.size() <= fix.sights.size()) return nullptr;
    fix = fix_by_sights(is_landmark, sights, [&] { return others_than(sights); });
    fix.name = notebook_.names.shown(sought.name);
    fix.line = sought.line;
    return fix.position ? &fix : nullptr;
  }

  /// True if a station has got its position along legs.
  bool walk_legs() {
    if (used_legs_.empty()) return false;
    const bool legs_are_true = !seen_.leg_without_declination();
    std::vector<TraverseStation> stations;
    for (const LocatedStation& station : found_.stations) {
      TraverseStation one;
      // Without a declination legs close among themselves, but lead nowhere on a map.
      if (legs_are_true && station.position && station.from != PositionFrom::legs) {
        one.position = station.position;
        one.covariance = station.covariance.value_or(Covariance());
      }
      stations.push_back(one);
    }
    std::vector<TraverseLeg> legs;
    double declination_sigma = 0;
    for (const std::size_t number : used_legs_) {
      const FixLeg& leg = found_.legs[number];
      const Observed& observed = seen_.legs[number].observed;
      legs.push_back({leg.from, leg.to, leg.azimuth, leg.distance_m, observed.sigma,
                      leg.distance_sigma_m, observed.by_needle});
      declination_sigma = std::max(declination_sigma, observed.declination_sigma);
    }
    TraverseResult result = adjust(stations, legs, declination_sigma);
    found_.traverses = std::move(result.traverses);
    for (Traverse& traverse : found_.traverses) {
      for (TraversedLeg& leg : traverse.legs)
        leg.leg = used_legs_[leg.leg];
    }
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

  const Notebook& notebook_;
  const Observations& seen_;
  std::vector<std::vector<const Observed*>> sights_at_;
  std::map<NameId, std::vector<const Observed*>> sights_on_;
  Fixes found_;
  std::map<NameId, Known> known_;
  /// Of a landmark or station, its place among the fixes.
  std::map<std::pair<bool, NameId>, std::size_t> fix_of_;
  /// By their numbers: those that may place something.
  std::vector<std::size_t> used_legs_;
  /// By station: it is at an end of one of them.
  std::vector<bool> has_leg_;
};

}  // namespace

Fixes locate(const Notebook& notebook, const Options& options) {
  Observations seen = observe(notebook, options);
  FoundPlaces places;
  if (seen.by_place || seen.has_back_sights) {
    // The model's declination and the grid's convergence are those of the place, which is found
    // with them, and so is how far two norths are from parallel: once more from there.
    const Fixes first = Locator(notebook, seen).run();
    for (std::size_t i = 0; i < seen.stations.size(); ++i) {
      const LocatedStation& station = first.stations[i];
      // A block keeps what it states itself; it does not pass to other blocks of the same station.
      if (station.position && station.from != PositionFrom::at)
        places[seen.stations[i].name] = *station.position;
    }
    seen = observe(notebook, options, places);
  }
  Fixes found = Locator(notebook, seen).run();
  find_elevations(seen, found);
  find_faults(seen, found);
  return found;
}

}  // namespace lodebook::reduction
