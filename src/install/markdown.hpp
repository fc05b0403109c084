// SPDX-License-Identifier: MIT
// Pages of the guide as text of a manual page. Only what the guide uses is understood: sections,
// paragraphs, lists of single lines, tables, code, links.
#pragma once

#include <string>
#include <string_view>

namespace lodebook::install {

/// The page without its title and its list of contents. Throws std::runtime_error where something
/// is not understood, so that nothing comes out garbled.
std::string manual_of(std::string_view page);

/// What stands below the heading `## title`, up to the next. Throws where there is none.
std::string_view section_of(std::string_view page, std::string_view title);

}  // namespace lodebook::install
