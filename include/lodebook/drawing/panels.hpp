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
Picture arranged(std::string name, const std::string& title, std::string description,
                 const std::vector<Picture>& panels, const std::vector<std::string>& footer);

}  // namespace lodebook::drawing
