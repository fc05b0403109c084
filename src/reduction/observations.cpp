// SPDX-License-Identifier: MIT
#include "observations.hpp"

#include <algorithm>
#include <cmath>

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
    return std::move(found_);
  }

 private:
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
    if (!reading || reading->rejected || !station) return;
    if (const auto* sight = std::get_if<Sight>(&reading->what)) {
      Observed seen = observed(entry, *reading, *station, *sight);
      seen.target = sight->target;
      if (sight->vertical && !may_be_percent(*sight->vertical))
        seen.vertical = sight->vertical->degrees();
      found_.sights.push_back(seen);
    } else if (const auto* leg = std::get_if<Leg>(&reading->what)) {
      if (!stations_.contains(leg->to)) return;
      ObservedLeg walked;
      walked.observed = observed(entry, *reading, *station, *leg);
      walked.observed.target = leg->to;
      if (leg->slope) walked.observed.vertical = leg->slope->degrees();
      walked.distance_m = leg->distance.metres(settings_.pace_m.value_or(0));
      if (leg->back) {
        walked.back = wrap_degrees(leg->back->azimuth().degrees() + walked.observed.correction);
        walked.back_sigma = accuracy_of(*leg->back, Told::direction, settings_.accuracy).bearing;
      }
      walked.left_out = why_left_out(*reading, *leg, found_.stations[*station].name);
      found_.legs.push_back(walked);
    }
  }

  static std::optional<LeftOut> why_left_out(const Reading& reading, const Leg& leg, NameId here) {
    if (leg.to == here) return LeftOut::own_station;
    if (reading.doubtful) return LeftOut::doubtful;
    if (leg.slope && may_be_percent(*leg.slope)) return LeftOut::percent_or_degrees;
    return std::nullopt;
  }

  template <class SightOrLeg>
  Observed observed(const Entry& entry, const Reading& reading, std::size_t station,
                    const SightOrLeg& typed) {
    site_.settle(settings_);
    const Correction added = correction(settings_, North::geographic);
    Observed seen;
    seen.line = entry.line;
    seen.reading = reading.number;
    seen.place =
        notebook_.source.place(entry.line, find_word(notebook_.source, reading.written, ""));
    seen.station = station;
    seen.typed = typed.bearing;
    seen.south_end = typed.south_end;
    seen.doubtful = reading.doubtful;
    seen.correction = added.angle.degrees();
    seen.is_true = added.north == North::geographic;
    seen.azimuth = wrap_degrees(typed.azimuth().degrees() + seen.correction);
    seen.sigma = accuracy_of(typed.bearing, Told::direction, settings_.accuracy).bearing;
    seen.declination_sigma = added.sigma;
    if (settings_.has_figure()) seen.declination = settings_.declination.degrees_east();
    found_.by_model = found_.by_model || settings_.from_model();
    found_.declination_void = found_.declination_void || settings_.lacks_declination_by_fault();
    seen.accuracy = settings_.accuracy;
    return seen;
  }

  const Notebook& notebook_;
  const FoundPlaces& places_;
  SiteKeeper site_;
  Settings settings_;
  std::map<NameId, std::size_t> stations_;
  Observations found_;
};

}  // namespace

const ObservedLeg* Observations::leg_without_declination() const {
  const auto found = std::ranges::find_if(
      legs, [](const ObservedLeg& leg) { return !leg.left_out && !leg.observed.is_true; });
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
