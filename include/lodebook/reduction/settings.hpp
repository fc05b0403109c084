// SPDX-License-Identifier: MIT
// How the compass was set and what was true: the settings in force at a reading.
#pragma once

#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/earth/grid.hpp>
#include <lodebook/notebook/notebook.hpp>

namespace lodebook::reduction {

/// The north that azimuths of an output refer to.
enum class North : std::uint8_t { geographic, magnetic, grid };
/// `true`, `magnetic` or `grid`, as outputs name it.
std::string_view name_of(North north);

/// One sigma: degrees, degrees, percent. The instrument's by default (common practice, no source).
struct Accuracy {
  double bearing = 0.5;
  double dip = 1;
  double distance_percent = 2;
};

/// Where a figure came from.
enum class From : std::uint8_t { nowhere, log, option };

/// Where and when readings are made, and what follows from it.
struct Site {
  std::optional<earth::Position> position;
  /// The position is that of a station or landmark above, since this station has none.
  bool borrowed = false;
  /// Of the same station or landmark; 0 where none is stated.
  double height_m = 0;
  /// The models' field, where position and date are known and the models cover them.
  std::optional<earth::MagneticField> field;
  /// Only where the output asks for a grid.
  std::optional<earth::GridPosition> grid;
};

/// What the command line says, which holds where the log says nothing that can be read.
struct OptionSettings {
  std::optional<notebook::DeclinationSetting> declination;
  std::optional<Declination> set;
  std::optional<HandRule> rule;
};

/// What holds at one line of a log.
struct Settings {
  OptionSettings options;
  std::string_view area;
  std::string_view observer;
  std::string_view instrument;
  std::string_view datum;
  std::optional<notebook::Date> date;
  std::optional<notebook::Notation> dial;
  std::optional<HandRule> rule;
  From rule_from = From::nowhere;
  notebook::PlaneOrder plane_order = notebook::PlaneOrder::unstated;
  notebook::LineOrder line_order = notebook::LineOrder::unstated;
  std::optional<double> pace_m;
  Accuracy accuracy;
  bool attraction_correct = false;

  /// Turned into the dial; 0 where nothing is said.
  Declination set;
  From set_from = From::nowhere;
  /// How the declination is given: stated, as set on the dial, or by the model.
  notebook::DeclinationSetting::From declination_by = notebook::DeclinationSetting::From::stated;
  /// True declination; equal to `set` where the dial is declared right.
  Declination declination;
  double declination_sigma = 0;
  From declination_from = From::nowhere;
  /// Its last statement is void, which explains all that is missing because of it.
  bool set_void = false;
  bool declination_void = false;
  bool date_void = false;
  Site site;

  bool as_set() const { return declination_by == notebook::DeclinationSetting::From::as_set; }
  bool from_model() const { return declination_by == notebook::DeclinationSetting::From::model; }
  /// What is missing for a declination is explained by a statement that is void.
  bool lacks_declination_by_fault() const {
    return declination_void || (from_model() && date_void);
  }
  /// False also where the model cannot say: no position, no date, or no field that turns a needle.
  bool declination_known() const {
    return declination_from != From::nowhere &&
           (!from_model() || (site.field && site.field->needle() != earth::Needle::useless));
  }
  /// How far magnetic north lies from true north is known as a figure. It is not where the dial is
  /// declared right and nothing says what was set.
  bool has_figure() const {
    return declination_known() && (!as_set() || set_from != From::nowhere);
  }
  /// How far magnetic north lies east of grid north, degrees in [-180, 180], where both are known.
  std::optional<double> grid_magnetic_angle() const;
};

/// Why a bearing stays in the north that it was said to be read from: what would lead to the wanted
/// one is not known, or its statement is void, which says so itself.
enum class Lack : std::uint8_t { nothing, declination, void_declination, position };

/// What is added to a bearing as read.
struct Correction {
  Angle angle;
  /// The north that the sum refers to.
  North north = North::magnetic;
  /// The share of the declination in the uncertainty, one sigma, degrees.
  double sigma = 0;
  Lack lack = Lack::nothing;
};

/// Of a bearing read on the dial: magnetic = read - set; true = read - set + declination; grid =
/// true - convergence. Where the wanted north is not available (true without a declination, grid
/// without a position), the north before it in this list is used and named. Of one with a north of
/// its own: the dial's setting does not apply, and the declination, with its sigma, only where
/// magnetic north meets another.
Correction correction(const Settings& settings, North wanted,
                      notebook::OwnNorth read = notebook::OwnNorth::none);

/// What leads from one bearing's frame to another's, as far as the settings tell: an angle to add.
std::optional<Angle> turn_between(const Settings& settings, notebook::OwnNorth from,
                                  notebook::OwnNorth to);

}  // namespace lodebook::reduction
