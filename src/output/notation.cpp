// SPDX-License-Identifier: MIT
// Readings as typed, in canonical spelling.
#include <array>
#include <lodebook/output/notation.hpp>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using notebook::Bearing;
using notebook::Facing;
using notebook::LineAttitude;
using notebook::Notation;
using notebook::PlaneAttitude;
using notebook::Sense;

void append_rough(std::string& out, const notebook::OwnError& own) {
  if (own.rough) out.push_back('~');
}

void append_sigma(std::string& out, const notebook::OwnError& own) {
  if (own.sigma == 0) return;
  out += "±";
  append_shortest(out, own.sigma);
}

void append_north(std::string& out, const Bearing& bearing) {
  if (bearing.north == notebook::OwnNorth::none) return;
  out.push_back(' ');
  out += word_of(bearing.north);
}

/// Without its north.
void append_direction(std::string& out, const Bearing& bearing) {
  append_rough(out, bearing.own);
  switch (bearing.notation) {
    case Notation::point:
      out += name_of(bearing.point);
      break;
    case Notation::quadrant:
      out.push_back(bearing.pole == QuadrantBearing::Pole::north ? 'N' : 'S');
      append_shortest(out, bearing.angle);
      out.push_back(bearing.side == QuadrantBearing::Side::east ? 'E' : 'W');
      break;
    case Notation::azimuth:
      append_shortest_azimuth(out, bearing.angle);
      break;
  }
  append_sigma(out, bearing.own);
}

/// A bearing and an inclination. Points of the rose need a slash, as `N 38 W` says nothing, and
/// azimuths have one by custom; a north between them tells which is which.
void append_pair(std::string& out, const Bearing& bearing, const notebook::Slope& slope) {
  append_bearing(out, bearing);
  const bool is_apart =
      bearing.notation == Notation::quadrant || bearing.north != notebook::OwnNorth::none;
  out.push_back(is_apart ? ' ' : '/');
  append_slope(out, slope);
}

/// Behind the dip; a north stands behind it.
void append_side(std::string& out, const PlaneAttitude& plane, Point side) {
  const bool joined = plane.bearing.notation == Notation::quadrant && !plane.dip.percent &&
                      plane.dip.own.sigma == 0;
  if (!joined) out.push_back(' ');
  out += name_of(side);
  append_north(out, plane.bearing);
}

/// A strike, whose north stands behind the side if there is one, and the dip.
void append_strike_dip(std::string& out, const PlaneAttitude& plane) {
  Bearing strike = plane.bearing;
  if (plane.side) strike.north = notebook::OwnNorth::none;
  append_pair(out, strike, plane.dip);
  if (plane.side) append_side(out, plane, *plane.side);
}

}  // namespace

void append_bearing(std::string& out, const Bearing& bearing) {
  append_direction(out, bearing);
  append_north(out, bearing);
}

void append_slope(std::string& out, const notebook::Slope& slope) {
  append_rough(out, slope.own);
  append_shortest(out, slope.value);
  if (slope.percent) out.push_back('%');
  append_sigma(out, slope.own);
}

void append_length(std::string& out, const notebook::Length& length) {
  constexpr std::array<std::string_view, 3> units = {"m", "ft", " paces"};
  append_rough(out, length.own);
  append_shortest(out, length.value);
  out += units[static_cast<std::size_t>(length.unit)];
  append_sigma(out, length.own);
}

void append_facing(std::string& out, const PlaneAttitude& plane) {
  constexpr std::array<std::string_view, 4> words = {"", " upright", " overturned",
                                                     " facing unknown"};
  out += words[static_cast<std::size_t>(plane.facing)];
  if (plane.facing_doubtful) out += " facing doubtful";
}

void append_sense(std::string& out, Sense sense) {
  constexpr std::array<std::string_view, 5> words = {"", " normal", " reverse", " dextral",
                                                     " sinistral"};
  out += words[static_cast<std::size_t>(sense)];
}

void append_plane(std::string& out, const PlaneAttitude& plane) {
  using enum PlaneAttitude::Form;
  switch (plane.form) {
    case strike_and_side:
    case strike_by_rule:
      if (plane.dip_first && !plane.side) {
        append_slope(out, plane.dip);
        out.push_back('/');
        append_bearing(out, plane.bearing);
        break;
      }
      append_strike_dip(out, plane);
      break;
    case dip_direction:
      append_slope(out, plane.dip);
      out += " > ";
      append_bearing(out, plane.bearing);
      break;
    case horizontal:
      out += "horizontal";
      break;
    case vertical:
      out += "vertical ";
      append_bearing(out, plane.bearing);
      break;
    case strike:
      out += "strike ";
      append_bearing(out, plane.bearing);
      break;
    case dip:
      out += "dip ";
      append_slope(out, plane.dip);
      break;
  }
  append_facing(out, plane);
  append_sense(out, plane.sense);
}

void append_line(std::string& out, const LineAttitude& line,
                 const std::vector<notebook::Kind>& kinds) {
  using enum LineAttitude::Form;
  switch (line.form) {
    case trend_plunge:
      append_pair(out, line.bearing, line.slope);
      break;
    case plunge_towards:
      append_slope(out, line.slope);
      out += " > ";
      append_bearing(out, line.bearing);
      break;
    case rake:
      out += "rake ";
      append_slope(out, line.slope);
      out += " from ";
      append_bearing(out, line.bearing);
      break;
    case horizontal:
      out += "horizontal ";
      append_bearing(out, line.bearing);
      break;
    case vertical:
      out += "vertical";
      break;
    case trend:
      if (line.from) out += "from ";
      append_bearing(out, line.bearing);
      break;
  }
  if (line.on != notebook::no_kind) {
    out += " on ";
    out += kinds[line.on].name;
  }
  append_sense(out, line.sense);
}

}  // namespace lodebook::output
