// SPDX-License-Identifier: MIT
// Hands the files named on the command line to a target, one after the other: what a fuzzer once
// found, and all seeds, are tests in every build.
#include <cstdio>
#include <fstream>
#include <iterator>

#include "target.hpp"

int main(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    std::ifstream file(argv[i], std::ios::binary);
    if (!file) {
      std::fprintf(stderr, "%s cannot be read\n", argv[i]);
      return 1;
    }
    // Said before, since the target may end the program.
    std::printf("%s\n", argv[i]);
    std::fflush(stdout);
    lodebook::fuzz::try_input(
        std::string(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()));
  }
  return argc > 1 ? 0 : 1;
}
