// SPDX-License-Identifier: MIT
#include "survey.hpp"

#include <algorithm>
#include <lodebook/drawing/map.hpp>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/output/text.hpp>
#include <numeric>

namespace lodebook::drawing {
namespace {

/// More stations than these are counted, not named.
constexpr std::size_t most_named = 12;

constexpr std::array<std::string_view, Survey::whys> reasons = {
    "without a position", "without a declination, which may lie anyhow on the grid",
    "to a point whose place is not known", "rejected, or without figures",
    "of a dip alone, which has no direction"};

std::string sentence(std::string_view reason, const std::vector<Survey::Missing>& missing,
                     const std::vector<std::string>& logs) {
  const std::size_t count = std::accumulate(
      missing.begin(), missing.end(), std::size_t{0},
      [](std::size_t sum, const Survey::Missing& one) { return sum + one.readings; });
  std::string text = output::counted(count, "reading", "readings");
  text.append(" ").append(reason).append(": ");
  for (std::size_t i = 0; i < std::min(missing.size(), most_named); ++i) {
    if (i != 0) text += ", ";
    text += missing[i].station;
    // Stations of several logs may have the same name.
    if (logs.size() > 1) text += " of " + logs[missing[i].log];
    text += " (" + std::to_string(missing[i].readings) + ')';
  }
  if (missing.size() > most_named)
    text += " and " + output::counted(missing.size() - most_named, "more station", "more stations");
  return text;
}

}  // namespace

std::vector<earth::Position> Survey::places() const {
  std::vector<earth::Position> places;
  for (const Station& station : stations) {
    if (station.position) places.push_back(*station.position);
  }
  if (places.empty()) {
    for (const Landmark& landmark : landmarks)
      places.push_back(landmark.position);
  }
  return places;
}

std::optional<std::string> Survey::too_wide() const {
  struct Place {
    std::string_view what;
    const std::string* name;
    earth::Position position;
    std::size_t log;
  };
  std::vector<Place> places;
  for (const Station& station : stations) {
    if (station.position)
      places.push_back({"station ", &station.name, *station.position, station.log});
  }
  if (places.empty()) {
    for (const Landmark& landmark : landmarks)
      places.push_back({"landmark ", &landmark.name, landmark.position, landmark.log});
  }
  if (places.empty()) return std::nullopt;
  const Place& first = places.front();
  const auto away = [&](const Place& place) {
    return earth::distance_m(first.position, place.position);
  };
  const Place& furthest = *std::ranges::max_element(places, {}, away);
  if (away(furthest) <= widest_map_m) return std::nullopt;
  const auto named = [&](const Place& place) {
    if (first.log != furthest.log) return logs[place.log];
    return std::string(place.what) + (place.name->empty() ? "without a name" : *place.name);
  };
  std::string text = named(first) + " and " + named(furthest);
  if (first.log == furthest.log) text += " of " + logs[first.log];
  return text + " lie " + output::figure_text(away(furthest) / 1000, 0) + " km apart";
}

std::string Survey::stations_in_words() const {
  const auto placeless = static_cast<std::size_t>(
      std::ranges::count_if(stations, [](const Station& station) { return !station.position; }));
  std::string words = output::counted(stations.size(), "station", "stations");
  if (placeless != 0 && placeless == stations.size()) return words + " without a position";
  if (placeless != 0) words += ", " + std::to_string(placeless) + " of them without a position";
  return words;
}

std::vector<std::string> Survey::remarks() const {
  std::vector<std::string> remarks;
  for (std::size_t i = 0; i < whys; ++i) {
    if (!missing[i].empty()) remarks.push_back(sentence(reasons[i], missing[i], logs));
  }
  return remarks;
}

}  // namespace lodebook::drawing
