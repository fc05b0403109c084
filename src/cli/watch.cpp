// SPDX-License-Identifier: MIT
#include <lodebook/cli/watch.hpp>

#include <poll.h>
#include <sys/inotify.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <lodebook/cli/file.hpp>
#include <map>
#include <set>
#include <string_view>
#include <thread>

namespace lodebook::cli {
namespace {

using std::chrono::milliseconds;
using Clock = std::chrono::steady_clock;

milliseconds until(Clock::time_point end) {
  return std::max(milliseconds(0), std::chrono::ceil<milliseconds>(end - Clock::now()));
}

/// What tells a file from itself before it was saved.
struct Stamp {
  bool exists = false;
  dev_t device = 0;
  ino_t inode = 0;
  off_t size = 0;
  /// Of its bytes, and of whatever is known of it, seconds and nanoseconds.
  std::array<std::int64_t, 4> changed = {};

  friend bool operator==(const Stamp&, const Stamp&) = default;
};

Stamp stamp_of(const std::string& file) {
  struct stat about {};
  if (::stat(file.c_str(), &about) != 0) return {};
  return {
      true,
      about.st_dev,
      about.st_ino,
      about.st_size,
      {about.st_mtim.tv_sec, about.st_mtim.tv_nsec, about.st_ctim.tv_sec, about.st_ctim.tv_nsec}};
}

/// How files were when they were last looked at.
class Stamps {
 public:
  void look_at(const std::vector<std::string>& files) {
    std::map<std::string, Stamp> stamps;
    for (const std::string& file : files) {
      const auto known = stamps_.find(file);
      stamps.emplace(file, known == stamps_.end() ? stamp_of(file) : known->second);
    }
    stamps_.swap(stamps);
  }
  /// Looks again; tells whether one has changed.
  bool changed() {
    bool changed = false;
    for (auto& [file, stamp] : stamps_) {
      const Stamp now = stamp_of(file);
      changed = changed || !(now == stamp);
      stamp = now;
    }
    return changed;
  }
  bool misses_one() const {
    return std::ranges::any_of(stamps_, [](const auto& known) { return !known.second.exists; });
  }

 private:
  std::map<std::string, Stamp> stamps_;
};

class WatchByLooking final : public Watch {
 public:
  void look_at(const std::vector<std::string>& files) override { stamps_.look_at(files); }
  bool wait(milliseconds longest) override {
    const auto end = Clock::now() + longest;
    do {
      std::this_thread::sleep_for(std::min(until(end), between));
      if (stamps_.changed()) return true;
    } while (Clock::now() < end);
    return false;
  }
  bool misses_one() const override { return stamps_.misses_one(); }

 private:
  static constexpr milliseconds between{100};

  Stamps stamps_;
};

/// By inotify(7), on the folders, where a file that replaces another is seen.
class WatchByEvents final : public Watch {
 public:
  explicit WatchByEvents(Descriptor events) : events_(std::move(events)) {}

  void look_at(const std::vector<std::string>& files) override {
    names_.clear();
    std::map<std::string, int> folders;
    const auto add = [&](const std::string& file) {
      names_.insert(base_of(file));
      const std::string folder = folder_of(file);
      if (folders.contains(folder)) return;
      // Once more also for a known one, for another folder may have its name now.
      const int number = ::inotify_add_watch(events_.number(), folder.c_str(), saves);
      if (number >= 0) folders.emplace(folder, number);
    };
    for (const std::string& file : files) {
      add(file);
      if (const auto target = behind_links(file); target && *target != file) add(*target);
    }
    for (const auto& before : folders_) {
      const auto is_same = [&](const auto& kept) { return kept.second == before.second; };
      if (std::ranges::none_of(folders, is_same))
        ::inotify_rm_watch(events_.number(), before.second);
    }
    folders_.swap(folders);
    stamps_.look_at(files);
  }

  bool wait(milliseconds longest) override {
    const auto end = Clock::now() + longest;
    do {
      pollfd waiting{events_.number(), POLLIN, 0};
      ::poll(&waiting, 1, static_cast<int>(until(end).count()));
      const bool told = was_told();
      if (stamps_.changed() || told) return true;
    } while (Clock::now() < end);
    return false;
  }
  bool misses_one() const override { return stamps_.misses_one(); }

 private:
  static constexpr std::uint32_t saves = IN_MODIFY | IN_CLOSE_WRITE | IN_ATTRIB | IN_CREATE |
                                         IN_DELETE | IN_MOVED_FROM | IN_MOVED_TO | IN_ONLYDIR;

  /// Takes all that the system has to tell; tells whether one of the files is named. That may be
  /// one of the same name in the folder of another, which costs a reading.
  bool was_told() {
    bool told = false;
    alignas(inotify_event) std::array<char, 4096> buffer;
    for (;;) {
      const ssize_t size = ::read(events_.number(), buffer.data(), buffer.size());
      if (size <= 0) return told;
      for (std::size_t at = 0; at < static_cast<std::size_t>(size);) {
        inotify_event event{};
        std::memcpy(&event, buffer.data() + at, sizeof event);
        const char* const name = buffer.data() + at + sizeof event;
        told = told || (event.mask & IN_Q_OVERFLOW) != 0 ||
               (event.len > 0 && names_.contains(std::string_view(name)));
        at += sizeof event + event.len;
      }
    }
  }

  Descriptor events_;
  std::map<std::string, int> folders_;
  /// Without their folders.
  std::set<std::string, std::less<>> names_;
  Stamps stamps_;
};

}  // namespace

std::unique_ptr<Watch> watch_by_looking() {
  return std::make_unique<WatchByLooking>();
}

std::unique_ptr<Watch> watch_by_events() {
  Descriptor events(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC));
  return events.is_open() ? std::make_unique<WatchByEvents>(std::move(events)) : nullptr;
}

bool wait_for_save(Watch& watch, std::optional<int> output) {
  constexpr milliseconds between_looks(1000);
  constexpr milliseconds between_steps(10);
  constexpr milliseconds until_gone(250);
  constexpr milliseconds longest_save(2000);  // of a file that somebody writes without a pause
  while (!watch.wait(between_looks)) {
    if (output && !has_reader(*output)) return false;
  }
  const auto end = Clock::now() + longest_save;
  while (watch.wait(watch.misses_one() ? until_gone : between_steps) && Clock::now() < end) {
  }
  return true;
}

}  // namespace lodebook::cli
