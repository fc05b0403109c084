// SPDX-License-Identifier: MIT
#include <lodebook/cli/progress.hpp>

#include <chrono>
#include <lodebook/cli/message.hpp>
#include <lodebook/cli/temporary.hpp>
#include <system_error>

namespace lodebook::cli {
namespace {

constexpr std::string_view erasure = "\r\x1b[K";  // ECMA-48: erase to the end of the line

}  // namespace

Progress::Progress(std::size_t logs, bool is_shown) : logs_(logs) {
  if (!is_shown) return;
  const HeldSignals held;
  try {
    thread_.emplace([this](const std::stop_token& stop) { show(stop); });
  } catch (const std::system_error&) {
    // No run fails for want of this line.
  }
}

Progress::~Progress() {
  thread_.reset();
  erase();
}

void Progress::next_log() {
  const std::scoped_lock lock(mutex_);
  ++log_;
}

void Progress::tell(std::string_view message) {
  if (message.empty()) return;
  const std::scoped_lock lock(mutex_);
  erase();
  cli::tell(message);
}

void Progress::show(const std::stop_token& stop) {
  using std::chrono::milliseconds;
  std::unique_lock lock(mutex_);
  for (milliseconds wait(1000); !stop.stop_requested(); wait = milliseconds(200)) {
    stopped_.wait_for(lock, stop, wait, [] { return false; });
    if (stop.stop_requested() || shown_log_ == log_) continue;
    cli::tell(erasure);
    cli::tell(reading_log(log_, logs_));
    shown_log_ = log_;
  }
}

void Progress::erase() {
  if (shown_log_ == 0) return;
  shown_log_ = 0;
  cli::tell(erasure);
}

}  // namespace lodebook::cli
