// SPDX-License-Identifier: MIT
// The program `lodebook`.
#include <lodebook/cli/program.hpp>
#include <vector>

int main(int argc, char** argv) {
  // A program may be started without even its own name.
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  return lodebook::cli::run(arguments);
}
