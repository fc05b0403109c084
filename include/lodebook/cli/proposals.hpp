// SPDX-License-Identifier: MIT
// What the fair copy makes of the lines that the language refuses, as help and fixes of their
// diagnostics.
#pragma once

#include <optional>
#include <vector>

#include <lodebook/fair_copy/fair_copy.hpp>

namespace lodebook::cli {

/// The proposals for one log. They are worked out when the first error asks for them, and not at
/// all for a log of over 1 MiB, which nobody types in a night.
class Proposals {
 public:
  /// `log` must outlive them.
  explicit Proposals(const notebook::Notebook& log) : log_(log) {}

  /// Gives the first error on each line that can be read in one way only the statements as its
  /// help, and as its fix the whole line. Other errors on such a line have no help of their own.
  void attach(std::vector<notebook::Diagnostic>& diagnostics);

 private:
  const std::vector<fair_copy::Proposal>& all();

  const notebook::Notebook& log_;
  std::optional<std::vector<fair_copy::Proposal>> all_;
};

}  // namespace lodebook::cli
