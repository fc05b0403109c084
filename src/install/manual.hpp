// SPDX-License-Identifier: MIT
// The parts of a manual page that come from the tables of commands and options.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace lodebook::install {

/// A line for each command, for the section SYNOPSIS.
std::string synopsis();
/// The items of a list of commands, and of one of options.
std::string commands_described();
std::string options_described();

/// A template with each line `@name@` replaced by the text of that name, and `@name@` within a line
/// too. Throws std::runtime_error for a name that is not among `parts`.
std::string filled(std::string_view page, const std::map<std::string, std::string>& parts);

}  // namespace lodebook::install
