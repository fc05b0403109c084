// SPDX-License-Identifier: MIT
// A stage of work on one log: it goes ahead on a thread of its own.
#pragma once

#include <array>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <stop_token>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

#include <lodebook/cli/temporary.hpp>

namespace lodebook::cli {

/// Makes items one after the other while the stage behind it works on those made before. They go by
/// loads, since waking a thread takes longer than making many; three loads are all that is held,
/// and their memory is used again.
template <class Item>
class Stage {
 public:
  /// Makes the next item in place of an old one; false at the end.
  using Make = std::function<bool(Item&)>;

  /// A system that has no thread to give leaves the work to the caller.
  explicit Stage(Make make) : make_(std::move(make)) {
    const HeldSignals held;
    try {
      thread_ = std::jthread([this](const std::stop_token& stop) { work(stop); });
    } catch (const std::system_error&) {
      // `next` makes the items itself.
    }
  }
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;

  /// The next item in order, good until the next call; null at the end. Throws what `make` threw.
  Item* next() {
    if (!thread_.joinable()) {
      Item& item = in_use().items.front();
      return make_(item) ? &item : nullptr;
    }
    if (at_ < count_) return &in_use().items[at_++];
    if (is_last_) return nullptr;
    std::unique_lock lock(mutex_);
    if (std::exchange(is_begun_, true)) {
      ++used_;
      changed_.notify_all();
    }
    changed_.wait(lock, [&] { return made_ > used_; });
    at_ = 0;
    count_ = in_use().count;
    is_last_ = in_use().is_last;
    if (in_use().failure) std::rethrow_exception(in_use().failure);
    return at_ < count_ ? &in_use().items[at_++] : nullptr;
  }

 private:
  static constexpr std::size_t items_in_load = 256;
  struct Load {
    std::vector<Item> items = std::vector<Item>(items_in_load);
    std::size_t count = 0;
    bool is_last = false;
    std::exception_ptr failure;
  };
  Load& in_use() { return loads_[used_ % loads_.size()]; }

  void work(const std::stop_token& stop) {
    for (;;) {
      Load* load = nullptr;
      {
        std::unique_lock lock(mutex_);
        if (!changed_.wait(lock, stop, [&] { return made_ < used_ + loads_.size(); })) return;
        load = &loads_[made_ % loads_.size()];
      }
      fill(*load);
      const std::scoped_lock lock(mutex_);
      ++made_;
      changed_.notify_all();
      if (load->is_last) return;
    }
  }

  void fill(Load& load) {
    load.count = 0;
    try {
      while (load.count < load.items.size() && make_(load.items[load.count]))
        ++load.count;
      load.is_last = load.count < load.items.size();
    } catch (...) {
      load.failure = std::current_exception();
      load.is_last = true;
    }
  }

  Make make_;
  std::array<Load, 3> loads_;
  std::mutex mutex_;
  std::condition_variable_any changed_;
  std::size_t made_ = 0;  ///< loads before this one have been made
  std::size_t used_ = 0;  ///< loads before this one are done with
  // of the one that takes
  bool is_begun_ = false;
  bool is_last_ = false;
  std::size_t at_ = 0;
  std::size_t count_ = 0;  ///< of the load in use, which is none before the first is made
  std::jthread thread_;    // last, so that it ends before what it uses
};

}  // namespace lodebook::cli
