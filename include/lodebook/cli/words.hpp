// SPDX-License-Identifier: MIT
// The words of a command line, as text.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace lodebook::cli {

/// The words with a space between each two, as they were before the shell cut them.
std::string joined(std::span<const std::string> words);

/// The words between commas, without the spaces around them.
std::vector<std::string> split_at_commas(std::string_view text);

/// Nothing but spaces and tabs.
bool is_blank(std::string_view text);

}  // namespace lodebook::cli
