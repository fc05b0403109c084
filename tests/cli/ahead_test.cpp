// SPDX-License-Identifier: MIT
#include <atomic>
#include <catch.hpp>
#include <lodebook/cli/ahead.hpp>
#include <memory>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

using lodebook::cli::Ahead;

namespace {

/// Counts those of its kind that are there, and the most that ever were at once.
class Held {
 public:
  explicit Held(std::size_t task) : task_(task) {
    const std::size_t now = ++there;
    for (std::size_t before = most; before < now && !most.compare_exchange_weak(before, now);) {
    }
  }
  Held(const Held&) = delete;
  Held& operator=(const Held&) = delete;
  ~Held() { --there; }

  std::size_t task() const { return task_; }

  static std::atomic<std::size_t> there;
  static std::atomic<std::size_t> most;

 private:
  std::size_t task_;
};
std::atomic<std::size_t> Held::there = 0;
std::atomic<std::size_t> Held::most = 0;

using Result = std::unique_ptr<Held>;

}  // namespace

TEST_CASE("results come in order, whoever made them") {
  for (const std::size_t window : {1U, 2U, 3U, 8U, 200U}) {
    Ahead<std::size_t> ahead(100, window,
                             [](std::size_t task, auto&) { return std::optional(task * task); });
    for (std::size_t task = 0; task < 100; ++task)
      CHECK(ahead.next().value_or(task * task) == task * task);
  }
}

TEST_CASE("a window of one leaves everything to the caller, and so does a task alone") {
  std::atomic<int> made = 0;
  const auto make = [&](std::size_t, auto&) { return std::optional(++made); };
  Ahead<int> in_turn(3, 1, make);
  for (int task = 0; task < 3; ++task)
    CHECK_FALSE(in_turn.next());
  Ahead<int> alone(1, 8, make);
  CHECK_FALSE(alone.next());
  CHECK(made == 0);
}

TEST_CASE("no more than the window is held, however slow the first is") {
  constexpr std::size_t tasks = 60;
  constexpr std::size_t window = 4;
  Held::most = 0;
  std::atomic<std::size_t> begun = 0;
  {
    Ahead<Result> ahead(tasks, window, [&](std::size_t task, auto&) {
      ++begun;
      return std::optional(std::make_unique<Held>(task));
    });
    for (std::size_t task = 0; task < tasks; ++task) {
      Result held = ahead.next().value_or(nullptr);
      if (!held) held = std::make_unique<Held>(task);
      CHECK(held->task() == task);
      // The others run on while this one is slow, and then have to wait for it.
      const std::size_t others = std::min(tasks, task + window) - task - 1;
      while (Held::there < 1 + others)
        std::this_thread::yield();
      CHECK(begun <= task + window);
    }
  }
  CHECK(Held::most == window);
  CHECK(Held::there == 0);
}

TEST_CASE("what a task leaves is the caller's") {
  Ahead<int> ahead(50, 4, [](std::size_t task, auto&) {
    return task % 3 == 0 ? std::nullopt : std::optional(1);
  });
  for (std::size_t task = 0; task < 50; ++task) {
    const auto made = ahead.next();
    if (task % 3 == 0) CHECK_FALSE(made);
  }
}

TEST_CASE("what a task throws is thrown in its turn") {
  Ahead<int> ahead(20, 4, [](std::size_t task, auto&) -> std::optional<int> {
    if (task == 11) throw std::runtime_error("eleven");
    return 1;
  });
  std::size_t task = 0;
  try {
    for (; task < 20; ++task) {
      // Its turn may come before a thread has begun it.
      if (!ahead.next() && task == 11) throw std::runtime_error("eleven");
    }
  } catch (const std::runtime_error& error) {
    CHECK(std::string(error.what()) == "eleven");
  }
  CHECK(task == 11);
}

TEST_CASE("an end before the last task stops those that are under way") {
  std::atomic<int> under_way = 0;
  {
    Ahead<int> ahead(1000, 3, [&](std::size_t, auto& turn) {
      ++under_way;
      while (turn.is_wanted())
        std::this_thread::yield();
      --under_way;
      return std::optional(1);
    });
    while (under_way == 0)
      std::this_thread::yield();
  }
  CHECK(under_way == 0);
}

TEST_CASE("what a maker asks for is done in its turn, on the caller's thread") {
  const auto caller = std::this_thread::get_id();
  std::vector<std::size_t> done;
  Ahead<int> ahead(50, 4, [&](std::size_t task, auto& turn) {
    for (int times = 0; times < 3; ++times) {
      const bool was_done = turn.ask([&] {
        CHECK(std::this_thread::get_id() == caller);
        done.push_back(task);
      });
      CHECK(was_done);
    }
    return std::optional(1);
  });
  std::vector<std::size_t> wanted;
  for (std::size_t task = 0; task < 50; ++task) {
    if (!ahead.next()) done.insert(done.end(), 3, task);
    wanted.insert(wanted.end(), 3, task);
    CHECK(done == wanted);
  }
}

TEST_CASE("a maker that waits for a turn that never comes is told so") {
  std::atomic<int> waiting = 0;
  std::atomic<int> refused = 0;
  {
    Ahead<int> ahead(1000, 3, [&](std::size_t, auto& turn) {
      ++waiting;
      if (!turn.ask([] {})) ++refused;
      return std::optional(1);
    });
    while (waiting < 3)
      std::this_thread::yield();
  }
  CHECK(waiting == 3);
  CHECK(refused == 3);
}

TEST_CASE("what fails while it is done for a maker ends the run") {
  std::atomic<int> refused = 0;
  {
    Ahead<int> ahead(20, 4, [&](std::size_t, auto& turn) {
      if (!turn.ask([] { throw std::runtime_error("full"); })) ++refused;
      return std::optional(1);
    });
    bool failed = false;
    try {
      while (!ahead.next()) {
      }
    } catch (const std::runtime_error& error) {
      failed = std::string(error.what()) == "full";
    }
    CHECK(failed);
  }
  CHECK(refused > 0);
}
