// SPDX-License-Identifier: MIT
// Work done ahead of its turn, on other threads.
#pragma once

#include <algorithm>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>
#include <utility>
#include <vector>

#include <lodebook/cli/temporary.hpp>

namespace lodebook::cli {

/// Does tasks ahead of their turn, on threads of its own, for one caller who takes their results in
/// order. No more than `window` tasks are at once begun and not yet done with, the one that the
/// caller is busy with included: what is held is never more than the results of that many, however
/// slow the first of them is.
template <class Result>
class Ahead {
 public:
  class Turn;
  /// Makes the result of a task, or leaves the task to the caller.
  using Make = std::function<std::optional<Result>(std::size_t task, Turn& turn)>;

  /// Tasks are numbered from 0. A window of one leaves them all to the caller, and so does a system
  /// that has no thread to give.
  Ahead(std::size_t tasks, std::size_t window, Make make)
      : tasks_(tasks), slots_(std::max<std::size_t>(1, window)), make_(std::move(make)) {
    const std::size_t wanted = std::min(tasks, slots_.size());
    if (wanted < 2) return;
    threads_.reserve(wanted);
    const HeldSignals held;
    try {
      while (threads_.size() < wanted)
        threads_.emplace_back([this] { work(); });
    } catch (const std::exception&) {
      // Those that there are do it all, or the caller.
    }
  }
  Ahead(const Ahead&) = delete;
  Ahead& operator=(const Ahead&) = delete;
  ~Ahead() { stop_.request_stop(); }

  /// The result of the next task, which is waited for; what its maker asks for is done meanwhile.
  /// Nothing where no thread has begun it or `make` left it: the caller then does it. The task
  /// before is done with. Throws what `make` threw, or what it asked for.
  std::optional<Result> next() {
    std::unique_lock lock(mutex_);
    turn_ = next_++;
    Slot& slot = slot_of(turn_);
    const bool is_ours = begun_ == turn_;
    if (is_ours) ++begun_;
    changed_.notify_all();
    if (is_ours) return std::nullopt;
    for (;;) {
      changed_.wait(lock, [&] { return slot.is_made || slot.asked != nullptr; });
      if (slot.is_made) break;
      const std::function<void()>& asked = *slot.asked;
      lock.unlock();
      asked();
      lock.lock();
      slot.asked = nullptr;
      changed_.notify_all();
    }
    slot.is_made = false;
    if (slot.failure) std::rethrow_exception(std::exchange(slot.failure, nullptr));
    return std::exchange(slot.result, std::nullopt);
  }

 private:
  struct Slot {
    bool is_made = false;
    /// What its maker waits for the caller to do.
    const std::function<void()>* asked = nullptr;
    std::optional<Result> result;
    std::exception_ptr failure;
  };
  Slot& slot_of(std::size_t task) { return slots_[task % slots_.size()]; }

  void work() {
    const std::stop_token stop = stop_.get_token();
    std::unique_lock lock(mutex_);
    for (;;) {
      changed_.wait(lock, stop, [&] { return begun_ == tasks_ || begun_ < turn_ + slots_.size(); });
      if (begun_ == tasks_ || stop.stop_requested()) return;
      const std::size_t task = begun_++;
      Slot& slot = slot_of(task);
      lock.unlock();
      try {
        Turn turn(*this, slot, stop);
        slot.result = make_(task, turn);
      } catch (...) {
        slot.failure = std::current_exception();
      }
      lock.lock();
      slot.is_made = true;
      changed_.notify_all();
    }
  }

  std::size_t tasks_;
  std::vector<Slot> slots_;
  Make make_;
  std::mutex mutex_;
  std::condition_variable_any changed_;
  std::size_t begun_ = 0;  ///< tasks before this one have been begun
  std::size_t next_ = 0;   ///< the next that the caller asks for
  std::size_t turn_ = 0;   ///< tasks before this one are done with
  std::stop_source stop_;
  std::vector<std::jthread> threads_;  // last, so that they end before what they use
};

/// A task's turn, for who makes its result ahead of it.
template <class Result>
class Ahead<Result>::Turn {
 public:
  /// The result is still wanted.
  bool is_wanted() const { return !stop_.stop_requested(); }
  /// Waits for the turn, and for the caller, who does `work` on his own thread. False where the
  /// result is no longer wanted.
  bool ask(const std::function<void()>& work) {
    std::unique_lock lock(ahead_.mutex_);
    slot_.asked = &work;
    ahead_.changed_.notify_all();
    return ahead_.changed_.wait(lock, stop_, [this] { return slot_.asked == nullptr; });
  }

 private:
  friend class Ahead;
  Turn(Ahead& ahead, Slot& slot, const std::stop_token& stop)
      : ahead_(ahead), slot_(slot), stop_(stop) {}

  Ahead& ahead_;
  Slot& slot_;
  const std::stop_token& stop_;
};

}  // namespace lodebook::cli
