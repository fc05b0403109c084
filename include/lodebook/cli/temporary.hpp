// SPDX-License-Identifier: MIT
// Temporary files, which are removed however the program ends.
#pragma once

#include <csignal>
#include <memory>
#include <string>
#include <system_error>

namespace lodebook::cli {

struct TemporaryName;

/// A new file, to be renamed when it is complete. Unless it is renamed it is removed, at the end of
/// its life or when a signal that a program can catch ends the program. Used on the main thread
/// alone.
class Temporary {
 public:
  Temporary();
  Temporary(Temporary&&) noexcept;
  Temporary& operator=(Temporary&&) = delete;
  ~Temporary();

  /// Creates it in `folder`, open for writing as `descriptor`, with the rights `mode` that the
  /// process's mask leaves.
  std::error_code create(const std::string& folder, unsigned mode, int& descriptor);
  bool exists() const { return name_ != nullptr; }
  /// Gives it the name `target`, in the same folder, and replaces what has that name.
  std::error_code put(const std::string& target);

 private:
  std::unique_ptr<TemporaryName> name_;
};

/// While one of these is there, signals that end the program wait, on this thread and for good on
/// those that it starts. They come to the main thread, and never while it changes temporary files.
class HeldSignals {
 public:
  HeldSignals();
  HeldSignals(const HeldSignals&) = delete;
  HeldSignals& operator=(const HeldSignals&) = delete;
  ~HeldSignals();

 private:
  sigset_t before_;
};

/// From now on signals that end the program first remove its temporary files, unless its parent has
/// asked for them to be ignored; and a file that may not grow is an error of writing it.
void handle_signals();

/// Removes them when the program ends at once, without destructors.
void remove_temporaries();

}  // namespace lodebook::cli
