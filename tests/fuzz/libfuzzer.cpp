// SPDX-License-Identifier: MIT
// Where libFuzzer hands in its inputs.
#include <cstddef>
#include <cstdint>

#include "target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  lodebook::fuzz::try_input({reinterpret_cast<const char*>(data), size});
  return 0;
}
