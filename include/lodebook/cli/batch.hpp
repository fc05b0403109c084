// SPDX-License-Identifier: MIT
// Logs in their order: read, and made into outputs, several at once.
#pragma once

#include <functional>
#include <memory>
#include <span>

#include <lodebook/cli/document.hpp>
#include <lodebook/cli/run_files.hpp>

namespace lodebook::cli {

/// The command line's part in a reduction.
reduction::Options options_of(const CommandLine& line);

/// Asked now and then while a log is read: whether the rest of it is still wanted.
using GoOn = std::function<bool()>;

/// What a command makes of one log: `make` on any thread, perhaps ahead of the log's turn; the rest
/// on the main thread, in the order of the logs.
class LogPart {
 public:
  LogPart() = default;
  LogPart(const LogPart&) = delete;
  LogPart& operator=(const LogPart&) = delete;
  virtual ~LogPart() = default;

  /// Makes it of `notebook`, or of as much as is wanted.
  virtual void make(const notebook::Notebook& notebook, const GoOn& go_on) = 0;
  /// While `make` runs or waits in the log's turn: puts out what there is so far. False ends the
  /// run.
  virtual bool follow() { return true; }
  /// Bytes that `follow` would put out.
  virtual std::size_t held() const { return 0; }
  /// After `make`: puts out the rest. False ends the run.
  virtual bool take() { return true; }

  /// For the error stream, after `take`.
  std::string message;
  /// The log ends the run with status 1.
  bool is_faulty = false;
};
using BlankPart = std::function<std::unique_ptr<LogPart>()>;

/// Makes a part of every log of `line` and takes it, as many at once as --jobs says. No more than
/// that many are held, and of what is written of one ahead of its turn little more than 64 MiB.
/// What is no regular file, such as a pipe, is read in its turn. A log that cannot be read is
/// reported and the others go on; one that names an output of the run as its heading ends it as a
/// wrong command line. `documents` are what parts write to meanwhile.
void run_logs(const CommandLine& line, RunFiles& files, std::span<const Document> documents,
              const BlankPart& blank, Outcome& outcome);

/// The same in turn, for commands whose logs are not made apart; `make` may set what a part says.
using MakeInTurn = std::function<void(const notebook::Notebook&, LogPart&)>;
void run_logs_in_turn(const CommandLine& line, RunFiles& files, const MakeInTurn& make,
                      Outcome& outcome);

/// Whether a log ends the run with status 1: for its errors, and under --strict its warnings.
bool is_faulty(const CommandLine& line, const reduction::Counts& counts);

/// Says how many faults a log has, unless `line` is quiet, and judges it.
void note_faults(LogPart& part, const CommandLine& line, const reduction::Reduction& reduction);

/// Where the faults of a log are told: in a document, or else as their number on the error stream.
enum class FaultsTold : std::uint8_t { in_document, counted };

/// Reduces every log of `line` into `documents`. Stops where the first document's reader has gone.
void reduce_logs(const CommandLine& line, RunFiles& files, std::span<Document> documents,
                 Outcome& outcome, FaultsTold told = FaultsTold::in_document);

/// Whether `file` is a terminal that understands escape sequences.
bool takes_sequences(const OutputFile& file);

/// Whether what goes to `file` is coloured.
bool is_colored(const CommandLine& line, const OutputFile& file);

}  // namespace lodebook::cli
