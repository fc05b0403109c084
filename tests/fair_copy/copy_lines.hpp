// SPDX-License-Identifier: MIT
// Which lines of a fair copy were made from which line of the page.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lodebook::test {

/// For each line of the copy, from 1 on (element 0 is unused), the line of the page that it is or
/// was made from; 0 for questions about the heading. Nothing if a line of the page is in the copy
/// neither as it was typed nor behind `# page N: `.
std::optional<std::vector<std::uint32_t>> copy_lines(std::string_view page, std::string_view copy);

/// Lines without their ends; the first is number 1, element 0 is empty.
std::vector<std::string_view> numbered_lines(std::string_view text);

}  // namespace lodebook::test
