// SPDX-License-Identifier: MIT
// The program `lodebook`.
#include <lodebook/cli/program.hpp>

int main(int argc, char** argv) {
  // A program may be started without even its own name.
  return lodebook::cli::run({argv + (argc > 0 ? 1 : 0), argv + argc});
}
