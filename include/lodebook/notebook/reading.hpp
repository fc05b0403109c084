// SPDX-License-Identifier: MIT
// Readings as typed: planes, lines, sights and legs, on the dial and not yet corrected.
#pragma once

#include <variant>

#include <lodebook/notebook/diagnostic.hpp>
#include <lodebook/notebook/written.hpp>

namespace lodebook::notebook {

/// Index into Notebook::kinds.
using KindId = std::uint16_t;
inline constexpr KindId no_kind = 0xFFFF;
/// Kinds that a log may have, those of the language included.
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
  /// The strike, or for `dip_direction` that direction; unused for `horizontal` and `dip`.
  Bearing bearing;
  Slope dip;
  /// The side that goes down, if one was typed.
  std::optional<Point> side;
  /// Two bare figures, of which the order in force puts the dip first.
  bool dip_first = false;
  /// The hand rule in force, for `strike_by_rule`.
  HandRule rule = HandRule::right;
  Facing facing = Facing::unstated;
  bool facing_doubtful = false;
  Sense sense = Sense::unstated;

  Part part() const {
    return form == Form::strike ? Part::azimuth : form == Form::dip ? Part::slope : Part::whole;
  }
  /// The dip side was typed, so that also a vertical plane has one.
  bool has_side() const { return side.has_value() || form == Form::dip_direction; }
  /// The plane on the dial; nothing for a dip out of range, an impossible side, or one half.
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
    trend  ///< its plunge was not read
  };
  Form form = Form::trend_plunge;
  /// The trend as typed, or for `rake` the bearing of the strike's end.
  Bearing bearing;
  /// The bearing of a trend is where a current comes from.
  bool from = false;
  /// The plunge, negative for the other end, or the rake.
  Slope slope;
  /// The kind of plane it lies in, if named.
  KindId on = no_kind;
  Sense sense = Sense::unstated;

  Part part() const { return form == Form::trend ? Part::azimuth : Part::whole; }
  /// Where a line points of which the trend alone was read, on the dial.
  Azimuth<north::dial> trend() const {
    return from ? bearing.azimuth().opposite() : bearing.azimuth();
  }
  /// The line on the dial; nothing for a plunge out of range or not read, or a rake, which needs
  /// its plane.
  std::optional<Line<north::dial>> line() const;
};

/// A bearing to a landmark or station.
struct Sight {
  NameId target = no_name;
  Bearing bearing;
  std::optional<Slope> vertical;
  /// Read off the south-seeking end of the needle.
  bool south_end = false;
  /// Only the bearing from the target to the observer was read, which `bearing` is.
  bool is_back = false;
  /// Read at the target, towards the observer, beside `bearing`.
  std::optional<Bearing> back;
  /// The station where it was read, if it is typed under another.
  NameId from = no_name;

  /// From the observer to the target, on the dial.
  Azimuth<north::dial> azimuth() const {
    return south_end || is_back ? bearing.azimuth().opposite() : bearing.azimuth();
  }
};

/// A measured or paced line from this station; or from another, under whose name it was read, to
/// this one.
struct Leg {
  Bearing bearing;
  Length distance;
  std::optional<Slope> slope;
  /// Read at the far end.
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
  /// From 0 in the log.
  std::uint32_t number = 0;
  KindId kind = no_kind;
  /// Its statement is not one that can be corrected; the attitude is what could be read.
  bool rejected = false;
  /// Rejected for want of what the log does not say; one diagnostic asks for all such readings.
  std::optional<Code> waits_for;
  bool doubtful = false;
  /// Who read it, if that is said (`by JT`).
  Span by;
  /// How often it was had (`x3`); 0 for the second and later of those, which repeat the first.
  std::uint8_t times = 1;
  /// The first reading of its statement; repeats of one surface follow it.
  bool first = true;
  /// This reading's own bytes, without kind, remark or comment.
  Span written;
  std::variant<PlaneAttitude, LineAttitude, Sight, Leg> what;
};

/// What of it was read, if it is a plane or line; sights and legs are whole.
Part part_of(const Reading& reading);

}  // namespace lodebook::notebook
