// SPDX-License-Identifier: MIT
// The places of a log: its stations and landmarks, and the sights and legs between them,
// corrected and ready to be computed with.
#pragma once

#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include <lodebook/reduction/fixes.hpp>

namespace lodebook::reduction {

/// A station of the log by its name; the blocks of one name count as one.
struct ObservedStation {
  notebook::NameId name = notebook::no_name;
  std::uint32_t line = 1;
  notebook::Place place;
  std::optional<notebook::GivenPosition> position;
  std::optional<double> elevation_m;
};

struct ObservedLandmark {
  notebook::NameId name = notebook::no_name;
  std::uint32_t line = 1;
  notebook::Place place;
  std::optional<notebook::GivenPosition> position;
  std::optional<double> elevation_m;
};

/// A good sight or leg, and what held when it was read.
struct Observed {
  std::uint32_t line = 1;
  std::uint32_t reading = 0;
  notebook::Place place;
  /// Among the stations.
  std::size_t station = 0;
  notebook::NameId target = notebook::no_name;
  notebook::Bearing typed;
  bool south_end = false;
  bool doubtful = false;
  /// Added to the bearing as read, degrees.
  double correction = 0;
  /// The north that the sum refers to: true, as far as that is known.
  North north = North::magnetic;
  /// It was read by the needle, so that an error of the declination turns it.
  bool by_needle = true;
  /// The sum, from this station, degrees.
  double azimuth = 0;
  /// One sigma of the reading, and of the declination, degrees.
  double sigma = 0;
  double declination_sigma = 0;
  /// Degrees, east positive; missing where it is no more than what an unknown dial was set to.
  std::optional<double> declination;
  Accuracy accuracy;
  /// Up positive, degrees. That of a sight is missing where it may be a percent grade.
  std::optional<double> vertical;
  /// How many readings of it `vertical` is the mean of.
  double verticals = 0;

  bool is_true() const { return north == North::geographic; }
};

struct ObservedLeg {
  Observed observed;
  /// As measured, metres.
  double distance_m = 0;
  /// From the far end, towards this station, corrected, degrees.
  std::optional<double> back;
  /// One sigma of it, degrees.
  double back_sigma = 0;
  bool back_by_needle = true;
  /// It may place nothing.
  std::optional<LeftOut> left_out;
};

/// Positions found so far, by station.
using FoundPlaces = std::map<notebook::NameId, earth::Position>;

struct Observations {
  std::vector<ObservedStation> stations;
  std::vector<ObservedLandmark> landmarks;
  /// One for each statement: repeats, and bearings from the target back, are one ray, their mean.
  std::vector<Observed> sights;
  /// Those that lead to a station of the log.
  std::vector<ObservedLeg> legs;
  /// Of the statement `attraction correct`, if there is one.
  std::optional<notebook::Place> attraction_stated;
  /// A declination is the geomagnetic model's, or a bearing was read from grid north, and so
  /// depends on where a station is.
  bool by_place = false;
  /// A statement of the declination is void, and says itself what waits for it.
  bool declination_void = false;
  /// A bearing was read at a mark, where north is another than here.
  bool has_back_sights = false;

  /// The first leg that would place something, had it a declination; null where there is none.
  const ObservedLeg* leg_without_declination() const;
  /// One sigma of the difference of a leg's two bearings, degrees: the largest of all legs.
  double back_bearing_sigma() const;
};

/// `places` are where stations without a position stand, as far as the model's declination goes.
Observations observe(const notebook::Notebook& notebook, const Options& options,
                     const FoundPlaces& places = {});

}  // namespace lodebook::reduction
