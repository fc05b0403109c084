// SPDX-License-Identifier: MIT
#include <lodebook/notebook/reading.hpp>

namespace lodebook::notebook {

namespace {

Azimuth<north::dial> checked(double degrees) {
  return Azimuth<north::dial>::clockwise(Angle::from_degrees(degrees).value_or(Angle{}));
}

}  // namespace

Azimuth<north::dial> Bearing::azimuth() const {
  switch (notation) {
    case Notation::point:
      return checked(degrees_of(point));
    case Notation::quadrant:
      if (const auto quadrant = QuadrantBearing::from(pole, angle, side))
        return checked(quadrant->degrees());
      return {};
    case Notation::azimuth:
      break;
  }
  return checked(angle);
}

std::optional<Plane<north::dial>> PlaneAttitude::plane() const {
  using DialPlane = Plane<north::dial>;
  if (part() != Part::whole) return std::nullopt;
  if (form == Form::horizontal) return DialPlane();
  const auto angle =
      form == Form::vertical ? Dip::from_degrees(90) : Dip::from_degrees(dip.degrees());
  if (!angle) return std::nullopt;
  switch (form) {
    case Form::dip_direction:
      return DialPlane::from_dip_direction(bearing.azimuth(), *angle);
    case Form::strike_by_rule:
      return DialPlane::from_strike(bearing.azimuth(), *angle, rule);
    case Form::strike_and_side:
      if (side && angle->degrees() > 0)
        return DialPlane::from_strike_and_side(bearing.azimuth(), *angle,
                                               checked(degrees_of(*side)));
      break;
    case Form::horizontal:
    case Form::vertical:
    case Form::strike:
    case Form::dip:
      break;
  }
  // No side was typed, and a dip of 0 or 90 needs none.
  return DialPlane::from_strike(bearing.azimuth(), *angle, HandRule::right);
}

std::optional<Line<north::dial>> LineAttitude::line() const {
  switch (form) {
    case Form::rake:
    case Form::trend:
      return std::nullopt;
    case Form::horizontal:
      return Line<north::dial>(bearing.azimuth(), Plunge());
    case Form::vertical:
      return Line<north::dial>({}, *Plunge::from_degrees(90));
    case Form::trend_plunge:
    case Form::plunge_towards:
      break;
  }
  const double degrees = slope.degrees();
  const auto plunge = Plunge::from_degrees(degrees < 0 ? -degrees : degrees);
  if (!plunge) return std::nullopt;
  return Line<north::dial>(degrees < 0 ? bearing.azimuth().opposite() : bearing.azimuth(), *plunge);
}

Part part_of(const Reading& reading) {
  if (const auto* const plane = std::get_if<PlaneAttitude>(&reading.what)) return plane->part();
  if (const auto* const line = std::get_if<LineAttitude>(&reading.what)) return line->part();
  return Part::whole;
}

OwnNorth north_of(const Reading& reading) {
  return std::visit([](const auto& what) { return what.bearing.north; }, reading.what);
}

}  // namespace lodebook::notebook
