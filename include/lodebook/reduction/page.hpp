// SPDX-License-Identifier: MIT
// A station's page of a reduced log: its rows, what was checked across them, what is wrong.
#pragma once

#include <lodebook/reduction/settings.hpp>

namespace lodebook::reduction {

enum class Status : std::uint8_t { ok, suspect, rejected };
std::string_view name_of(Status status);

/// How a station's position is known: stated, or found from sights or legs.
enum class PositionFrom : std::uint8_t { at, sights, legs };
/// `at`, `sights`, `legs`.
std::string_view name_of(PositionFrom from);

/// Another station than the page's, where a reading was made that is typed on the page.
struct Elsewhere {
  std::string_view station;
  /// Stated, or found; missing where the log does not say.
  std::optional<notebook::GivenPosition> position;
  PositionFrom position_from = PositionFrom::at;
  std::optional<double> elevation_m;
  /// Only where the output asks for a grid.
  std::optional<earth::GridPosition> grid;
};

/// One row of the table. Figures are in degrees or metres and not yet rounded; azimuths refer to
/// `north`. A rejected reading has none.
struct Row {
  /// The reading as typed (for a mean, the first of its repeats) and the statement it stands in.
  const notebook::Reading* reading = nullptr;
  const notebook::Entry* entry = nullptr;
  const notebook::Kind* kind = nullptr;
  /// Where it was read, if that is not the page's own station.
  std::shared_ptr<const Elsewhere> elsewhere;
  /// How many readings it stands for: 1, or the repeats of a mean.
  std::size_t repeats = 1;
  Status status = Status::ok;
  /// Each once, in the order of Code.
  std::vector<notebook::Code> codes;

  /// Of a plane or line. Of one half, the other's figures are missing.
  notebook::Part part = notebook::Part::whole;
  /// With the dip to its right; missing for a plane whose dip shows as 0.0.
  std::optional<double> strike;
  std::optional<double> dip;
  /// A plane whose dip shows as 90.0, with no side typed, or a strike alone: it shows in [0, 180).
  bool strike_is_axis = false;
  /// Missing for a line whose plunge shows as 90.0.
  std::optional<double> trend;
  std::optional<double> plunge;
  /// An arrow, such as a current, that was typed as rising: it points to the end opposite to its
  /// trend and plunge, which go down.
  bool rises = false;
  std::optional<double> rake;
  std::optional<double> bearing;
  std::optional<double> back_bearing;
  /// The strike, trend or bearing before correction: value = wrap(as_read + correction), also for
  /// a strike that is an axis, which is given by its same end.
  std::optional<double> as_read;
  /// Degrees; present wherever `as_read` is.
  std::optional<double> correction;
  North north = North::magnetic;
  /// Where it was counted from before: the dial, or a north of its own; a rake from its plane's.
  notebook::OwnNorth read_from = notebook::OwnNorth::none;
  /// One sigma of the azimuth, degrees; missing over 52 degrees, where a direction means nothing.
  std::optional<double> uncertainty;

  std::string_view target;
  std::optional<double> distance_m;
  std::optional<double> vertical_angle;
  notebook::Facing facing = notebook::Facing::unstated;
  bool facing_doubtful = false;
  notebook::Sense sense = notebook::Sense::unstated;
  /// Number of the surface or line within the station, from 1; 0 for sights and legs.
  std::uint32_t surface = 0;

  std::string_view unit;
  std::string_view observer;
  std::optional<notebook::Date> date;
  /// The reading's own bytes; for a mean, those of all its repeats.
  std::string_view written;
  std::string_view remark;
};

/// One check across readings of a station.
struct Check {
  enum class What : std::uint8_t {
    repeats,        ///< `figure`: the furthest pole or line from the mean of its repeats
    line_in_plane,  ///< `figure`: how far a line lies out of the plane it is said to lie in
    fore_and_back,  ///< `figure`: how far a back bearing is from the opposite of the fore bearing
  };
  What what = What::repeats;
  std::uint32_t line = 1;
  const notebook::Kind* kind = nullptr;
  /// The other kind, for `line_in_plane`.
  const notebook::Kind* plane_kind = nullptr;
  std::uint32_t surface = 0;
  double figure = 0;  ///< degrees
  double limit = 0;   ///< degrees; a larger figure fails
  bool passed = true;

  // for `repeats`
  std::size_t count = 0;
  /// Strike (dip to the right) and dip of the mean plane, or trend and plunge of the mean line
  /// (its end that goes down, as in rows), in the north of the rows; the azimuth is missing for a
  /// horizontal plane or vertical line, and both where no mean is better than another, as of two at
  /// right angles.
  std::optional<double> mean_azimuth;
  std::optional<double> mean_slope;
  /// Fisher's precision and 95 % cone (degrees), where defined: three or more repeats, k of 4 up.
  std::optional<double> precision;
  std::optional<double> cone95;
};

/// What stands beside the readings: a sample, a photo, or a note; a remark that stands beside no
/// reading is a note too.
struct Item {
  enum class What : std::uint8_t { sample, photo, note };
  What what = What::note;
  /// Of a sample.
  std::string_view name;
  std::string_view text;
  /// In force at its line.
  std::string_view unit;
  std::string_view observer;
  std::optional<notebook::Date> date;
  std::uint32_t line = 1;
  std::uint32_t column = 1;
};
/// `sample`, `photo`, `note`.
std::string_view name_of(Item::What what);

/// Counts of a station, a log or a batch. readings = ok + suspect + rejected.
struct Counts {
  std::size_t readings = 0;
  std::size_t ok = 0;
  std::size_t suspect = 0;
  std::size_t rejected = 0;
  std::size_t stations = 0;
  /// Lines with an error that belongs to no reading.
  std::size_t not_understood = 0;
  std::size_t errors = 0;
  std::size_t warnings = 0;
  std::size_t notes = 0;
  /// Lines that hold a reading.
  std::size_t lines_of_readings = 0;

  /// Lines that hold a reading, or might if they were understood.
  std::size_t lines() const { return lines_of_readings + not_understood; }

  Counts& operator+=(const Counts& other);
};

/// Whether a log is rather a page as people write it, of which nobody has made a log yet: a fifth
/// or more of its lines is not understood, and at least five, since anybody mistypes a few.
bool is_rough(const Counts& counts);

/// A station block, or what stands before the first station. Views point into the notebook.
struct Page {
  /// Its statements, which rows point to; copies of a page share them.
  std::shared_ptr<notebook::Block> block;
  /// False for the page before the first station.
  bool is_station = false;
  /// As first written; empty where the heading could not be understood.
  std::string_view station;
  /// Line of the station's heading, and the lines of the page.
  std::uint32_t first_line = 1;
  std::uint32_t last_line = 1;
  /// With one sigma of its error; found from sights or legs where none is stated.
  std::optional<notebook::GivenPosition> position;
  PositionFrom position_from = PositionFrom::at;
  /// Stated, or found from vertical angles.
  std::optional<double> elevation_m;
  /// Where those that are stated came from, in the log's own word; often empty.
  std::string_view position_origin;
  std::string_view elevation_origin;
  std::optional<notebook::Time> time;
  /// In force at the first reading, or at the page's end without one.
  Settings settings;

  std::vector<Row> rows;
  std::vector<Check> checks;
  /// All faults in the page's lines, in order.
  std::vector<notebook::Diagnostic> diagnostics;
  Counts counts;

  /// In the order of the text.
  std::vector<Item> items;
};

}  // namespace lodebook::reduction
