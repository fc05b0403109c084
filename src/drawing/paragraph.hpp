// SPDX-License-Identifier: MIT
// Running words on paper: broken into lines, or shortened to fit.
#pragma once

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// How wide a short text may turn out: names and figures are of capitals and digits, which are
/// wider than the mean letter.
inline double room_for(Role role, std::string_view text) {
  return 1.15 * width_of(role, text);
}

/// The text in lines at most about `width` millimetres wide, broken at spaces, or anywhere in a
/// word that is longer than a line.
std::vector<std::string> lines_of(std::string_view text, Role role, double width);

/// The text, or as much of its beginning as fits, with an ellipsis behind it.
std::string shortened(std::string_view text, Role role, double width);

/// Draws the lines from their upper left corner down and returns the height that they take.
double draw_paragraph(Picture& picture, Role role, Point corner, std::string_view text,
                      double width);

}  // namespace lodebook::drawing
