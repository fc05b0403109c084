// SPDX-License-Identifier: MIT
// Running words on paper: broken into lines, or shortened to fit.
#pragma once

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// The text in lines at most about `width` millimetres wide, broken at spaces, or anywhere in a
/// word that is longer than a line.
std::vector<std::string> lines_of(std::string_view text, Role role, double width);

/// The text, or as much of its beginning as fits, with an ellipsis behind it.
std::string shortened(std::string_view text, Role role, double width);

/// Draws the lines from their upper left corner down and returns the height that they take.
double draw_paragraph(Picture& picture, Role role, Point corner, std::string_view text,
                      double width);

}  // namespace lodebook::drawing
