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

/// The separator of a bearing and an inclination: points of the rose need a slash, as `N 38 W`
/// says nothing, and azimuths have one by custom.
char separator(const Bearing& bearing) {
  return bearing.notation == Notation::quadrant ? ' ' : '/';
}

void append_pair(std::string& out, const Bearing& bearing, const notebook::Slope& slope) {
  append_bearing(out, bearing);
  out.push_back(separator(bearing));
  append_slope(out, slope);
}

void append_side(std::string& out, const PlaneAttitude& plane, Point side) {
  const bool joined = plane.bearing.notation == Notation::quadrant && !plane.dip.percent &&
                      plane.dip.own.sigma == 0;
  if (!joined) out.push_back(' ');
  out += name_of(side);
}

}  // namespace

void append_bearing(std::string& out, const Bearing& bearing) {
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
      append_pair(out, plane.bearing, plane.dip);
      if (plane.side) append_side(out, plane, *plane.side);
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
