// SPDX-License-Identifier: MIT
// Waiting until files are saved.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lodebook::cli {

/// Notices that files change: that they are written, replaced by others of their names, made or
/// removed. It goes by their names, for many an editor saves a file by putting a new one in its
/// place.
class Watch {
 public:
  Watch() = default;
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;
  virtual ~Watch() = default;

  /// Looks at `files` from now on, and at no others. What happens from this call on is noticed by
  /// `wait`; of a file that it looks at already, also what happened before.
  virtual void look_at(const std::vector<std::string>& files) = 0;
  /// Waits for one of them to change, `longest` at most. Tells whether one has.
  virtual bool wait(std::chrono::milliseconds longest) = 0;
  /// One of them is not there.
  virtual bool misses_one() const = 0;
};

/// Looks at the files ten times a second.
std::unique_ptr<Watch> watch_by_looking();

/// Is told by the system, and sleeps meanwhile; but nobody tells what another computer does on a
/// network's disk, or that a whole folder has gone, so it looks as well, at the end of each wait.
/// Null where the system does not tell.
std::unique_ptr<Watch> watch_by_events();

/// Waits until a file has been saved. A save of several steps, such as to remove the old file and
/// to write a new one, is waited for to its end. False where nobody reads the stream `output` any
/// more.
bool wait_for_save(Watch& watch, std::optional<int> output);

}  // namespace lodebook::cli
