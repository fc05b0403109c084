// SPDX-License-Identifier: MIT
// Several drawings of a kind on one paper, with what holds for all of them below.
#pragma once

#include <string>
#include <vector>

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// Millimetres that a drawing may be wide: alone on its paper, or one of several side by side.
double panel_width(std::size_t panels);

/// Arranges drawings of equal width in rows of up to three, in their order, under the title
/// and above the lines of the footer, which are broken where they are too long.
Picture arranged(std::string name, std::string title, std::string description,
                 const std::vector<Picture>& panels, const std::vector<std::string>& footer);

/// `text` in lines of at most `width` millimetres, broken at spaces, or within a word that is
/// longer than a line.
std::vector<std::string> broken(Role role, std::string_view text, double width);

/// The same of a name that may be very long: three lines at most, the last of which ends in an
/// ellipsis where something is left out.
std::vector<std::string> heading(Role role, std::string_view text, double width);

/// `text` in one line of at most `width` millimetres, with an ellipsis where it is cut off.
std::string shortened(Role role, std::string_view text, double width);

}  // namespace lodebook::drawing
