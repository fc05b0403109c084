// SPDX-License-Identifier: MIT
// Points, lines and ellipses as the geometries of GeoJSON (RFC 7946), in degrees with seven
// decimals, about a centimetre.
#pragma once

#include <optional>
#include <string>

#include <lodebook/earth/position.hpp>
#include <lodebook/reduction/ellipse.hpp>

namespace lodebook::output {

/// A Point; `null` without a position.
std::string point_geometry(const std::optional<earth::Position>& position);

/// The shortest line from one position to another as a LineString. GeoJSON draws straight on from
/// point to point in degrees, which is off by 0.5 m in 5 km at 45 degrees of latitude, so that
/// longer lines get points between. A MultiLineString where it crosses the antimeridian (3.1.9).
void append_line(std::string& out, const earth::Position& from, const earth::Position& to);

/// An ellipse as a Polygon of 72 corners (fewer where they coincide), counterclockwise, or a
/// MultiPolygon where it crosses the antimeridian. Semi-axes below 5 cm are drawn as 5 cm, or
/// nothing would be left. One that holds a pole has no such ring and is `null`.
void append_ellipse(std::string& out, const earth::Position& center,
                    const reduction::ErrorEllipse& ellipse);

}  // namespace lodebook::output
