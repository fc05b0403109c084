// SPDX-License-Identifier: MIT
// The rows of a log, as values that outlive it and can be compared with those of another.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <lodebook/notebook/reading.hpp>

namespace lodebook::test {

/// One reading as the strict reader takes it.
struct Taken {
  std::uint32_t line = 1;
  bool rejected = false;
  bool doubtful = false;
  std::string kind;
  std::string target;
  notebook::Facing facing = notebook::Facing::unstated;
  notebook::Sense sense = notebook::Sense::unstated;
  /// On the dial, degrees: strike with the dip to its right, trend, or bearing.
  std::optional<double> as_read;
  std::optional<double> dip;
  std::optional<double> plunge;
  std::optional<double> rake;
  std::optional<double> back_bearing;
  std::optional<double> distance_m;
  /// Of the azimuth, degrees.
  std::optional<double> correction;
  std::string written;
};

struct ReducedLog {
  std::vector<Taken> rows;
  /// Lines that an error stands at, and codes of it, in order.
  std::vector<std::uint32_t> error_lines;
};

ReducedLog reduced_rows(const std::string& log);

/// The same reading with the same value; the correction is the heading's and not compared.
bool is_same(const Taken& a, const Taken& b);

/// For messages.
std::string shown(const Taken& taken);

}  // namespace lodebook::test
