// SPDX-License-Identifier: MIT
// Completion for shells: commands, the options of each, the words that an option takes, files,
// codes of diagnostics and topics of help.
#pragma once

#include <string>

namespace lodebook::install {

std::string bash_completion();
std::string zsh_completion();
std::string fish_completion();

}  // namespace lodebook::install
