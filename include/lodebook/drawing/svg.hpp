// SPDX-License-Identifier: MIT
// A picture as SVG (1.1, W3C Recommendation 2011).
#pragma once

#include <lodebook/drawing/picture.hpp>

namespace lodebook::drawing {

/// Appends the picture as a file of its own, with its style sheet, that any viewer opens: one user
/// unit is a millimetre, figures have three decimals at most.
void append_svg_file(std::string& out, const Picture& picture);

/// Appends it as an element within a page, which has the style sheet (scope `svg.drawn `) once.
void append_svg_element(std::string& out, const Picture& picture);

/// The scope of the style sheet's rules.
inline constexpr std::string_view svg_scope = "svg.drawn ";

}  // namespace lodebook::drawing
