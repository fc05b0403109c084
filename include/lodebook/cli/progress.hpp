// SPDX-License-Identifier: MIT
// How far a long run is, for whoever waits at a terminal.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <optional>
#include <string_view>
#include <thread>

namespace lodebook::cli {

/// A line on the error stream, `reading log 37 of 1000 ...`, written over and over in one place. It
/// comes after a second, and goes before anything else is written and at the end.
class Progress {
 public:
  /// Shows nothing at all unless `is_shown`.
  Progress(std::size_t logs, bool is_shown);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();

  /// The next log has its turn.
  void next_log();
  /// Writes a message to the error stream.
  void tell(std::string_view message);

 private:
  void show(const std::stop_token& stop);
  void erase();

  std::size_t logs_;
  std::mutex mutex_;
  std::condition_variable_any stopped_;
  std::size_t log_ = 0;
  std::size_t shown_log_ = 0;  ///< 0: there is no line
  std::optional<std::jthread> thread_;
};

}  // namespace lodebook::cli
