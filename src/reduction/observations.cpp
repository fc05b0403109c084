// SPDX-License-Identifier: MIT
#include "observations.hpp"

#include <algorithm>
#include <cmath>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/precision.hpp>

#include "blocks.hpp"
#include "reading_accuracy.hpp"
#include "settings_keeper.hpp"
#include "site_keeper.hpp"
#include "slips.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

class Observer {
 public:
  Observer(const Notebook& log, const Options& options, const FoundPlaces& places)
      : notebook_(log), places_(places), site_(options), settings_(initial_settings(options)) {}

  Observations run() {
    name_stations();
    take_stated_places();
    bool is_station = false;
    for (std::size_t begin = 0; !is_station || begin < notebook_.entries.size();
         is_station = true) {
      const std::size_t end = block_end(notebook_, begin, is_station);
      Page page;
      const auto entries = std::span(notebook_.entries).subspan(begin, end - begin);
      read_station_wide(page, notebook_, entries);
      std::optional<std::size_t> station;
      if (is_station) {
        const auto& heading = std::get<StationHeading>(notebook_.entries[begin].what);
        if (heading.name != no_name) station = stations_.at(heading.name);
      }
      if (station) {
        take_station(*station, page);
        const auto found = places_.find(found_.stations[*station].name);
        if (!page.position && found != places_.end()) page.position = {found->second, std::nullopt};
      }
      site_.enter(page);
      for (const Entry& entry : entries)
        take(entry, station);
      begin = end;
    }
    leave_out_other_norths();
    return std::move(found_);
  }

 private:
  /// Legs make one traverse: of true north, or without any of it that of the first.
  void leave_out_other_norths() {
    std::optional<North> common;
    for (const ObservedLeg& leg : found_.legs) {
      if (!leg.left_out && (!common || leg.observed.is_true())) common = leg.observed.north;
    }
    for (ObservedLeg& leg : found_.legs) {
      if (!leg.left_out && leg.observed.north != common) leg.left_out = LeftOut::other_north;
    }
  }

  /// A leg may lead to a station whose block comes later.
  void name_stations() {
    for (const Entry& entry : notebook_.entries) {
      const auto* heading = std::get_if<StationHeading>(&entry.what);
      if (!heading || heading->name == no_name) continue;
      const auto [place, is_new] = stations_.try_emplace(heading->name, found_.stations.size());
      if (!is_new) continue;
      ObservedStation station;
      station.name = heading->name;
      station.line = entry.line;
      station.place = notebook_.source.place(entry.line, entry.statement);
      found_.stations.push_back(station);
    }
  }

  /// Of all blocks, since a mark's may come later.
  void take_stated_places() {
    bool is_station = false;
    for (std::size_t begin = 0; !is_station || begin < notebook_.entries.size();
         is_station = true) {
      const std::size_t end = block_end(notebook_, begin, is_station);
      const auto entries = std::span(notebook_.entries).subspan(begin, end - begin);
      Page page;
      read_station_wide(page, notebook_, entries);
      const auto* heading =
          is_station ? std::get_if<StationHeading>(&entries.front().what) : nullptr;
      if (heading && heading->name != no_name && page.position)
        stated_.try_emplace(heading->name, page.position->position, page.elevation_m.value_or(0));
      for (const Entry& entry : entries) {
        const auto* landmark = std::get_if<Landmark>(&entry.what);
        if (landmark && landmark->position)
          stated_.try_emplace(landmark->name, landmark->position->position,
                              landmark->elevation ? landmark->elevation->metres(1) : 0);
      }
      begin = end;
    }
  }

  void take_station(std::size_t number, const Page& page) {
    ObservedStation& station = found_.stations[number];
    if (!station.position) station.position = page.position;
    if (!station.elevation_m) station.elevation_m = page.elevation_m;
  }

  void take(const Entry& entry, std::optional<std::size_t> station) {
    site_.pass(entry);
    apply(settings_, entry, notebook_.source);
    if (const auto* landmark = std::get_if<Landmark>(&entry.what)) {
      ObservedLandmark one;
      one.name = landmark->name;
      one.line = entry.line;
      one.place = notebook_.source.place(entry.line, entry.statement);
      one.position = landmark->position;
      if (landmark->elevation) one.elevation_m = landmark->elevation->metres(1);
      found_.landmarks.push_back(one);
    } else if (std::holds_alternative<AttractionSetting>(entry.what)) {
      found_.attraction_stated = notebook_.source.place(entry.line, entry.statement);
    }
    const auto* reading = std::get_if<Reading>(&entry.what);
    if (!reading || reading->rejected) return;
    if (const auto* sight = std::get_if<Sight>(&reading->what)) {
      const auto at = sight->from == no_name ? station : station_named(sight->from);
      if (at) take_sight(entry, *reading, *at, *sight);
    } else if (const auto* leg = std::get_if<Leg>(&reading->what)) {
      const auto at = leg->from == no_name ? station : station_named(leg->from);
      const auto to = leg->from == no_name ? station_named(leg->to) : station;
      if (at && to) take_leg(entry, *reading, *at, *to, *leg);
    }
  }

  std::optional<std::size_t> station_named(NameId name) const {
    const auto found = stations_.find(name);
    return found == stations_.end() ? std::nullopt : std::optional(found->second);
  }

  void take_sight(const Entry& entry, const Reading& reading, std::size_t at, const Sight& sight) {
    const Settings settings = settings_at(sight.from);
    Observed seen = observed(entry, reading, at, sight, settings);
    seen.target = sight.target;
    if (sight.is_back) turn_round(seen, sight.bearing, settings);
    if (sight.vertical && !may_be_percent(*sight.vertical)) {
      seen.vertical = sight.vertical->degrees();
      seen.verticals = 1;
      seen.accuracy.dip = accuracy_of(*sight.vertical, settings.accuracy);
    }
    if (sight.back) {
      Observed back = seen;
      back.vertical.reset();
      turn_round(back, *sight.back, settings);
      join(seen, back);
    }
    // One statement a line, so that repeats of it share theirs.
    const bool is_repeat = !found_.sights.empty() && found_.sights.back().line == entry.line;
    if (!is_repeat) {
      found_.sights.push_back(seen);
    } else if (Observed& ray = found_.sights.back(); ray.doubtful && !seen.doubtful) {
      ray = seen;
    } else if (ray.doubtful == seen.doubtful) {
      join(ray, seen);
    }
  }

  /// Takes `other`, an observation of the same ray, into the mean; of two norths that nothing known
  /// joins true north counts alone.
  static void join(Observed& ray, const Observed& other) {
    if (other.north != ray.north) {
      if (other.is_true()) ray = other;
      return;
    }
    const double weight = 1 / (ray.sigma * ray.sigma);
    const double added = 1 / (other.sigma * other.sigma);
    const double off = std::remainder(other.azimuth - ray.azimuth, 360.0);
    ray.azimuth = wrap_degrees(ray.azimuth + off * added / (weight + added));
    ray.sigma = 1 / std::sqrt(weight + added);
    ray.by_needle = ray.by_needle || other.by_needle;
    ray.declination_sigma = std::max(ray.declination_sigma, other.declination_sigma);
    if (!other.vertical) return;
    const double sum = ray.vertical.value_or(0) * ray.verticals + *other.vertical;
    const double sigma = ray.accuracy.dip * std::sqrt(std::max(ray.verticals, 1.0));
    ++ray.verticals;
    ray.vertical = sum / ray.verticals;
    ray.accuracy.dip = sigma / std::sqrt(ray.verticals);
  }

  /// `seen` by a bearing from its target to here. North there is not parallel to north here.
  void turn_round(Observed& seen, const Bearing& back, const Settings& settings) {
    found_.has_back_sights = true;
    seen.typed = back;
    seen.south_end = true;
    count_from(seen, back, settings_at(seen.target, settings));
    const auto here = place_of(found_.stations[seen.station].name);
    const auto there = place_of(seen.target);
    if (seen.is_true() && here && there && earth::distance_m(here->first, there->first) > 0) {
      const auto line = earth::geodesic(here->first, there->first);
      seen.correction += std::remainder(line.azimuth - line.azimuth_at_end, 360.0);
    }
    seen.azimuth = wrap_degrees(back.azimuth().degrees() + 180 + seen.correction);
    seen.sigma = accuracy_of(back, Told::direction, settings.accuracy).bearing;
  }

  /// What takes `bearing` to true north, as far as that is known.
  void count_from(Observed& seen, const Bearing& bearing, const Settings& settings) {
    const Correction added = correction(settings, North::geographic, bearing.north);
    seen.correction = added.angle.degrees();
    seen.north = added.north;
    seen.by_needle = is_by_needle(bearing);
    seen.declination_sigma = added.sigma;
    seen.declination = seen.by_needle && settings.has_figure()
                           ? std::optional(settings.declination.degrees_east())
                           : std::nullopt;
    found_.by_place = found_.by_place || settings.from_model() || bearing.north == OwnNorth::grid;
  }
  static bool is_by_needle(const Bearing& bearing) {
    return bearing.north == OwnNorth::none || bearing.north == OwnNorth::magnetic;
  }

  void take_leg(const Entry& entry, const Reading& reading, std::size_t at, std::size_t to,
                const Leg& leg) {
    const Settings settings = settings_at(leg.from);
    ObservedLeg walked;
    walked.observed = observed(entry, reading, at, leg, settings);
    walked.observed.target = found_.stations[to].name;
    Accuracy& accuracy = walked.observed.accuracy;
    if (leg.slope) {
      walked.observed.vertical = leg.slope->degrees();
      accuracy.dip = accuracy_of(*leg.slope, settings.accuracy);
    }
    accuracy.distance_percent = accuracy_of(leg.distance, settings.accuracy);
    walked.distance_m = leg.distance.metres(settings.pace_m.value_or(0));
    if (leg.back) {
      const Correction added = correction(settings, North::geographic, leg.back->north);
      if (added.north == walked.observed.north)
        walked.back = wrap_degrees(leg.back->azimuth().degrees() + added.angle.degrees());
      walked.back_sigma = accuracy_of(*leg.back, Told::direction, settings.accuracy).bearing;
      walked.back_by_needle = is_by_needle(*leg.back);
    }
    walked.left_out = why_left_out(reading, leg, at == to);
    found_.legs.push_back(walked);
  }

  /// Where a station or landmark is stated or, a station, found; with its height.
  std::optional<std::pair<earth::Position, double>> place_of(NameId name) const {
    if (const auto stated = stated_.find(name); stated != stated_.end()) return stated->second;
    const auto found = places_.find(name);
    if (found == places_.end()) return std::nullopt;
    return std::pair(found->second, 0.0);
  }

  /// Those in force, at the station of that name if it is given and has a place.
  Settings settings_at(NameId name) {
    site_.settle(settings_);
    return settings_at(name, settings_);
  }
  Settings settings_at(NameId name, const Settings& in_force) const {
    Settings settings = in_force;
    const auto place = name == no_name ? std::nullopt : place_of(name);
    if (place) put_at(settings, place->first, place->second, false);
    return settings;
  }

  static std::optional<LeftOut> why_left_out(const Reading& reading, const Leg& leg,
                                             bool is_own_station) {
    if (is_own_station) return LeftOut::own_station;
    if (reading.doubtful) return LeftOut::doubtful;
    if (leg.slope && may_be_percent(*leg.slope)) return LeftOut::percent_or_degrees;
    return std::nullopt;
  }

  template <class SightOrLeg>
  Observed observed(const Entry& entry, const Reading& reading, std::size_t station,
                    const SightOrLeg& typed, const Settings& settings) {
    Observed seen;
    seen.line = entry.line;
    seen.reading = reading.number;
    seen.place =
        notebook_.source.place(entry.line, find_word(notebook_.source, reading.written, ""));
    seen.station = station;
    seen.typed = typed.bearing;
    seen.south_end = typed.south_end;
    seen.doubtful = reading.doubtful;
    count_from(seen, typed.bearing, settings);
    seen.azimuth = wrap_degrees(typed.azimuth().degrees() + seen.correction);
    seen.sigma = accuracy_of(typed.bearing, Told::direction, settings.accuracy).bearing;
    found_.declination_void = found_.declination_void || settings.lacks_declination_by_fault();
    seen.accuracy = settings.accuracy;
    return seen;
  }

  const Notebook& notebook_;
  const FoundPlaces& places_;
  SiteKeeper site_;
  Settings settings_;
  std::map<NameId, std::size_t> stations_;
  std::map<NameId, std::pair<earth::Position, double>> stated_;
  Observations found_;
};

}  // namespace

const ObservedLeg* Observations::leg_without_declination() const {
  const auto found = std::ranges::find_if(
      legs, [](const ObservedLeg& leg) { return !leg.left_out && !leg.observed.is_true(); });
  return found == legs.end() ? nullptr : &*found;
}

double Observations::back_bearing_sigma() const {
  double sigma = 0;
  for (const ObservedLeg& leg : legs) {
    if (leg.back) sigma = std::max(sigma, combined_sigma(leg.observed.sigma, leg.back_sigma));
  }
  return sigma;
}

Observations observe(const Notebook& notebook, const Options& options, const FoundPlaces& places) {
  return Observer(notebook, options, places).run();
}

}  // namespace lodebook::reduction
