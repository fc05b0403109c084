// SPDX-License-Identifier: MIT
// How places are marked on a map.
#pragma once

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

inline constexpr double station_radius = 0.5;
inline constexpr double landmark_radius = 1.5;

void draw_station(Picture& picture, Point at);
void draw_landmark(Picture& picture, Point at);
/// A small arrowhead whose tip is at a place on the frame, pointing out of it.
void draw_pointer(Picture& picture, Point tip, double azimuth);
/// A short ray with an open end.
void draw_open_sight(Picture& picture, Point from, double azimuth);

}  // namespace lodebook::drawing
