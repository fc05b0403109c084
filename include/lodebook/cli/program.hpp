// SPDX-License-Identifier: MIT
// The program, from its arguments to its exit status.
#pragma once

#include <span>

namespace lodebook::cli {

/// Runs one command line, `arguments` being those behind the program's name, and returns the exit
/// status: 0 clean, 1 an error in a log or reading, 2 a wrong command line, 3 a file that cannot be
/// read or written.
int run(std::span<const char* const> arguments);

}  // namespace lodebook::cli
