// SPDX-License-Identifier: MIT
// The station report: for a person at night, as JSON, or for an editor.
#pragma once

#include <lodebook/output/notation.hpp>
#include <lodebook/output/second_look.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::output {

/// Says that figures to walk by are no substitute for local knowledge or licensed practice.
std::string_view caution();
/// Whether a page gives a position, a slope or a bearing to walk.
bool needs_caution(const reduction::Page& page);

/// `63 readings: 60 ok, 2 suspect, 1 rejected; 14 stations; 2 lines not understood`
void append_totals(std::string& out, const reduction::Counts& counts);

/// What the report says, built a page at a time. Each log is written by a copy of its own:
/// begin_log, page for each page, end_log. The logs follow each other, and then end, which appends
/// the three things most worth a second look, the totals of the copies that were added, and what
/// makes logs of those that are none yet.
class StationReport {
 public:
  explicit StationReport(bool color, PlanesAs planes = PlanesAs::strike)
      : color_(color), planes_(planes) {}

  void begin_log(std::string& out, const reduction::Reduction& reduction);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end_log(std::string& out, const reduction::Reduction& reduction);
  /// What end says of a log that `log` has written.
  void add(const StationReport& log);
  void end(std::string& out);

 private:
  void state_correction(const reduction::Settings& settings);
  void state_correction(std::string& out, const reduction::Row& row);

  bool color_;
  bool caution_ = false;
  /// The line before was blank.
  bool spaced_ = true;
  reduction::North wanted_ = reduction::North::geographic;
  /// What was last said to be added to bearings, hundredths of a degree, and to which north: to
  /// those on the dial, and to those from each north of their own.
  struct Stated {
    std::int64_t correction = 0;
    reduction::North north = reduction::North::geographic;
  };
  std::array<std::optional<Stated>, 4> stated_;
  PlanesAs planes_;
  notebook::Notation notation_ = notebook::Notation::azimuth;
  SecondLook second_look_;
  struct LogTotals {
    std::string name;
    reduction::Counts counts;
    std::string advice;
  };
  std::vector<LogTotals> logs_;
};

/// The same as the document of `docs/report.schema.json`, with `between` between the texts of logs.
class JsonReport {
 public:
  static constexpr std::string_view between = ",";

  void begin(std::string& out);
  void begin_log(std::string& out, const reduction::Reduction& reduction);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end_log(std::string& out, const reduction::Reduction& reduction);
  /// What end says of a log that `log` has written.
  void add(const JsonReport& log);
  void end(std::string& out);

 private:
  bool first_station_ = true;
  bool caution_ = false;
  reduction::North wanted_ = reduction::North::geographic;
  SecondLook second_look_;
  reduction::Counts counts_;
};

/// The diagnostics alone, each on one line, also the notes; for an editor's list of errors.
class LineReport {
 public:
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
};

}  // namespace lodebook::output
