// SPDX-License-Identifier: MIT
// The files of one run: what it writes is never what it reads.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include <lodebook/cli/command_line.hpp>
#include <lodebook/cli/file.hpp>

namespace lodebook::cli {

/// The outputs of a run, and the headings that its logs name, which are known only once the logs
/// are read.
class RunFiles {
 public:
  /// The outputs that `line` names; `beside` are those that no option names.
  RunFiles(const CommandLine& line, bool writes_to_standard_output,
           std::span<const std::string> beside = {});

  /// Refuses a run before it writes anything: standard input twice, an output that is also an input
  /// or the heading of the command line, or two outputs in one file. Says nothing where the error
  /// stream goes into an input.
  std::optional<UsageError> refuse(std::span<const std::string> inputs) const;
  /// Refuses one more input. May be called on any thread.
  std::optional<UsageError> refuse_input(const std::string& input) const;

  /// The headings that were opened, or that would be if they were there, in the order of the logs.
  std::vector<std::string> headings;

 private:
  struct Known {
    FileIdentity identity;
    std::string name;
  };

  void add(std::optional<FileIdentity> identity, std::string name);

  std::vector<Known> outputs_;
  /// The first output whose file another has already.
  std::optional<std::string> twice_;
  std::optional<std::string> heading_;
};

}  // namespace lodebook::cli
