// SPDX-License-Identifier: MIT
// Readings as typed: planes, lines, sights and legs, in the frame of the dial, not yet corrected.
#pragma once

#include <variant>

#include <lodebook/notebook/diagnostic.hpp>
#include <lodebook/notebook/written.hpp>

namespace lodebook::notebook {

/// Index into Notebook::kinds.
using KindId = std::uint16_t;
inline constexpr KindId no_kind = 0xFFFF;
/// How many kinds a log may have, including those of the language.
inline constexpr std::size_t most_kinds = 60'000;
static_assert(most_kinds < no_kind);
/// Index into Notebook::names.
using NameId = std::uint32_t;
inline constexpr NameId no_name = 0xFFFF'FFFF;

enum class Facing : std::uint8_t { unstated, upright, overturned, unknown };
enum class Sense : std::uint8_t { unstated, normal, reverse, dextral, sinistral };
/// What was read of a plane or line: all of it, its strike or trend alone, or its dip alone.
enum class Part : std::uint8_t { whole, azimuth, slope };

/// One measurement of a plane.
struct PlaneAttitude {
  enum class Form : std::uint8_t {
    strike_and_side,
    strike_by_rule,
    dip_direction,
    horizontal,
    vertical,
    strike,  ///< alone: the dip was not read
    dip      ///< alone: the strike was not read
  };
  Form form = Form::strike_and_side;
  /// The strike, or the dip direction if the form is `dip_direction`. Unused for `horizontal` and
  /// `dip`.
  Bearing bearing;
  Slope dip;
  /// The side to which the plane dips, if it was typed.
  std::optional<Point> side;
  /// Two bare figures were typed, and the order in force puts the dip first.
  bool dip_first = false;
  /// The hand rule in force, for `strike_by_rule`.
  HandRule rule = HandRule::right;
  Facing facing = Facing::unstated;
  bool facing_doubtful = false;
  Sense sense = Sense::unstated;

  Part part() const {
    return form == Form::strike ? Part::azimuth : form == Form::dip ? Part::slope : Part::whole;
  }
  /// Whether the side of the dip was typed. If so, even a vertical plane has one.
  bool has_side() const { return side.has_value() || form == Form::dip_direction; }
  /// The plane in the frame of the dial. Empty if the dip is out of range, if the side does not fit
  /// the strike, or if only strike or dip was read.
  std::optional<Plane<north::dial>> plane() const;
};

/// One measurement of a line.
struct LineAttitude {
  enum class Form : std::uint8_t {
    trend_plunge,
    plunge_towards,
    rake,
    horizontal,
    vertical,
    trend  ///< alone: the plunge was not read
  };
  Form form = Form::trend_plunge;
  /// The trend as typed, or for a rake the end of the strike from which it is measured.
  Bearing bearing;
  /// `bearing` is where a current comes from; the trend is its opposite.
  bool from = false;
  /// The plunge, negative if it belongs to the other end of the line; or the rake.
  Slope slope;
  /// The kind of plane it lies in, if named.
  KindId on = no_kind;
  Sense sense = Sense::unstated;

  Part part() const { return form == Form::trend ? Part::azimuth : Part::whole; }
  /// The trend in the frame of the dial, if it was read alone.
  Azimuth<north::dial> trend() const {
    return from ? bearing.azimuth().opposite() : bearing.azimuth();
  }
  /// The line in the frame of the dial. Empty if the plunge is out of range or was not read, and
  /// for a rake, which needs its plane.
  std::optional<Line<north::dial>> line() const;
};

/// A bearing to a landmark or station.
struct Sight {
  NameId target = no_name;
  Bearing bearing;
  /// The vertical angle to the target, positive upwards.
  std::optional<Slope> vertical;
  /// Read off the south-seeking end of the needle.
  bool south_end = false;
  /// `bearing` was read at the target, towards the observer, and no other was.
  bool is_back = false;
  /// A second bearing, read at the target towards the observer.
  std::optional<Bearing> back;
  /// The station where it was read, if it is typed under another; else no_name.
  NameId from = no_name;

  /// The direction from the observer to the target, in the frame of the dial.
  Azimuth<north::dial> azimuth() const {
    return south_end || is_back ? bearing.azimuth().opposite() : bearing.azimuth();
  }
};

/// A measured or paced line: from this station to `to`, or from the station `from` to this one.
struct Leg {
  Bearing bearing;
  Length distance;
  /// The slope along the leg, positive upwards.
  std::optional<Slope> slope;
  /// The back bearing, read at the far end.
  std::optional<Bearing> back;
  NameId to = no_name;
  NameId from = no_name;
  bool south_end = false;

  Azimuth<north::dial> azimuth() const {
    return south_end ? bearing.azimuth().opposite() : bearing.azimuth();
  }
};

/// One reading, good or rejected.
struct Reading {
  /// Counts the readings of the log, from 0.
  std::uint32_t number = 0;
  KindId kind = no_kind;
  /// It could not be read completely, and gives no row that could be corrected. `what` has the part
  /// that was read.
  bool rejected = false;
  /// The code of the one diagnostic that stands for this and other rejected readings, if there is
  /// one. It usually asks for a statement that all of them need.
  std::optional<Code> waits_for;
  bool doubtful = false;
  /// Who read it, if stated (`by JT`).
  Span by;
  /// How often it was read (`x3`). Of these readings only the first has the number; the others have
  /// 0.
  std::uint8_t times = 1;
  /// It is the first reading of its statement. The others repeat the measurement.
  bool first = true;
  /// This reading's own bytes, without kind, remark or comment.
  Span written;
  std::variant<PlaneAttitude, LineAttitude, Sight, Leg> what;
};

/// Which part of a plane or line was read. Sights and legs are always whole.
Part part_of(const Reading& reading);

/// The north that its bearing is said to be read from; none for a reading without a bearing.
OwnNorth north_of(const Reading& reading);

}  // namespace lodebook::notebook
