// SPDX-License-Identifier: MIT
// The names are in a list that a signal handler can walk: it changes only while signals are held.
#include <lodebook/cli/temporary.hpp>

#include <fcntl.h>
#include <pthread.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>

namespace lodebook::cli {

struct TemporaryName {
  std::string path;
  TemporaryName* older = nullptr;
};

namespace {

constexpr std::array<int, 7> ending_signals = {SIGHUP,  SIGINT,  SIGQUIT, SIGTERM,
                                               SIGXCPU, SIGUSR1, SIGUSR2};

constinit TemporaryName* newest = nullptr;

/// Calls nothing but what POSIX allows in a handler.
void remove_all_and_end(int signal) {
  remove_temporaries();
  ::raise(signal);  // now without a handler, so that the parent sees which signal it was
}

std::error_code last_error() {
  return {errno, std::generic_category()};
}

void forget(const TemporaryName* gone) {
  TemporaryName** link = &newest;
  while (*link != gone)
    link = &(*link)->older;
  *link = gone->older;
}

}  // namespace

void remove_temporaries() {
  for (const TemporaryName* name = newest; name != nullptr; name = name->older)
    ::unlink(name->path.c_str());
}

Temporary::Temporary() = default;
Temporary::Temporary(Temporary&&) noexcept = default;

Temporary::~Temporary() {
  if (!name_) return;
  const HeldSignals held;
  ::unlink(name_->path.c_str());
  forget(name_.get());
}

std::error_code Temporary::create(const std::string& folder, unsigned mode, int& descriptor) {
  const std::string stem = folder + "/.lodebook-" + std::to_string(::getpid()) + '-';
  auto name = std::make_unique<TemporaryName>();
  const HeldSignals held;
  for (int attempt = 0;; ++attempt) {
    name->path = stem + std::to_string(attempt);
    descriptor = ::open(name->path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (descriptor >= 0) break;
    if (errno != EEXIST) return last_error();
  }
  name->older = newest;
  newest = name.get();
  name_ = std::move(name);
  return {};
}

std::error_code Temporary::put(const std::string& target) {
  const HeldSignals held;
  if (std::rename(name_->path.c_str(), target.c_str()) != 0) return last_error();
  forget(name_.get());
  name_.reset();
  return {};
}

HeldSignals::HeldSignals() {
  sigset_t ending;
  ::sigemptyset(&ending);
  for (const int signal : ending_signals)
    ::sigaddset(&ending, signal);
  ::pthread_sigmask(SIG_BLOCK, &ending, &before_);
}

HeldSignals::~HeldSignals() {
  ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

void handle_signals() {
  for (const int signal : ending_signals) {
    struct sigaction before {};
    if (::sigaction(signal, nullptr, &before) != 0 || before.sa_handler != SIG_DFL) continue;
    struct sigaction action {};
    action.sa_handler = remove_all_and_end;
    action.sa_flags = static_cast<int>(SA_RESETHAND | SA_NODEFER);
    ::sigemptyset(&action.sa_mask);
    ::sigaction(signal, &action, nullptr);
  }
  std::signal(SIGXFSZ, SIG_IGN);
}

}  // namespace lodebook::cli
