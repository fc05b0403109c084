// SPDX-License-Identifier: MIT
// How the compass was set and what was true: the settings in force at a reading.
#pragma once

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::reduction {

/// The north that azimuths of an output refer to.
enum class North : std::uint8_t { geographic, magnetic };
/// `true` or `magnetic`, as outputs name it.
std::string_view name_of(North north);

/// One-sigma reading errors. The defaults are the instrument's: degrees, degrees, percent.
struct Accuracy {
  double bearing = 0.5;
  double dip = 1;
  double distance_percent = 2;
};

/// Where a figure came from.
enum class From : std::uint8_t { nowhere, log, option };

/// What holds at one line of a log.
struct Settings {
  std::string_view area;
  std::string_view observer;
  std::string_view instrument;
  std::string_view datum;
  std::optional<notebook::Date> date;
  std::optional<notebook::Notation> dial;
  std::optional<ThumbRule> rule;
  From rule_from = From::nowhere;
  notebook::PlaneOrder plane_order = notebook::PlaneOrder::unstated;
  notebook::LineOrder line_order = notebook::LineOrder::unstated;
  std::optional<double> pace_m;
  Accuracy accuracy;
  bool attraction_correct = false;

  /// Turned into the dial; 0 where nothing is said.
  Declination set;
  From set_from = From::nowhere;
  /// The dial is declared right: true = read.
  bool as_set = false;
  /// True declination; equal to `set` where `as_set`.
  Declination declination;
  double declination_sigma = 0;
  From declination_from = From::nowhere;
};

/// What is added to a bearing read on the dial.
struct Correction {
  Angle angle;
  /// The north that the sum refers to.
  North north = North::magnetic;
  /// The share of the declination in the uncertainty, one sigma, degrees.
  double sigma = 0;
};

/// magnetic = read - set; true = read - set + declination. Where the wanted north cannot be had
/// (true without a declination), the other one is given and named.
Correction correction(const Settings& settings, North wanted);

}  // namespace lodebook::reduction
