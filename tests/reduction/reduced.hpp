// SPDX-License-Identifier: MIT
// A small log, read and reduced whole: its pages, rows, checks and faults.
#pragma once

#include <catch.hpp>

#include <cmath>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <lodebook/orientation/azimuth.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::test {

using notebook::Code;
using notebook::Diagnostic;
using notebook::Severity;
using reduction::Check;
using reduction::Item;
using reduction::North;
using reduction::Options;
using reduction::Page;
using reduction::Repeats;
using reduction::Row;
using reduction::Status;

/// How far a direction (degrees) is from the one expected; infinite where it is missing.
inline double off(std::optional<double> found, double expected) {
  if (!found) return std::numeric_limits<double>::infinity();
  const double turned = wrap_degrees(*found - expected);
  return std::min(turned, 360 - turned);
}

/// The same for a figure that does not wrap.
inline double miss(std::optional<double> found, double expected) {
  if (!found) return std::numeric_limits<double>::infinity();
  return std::abs(*found - expected);
}

/// Arithmetic only: below what any output shows.
inline constexpr double exact = 1e-9;

inline Options in(North north) {
  Options options;
  options.north = north;
  return options;
}
inline Options means() {
  Options options;
  options.repeats = Repeats::mean;
  return options;
}

class Reduced {
 public:
  explicit Reduced(std::string text, const Options& options = {})
      : book_(std::make_unique<notebook::Notebook>(
            notebook::read_log(notebook::Source("day.txt", std::move(text)), {options.rule}))),
        reduction_(std::make_unique<reduction::Reduction>(*book_, options)) {
    Page page;
    while (reduction_->next(page))
      pages_.push_back(page);
    for (const Page& filled : pages_) {
      for (const Row& row : filled.rows)
        rows_.push_back(&row);
      for (const Check& check : filled.checks)
        checks_.push_back(&check);
      for (const Diagnostic& diagnostic : filled.diagnostics)
        diagnostics_.push_back(&diagnostic);
    }
  }

  const notebook::Notebook& book() const { return *book_; }
  const reduction::Reduction& reduction() const { return *reduction_; }
  const reduction::Counts& counts() const { return reduction_->counts(); }
  const std::vector<Page>& pages() const { return pages_; }
  const std::vector<const Diagnostic*>& diagnostics() const { return diagnostics_; }

  std::size_t row_count() const { return rows_.size(); }
  const Row& row(std::size_t i = 0) const {
    REQUIRE(i < rows_.size());
    return *rows_[i];
  }
  std::size_t check_count() const { return checks_.size(); }
  const Check& check(std::size_t i = 0) const {
    REQUIRE(i < checks_.size());
    return *checks_[i];
  }

  std::vector<const Diagnostic*> all(Code code) const {
    std::vector<const Diagnostic*> found;
    for (const Diagnostic* diagnostic : diagnostics_) {
      if (diagnostic->code == code) found.push_back(diagnostic);
    }
    return found;
  }
  std::size_t count(Code code) const { return all(code).size(); }
  const Diagnostic& only(Code code) const {
    const auto found = all(code);
    INFO(notebook::name_of(code));
    REQUIRE(found.size() == 1);
    return *found.front();
  }
  /// The codes of all faults, in order, for messages.
  std::string codes() const {
    std::string names;
    for (const Diagnostic* diagnostic : diagnostics_)
      names += std::string(notebook::name_of(diagnostic->code)) + ' ';
    return names;
  }

 private:
  std::unique_ptr<notebook::Notebook> book_;
  std::unique_ptr<reduction::Reduction> reduction_;
  std::vector<Page> pages_;
  std::vector<const Row*> rows_;
  std::vector<const Check*> checks_;
  std::vector<const Diagnostic*> diagnostics_;
};

/// A log that says all about its compass, so that only what is tested can be wrong.
inline std::string on_true_dial(const std::string& readings) {
  return "set 0\ndeclination 0\nlandmark Peak\nstation Q1\n" + readings;
}

}  // namespace lodebook::test
