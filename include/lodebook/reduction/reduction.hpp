// SPDX-License-Identifier: MIT
// A log reduced page by page: settings applied, readings corrected and checked.
#pragma once

#include <functional>
#include <memory>

#include <lodebook/reduction/field_ahead.hpp>
#include <lodebook/reduction/page.hpp>

namespace lodebook::reduction {

enum class Repeats : std::uint8_t { each, mean };

/// What the command line says. `declination`, `set` and `rule` stand in for what a log does not
/// say; the log's own statement wins, with a warning where they differ.
struct Options {
  North north = North::geographic;
  Repeats repeats = Repeats::each;
  /// Places are wanted also where sights and legs tell nothing of them.
  bool all_places = false;
  /// The table has columns for easting, northing and zone.
  bool grid_columns = false;
  std::optional<notebook::DeclinationSetting> declination;
  std::optional<Declination> set;
  std::optional<HandRule> rule;
};

/// Positions found from sights and legs: see fixes.hpp.
struct Fixes;

/// The settings before a log's first line: what the options say.
Settings initial_settings(const Options& options);

/// A landmark of the log, for outputs.
struct LandmarkRow {
  std::string_view name;
  std::optional<notebook::GivenPosition> position;
  std::optional<double> elevation_m;
  /// Where they came from, in the log's own word; often empty.
  std::string_view position_origin;
  std::string_view elevation_origin;
};

/// Reduces one log. Construction settles what concerns the whole log; `next` then fills one page at
/// a time, reusing its memory, so that cost is linear and only one page is held.
class Reduction {
 public:
  /// Gives a log's blocks as notebook::BlockReader::next does, with what FieldAhead has for each.
  using NextBlock = std::function<bool(notebook::Block&, std::optional<KnownField>&)>;

  /// `notebook` must outlive the reduction and its pages. Its blocks come from `next_block`, or
  /// without that are read here.
  Reduction(const notebook::Notebook& notebook, const Options& options, NextBlock next_block = {});
  ~Reduction();
  Reduction(const Reduction&) = delete;
  Reduction& operator=(const Reduction&) = delete;

  /// The next page in log order; false after the last. A log always has at least one page, the one
  /// before its first station.
  bool next(Page& page);

  const notebook::Notebook& notebook() const;
  const Options& options() const;
  /// The settings in force at the first reading, or at the end of a log without readings: what the
  /// first line of a report says.
  const Settings& heading() const;
  const std::vector<LandmarkRow>& landmarks() const;
  /// The positions that the log implies.
  const Fixes& fixes() const;
  /// Counts of the pages so far.
  const Counts& counts() const;

 private:
  class Log;
  std::unique_ptr<Log> log_;
};

}  // namespace lodebook::reduction
