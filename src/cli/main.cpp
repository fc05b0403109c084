// SPDX-License-Identifier: MIT
// The program `lodebook`.
#include <malloc.h>

#include <lodebook/cli/program.hpp>

int main(int argc, char** argv) {
  // Threads share one heap. Where memory is short they could not get heaps of their own, and the
  // system would be asked anew, and map a page, for every string.
  ::mallopt(M_ARENA_MAX, 1);
  // A program may be started without even its own name.
  return lodebook::cli::run({argv + (argc > 0 ? 1 : 0), argv + argc});
}
