// SPDX-License-Identifier: MIT
// Everything that a log can state: one entry for each statement, in the order of the text.
#pragma once

#include <lodebook/earth/position.hpp>
#include <lodebook/notebook/reading.hpp>
#include <lodebook/orientation/declination.hpp>

namespace lodebook::notebook {

/// A position with its accuracy (one sigma), if given, and the word for its source, such as `map`.
struct GivenPosition {
  earth::Position position;
  std::optional<double> accuracy_m;
  Span origin = {};
};

// ---- stations and places

/// Begins a station block. `name` is `no_name` if the line could not be read.
struct StationHeading {
  NameId name = no_name;
  std::optional<GivenPosition> position;
};
struct At {
  GivenPosition position;
};
struct Elevation {
  Length height;
  Span origin = {};
};
struct Clock {
  Time time;
};
struct Unit {
  Span text;
};
struct Sample {
  Span name;
  Span text;
};
struct Photo {
  Span text;
};
struct Note {
  Span text;
};
struct Landmark {
  NameId name = no_name;
  std::optional<GivenPosition> position;
  std::optional<Length> elevation;
  Span elevation_origin = {};
};
struct Tally {
  std::optional<std::uint32_t> stations;
  std::optional<std::uint32_t> readings;
};

// ---- settings: each holds from its line on

struct HeadingText {
  enum class Which : std::uint8_t { area, observer, instrument } which = Which::area;
  Span text;
};
struct DateSetting {
  Date date;
};
struct DialSetting {
  Notation notation = Notation::azimuth;
};
struct SetSetting {
  Declination set;
};
struct DeclinationSetting {
  /// The source of the declination: the figure typed, the angle set on the dial, or the geomagnetic
  /// model for the place and date.
  enum class From : std::uint8_t { stated, as_set, model } from = From::stated;
  Declination declination;
  /// One sigma, degrees; 0 if not given.
  double sigma = 0;
};
struct RuleSetting {
  HandRule rule = HandRule::right;
};
enum class PlaneOrder : std::uint8_t {
  unstated,
  strike_dip,
  direction_dip,
  dip_direction,
  dip_strike,
};
enum class LineOrder : std::uint8_t { unstated, trend_plunge, plunge_trend };
/// An `unstated` order leaves the one in force unchanged.
struct OrderSetting {
  PlaneOrder planes = PlaneOrder::unstated;
  LineOrder lines = LineOrder::unstated;
};
struct PaceSetting {
  Length pace;
};
struct DatumSetting {
  Span text;
};
/// Errors of readings, one sigma. A missing value leaves the one in force unchanged.
struct AccuracySetting {
  std::optional<double> bearing;           ///< degrees
  std::optional<double> dip;               ///< degrees
  std::optional<double> distance_percent;  ///< of the distance
};
/// `attraction correct`.
struct AttractionSetting {};
struct KindDeclaration {
  KindId kind = no_kind;
};
struct ShortDeclaration {
  Span word;
  Span meaning;
};

/// `heading FILE`. The number is that of the heading file in the source, from 1. Its lines are
/// entries with line 0.
struct HeadingUse {
  std::uint32_t heading = 0;
};

// ---- what is not a statement

/// A line with only a comment, a remark or both.
struct Bare {};
/// The setting that a void statement was meant to state. It counts as not stated until the next
/// valid statement.
enum class VoidSetting : std::uint8_t { none, set, declination, rule, order, pace, date, observer };
/// A line that could not be read.
struct Unread {
  VoidSetting setting = VoidSetting::none;
};

/// One statement, or one of its readings, with its remark and comment. All entries of one line
/// share `statement`, `remark` and `comment`.
struct Entry {
  /// From 1; 0 in a heading file.
  std::uint32_t line = 1;
  /// From 1, in code points: the start of the statement, or of the repeat if it is not the first.
  std::uint32_t column = 1;
  /// The whole statement, without remark and comment.
  Span statement;
  /// The text after `;`.
  Span remark;
  /// The text from `#` on.
  Span comment;
  std::variant<Reading, StationHeading, At, Elevation, Clock, Unit, Sample, Photo, Note, Landmark,
               Tally, HeadingText, DateSetting, DialSetting, SetSetting, DeclinationSetting,
               RuleSetting, OrderSetting, PaceSetting, DatumSetting, AccuracySetting,
               AttractionSetting, KindDeclaration, ShortDeclaration, HeadingUse, Bare, Unread>
      what;
};

}  // namespace lodebook::notebook
