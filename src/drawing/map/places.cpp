// SPDX-License-Identifier: MIT
#include "places.hpp"

namespace lodebook::drawing {

void draw_station(Picture& picture, Point at) {
  picture.circle(Role::solid, at, station_radius);
}

void draw_landmark(Picture& picture, Point at) {
  picture.area(Role::hollow, {towards(at, 0, landmark_radius), towards(at, 120, landmark_radius),
                              towards(at, 240, landmark_radius)});
  picture.circle(Role::solid, at, 0.2);
}

void draw_pointer(Picture& picture, Point tip, double azimuth) {
  picture.area(Role::solid,
               {tip, towards(tip, azimuth + 155, 2.2), towards(tip, azimuth - 155, 2.2)});
}

void draw_open_sight(Picture& picture, Point from, double azimuth) {
  constexpr double length = 8;
  const Point tip = towards(from, azimuth, length);
  picture.line(Role::ray, {from, tip});
  picture.line(Role::leader,
               {towards(tip, azimuth + 150, 1.2), tip, towards(tip, azimuth - 150, 1.2)});
}

}  // namespace lodebook::drawing
