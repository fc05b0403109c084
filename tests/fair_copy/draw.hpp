// SPDX-License-Identifier: MIT
// Random choices that are the same on every machine.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

namespace lodebook::test {

/// Draws by arithmetic of its own, since distributions differ between standard libraries.
class Draw {
 public:
  explicit Draw(std::uint32_t seed) : random_(seed) {}

  /// From 0 to below `count`.
  std::size_t below(std::size_t count) { return random_() % count; }
  bool one_in(std::size_t count) { return below(count) == 0; }
  template <class T, std::size_t count>
  const T& any(const T (&of)[count]) {
    return of[below(count)];
  }
  template <class T>
  const T& any(const std::vector<T>& of) {
    return of[below(of.size())];
  }

 private:
  std::mt19937 random_;
};

}  // namespace lodebook::test
