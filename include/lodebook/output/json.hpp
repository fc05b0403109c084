// SPDX-License-Identifier: MIT
// The reduction as one JSON document, written a page at a time.
#pragma once

#include <lodebook/output/table.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::output {

/// Writes the document of `docs/reduction.schema.json`. Each log is written by a copy of its own,
/// made before anything is written: begin_log, page for each of its pages, end_log. The document is
/// begin, the texts of the logs with `between` between them, and end, the copies having been added.
/// Text is appended to `out`, which the caller may empty between calls. `north` is what was asked
/// for; every row names what it got.
class JsonWriter {
 public:
  JsonWriter(reduction::North north, Columns columns) : north_(north), columns_(columns) {}

  static constexpr std::string_view between = ",";

  void begin(std::string& out);
  void begin_log(std::string& out, const reduction::Reduction& reduction);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end_log(std::string& out, const reduction::Reduction& reduction);
  /// The totals of a log that `log` has written.
  void add(const JsonWriter& log) { counts_ += log.counts_; }
  void end(std::string& out);

 private:
  void take_comments(const notebook::Source& source, const notebook::Block& block);

  reduction::North north_;
  Columns columns_;
  bool first_station_ = true;
  /// The log's comments and diagnostics so far, as elements of arrays.
  std::string comments_;
  std::string diagnostics_;
  reduction::Counts counts_;
};

}  // namespace lodebook::output
