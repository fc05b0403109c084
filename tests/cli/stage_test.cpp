// SPDX-License-Identifier: MIT
#include <atomic>
#include <catch.hpp>
#include <chrono>
#include <lodebook/cli/stage.hpp>
#include <thread>
#include <vector>

using lodebook::cli::Stage;

TEST_CASE("items come once and in order, also where the first is asked for before a load is made") {
  std::atomic<bool> is_half_made = false;
  int made = 0;
  Stage<int> stage([&](int& item) {
    if (made == 3) {
      is_half_made = true;
      // Long enough that the first items would be taken, were they given out already.
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
    item = made++;
    return item < 100;
  });
  while (!is_half_made)
    std::this_thread::yield();
  std::vector<int> taken;
  while (const int* item = stage.next())
    taken.push_back(*item);
  std::vector<int> all;
  for (int item = 0; item < 100; ++item)
    all.push_back(item);
  CHECK(taken == all);
}
