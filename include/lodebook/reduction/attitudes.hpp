// SPDX-License-Identifier: MIT
// The planes and lines of many logs, copied from their logs and gathered in groups.
#pragma once

#include <array>
#include <unordered_map>

#include <lodebook/orientation/vector.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

/// A plane or line as it was reduced. A rejected one has no figures.
struct Attitude {
  std::size_t log = 0;
  notebook::NameId kind = 0;
  notebook::NameId station = 0;
  notebook::NameId unit = 0;
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  /// The surface it was read on; repeats share it. Numbered through all logs.
  std::size_t surface = 0;
  bool is_plane = true;
  Status status = Status::ok;
  North north = North::magnetic;
  /// Of one half, the strike or trend may be known, and the axis is not.
  notebook::Part part = notebook::Part::whole;
  /// The pole of a plane or the direction of a line about `north`, pointing down or level, unless
  /// it is an arrow that rises.
  Vector axis;
  /// Strike (dip to the right) or trend, degrees; of an arrow that rises the azimuth that it points
  /// to. Nothing for a horizontal plane or vertical line.
  std::optional<double> azimuth;
  /// Its azimuth is known well enough to mean something: to 52 degrees, one sigma.
  bool has_direction = false;
  std::string written;
};

/// What groups share: the kind and the north always, unit and station on request.
struct Grouping {
  bool by_unit = false;
  bool by_station = false;
};

/// Which readings enter.
struct Selection {
  /// Names of kinds; empty for all.
  std::vector<std::string> kinds;
  bool without_suspect = false;
};

/// Readings of one kind. Its readings never refer to different norths.
struct Group {
  notebook::NameId kind = 0;
  bool is_plane = true;
  /// An arrow, such as a current's, rather than an axis.
  bool is_arrow = false;
  /// Lines whose two ends are alike.
  bool two_ended = false;
  /// Planes of a kind that is commonly folded.
  bool folds = false;
  North north = North::magnetic;
  std::optional<notebook::NameId> unit;
  std::optional<notebook::NameId> station;
  /// The log of the station, where grouped by station.
  std::optional<std::size_t> log;
  /// The whole readings that count, in log order; how many surfaces they have, and how many are
  /// suspect.
  std::vector<const Attitude*> members;
  std::size_t surfaces = 0;
  /// Of which one half was read, in log order: a strike or trend counts in roses and means of
  /// azimuths, a dip nowhere.
  std::vector<const Attitude*> halves;
  std::size_t suspect = 0;
  /// Left out: as rejected, and as suspect where the selection says so.
  std::size_t rejected = 0;
  std::size_t left_out = 0;

  /// Its azimuths have two ends that are alike: strikes, or trends of two-ended lines.
  bool is_axial() const { return is_plane || two_ended; }
};

/// One log as a heading of a picture or summary names it.
struct AttitudeLog {
  /// As the source is called.
  std::string name;
  /// The smallest and largest declination in force at stations with planes or lines, degrees east,
  /// where known, and whether the geomagnetic model gave it.
  std::optional<double> least_declination;
  std::optional<double> most_declination;
  bool by_model = false;
};

/// Collects pages. Names are kept once, however many logs share them.
class Attitudes {
 public:
  /// What follows belongs to another log.
  void begin_log(const Reduction& reduction);
  void add(const Page& page);
  /// Appends the logs of another collection, as if they had been added here.
  void add(Attitudes&& others);

  const std::vector<AttitudeLog>& logs() const { return logs_; }
  /// That of all logs' dials; azimuths where they differ.
  notebook::Notation notation() const { return notation_; }
  const std::vector<Attitude>& all() const { return all_; }
  /// Sights and legs, which have no place in statistics of orientations.
  std::size_t sights_and_legs() const { return sights_and_legs_; }
  const std::string& kind(notebook::NameId id) const { return kinds_[id].name; }
  const std::string& station(notebook::NameId id) const { return stations_.shown(id); }
  /// Empty where no unit was named.
  const std::string& unit(notebook::NameId id) const { return units_.shown(id); }
  /// The names of all kinds of which a plane or line was read, rejected or not.
  std::vector<std::string> kinds() const;

  /// The groups in the order in which their kinds, then units, then stations are first read. Groups
  /// point into this collection.
  std::vector<Group> groups(const Grouping& grouping, const Selection& selection) const;

 private:
  /// Logs may give one name to planes and to lines, which are different kinds.
  struct Kind {
    std::string name;
    std::string folded;
    bool is_plane = true;
    bool is_arrow = false;
    bool folds = false;
    bool two_ended = false;
  };
  notebook::NameId intern(Kind wanted);

  std::vector<AttitudeLog> logs_;
  notebook::Notation notation_ = notebook::Notation::azimuth;
  std::vector<Attitude> all_;
  std::vector<Kind> kinds_;
  /// Those of lines, then those of planes, by their folded names.
  std::array<std::unordered_map<std::string, notebook::NameId>, 2> numbers_of_kinds_;
  notebook::Names stations_;
  notebook::Names units_;
  std::size_t surfaces_ = 0;
  std::size_t sights_and_legs_ = 0;
};

}  // namespace lodebook::reduction
