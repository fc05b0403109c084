// SPDX-License-Identifier: MIT
// How roles and series look: the one style sheet of all pictures.
#pragma once

#include <string>

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// The class that the style sheet knows a role, a series, the line pattern of a series or a
/// contour's level by.
std::string_view class_of(Role role);
std::string class_of_series(Series series);
std::string class_of_pattern(Series series);
std::string class_of_level(std::size_t level);

/// Colours for light paper, or for a dark screen.
enum class Paper : std::uint8_t { light, dark };

/// Rules for all roles. Series differ in lightness as well as in hue, so that they stay apart in
/// grey print and for eyes that do not tell red from green; symbols and line patterns differ too.
/// `scope` stands before each rule, such as `svg.drawn `, so that a page's own rules stay apart.
void append_style_sheet(std::string& out, Paper paper, std::string_view scope);

/// The symbol of a series: a ring around `center` of about that radius. Five forms, one after the
/// other: disc, square, triangle, diamond, and triangle point down.
std::vector<Point> symbol_of(Series series, Point center, double radius);

}  // namespace lodebook::drawing
